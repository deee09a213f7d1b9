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

#[test]
fn the_mark_of_a_note_behind_a_unit_hides_no_number() {
    check(
        "1. PACKING - Density 4 pcf² min, depth 4 in.¹ min, compressed min 25 %⁽¹⁾.\n",
        &[
            "packing.density: at least 4 pcf",
            "packing.depth: at least 4 in",
            "packing.compression: at least 25 percent",
        ],
    );
    check(
        "1. STUDS - 25 MSG² min. Cure 24 hr¹ min.\n",
        &[
            "stud.gauge: at least 25 gauge",
            "1:stud_cure_min: at least 24 hr",
        ],
    );
    // A square or a cube behind a length is another unit, or a note: nobody can say.
    for (text, number) in [
        ("4 in.²", "4"),
        ("4 inches²", "4"),
        ("3 ft³", "3"),
        ("5¹ in.", "5"),
        ("6—mm", "6"),
    ] {
        let text = format!("1. PACKING - Depth min {text} here.\n");
        check(&text, &[]);
        assert_eq!(unread(&text), [number], "{text}");
    }
}

#[test]
fn a_number_in_other_characters_is_read_as_what_it_means() {
    for depth in [
        "１００ mm",
        "1\u{ad}00 mm",
        "100\u{a0}mm",
        "100\u{2009}mm",
        "100\u{202f}mm",
        "100\u{200b} mm",
        "100 m\u{ad}m",
    ] {
        check(
            &format!("1. PACKING - Depth min {depth}.\n"),
            &["packing.depth: at least 100 mm"],
        );
    }
    for recess in ["³⁄₈ in.", "3⁄8 in.", "3/8in.", "⅜in.", "⅜″"] {
        check(
            &format!("1. PACKING - Recess max {recess}\n"),
            &["packing.recess: at most 3/8 in"],
        );
    }
    check(
        "1. PACKING - Depth min 1 ³⁄₈ in.\n2. COATING - Wet thickness min 0·5 mm.\n",
        &[
            "packing.depth: at least 11/8 in",
            "coating.wet_thickness: at least 1/2 mm",
        ],
    );
}

#[test]
fn a_number_that_nothing_holds_is_shown_in_whatever_characters() {
    for number in [
        "40 mm¹",
        "４０ mm",
        "4\u{ad}0 mm",
        "½ in.",
        "³⁄₈ in.",
        "40 mm¶",
        "40\u{202f}mm",
        "40 mm®",
        "40 mm”",
    ] {
        let text = format!("1. CLIPS - Supplied where the joint is wider than {number} here.\n");
        let shown = unread(&text);
        assert_eq!(shown.len(), 1, "{text}");
        assert!(
            number.starts_with(shown.concat().as_str()),
            "{text}: {shown:?}"
        );
    }
    for glued in ["approx.6 mm", "min.6 mm", "①6 mm", "¹6 mm"] {
        assert_eq!(
            unread(&format!("1. COATING - {glued} thick.\n")),
            ["6 mm"],
            "{glued}"
        );
    }
}

#[test]
fn a_limit_without_a_unit_is_shown() {
    let usual = "1. GENERAL - All dimensions are in millimetres.\n2. SLAB - With slabs thicker than 250 the packing of the table may stay as it is.\n";
    assert_eq!(unread(usual), ["250"]);
    // A number that counts is none.
    assert!(
        unread(
            "1. GENERAL - All dimensions are in millimetres.\n2. SLAB - As sheet 4 shows, of class 2.\n"
        )
        .is_empty()
    );
}

#[test]
fn no_number_of_a_date_measures_anything() {
    check(
        "1. CLIPS - No. 16 MSG steel.\n\nForm J4 rev 2     2018-11-30     ga = MSG\n",
        &["clip.gauge: nominal 16 gauge"],
    );
}

#[test]
fn a_number_of_a_unit_that_the_notation_does_not_know_is_shown() {
    for (words, number) in [
        ("Torque 25 N·m.", "25 N"),
        ("Each anchor carries 2.5 kN.", "2.5 kN"),
        ("Coverage 1.5 L/m of joint.", "1.5"),
        ("The slab falls 3 mm/m.", "3"),
    ] {
        let text = format!("1. FLOOR - {words}\n");
        assert_eq!(common::unread(&text), [number], "{text}");
    }
}
