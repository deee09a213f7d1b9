//! Which lines are items: counts within counts, and numbers that only stand with letters.

use listing::read_text;

#[track_caller]
fn check(text: &str, expected: &[&str]) {
    let reading = read_text("sample", text);
    let items: Vec<&str> = reading
        .items
        .iter()
        .map(|item| item.path.as_str())
        .collect();
    assert_eq!(items, expected, "{text}");
}

#[test]
fn a_count_within_letters_within_a_count() {
    check(
        "1. FLOOR - Slab.\n\n2. JOINT - As follows:\n\n   A. PACKING - As follows:\n\n      1. Depth min 4 in.\n\n      2. Density min 4 pcf.\n\n   B. SEALANT - As follows:\n\n      1. Depth min 1/2 in.\n\n3. COATING - Min 1/8 in. wet.\n",
        &["1", "2", "2A", "2A1", "2A2", "2B", "2B1", "3"],
    );
}

#[test]
fn letters_of_a_number_that_does_not_stand_alone() {
    check(
        "1. FLOOR - Concrete min 4 in. thick.\n\n2A. CLIPS - Min 1 in. wide.\n\n2B. CLIPS - Min 2 in. wide.\n\n3A. WALL - Min 4 in. thick.\n\n4. SEALANT - Depth min 1/2 in.\n",
        &["1", "2A", "2B", "3A", "4"],
    );
}
