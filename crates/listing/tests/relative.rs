//! Numbers measured against something else are no sizes of the thing itself: a wall isn't met by an inch because it must be an inch thicker.

mod common;

use common::{check, clauses};

#[test]
fn more_than_another_thing_has_is_no_size() {
    for (text, expected) in [
        (
            "Slabs min 1 in. thicker than the floor.",
            "1:slabs_thickness_thicker_than_the: at least 1 in",
        ),
        (
            "Packing to be min 25 mm (1 in.) deeper than the plate.",
            "1:packing_deeper_than_the_plate: at least 25 mm",
        ),
        (
            "Min depth 2 in. more than the joint width.",
            "1:packing_difference_more_than_the: at least 2 in",
        ),
        (
            "Depth 2 in. or more deeper than the flutes.",
            "1:packing_depth_deeper_than_the: at least 2 in",
        ),
        (
            "Width 1 in. in excess of the joint.",
            "1:packing_width_in_excess_of: nominal 1 in",
        ),
        (
            "Density min 1 pcf more than that of the batts.",
            "1:packing_density_more_than_that: at least 1 pcf",
        ),
        (
            "Packing shall exceed the joint width by min 1 in.",
            "1:joint_width_width_exceed_the: at least 1 in",
        ),
        (
            "Depth is increased by 20 mm.",
            "1:packing_difference_increased_by: nominal 20 mm",
        ),
        (
            "Depth 1 in. deeper.",
            "1:packing_depth_deeper: nominal 1 in",
        ),
    ] {
        check(&format!("1. PACKING - {text}\n"), &[expected]);
    }
}

#[test]
fn so_much_for_each_measure_is_no_size() {
    for (text, expected) in [
        (
            "Depth min 1/2 in. per inch of joint width.",
            "1:sealant_depth_per_inch_of: at least 1/2 in",
        ),
        (
            "Depth min 1 in. (25 mm) per hour of rating.",
            "1:sealant_depth_per_hour_of: at least 1 in",
        ),
        (
            "Sealant 1/4 in. deep for every inch of width.",
            "1:sealant_depth_deep_for_every: nominal 1/4 in",
        ),
        (
            "For each hour of rating provide min 1 in. of depth.",
            "1:sealant_depth_for_each_hour: at least 1 in",
        ),
        (
            "Depth 1 mm/mm of joint width.",
            "1:sealant_depth_mm_of_joint: nominal 1 mm",
        ),
    ] {
        let clauses = clauses(&format!("1. SEALANT - {text}\n"));
        assert_eq!(
            clauses.first().map(String::as_str),
            Some(expected),
            "{text}"
        );
    }
    // The measure that it goes with is no size, either.
    let clauses = clauses("1. SEALANT - Depth of 6 mm for every 12 mm of width.\n");
    assert!(
        !clauses.iter().any(|clause| clause.starts_with("sealant.")),
        "{clauses:?}"
    );
}

#[test]
fn what_is_a_difference_by_itself_keeps_its_name() {
    check(
        "1. PACKING - Strips cut 25 percent wider than the joint.\n",
        &["packing.oversize: nominal 25 percent"],
    );
    check(
        "1. SEALANT - Depth min 1/2 times the joint width.\n",
        &["sealant.depth: at least 1/2 times joint width"],
    );
}

#[test]
fn a_size_beside_a_comparison_is_a_size() {
    for (text, expected) in [
        ("Depth 4 in. or deeper.", "packing.depth: at least 4 in"),
        ("Depth 4 in. or more.", "packing.depth: at least 4 in"),
        (
            "Strip min 4 in. wide, wider strips are cut.",
            "packing.width: at least 4 in",
        ),
        (
            "Packing min 2 in. deep, more than the plate is.",
            "packing.depth: at least 2 in",
        ),
        (
            "Packing oversized in width so as to be compressed by 25 percent.",
            "packing.compression: nominal 25 percent",
        ),
        ("Depth min 1 in. per side.", "packing.depth: at least 1 in"),
    ] {
        check(&format!("1. PACKING - {text}\n"), &[expected]);
    }
    check(
        "1. CLIPS - Clips with 1 in. upper legs and 2 in. lower legs.\n",
        &[
            "clip.leg_length: nominal 1 in",
            "clip.leg_length: nominal 2 in",
        ],
    );
}
