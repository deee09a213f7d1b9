//! Classes and layers that say for which joints a number is: EI classes (EN 13501-2), fire resistance levels (AS 1530.4), how many layers of board a wall has. The wordings
//! are invented; what they mean is common practice.

mod common;

use common::{check, clauses};

#[test]
fn a_band_of_classes_is_a_case_and_the_rest_is_what_lies_above_it() {
    check(
        "1. Wall - Minimum thickness 100 mm for classifications up to EI 120 and 150 mm above that.\n",
        &[
            "wall.thickness: at least 100 mm if joint.rating <= 120 min",
            "wall.thickness: at least 150 mm if not (joint.rating <= 120 min)",
        ],
    );
    check(
        "1. Wall - Minimum thickness 100 mm. Above EI 120, 150 mm.\n",
        &[
            "wall.thickness: at least 100 mm",
            "wall.thickness: at least 150 mm if joint.rating > 120 min",
        ],
    );
}

#[test]
fn what_a_seal_is_suitable_for_is_no_case() {
    let found = clauses("1. Wall - Suitable for classes up to EI 120, min 100 mm thick.\n");
    assert!(
        found
            .iter()
            .all(|clause| !clause.contains(" if joint.rating")),
        "{found:?}"
    );
}

#[test]
fn levels_up_to_one_are_a_case_for_a_person() {
    check(
        "1. Packing - Min depth 100 mm for FRLs up to -/90/90, otherwise 120 mm.\n",
        &[
            "packing.depth: at least 100 mm if \"for FRLs up to -/90/90\"",
            "packing.depth: at least 120 mm if \"otherwise\"",
        ],
    );
}

#[test]
fn layers_by_their_number_alone_are_cases_where_others_are_named_so_too() {
    check(
        "1. Packing - Min 1 in. thick (one layer), min 2 in. thick (two layers).\n",
        &[
            "packing.thickness: at least 1 in if \"one layer\"",
            "packing.thickness: at least 2 in if \"two layers\"",
        ],
    );
    check(
        "1. Sealant - Overlap on board: min 1/2 in. with one layer and min 1 in. with two or more layers.\n",
        &[
            "sealant.overlap: at least 1/2 in if \"with one layer\"",
            "sealant.overlap: at least 1 in if \"with two or more layers\"",
        ],
    );
}

#[test]
fn layers_that_are_asked_for_are_no_cases() {
    for item in [
        "1. Wall - Faced with one layer min 5/8 in. board and with two layers min 1/2 in. board.\n",
        "1. Board - Two layers: 5/8 in. thick.\n",
        "1. Board - Min 5/8 in. board (one layer) and min 1/2 in. board (two layers).\n",
    ] {
        let found = clauses(item);
        assert!(
            found.iter().any(|clause| clause.contains("exactly")),
            "{item} {found:?}"
        );
        assert!(
            found.iter().all(|clause| !clause.contains(" if ")),
            "{item} {found:?}"
        );
    }
}

#[test]
fn a_class_that_may_not_be_exceeded_is_the_most() {
    for said in [
        "The class is limited to EI 60.",
        "Class at most EI 60.",
        "The class shall not exceed EI 60.",
    ] {
        let found = clauses(&format!("1. Sealant - Min 10 mm deep. {said}\n"));
        assert!(
            found
                .iter()
                .any(|clause| clause.ends_with(": at most 60 min")),
            "{said} {found:?}"
        );
    }
    check(
        "1. Sealant - FRL not to exceed -/90/90.\n",
        &[
            "joint.integrity: at most 90 min",
            "joint.rating: at most 90 min",
        ],
    );
    check("1. Sealant - Not for FRL -/120/120.\n", &[]);
}

#[test]
fn a_class_or_what_lies_beyond_it_is_a_case_and_turns_no_limit() {
    check(
        "1. Clips - Spacing max 600 mm for EI 60 or higher. Legs min 50 mm for EI 60 or lower.\n",
        &[
            "clip.spacing: at most 600 mm if joint.rating >= 60 min",
            "clip.leg_length: at least 50 mm if joint.rating <= 60 min",
        ],
    );
    check(
        "1. Packing - Depth min 80 mm for -/60/60 or lower and min 120 mm for -/90/90 to -/180/180.\n",
        &[
            "packing.depth: at least 80 mm if \"for -/60/60 or lower\"",
            "packing.depth: at least 120 mm if \"for -/90/90 to -/180/180\"",
        ],
    );
    check(
        "1. Packing - With three layers or more, min 3 in. deep; with two layers, min 2 in. deep.\n",
        &[
            "packing.depth: at least 3 in if \"With three layers or more\"",
            "packing.depth: at least 2 in if \"with two layers\"",
        ],
    );
}

#[test]
fn two_bands_of_classes_in_brackets() {
    check(
        "1. Packing - Depth 100 mm (EI 60 or lower), 150 mm (EI 90 or higher).\n",
        &[
            "packing.depth: nominal 100 mm if joint.rating <= 60 min",
            "packing.depth: nominal 150 mm if joint.rating >= 90 min",
        ],
    );
}

#[test]
fn a_class_behind_a_number_is_its_case_whatever_stands_before_the_number() {
    check(
        "1. Sealant - Joints up to 25 mm: depth 10 mm for EI 60, 15 mm for EI 120.\n",
        &[
            "sealant.depth: nominal 10 mm if joint.width <= 25 mm and joint.rating = 60 min",
            "sealant.depth: nominal 15 mm if joint.width <= 25 mm and joint.rating = 120 min",
        ],
    );
    // What the joint is classified for is what it is, with a number before it or not.
    let found = clauses("1. Wall - Suitable with 15 mm of sealant, tested for EI 120.\n");
    assert!(
        found
            .iter()
            .all(|clause| !clause.contains("if joint.rating")),
        "{found:?}"
    );
}
