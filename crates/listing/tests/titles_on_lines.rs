//! Titles that nothing ends but their line, and lines that only look like one. The wordings are invented; their meaning is common practice.

mod common;

use common::clauses;

/// A text around items, with one line as wide as they come.
fn document(items: &str) -> String {
    format!(
        "The joint shall be built as described in the items below and as shown in the drawing beside them.\n\n{items}"
    )
}

#[track_caller]
fn reads(items: &str, expected: &str) {
    let found = clauses(&document(items));
    assert!(
        found.iter().any(|clause| clause == expected),
        "{items} {found:?}"
    );
}

fn titles(items: &str) -> Vec<String> {
    let reading = listing::read_text("sample", &document(items));
    reading.items.into_iter().map(|item| item.title).collect()
}

#[test]
fn a_line_that_is_a_name_is_the_title() {
    let items = "1. Packing\n   Depth min 4 in.\n2. Support clips\n   For joints over 3 in. wide. 18 ga, max 24 in. o.c.\n";
    assert_eq!(titles(items), ["Packing", "Support clips"]);
    reads(items, "packing.depth: at least 4 in");
    reads(
        items,
        "clip.spacing: at most 24 in if \"For joints over 3 in. wide\"",
    );
}

#[test]
fn the_bands_below_it_are_about_what_it_names() {
    let items = "1. Packing\n     In joints up to 2 in. wide: min 4 pcf.\n     In joints over 2 in. wide: min 6 pcf.\n";
    reads(
        items,
        "packing.density: at least 4 pcf if joint.width <= 2 in.",
    );
    reads(
        items,
        "packing.density: at least 6 pcf if joint.width > 2 in.",
    );
}

#[test]
fn what_it_says_of_the_material_stays_text() {
    let items = "1. Mineral wool\n   Density min 4 pcf.\n";
    assert_eq!(titles(items), ["Mineral wool"]);
    reads(items, "packing.density: at least 4 pcf");
    reads(items, "packing.material: one of Mineral wool");
}

#[test]
fn a_sentence_that_only_its_width_breaks_has_no_title() {
    for items in [
        // The next word begins small, or says that the line was full, or the words are not complete.
        "1. Galvanized steel\n   clips 18 ga, max 24 in. o.c.\n",
        "1. Clips of\n   Galvanized steel, 18 ga, max 24 in. o.c.\n",
        "1. Clips (steel,\n   Galvanized), 18 ga, max 24 in. o.c.\n",
        "1. Packing\nDepth min 4 in.\n",
    ] {
        assert_eq!(titles(items), [""], "{items}");
    }
    let full = "1. Clips\n   Galvanized, 18 ga.\n";
    let reading = listing::read_text("sample", full);
    let titles: Vec<&str> = reading
        .items
        .iter()
        .map(|item| item.title.as_str())
        .collect();
    assert_eq!(titles, ["Clips"], "the line below is wider");
    let full = "1. Support clips of steel\n   Galvanizedandthreadedrods, 18 ga.\n";
    let reading = listing::read_text("sample", full);
    let titles: Vec<&str> = reading
        .items
        .iter()
        .map(|item| item.title.as_str())
        .collect();
    assert_eq!(titles, [""], "the next word had no room");
}
