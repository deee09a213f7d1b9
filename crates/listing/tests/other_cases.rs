//! Cases of one measure that are said shortly: in a sentence of their own, under one head, closed by one limit.

mod common;

use common::{check_item, unread_in};
use listing::{Confidence, read_text};

#[test]
fn a_sentence_that_names_only_a_case_goes_on_with_the_measure_before() {
    for other in [
        "Where joint width exceeds 2 in., 4 in.",
        "Where joint width exceeds 2 in., it is 4 in.",
        "Where joint width exceeds 2 in., 4 in. is required.",
        "Where joint width exceeds 2 in., increase to 4 in.",
    ] {
        check_item(
            &format!("PACKING - Min depth 3 in. {other}"),
            &[
                "packing.depth: at least 3 in",
                "packing.depth: at least 4 in if joint.width > 2 in.",
            ],
        );
    }
    check_item(
        "PACKING - Max recess 1/2 in. Where joint width is over 2 in., 1/4 in.",
        &[
            "packing.recess: at most 1/2 in",
            "packing.recess: at most 1/4 in if joint.width > 2 in.",
        ],
    );
    // What is said to be more of a most is a most.
    check_item(
        "CLIPS - Max spacing 12 in. For the 1 hr rating, increase to 24 in.",
        &[
            "clip.spacing: at most 12 in",
            "clip.spacing: at most 24 in if joint.rating = 1 hr",
        ],
    );
}

#[test]
fn a_sentence_of_its_own_does_not_go_on() {
    // Of two measures nobody knows which is meant.
    check_item(
        "PACKING - Min depth 3 in., max recess 1/2 in. For the 2 hr rating, 1 in.",
        &[
            "packing.depth: at least 3 in",
            "packing.recess: at most 1/2 in",
            "2:packing: nominal 1 in if joint.rating = 2 hr",
        ],
    );
    // A measure of its own.
    check_item(
        "PACKING - Min depth 3 in. For the 2 hr rating, 4 in. wide.",
        &[
            "packing.depth: at least 3 in",
            "packing.width: nominal 4 in if joint.rating = 2 hr",
        ],
    );
    // The other limit.
    check_item(
        "PACKING - Max recess 1 in. For the 2 hr rating, min 1/2 in.",
        &[
            "packing.recess: at most 1 in",
            "2:packing: at least 1/2 in if joint.rating = 2 hr",
        ],
    );
}

#[test]
fn one_limit_heads_its_cases() {
    for text in [
        "PACKING - Min depth (1 hr: 3 in., 2 hr: 4 in.).",
        "PACKING - Minimum depth shall be as follows: for 1 hr, 3 in.; for 2 hr, 4 in.",
    ] {
        check_item(
            text,
            &[
                "packing.depth: at least 3 in if joint.rating = 1 hr",
                "packing.depth: at least 4 in if joint.rating = 2 hr",
            ],
        );
    }
    check_item(
        "PACKING - Min depth for joints up to 2 in. wide: 3 in.; over 2 in. wide: 4 in.",
        &[
            "packing.depth: at least 3 in if joint.width <= 2 in.",
            "packing.depth: at least 4 in if joint.width > 2 in.",
        ],
    );
}

#[test]
fn one_limit_closes_its_cases() {
    for text in [
        "PACKING - Depth: 3 in. (1 hr) / 4 in. (2 hr) min.",
        "PACKING - Depth 3 in. for 1 hr and 4 in. for 2 hr, minimum.",
    ] {
        check_item(
            text,
            &[
                "packing.depth: at least 3 in if joint.rating = 1 hr",
                "packing.depth: at least 4 in if joint.rating = 2 hr",
            ],
        );
    }
    check_item(
        "SCREWS - Spaced 12 in. OC horizontally and 24 in. OC vertically, max.",
        &[
            "fastener.spacing: at most 12 in",
            "fastener.spacing: at most 24 in",
        ],
    );
    check_item(
        "PACKING - Max recess 1/2 in. except 1/4 in. for 1 hr.",
        &[
            "packing.recess: at most 1/2 in",
            "packing.recess: at most 1/4 in if joint.rating = 1 hr",
        ],
    );
}

/// Whether a person is asked about the number of an item's first clause.
fn is_doubtful(item: &str, index: usize) -> bool {
    let reading = read_text(
        "sample",
        &format!("1. FLOOR - 5 in. thick min.\n\n2. {item}\n"),
    );
    reading.clauses.get(index).map(|clause| clause.confidence) == Some(Confidence::WithDoubt)
}

#[test]
fn a_limit_that_may_be_of_two_measures_leaves_a_doubt() {
    assert!(is_doubtful(
        "PACKING - Strips 1/2 in. deep and 2 in. wide minimum.",
        1
    ));
    assert!(is_doubtful(
        "PACKING - Min 3 in. deep, 4 in. wide strips.",
        2
    ));
    assert!(!is_doubtful(
        "PACKING - Strips 1/2 in. deep and 2 in. wide.",
        1
    ));
    assert!(!is_doubtful("PACKING - Min 3 in. deep strips.", 1));
    assert!(is_doubtful("ANGLE - Angles 1-1/2 x 2 x 1/8 in. min.", 1));
    assert!(!is_doubtful("ANGLE - Angles 1-1/2 x 2 x 1/8 in.", 1));
}

#[test]
fn the_greater_of_two_is_asked_for_in_every_joint() {
    let item = "SEALANT - Depth is 1/2 in. or half the joint width, whichever is greater.";
    check_item(
        item,
        &[
            "sealant.depth: at least 1/2 in",
            "2:sealant_or: at least 1/2 times joint width",
        ],
    );
    assert!(is_doubtful(item, 1));
}

#[test]
fn a_dash_behind_a_limit_is_no_range() {
    let item = "PACKING - Min depth: joints up to 2 in. - 3 in.; joints over 2 in. - 4 in.";
    check_item(item, &["2:joints: nominal 3 in", "2:joints: nominal 4 in"]);
    assert_eq!(unread_in(item), ["2 in.", "2 in."]);
    check_item(
        "JOINT - Joint width 1 in. - 3 in.",
        &["joint.width: between 1 to 3 in"],
    );
}

#[test]
fn a_range_of_two_measures_is_none() {
    let item = "PACKING - Joint width 1 in. - 3 in. depth, 2 in. - 4 in. depth.";
    check_item(item, &[]);
    assert_eq!(unread_in(item), ["1 in. - 3 in.", "2 in. - 4 in."]);
}

#[test]
fn a_measure_said_again_behind_its_case_has_the_same_limit() {
    check_item(
        "PACKING - Min 3 in. depth for joint widths up to 2 in. 4 in. depth for joint widths over 2 in.",
        &[
            "packing.depth: at least 3 in if joint.width <= 2 in.",
            "packing.depth: at least 4 in if joint.width > 2 in.",
        ],
    );
}

#[test]
fn ratings_in_brackets_before_their_numbers() {
    check_item(
        "PACKING - (1 hr) min depth 3 in. (2 hr) min depth 4 in.",
        &[
            "packing.depth: at least 3 in if joint.rating = 1 hr",
            "packing.depth: at least 4 in if joint.rating = 2 hr",
        ],
    );
    check_item(
        "PACKING - Min depth 3 in. (1 hr), 4 in. (2 hr).",
        &[
            "packing.depth: at least 3 in if joint.rating = 1 hr",
            "packing.depth: at least 4 in if joint.rating = 2 hr",
        ],
    );
}

#[test]
fn two_measures_before_two_numbers_are_left_to_a_person() {
    let item = "PACKING - Min depth of packing and max recess are 4 in. and 1/2 in.";
    check_item(item, &[]);
    assert_eq!(unread_in(item), ["4 in.", "1/2 in."]);
}

#[test]
fn what_is_wider_or_rated_longer_than_the_case_before_is_the_other_case() {
    check_item(
        "PACKING - Compression 20 % in joints up to 30 mm, 30 % for wider; density min 60 kg/m3.",
        &[
            "packing.compression: nominal 20 percent if joint.width <= 30 mm",
            "packing.compression: nominal 30 percent if not (joint.width <= 30 mm)",
            "packing.density: at least 60 kg/m3",
        ],
    );
    for (other, when) in [
        ("max 16 in. OC for longer periods", "joint.rating > 1 hr"),
        ("max 16 in. OC for higher ratings", "joint.rating > 1 hr"),
        ("max 16 in. OC for shorter periods", "joint.rating < 1 hr"),
    ] {
        check_item(
            &format!("STUDS - Max 24 in. OC for 1 hr and {other}. Studs min 25 gauge."),
            &[
                "stud.spacing: at most 24 in if joint.rating = 1 hr",
                &format!("stud.spacing: at most 16 in if {when}"),
                "stud.gauge: at least 25 gauge",
            ],
        );
    }
    // Of two ratings before, a person says which is meant; and what lasts longer is no rating.
    check_item(
        "STUDS - Max 24 in. OC for 1 hr and 2 hr, max 16 in. OC for longer periods.",
        &[
            "stud.spacing: at most 24 in if joint.rating = 1 hr or joint.rating = 2 hr",
            "stud.spacing: at most 16 in if \"for longer periods\"",
        ],
    );
    check_item(
        "PACKING - Density min 60 kg/m3, stored dry for longer periods; depth min 50 mm.",
        &[
            "packing.density: at least 60 kg/m3",
            "packing.depth: at least 50 mm",
        ],
    );
}
