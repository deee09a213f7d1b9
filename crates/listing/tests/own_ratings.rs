//! The rating that a part has itself is asked of the part, and is no case of what follows it.

mod common;

use common::check_item;

#[test]
fn a_parts_own_rating_is_no_case() {
    check_item(
        "Wall Assembly - 2 hr rated gypsum board wall, studs max 24 in. OC, min 2 layers.",
        &[
            "wall.rating: nominal 2 hr",
            "stud.spacing: at most 24 in",
            "board.layers: at least 2 count",
        ],
    );
    check_item(
        "Wall Assembly - The 1 hr fire rated wall shall have studs min 2-1/2 in. wide.",
        &["wall.rating: nominal 1 hr", "stud.width: at least 5/2 in"],
    );
}

#[test]
fn walls_of_a_rating_are_a_case() {
    for lead in ["For 2 hr rated walls,", "2 hr rated walls:", "2 hr walls:"] {
        check_item(
            &format!("Wall Assembly - {lead} studs max 24 in. OC."),
            &["stud.spacing: at most 24 in if joint.rating = 2 hr"],
        );
    }
    check_item(
        "Wall Assembly - 2 hr fire-rated wall, min 2 layers; 1 hr fire-rated wall, min 1 layer.",
        &[
            "board.layers: at least 2 count if joint.rating = 2 hr",
            "board.layers: at least 1 count if joint.rating = 1 hr",
        ],
    );
}

#[test]
fn a_limited_rating_may_say_with_what() {
    for words in [
        "Max rating with hollow core units is 2 hr.",
        "The maximum fire rating for this floor is 2 hr.",
        "Max. assembly rating with units of either kind shall be 2 hr.",
    ] {
        check_item(
            &format!("PRECAST UNITS - {words}"),
            &["floor.rating: at most 2 hr"],
        );
    }
    // Hours behind a number are its case.
    check_item(
        "PACKING - Min depth is 3 in. for 2 hr.",
        &["packing.depth: at least 3 in if joint.rating = 2 hr"],
    );
}
