//! A denial that has its limit reaches no further; how far something may go, and the limit of a sum.

mod common;

use common::{check_item, clauses};

#[test]
fn in_no_case_denies_its_own_limit_alone() {
    check_item(
        "Coating - Not less than its original thickness, and in no case under 3/4 in. thick, within 48 hours.",
        &[
            "2:coating_thickness: at least 3/4 in",
            "2:coating_duration: at most 48 hr",
        ],
    );
    check_item(
        "Clips - In no case within 3 in. of an edge.",
        &["2:clip_in_no_case_of: at least 3 in"],
    );
}

#[test]
fn the_limit_of_a_sum() {
    let read = clauses("1. Floor - Concrete.\n\n2. Blocks - Length ≥ wall thickness + 20 mm.\n");
    assert!(
        read.iter().any(|clause| clause.contains("at least 20 mm")),
        "{read:?}"
    );
}

#[test]
fn an_item_that_is_fitted_in_some_joints() {
    let text = "1. Floor - 150 mm thick.\n\n2. Joint - 100 mm wide. Where the joint is wider than 60 mm the clips of section 3.2 are fitted.\n\n\
                3. Seal\n\n3.1 Packing - 100 mm deep.\n\n3.2 Retaining clips - 25 mm wide.\n";
    let read = clauses(text);
    let of_clips = read.iter().find(|clause| clause.starts_with("clip.width"));
    assert!(
        of_clips.is_some_and(|clause| clause.contains("wider than 60 mm")),
        "{read:?}"
    );
}

#[test]
fn gaps_that_are_filled_are_not_the_joint() {
    let read = clauses(
        "1. Joint - Max 2 in. wide.\n\n2. Sealant - Max 1 in. wide gaps filled with sealant.\n",
    );
    let widths = read
        .iter()
        .filter(|clause| clause.starts_with("joint.width"));
    assert_eq!(widths.count(), 1, "{read:?}");
}
