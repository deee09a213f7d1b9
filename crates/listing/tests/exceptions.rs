//! Exceptions that tell more of what they except, and numbers given out to cases one by one. A condition that is turned round would ask for something just
//! where it isn't needed. The wordings are invented; what they mean is common practice.

mod common;

use common::clauses;

#[track_caller]
fn reads(item: &str, expected: &[&str]) {
    let found = clauses(&format!("1. {item}\n"));
    for clause in expected {
        assert!(found.iter().any(|own| own == clause), "{item} {found:?}");
    }
}

#[test]
fn a_place_is_excepted_with_what_is_told_of_it() {
    for (item, clause) in [
        (
            "Packing - Min 4 in. deep except in joints where the width is less than 1 in.",
            "packing.depth: at least 4 in if \"except in joints where the width is less than 1 in.\"",
        ),
        (
            "Clips - Spaced max 12 in. OC except at locations where joint is less than 1 in. wide.",
            "clip.spacing: at most 12 in if \"except at locations where joint is less than 1 in. wide\"",
        ),
        (
            "Packing - Min 4 in. deep except in areas where the deck is filled.",
            "packing.depth: at least 4 in if \"except in areas where the deck is filled\"",
        ),
        // Without a place between them the exception is tested.
        (
            "Packing - Min 4 in. deep except where the joint width is less than 1 in.",
            "packing.depth: at least 4 in if not (joint.width < 1 in.)",
        ),
    ] {
        reads(item, &[clause]);
    }
}

#[test]
fn what_an_exception_says_of_its_own_limit_is_no_case() {
    reads(
        "Sealant - Min 1/4 in. deep except for 2 hr walls when 1/2 in. is the minimum.",
        &[
            "sealant.depth: at least 1/4 in",
            "1:sealant_when_is_the_minimum: at least 1/2 in if joint.rating = 2 hr",
        ],
    );
    reads(
        "Board - Two layers except for 1 hr walls where one layer is permitted.",
        &[
            "board.layers: exactly 2 count",
            "board.layers: exactly 1 count if joint.rating = 1 hr",
        ],
    );
    // A number that tells the case stays one.
    reads(
        "Studs - Max 24 in. OC, except max 16 in. OC when three layers of board are used.",
        &["stud.spacing: at most 16 in if board.layers = 3"],
    );
}

#[test]
fn a_list_is_given_out_to_cases_and_no_other_number() {
    reads(
        "Wall - Min 5 in. or 6 in. (127 or 152 mm) thick concrete (100 to 150 pcf) for 1 and 2 hr rated assemblies, respectively.",
        &[
            "concrete.thickness: at least 6 in if joint.rating = 2 hr",
            "concrete.density: between 100 to 150 pcf",
        ],
    );
    reads(
        "Board - One or two layers of min 5/8 in. thick board on each side for 1 and 2 hr ratings, respectively.",
        &[
            "board.layers: exactly 1 count if joint.rating = 1 hr",
            "board.layers: exactly 2 count if joint.rating = 2 hr",
            "board.thickness: at least 5/8 in",
        ],
    );
    // Where no list is as long as the cases, all of it is asked for.
    let found = clauses(
        "1. Sealant - Min 1/4 in. deep, lapped 1/2 in., and 1 in. wide, for 1 and 2 hr ratings, respectively.\n",
    );
    assert!(found.iter().all(|own| !own.contains(" if ")), "{found:?}");
}

#[test]
fn no_joint_is_in_two_bands_at_once() {
    let found = clauses(
        "1. Sealant - Min 1/2 in. and 1 in. deep for joints up to 2 in. and over 2 in. wide, respectively.\n",
    );
    assert!(
        found.iter().all(|own| !own.contains("joint.width")),
        "{found:?}"
    );
}

#[test]
fn an_article_begins_a_sentence_behind_a_unit() {
    reads(
        "Packing - In 1 hr walls, min depth is 2 in. A compression of min 25% is required.",
        &[
            "packing.depth: at least 2 in if joint.rating = 1 hr",
            "packing.compression: at least 25 percent",
        ],
    );
}

#[test]
fn such_joints_are_those_that_are_excepted() {
    reads(
        "Clips - May be omitted except in joints over 3 in. In such joints clips shall be spaced max 12 in. OC.",
        &["clip.spacing: at most 12 in if \"in joints over 3 in.\""],
    );
    reads(
        "Clips - Clips may be omitted unless the packing is spliced. In this case the clips are spaced max 12 in. OC.",
        &["clip.spacing: at most 12 in if \"the packing is spliced\""],
    );
}

#[test]
fn what_is_held_under_a_share_is_compressed_by_it() {
    reads(
        "Packing - Mineral wool shall be inserted under 25% compression.",
        &["packing.compression: nominal 25 percent"],
    );
    reads(
        "Packing - Mineral wool with a moisture content under 2%.",
        &["1:mineral_wool_moisture_content: less than 2 percent"],
    );
}

#[test]
fn what_tells_more_of_an_excepted_place_is_said_of_nothing_behind_it() {
    for (item, clause) in [
        (
            "Boards - Min 8 pcf, tight to the framing except at the sill, where a gap was left, and held by No. 12 gauge pins.",
            "1:framing_and_held_pins: nominal 12 gauge",
        ),
        // What holds in the place is said of it.
        (
            "Packing - Flush with both faces except that, where sealant of Item 3 is used, it is held back 1/2 in. from each face.",
            "packing.recess: nominal 1/2 in if \"where sealant of Item 3 is used\"",
        ),
    ] {
        reads(item, &[clause]);
    }
}
