//! Numbers that nothing holds: they are shown, wherever they stand.

mod common;

use common::{check, unread};

#[test]
fn a_number_that_no_clause_holds_is_shown() {
    assert_eq!(
        unread(
            "1. CLIPS - Supplied where the joint is wider than 75 mm.\n2. SEAL - Depth 12 mm (1/2 in.) min.\n"
        ),
        ["75 mm"]
    );
    // A second value, a tolerance in the other unit, a product's name and an item are held.
    assert!(
        unread(
            "1. STUDS - Cut 3/4 in. +/- 1/8 in. (19 +/- 3 mm) short, as Item 3C.\n2. PACKING - Depth 4 in. (102 mm) of \"Marlwool 4\".\n"
        )
        .is_empty()
    );
}

#[test]
fn a_limit_in_a_heading_that_nothing_holds_is_shown() {
    let table = "  Rating      Depth       Compression\n  hr          min in.     %\n  1           3           20 min\n  2           4           25-33\n";
    assert_eq!(
        unread(&format!(
            "1. FLOOR - Slab 5 in. thick min.\n\nTABLE 2   PACKING (joints not more than 2 in.)\n\n{table}"
        )),
        ["2 in."]
    );
    assert_eq!(
        unread(&format!(
            "1. FLOOR - Slab 5 in. thick min.\n\nTABLE 2   PACKING OF 2 IN. JOINTS\n\n{table}"
        )),
        [""; 0]
    );
}

#[test]
fn a_stroke_between_two_numbers_makes_no_fraction() {
    assert_eq!(
        unread("1. PACKING - Depth min 50/75 mm (wall/floor).\n"),
        ["50/75 mm"]
    );
    check(
        "1. PACKING - Depth min 3/4 in. or more.\n",
        &["packing.depth: at least 3/4 in"],
    );
}

/// A condition of the paragraph and one of the sentence hold for a clause together: a number of either is read.
#[test]
fn a_condition_in_two_places_holds_the_numbers_of_both() {
    let text = "System No. HW-D-1\n\n1. Floor - Min 4 in. thick concrete.\n\n2. Fill - One of the following:\n\n   \
        Option A - Packing and Spray\n\n       1. Packing - Mineral wool, min 4 pcf, compressed min 25% for joints up to 1 in. (25 mm) wide.\n\n   \
        Option B - Sealant\n\n       1. Sealant - Min 5/8 in. deep. Where the joint is over 1 in. (25 mm) wide, min 3/4 in. deep.\n";
    let reading = listing::read_text("sample", text);
    assert_eq!(reading.warnings, Vec::new());
    let mut spans = reading.clauses.iter().filter_map(|clause| {
        let condition = clause.condition.as_ref()?;
        let words: Vec<&str> = condition.spans().map(|span| span.of(text)).collect();
        (words.len() > 1).then_some(words)
    });
    assert_eq!(
        spans.next(),
        Some(vec!["Option A", "for joints up to 1 in. (25 mm) wide"])
    );
    assert_eq!(
        spans.next(),
        Some(vec![
            "Option B",
            "Where the joint is over 1 in. (25 mm) wide"
        ])
    );
}
