//! Whose a limit is, of the numbers beside it.

use crate::common::{self, check_item, unread_in as unread};

#[test]
fn the_most_of_one_measure_is_no_limit_of_another() {
    check_item(
        "Packing - Max 1/2 in. recess, 4 in. depth.",
        &[
            "packing.recess: at most 1/2 in",
            "packing.depth: nominal 4 in",
        ],
    );
    check_item(
        "Packing - Min depth of 4 in. and recess of 1/2 in.",
        &[
            "packing.depth: at least 4 in",
            "packing.recess: nominal 1/2 in",
        ],
    );
    check_item(
        "Clips - Max 12 in. spacing and 1 in. width.",
        &["clip.spacing: at most 12 in", "clip.width: nominal 1 in"],
    );
    check_item(
        "Wall - Max 12 ft height, 5 in. thickness.",
        &["wall.height: at most 12 ft", "wall.thickness: nominal 5 in"],
    );
    // One measure, or a least, goes on.
    check_item(
        "Clips - Min 1 in. wide and 2 in. long.",
        &["clip.width: at least 1 in", "2:clip_length: at least 2 in"],
    );
}

#[test]
fn numbers_behind_a_stroke_or_of_an_unknown_unit_are_kept() {
    check_item(
        "Clips - Spacing 12 in. max./6 in. min.",
        &["clip.spacing: at most 12 in", "clip.spacing: at least 6 in"],
    );
    check_item(
        "Screws - At 8 in. OC (edges)/12 in. OC (field).",
        &[
            "fastener.spacing: nominal 8 in",
            "fastener.spacing: nominal 12 in",
        ],
    );
    for (item, numbers) in [
        ("Lath - Metal lath min 3.4 lb/sq yd.", &["3.4 lb"][..]),
        ("Packing - Density 4 (min) pcf.", &["4"]),
        ("Concrete - Density 100-150 pcf (1602-2403 kg/m3).", &[]),
        ("Packing - Depth 3/4 in. min.", &[]),
    ] {
        assert_eq!(unread(item), numbers, "{item}");
    }
}

#[test]
fn two_limits_named_together_go_each_to_its_number() {
    check_item(
        "Packing - Min and max density is 4 pcf and 8 pcf.",
        &["packing.density: between 4 to 8 pcf"],
    );
    let respective = "Packing - Max joint width and min depth: 2 in. and 4 in., respectively.";
    check_item(respective, &[]);
    assert_eq!(unread(respective), ["2 in.", "4 in."]);
    check_item(
        "Joint - Max 25% compression and extension.",
        &[
            "joint.movement_compression: at most 25 percent",
            "joint.movement_extension: at most 25 percent",
        ],
    );
}

#[test]
fn what_remains_is_no_compression() {
    for item in [
        "Packing - Compressed to no more than 75% of uncompressed thickness.",
        "Packing - Compressed to between 60 and 75 % of its width.",
    ] {
        let text = format!("1. Floor - 5 in. thick min.\n\n2. {item}\n");
        let found = common::clauses(&text);
        assert!(
            found.len() == 2 && !found.iter().any(|clause| clause.starts_with("packing.")),
            "{found:?}"
        );
    }
    check_item(
        "Packing - Compressed min 25 percent of its thickness to fit.",
        &["packing.compression: at least 25 percent"],
    );
}

#[test]
fn a_limit_before_a_comma_is_shared() {
    check_item(
        "Packing - Minimum thickness of batt, 4 in. for the 2 hr rating and 6 in. for the 3 hr rating.",
        &[
            "packing.thickness: at least 4 in if joint.rating = 2 hr",
            "packing.thickness: at least 6 in if joint.rating = 3 hr",
        ],
    );
    // A comma behind other words parts.
    check_item(
        "Packing - Minimum two layers of batt, 4 in. thick.",
        &[
            "2:packing_layers: at least 2 count",
            "2:batt_thickness: nominal 4 in",
        ],
    );
}

/// What a number follows is said of that number.
#[test]
fn up_before_a_number_of_its_own_limits_none_before() {
    let both = "Sealant - The seal follows the deck down 12.5% and up 10% of the width as built.";
    check_item(both, &[]);
    assert_eq!(unread(both), ["12.5%", "10%"]);
    check_item(
        "Studs - Spaced 16 in. OC; walls 12 ft high and up.",
        &["stud.spacing: nominal 16 in", "wall.height: at least 12 ft"],
    );
}

#[test]
fn what_is_changed_from_one_value_to_another_is_no_range() {
    let item = "Packing - Depth shall be increased from 4 in. to 6 in.";
    check_item(item, &[]);
    assert_eq!(unread(item).len(), 1);
}

#[test]
fn a_spacing_and_a_distance_are_no_range() {
    check_item(
        "Fasteners - Fasteners shall not be spaced farther apart than 12 in. nor closer to the edge than 1 in.",
        &[
            "fastener.spacing: at most 12 in",
            "2:fasteners_to_the_edge: at least 1 in",
        ],
    );
}

#[test]
fn how_far_something_goes_by_words_is_left_unread() {
    let item = "Sealant - Sealing from one side is permissible up to a joint width of 20 mm.";
    check_item(item, &[]);
    assert_eq!(unread(item).len(), 1);
}
