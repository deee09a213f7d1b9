//! Words that offer something which can't be placed among the options: all of it stays required, and a person is told. The wordings are invented; what they
//! mean is common practice.

mod common;

use common::{check, clauses};
use listing::{WarningKind, read_text};

/// The words that a reading shows as offering what it couldn't place.
fn unplaced(text: &str) -> Vec<String> {
    let warnings = read_text("sample", text).warnings.into_iter();
    warnings
        .filter(|warning| warning.kind == WarningKind::OptionNotPlaced)
        .map(|warning| warning.words)
        .collect()
}

/// Whether words are shown as offering something, and no clause is of an option.
#[track_caller]
fn is_told(text: &str, words: &str) {
    let text = format!("1. FLOOR - Min 5 in. thick.\n2. WALL - Min 6 in. thick.\n{text}");
    assert_eq!(unplaced(&text), [words], "{text}");
    let all = clauses(&text);
    assert!(
        all.iter()
            .all(|clause| !clause.contains(" in 3") && !clause.contains(" if ")),
        "{all:#?}"
    );
}

#[test]
fn what_is_offered_farther_on_in_an_item_is_told() {
    is_told(
        "3. ADHESIVE - Max 1/16 in. thick (optional).\n",
        "(optional)",
    );
    is_told(
        "3. PARTS\n   - Clips (optional): spacing max 24 in.\n   - Wool: min 4 pcf\n",
        "(optional)",
    );
    is_told(
        "3. PACKING - Min 4 pcf.\n   OR\n   Foam, min 2 pcf.\n",
        "OR",
    );
    is_told(
        "3. COVER - Any one of the following may be used:\n   - aluminum plate min 1/8 in. thick\n   - steel plate min 1/16 in. thick\n",
        "Any one of the following",
    );
    is_told(
        "3. JOINT - Consists of Item A or Item B:\n   A. Sealant, depth min 1 in.\n   B. Seal, depth min 3 in.\n",
        "Consists of Item A or Item B:",
    );
    is_told(
        "3. BLOCK - Min 4 in. thick.\n   (Alternate) Min 8 in. thick.\n",
        "(Alternate)",
    );
}

#[test]
fn what_is_placed_is_not_told() {
    for text in [
        "1. FLOOR - Min 5 in. thick.\n2. CLIPS (Optional) - Spacing max 24 in.\n",
        "1. FLOOR - Min 5 in. thick.\n2. WALL - One of the following:\n   A. Concrete, min 5 in. thick.\n   B. Block, min 8 in. thick.\n",
    ] {
        assert!(unplaced(text).is_empty(), "{text}");
    }
}

#[test]
fn what_an_alternate_may_be_used_for_is_a_clause_of_it() {
    let text = "1. FLOOR - Min 5 in. thick.\n2A. FILL - Sealant min 5/8 in. deep.\n2B. FILL - As an alternate to Item 2A, foam min 2 in. deep may be used for walls of max 2 hr rating. Density min 2 pcf.\n";
    let confined = read_text("sample", text).clauses.into_iter().any(|clause| {
        clause.option.as_deref() == Some("2B")
            && clause.condition.is_none()
            && clause.words == "for walls of max 2 hr rating"
    });
    assert!(confined);
}

#[test]
fn what_is_required_in_some_joints_is_no_option() {
    check(
        "1. JOINT - Width max 80 mm.\n2. (Optional) Pins, min 3 mm dia. Pins are required for joints over 50 mm.\n",
        &[
            "joint.width: at most 80 mm",
            "fastener.diameter: at least 3 mm if \"Pins are required for joints over 50 mm\"",
        ],
    );
}
