//! Lists in an item whose lines open with the joints or the rating that they are for. What is asked for under one case must not be excused by another. The
//! wordings are invented; what they mean is common practice.

mod common;

use common::{check, clauses};

fn item(lines: &str) -> Vec<String> {
    let width =
        "The joint shall be built as described in the items below and as shown in the drawing.";
    clauses(&format!(
        "{width}\n\n1. Packing. Mineral wool batts.\n{lines}"
    ))
}

/// Whether both of two densities stand under their own condition.
#[track_caller]
fn parts(cases: [&str; 2], expected: [&str; 2]) {
    let [first, second] = cases;
    let found = item(&format!("   {first}4 pcf min\n   {second}6 pcf min\n"));
    for (density, case) in [4, 6].into_iter().zip(expected) {
        let clause = format!("packing.density: at least {density} pcf if {case}");
        assert!(found.contains(&clause), "{clause} {found:?}");
    }
}

#[test]
fn ratings_part_the_lines_whatever_the_sign() {
    let expected = ["joint.rating = 1 hr", "joint.rating = 2 hr"];
    for cases in [
        ["1 hr - ", "2 hr - "],
        ["1 Hr.: ", "2 Hr.: "],
        ["1-hr walls   ", "2-hr walls   "],
        ["1 hr     ", "2 hr     "],
        ["1 Hr, ", "2 Hr, "],
        ["60 min    ", "120 min   "],
    ] {
        let expected = if cases[0].starts_with("60") {
            ["joint.rating = 60 min", "joint.rating = 120 min"]
        } else {
            expected
        };
        parts(cases, expected);
    }
}

#[test]
fn widths_part_the_lines_whatever_the_words() {
    for cases in [
        ["Joints to 2 in. wide: ", "Joints over 2 in.: "],
        ["Joints 2 in. or less: ", "Joints over 2 in.: "],
    ] {
        parts(cases, ["joint.width <= 2 in.", "joint.width > 2 in."]);
    }
    // Whose width it is, a person must say.
    parts(
        ["up to 2 in.   ", "over 2 in.    "],
        ["\"up to 2 in.\"", "\"over 2 in.\""],
    );
    parts(
        ["2 in. and under: ", "> 2 in.: "],
        ["\"2 in. and under\"", "\"> 2 in.\""],
    );
}

#[test]
fn a_value_is_of_what_leads_to_the_list() {
    let found = clauses("1. Packing. Min depth:\n   1 hr    3 in.\n   2 hr    4 in.\n");
    assert_eq!(
        found,
        [
            "packing.depth: at least 3 in if joint.rating = 1 hr",
            "packing.depth: at least 4 in if joint.rating = 2 hr",
        ]
    );
}

#[test]
fn what_stands_below_the_list_is_of_none_of_its_cases() {
    for below in [
        "   Compressed 25 % min.\n",
        "   both     compressed 25 % min\n",
        "   COMPRESSED 25 % MIN\n",
    ] {
        let found = item(&format!(
            "   1 hr     4 pcf min\n   2 hr     6 pcf min\n{below}"
        ));
        let always = found
            .iter()
            .any(|clause| clause.ends_with("at least 25 percent"));
        assert!(always, "{below} {found:?}");
    }
    // What goes on farther in is of its case.
    let found = item("   1 hr     4 pcf min,\n            3 in. deep\n   2 hr     6 pcf min\n");
    assert!(
        found.contains(&"packing.depth: nominal 3 in if joint.rating = 1 hr".to_owned()),
        "{found:?}"
    );
}

#[test]
fn what_is_no_list_of_cases() {
    // Hours of curing are times.
    for lines in [
        "   Curing:\n   1 hr: 50 percent\n   4 hr: 100 percent\n",
        "   1 hr   touch dry, 50 percent\n   4 hr   dry, 100 percent\n",
    ] {
        let found = item(lines);
        assert!(
            !found.iter().any(|clause| clause.contains("joint.rating")),
            "{lines} {found:?}"
        );
    }
    // Running text may break before a case.
    let found = item(
        "   The batts have a density that is given beside the hour of the walls that they stand in, namely\n   1 hr. Batts of 4 pcf lie below those for the walls of the shaft, whose hour is set by the owner, or\n   2 hr. Batts of 6 pcf.\n",
    );
    assert!(
        !found
            .iter()
            .any(|clause| clause.contains("4 pcf if") || clause.contains("6 pcf if")),
        "{found:?}"
    );
}

#[test]
fn dots_lead_from_a_rating_to_its_value() {
    let text = "1. Fireproofing. Of the thickness named in the design, in no case thinner than the following:\n     1 and 2 hr ....... 5/8 in.\n     3 hr ............. 1-1/8 in.\n";
    assert_eq!(
        clauses(text),
        [
            "fireproofing.thickness: at least 5/8 in if joint.rating = 1 hr or joint.rating = 2 hr",
            "fireproofing.thickness: at least 9/8 in if joint.rating = 3 hr",
        ]
    );
}

#[test]
fn a_rating_and_a_count_of_layers_are_one_case() {
    parts(
        [
            "F Rating 1 Hr, one layer     ",
            "F Rating 2 Hr, two layers    ",
        ],
        [
            "\"F Rating 1 Hr, one layer\"",
            "\"F Rating 2 Hr, two layers\"",
        ],
    );
}

#[test]
fn a_value_beside_its_rating_is_asked_for_that_rating() {
    check(
        "1. Floor - Concrete. Thickness at the joint:\n\n          4-1/2\" or greater      2 h rating\n          5-1/4\" or greater      3 h rating\n\n2. Packing - Min 4 in. deep.\n",
        &[
            "floor.thickness: at least 9/2 in if joint.rating = 2 hr",
            "floor.thickness: at least 21/4 in if joint.rating = 3 hr",
            "packing.depth: at least 4 in",
        ],
    );
    // Hours of curing are no rating, and a rating beside a rating is none of its values.
    for row in ["3 coats     2 h apart", "2 h rating     1 h T rating"] {
        let found = clauses(&format!(
            "1. Sealant - Min 1/2 in. deep.\n\n     {row}\n     {row} at least\n"
        ));
        assert!(
            found
                .iter()
                .all(|clause| !clause.contains(" if joint.rating = 2 hr")
                    || clause.contains("rating")),
            "{row} {found:?}"
        );
    }
}

#[test]
fn a_wait_beside_a_film_is_no_rating() {
    let found = clauses(
        "1. Coating - Wait between coats:\n\n     1/8 in. wet      2 hr\n     1/4 in. wet      4 hr\n\n2. Packing - Min 4 in. deep.\n",
    );
    assert!(
        found
            .iter()
            .all(|clause| !clause.contains("joint.rating =")),
        "{found:?}"
    );
}

#[test]
fn resistance_levels_part_the_lines_behind_a_dash() {
    let text = "W-1     Track. Flanges of at least 50 mm.\n\nW-2     Studs. 92 mm or deeper.\n\nW-3     Linings. Board -\n           FRL -/60/60    1 layer each face\n           FRL -/120/120  2 layers each face\n        Screws 300 mm apart.\n";
    let found = clauses(text);
    for clause in [
        "board.layers: exactly 1 count if \"FRL -/60/60\"",
        "board.layers: exactly 2 count if \"FRL -/120/120\"",
    ] {
        assert!(found.iter().any(|own| own == clause), "{clause} {found:?}");
    }
    let screws = found.iter().find(|own| own.contains("300 mm"));
    assert!(screws.is_some_and(|own| !own.contains(" if ")), "{found:?}");
}
