//! Items that stand in the place of another by "or" or by their label, parts that a heading names, and what is said of one of several things by its label.
//! The wordings are invented; what they mean is common practice.

mod common;

use common::check;
use listing::read_text;

/// The groups of options that a text has: the base, and the choices.
#[track_caller]
fn groups(text: &str, expected: &[(Option<&str>, &[&str])]) {
    let reading = read_text("sample", text);
    let found: Vec<_> = reading
        .options
        .iter()
        .map(|group| {
            let choices: Vec<&str> = group.choices.iter().map(String::as_str).collect();
            (group.base_item.as_deref(), choices)
        })
        .collect();
    let expected: Vec<_> = expected
        .iter()
        .map(|(base, choices)| (*base, choices.to_vec()))
        .collect();
    assert_eq!(found, expected, "{text}");
}

#[test]
fn an_item_that_begins_with_or_stands_in_the_place_of_the_one_before() {
    groups(
        "A. FLOOR\n  A1. Concrete, min 120 mm thick.\n  A2. Or: steel sheet, min 0.75 mm thick.\n  A3. Or, timber, min 200 mm thick.\n",
        &[(Some("A1"), &["A1", "A2", "A3"])],
    );
    groups(
        "A. WALL\n  a) Board, min 16 mm thick.\n  b) Studs, min 64 mm deep.\n  c) Or: posts, min 90 mm deep.\n",
        &[(Some("Ab"), &["Ab", "Ac"])],
    );
}

#[test]
fn what_or_confines_or_leads_through_a_list_is_for_a_person() {
    for text in [
        "A. PLATE\n  A1. Track, min 0.7 mm thick.\n  A2. Or, for 1 hr walls, wood min 38 mm thick.\n",
        "A. PLATE\n  A1. Track, min 0.7 mm thick.\n  A2. Or equal: min 38 mm thick.\n",
        "A. WALL\n  a) board, min 16 mm thick;\n  b) block, min 90 mm thick;\n  c) or: concrete, min 90 mm thick.\n",
        "A. WALL\n  a) Clips (optional), max 600 mm apart.\n  b) Or: pins, max 300 mm apart.\n",
    ] {
        let reading = read_text("sample", text);
        let replaced = reading
            .options
            .iter()
            .any(|group| group.base_item.is_some());
        assert!(!replaced, "{text}");
    }
}

#[test]
fn an_alternate_by_its_label_stands_in_the_place_of_the_item_around() {
    groups(
        "1. JOINT\n  A. WIDTH. Max 1 in.\n  B. SPRAY SEAL. Min 1/8 in. thick.\n    B1. ALTERNATE - CAULK. Min 5/8 in. deep.\n",
        &[(Some("1B"), &["1B", "1B1"])],
    );
    // What comes second is an alternate to one that isn't told.
    groups(
        "1. JOINT\n  A. SPRAY SEAL. Min 1/8 in. thick.\n    A1. PRIMER. Max 5 mil thick.\n    A2. ALTERNATE: CAULK. Min 5/8 in. deep.\n",
        &[(Some("1A1"), &["1A1", "1A2"])],
    );
}

#[test]
fn a_variant_that_names_what_it_is_in_the_place_of() {
    groups(
        "C. SEAL\n  C1. Wool, min 60 kg/m3.\n  C2. Sealant, min 12 mm deep.\n  C3. Variant: preformed strip in place of C1 and C2. Max 20 mm wide.\n",
        &[(Some("C1"), &["C1", "C3"])],
    );
}

#[test]
fn parts_that_a_heading_names_are_its_choices() {
    groups(
        "1  WALLS\n   Min 4 in. thick.\n\n2  FACE SEAL (one of 2A, 2B)\n\n   2A Sealant, both faces\n      Depth      1/4 in. min.\n\n   2B Spray, both faces\n      Overlap    1 in. min.\n",
        &[(None, &["2A", "2B"])],
    );
    // A line that only looks like such a part.
    groups(
        "1  WALLS\n   Min 4 in. thick.\n\n2  FACE SEAL\n\n   2A Sealant, both faces\n      Depth      1/4 in. min.\n",
        &[],
    );
}

#[test]
fn letters_within_roman_numerals() {
    check(
        "I.   FLOOR\n     A.  SLAB. CONCRETE, MIN 5 IN. THICK.\n     B.  STUDS. MAX 24 IN. OC.\nII.  JOINT\n     A.  WIDTH. MAX 1 IN.\n     B.  SEALANT. MIN 1/2 IN. DEEP.\n         B1.  ALTERNATE - CAULK. MIN 5/8 IN. DEEP.\n",
        &[
            "concrete.thickness: at least 5 in",
            "stud.spacing: at most 24 in",
            "joint.width: at most 1 in",
            "sealant.depth: at least 1/2 in",
            "sealant.depth: at least 5/8 in in IIB1",
        ],
    );
}

#[test]
fn what_is_said_of_one_of_several_by_its_label() {
    let floors = "A. FLOOR OVER\n  A1. Concrete, min 120 mm thick.\n  A2. Or: steel sheet, min 0.75 mm thick.\n";
    let under = |said: &str| {
        let text = format!("{floors}B. WALL\n  B1. Studs max 600 mm apart. {said}\n");
        let reading = read_text("sample", &text);
        let last = reading.clauses.last().cloned();
        last.and_then(|clause| clause.condition)
            .map(|condition| condition.words)
    };
    let held = |said: &str, words: &str| assert_eq!(under(said).as_deref(), Some(words), "{said}");
    held("Under floor A2 anchors max 200 mm apart.", "Under floor A2");
    held("With floor A1, anchors max 200 mm apart.", "With floor A1");
    for said in [
        // The noun is none of its own.
        "With class A2 board the gap is max 12 mm.",
        // It is built in every joint.
        "With studs B1 the gap is max 12 mm.",
        // It speaks of the others as well.
        "Under floor A2 anchors are 300 mm apart, otherwise max 200 mm apart.",
        // What comes behind may be a sentence of its own.
        "UNDER FLOOR A2 2 ANCHORS MAX. OFFSET MAX 6 MM.",
    ] {
        assert_eq!(under(said), None, "{said}");
    }
}

#[test]
fn an_item_that_brackets_confine_to_one_of_several() {
    check(
        "A. FLOOR OVER\n  A1. Concrete, min 120 mm thick.\n  A2. Or: steel sheet, rib height max 60 mm.\nB. SEAL\n  B1. Ribs (floor A2 only): sealant min 5 mm deep.\n  B2. Sealant, min 12 mm deep.\n",
        &[
            "concrete.thickness: at least 120 mm",
            "A2:rib_height: at most 60 mm in A2",
            "sealant.depth: at least 5 mm if \"floor A2 only\"",
            "sealant.depth: at least 12 mm",
        ],
    );
}

#[test]
fn a_heading_that_names_the_option_of_a_thing() {
    check(
        "1. TRACK\n   Max 16 in. o.c.\n\nFLUTED DECK - OPTION P (PLUGS)\n  Plugs are min 6 in. long.\n\nFLUTED DECK - OPTION S (SPRAY)\n  Wool compressed at least 33%.\n",
        &[
            "1:runner_spacing: at most 16 in",
            "packing.length: at least 6 in if \"OPTION P\"",
            "packing.compression: at least 33 percent if \"OPTION S\"",
        ],
    );
}
