//! Items that are asked for in some joints only.

mod common;

use common::cases::{check, check_cases};

/// Whether each bound of an item stands under a condition.
fn conditioned(text: &str, item: &str) -> Vec<bool> {
    let reading = listing::read_text("conditions.txt", text);
    let bounds = reading
        .clauses
        .into_iter()
        .filter(|clause| clause.item == item && clause.bound().is_some());
    bounds.map(|clause| clause.condition.is_some()).collect()
}

#[test]
fn an_item_that_is_asked_for_elsewhere_in_wide_joints_only_stands_under_them() {
    let text = |said: &str| {
        format!(
            "1. Packing - Min 4 pcf. {said}\n\n2. Steel Clips - Min 2 in. wide.\n\n3. Sealant - Min 1/2 in. deep.\n"
        )
    };
    let asks = text("Joints wider than 6 in. require the clips of Item 2.");
    assert_eq!(conditioned(&asks, "2"), [true]);
    assert_eq!(conditioned(&asks, "3"), [false]);
    // What every joint has is in the narrow ones, too.
    let asks = text("Joints wider than 6 in. require the sealant of Item 3.");
    assert_eq!(conditioned(&asks, "3"), [false]);
    for said in [
        "Joints wider than 6 in. do not require the clips of Item 2.",
        "Joints require the clips of Item 2.",
        "Joints up to 6 in. require the clips of Item 2 or Item 3.",
    ] {
        assert_eq!(conditioned(&text(said), "2"), [false], "{said}");
    }
}

#[test]
fn an_item_required_on_one_side_in_wide_joints_stands_under_them() {
    let text = |said: &str| {
        format!("1. Steel Angle - (Not Shown) - Required on one side {said}. Min 22 ga.\n")
    };
    assert_eq!(
        conditioned(
            &text("of the wall for joints wider than 2 in. in 3 Hr walls"),
            "1"
        ),
        [true]
    );
    assert_eq!(conditioned(&text("of the wall"), "1"), [false]);
}

#[test]
fn what_is_required_on_some_grounds_only_is_asked_of_them() {
    check(
        "Primer. Required on block and on cut concrete: one coat of at least 80 g/m2.",
        &[("1", true), ("80 g/m²", true)],
    );
    check(
        "Primer. Required on each face: one coat of at least 80 g/m2.",
        &[("1", false), ("80 g/m²", false)],
    );
}

#[test]
fn a_clause_cited_by_its_number_is_asked_for_where_the_citing_one_says() {
    let text = |more: &str| {
        format!(
            "1 CONSTRUCTION\n1.1 Floor. Min 125 mm thick.\n\n2 JOINT\n2.1 Width 25 mm to 200 mm. Where the joint exceeds 125 mm provide the supports of 3.2.{more}\n\n3 MATERIALS\n3.1 Packing. Min 100 mm deep.\n3.2 Supports. Steel brackets min 1.2 mm thick.\n"
        )
    };
    assert_eq!(conditioned(&text(""), "3.2"), [true]);
    assert_eq!(conditioned(&text(""), "3.1"), [false]);
    // What another sentence speaks of as well may be there in every joint.
    assert_eq!(
        conditioned(&text(" The supports of 3.2 are galvanized."), "3.2"),
        [false]
    );
}

#[test]
fn what_may_be_left_out_in_a_case_is_asked_for_in_the_others() {
    for text in [
        "Packing min 4 in. deep may be omitted where the joint is narrower than 1 in.",
        "Packing min 4 in. deep is optional where the joint is narrower than 1 in.",
        "Packing min 4 in. deep may be left out in joints under 1 in. wide.",
        "Packing min 4 in. deep can be dispensed with in joints under 1 in. wide.",
        "Min 4 in. deep (not required where the joint is narrower than 1 in.).",
    ] {
        check_cases(text, &[("4 in.", "not (joint.width < 1 in.)")]);
    }
}

#[test]
fn a_first_sentence_may_only_say_in_which_joints() {
    let text = "1. Floor - Min 5 in. thick.\n\n2. Wall - Min 6 in. thick.\n\n3. Retaining pins. Joints of 80 mm or more in walls higher than 4 m only. Pins 150 mm long.\n";
    let own = conditioned(text, "3");
    assert!(!own.is_empty() && own.iter().all(|own| *own));
    assert_eq!(conditioned(text, "2"), [false]);
    // Where a thing may be used excuses nobody who uses it elsewhere.
    let text = "1. Floor - Min 5 in. thick.\n\n2. Foam (Trade F; joints up to 50 mm only) - Strips 150 mm long.\n";
    assert_eq!(conditioned(text, "2").last(), Some(&false));
}
