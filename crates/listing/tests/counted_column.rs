//! Bare numbers that count the items in a column, line under line. The wordings are invented; what they mean is common practice.

use listing::{Reading, read_text};

fn read(text: &str) -> Reading {
    read_text("sample", text)
}

fn paths(reading: &Reading) -> Vec<&str> {
    reading
        .items
        .iter()
        .map(|item| item.path.as_str())
        .collect()
}

#[test]
fn numbers_under_each_other_are_items_whatever_the_notes_are_numbered_by() {
    let text = "JOINT SYSTEM 25\n1   Wall           min 175 mm concrete\n2   Floor          min 150 mm concrete\n3   Joint          max 60 mm wide\n3.1 Infill         stone wool, min 60 kg/m³, min 100 mm deep\n4   Clips          max 600 mm\nNotes\n1. Only dry wool may be used.\n";
    let reading = read(text);
    assert_eq!(paths(&reading), ["1", "2", "3", "3.1", "4"]);
    let depth = reading
        .clauses
        .iter()
        .find(|clause| clause.property == "packing.depth");
    assert_eq!(depth.map(|clause| clause.item.as_str()), Some("3.1"));
}

#[test]
fn a_key_to_a_figure_and_a_text_with_numbers_are_no_items() {
    let key = "FIGURE\n1   Wall\n2   Floor\n3   Joint\n\n1. WALL - Min 175 mm thick.\n2. FLOOR - Min 150 mm thick.\n";
    assert_eq!(paths(&read(key)), ["1", "2"]);
    assert_eq!(read(key).clauses.len(), 2);
    let numbered = "FIGURE\n1   Wall 1\n2   Floor 2\n3   Joint 3\n\n1. WALL - Min 175 mm thick.\n2. FLOOR - Min 150 mm thick.\n";
    let reading = read(numbered);
    let wall = reading
        .clauses
        .iter()
        .find(|clause| clause.words.contains("175 mm"));
    assert_eq!(
        wall.map(|clause| clause.property.as_str()),
        Some("wall.thickness")
    );
}
