//! Cases that a sentence sets side by side in few words: each number stands under its own.

mod common;

use common::{check_item, clauses, unread_in};

#[test]
fn layers_that_are_named_by_their_number_alone() {
    check_item(
        "Anchors - Spacing max. 12 in. with one layer, 9 in. with two, 6 in. with three.",
        &[
            "fastener.spacing: at most 12 in if \"with one layer\"",
            "fastener.spacing: at most 9 in if \"with two\"",
            "fastener.spacing: at most 6 in if \"with three\"",
        ],
    );
}

#[test]
fn layers_that_give_a_rating() {
    check_item(
        "Board - One layer gives 1 h. Two layers give 2 h, three layers 3 h.",
        &[
            "board.layers: exactly 1 count if joint.rating = 1 hr",
            "board.layers: exactly 2 count if joint.rating = 2 hr",
            "board.layers: exactly 3 count if joint.rating = 3 hr",
        ],
    );
}

#[test]
fn levels_in_brackets_are_cases_where_there_are_several() {
    check_item(
        "Studs - 64 mm (FRL -/60/60) or 92 mm (FRL -/120/120) deep.",
        &[
            "2:stud: nominal 64 mm if \"FRL -/60/60\"",
            "2:stud_or: nominal 92 mm if \"FRL -/120/120\"",
        ],
    );
    let one = clauses("1. Wall - Studs 64 mm (FRL -/60/60) deep.\n\n2. Joint - 1 in. wide.\n");
    assert!(one.iter().all(|clause| !clause.contains(" if ")), "{one:?}");
}

#[test]
fn what_a_wall_is_built_of() {
    check_item(
        "Wall - Min 5 in. thick concrete or 8 in. thick block.",
        &[
            "wall.thickness: at least 5 in if \"concrete\"",
            "wall.thickness: at least 8 in if \"block\"",
        ],
    );
    check_item(
        "Wall - Concrete or block, 8 in. thick.",
        &["concrete.thickness: nominal 8 in"],
    );
}

#[test]
fn a_bracket_shares_the_case_of_the_number_before_it() {
    check_item(
        "Studs - Min 30 mils (20 gauge) where the wall is taller than 14 feet.",
        &[
            "2:stud: at least 30 mil if wall.height > 14 ft",
            "stud.gauge: at least 20 gauge if wall.height > 14 ft",
        ],
    );
}

#[test]
fn of_two_limits_one_counts() {
    check_item(
        "Sealant - Depth 20 percent or 3/8 in., whichever is greater.",
        &[
            "2:sealant_depth_or: nominal 20 percent if \"whichever is greater\"",
            "2:sealant_or: nominal 3/8 in if \"whichever is greater\"",
        ],
    );
    check_item(
        "Sealant - Cure for 48 hr, or until firm, whichever is longer.",
        &["sealant.cure_time: nominal 48 hr if \"whichever is longer\""],
    );
}

#[test]
fn the_greater_of_two_leasts_is_both() {
    let read = clauses(
        "1. Floor - Concrete.\n\n2. Packing - Min depth 4 in. or 1/2 times the joint width, whichever is greater.\n",
    );
    assert!(
        read.contains(&"packing.depth: at least 4 in".to_owned()),
        "{read:?}"
    );
}

#[test]
fn joints_behind_their_width_label_a_row() {
    check_item(
        "Sealant depth:\n   Up to 1 in. wide joint .... 1/4 in.\n   Over 1 in. wide joint ..... 1/2 in.",
        &[
            "sealant.depth: nominal 1/4 in if joint.width <= 1 in.",
            "sealant.depth: nominal 1/2 in if joint.width > 1 in.",
        ],
    );
}

#[test]
fn hours_and_a_bare_number_are_no_range() {
    let item = "Packing - Min depth, in., by rating:\n   1 hr - 3\n   2 hr - 4";
    check_item(
        item,
        &[
            "packing.depth: at least 3 in if joint.rating = 1 hr",
            "packing.depth: at least 4 in if joint.rating = 2 hr",
        ],
    );
    assert!(unread_in(item).is_empty());
}

#[test]
fn a_part_of_one_rating_or_another() {
    check_item(
        "Wall - 1 or 2 hr fire rated gypsum board wall, studs max 24 in. OC.",
        &["stud.spacing: at most 24 in if \"1 or 2 hr fire rated gypsum board wall\""],
    );
}

#[test]
fn walls_of_so_many_layers() {
    check_item(
        "Studs - A two-layer wall has studs max 16 in. OC. Walls with one layer: max 24 in. OC.",
        &[
            "stud.spacing: at most 16 in if \"A two-layer wall\"",
            "stud.spacing: at most 24 in if \"Walls with one layer\"",
        ],
    );
}
