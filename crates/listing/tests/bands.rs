//! Headings that say for which joints the text under them is: they are its condition, and ask for nothing themselves. The wordings are invented; what they
//! mean is common practice.

mod common;

use common::{check, unread};

#[test]
fn a_band_is_a_condition_of_the_text_under_it() {
    let text = "1. PACKING\n   Band A - joint width up to 50 mm\n   Depth min 100 mm.\n   Band B - joint width over 50 mm\n   Depth min 150 mm.\n   Compressed min 25 percent.\n2. SEALANT - Depth min 6 mm.\n";
    check(
        text,
        &[
            "packing.depth: at least 100 mm if \"Band A - joint width up to 50 mm\"",
            "packing.depth: at least 150 mm if \"Band B - joint width over 50 mm\"",
            "packing.compression: at least 25 percent if \"Band B - joint width over 50 mm\"",
            "sealant.depth: at least 6 mm",
        ],
    );
    assert!(unread(text).is_empty());
}

#[test]
fn a_band_reaches_over_the_parts_of_its_item() {
    check(
        "1. PACKING\n   Group 1: joints up to 50 mm\n   a) depth min 100 mm\n   Group 2: joints over 50 mm\n   b) depth min 150 mm\n2. SEALANT - Depth min 6 mm.\n",
        &[
            "packing.depth: at least 100 mm if \"Group 1: joints up to 50 mm\"",
            "packing.depth: at least 150 mm if \"Group 2: joints over 50 mm\"",
            "sealant.depth: at least 6 mm",
        ],
    );
}

#[test]
fn a_band_at_the_margin_reaches_to_the_next() {
    check(
        "1. FLOOR - Min 5 in. thick.\nCase A — floor to floor\n2. PACKING - Depth min 4 in.\nCase B — floor to wall\n3. PACKING - Depth min 6 in.\n4. SEALANT - Depth min 1/4 in.\n",
        &[
            "floor.thickness: at least 5 in",
            "packing.depth: at least 4 in if \"Case A — floor to floor\"",
            "packing.depth: at least 6 in if \"Case B — floor to wall\"",
            "sealant.depth: at least 1/4 in if \"Case B — floor to wall\"",
        ],
    );
    // What is said of all is of none.
    check(
        "Band 1: joints up to 2 in.\n1. PACKING - Depth min 4 in.\nBand 2: joints over 2 in.\n2. PACKING - Depth min 6 in.\nNOTES\n3. SEALANT - Depth min 1/4 in.\n",
        &[
            "packing.depth: at least 4 in if \"Band 1: joints up to 2 in.\"",
            "packing.depth: at least 6 in if \"Band 2: joints over 2 in.\"",
            "sealant.depth: at least 1/4 in",
        ],
    );
}

#[test]
fn a_line_that_demands_something_or_stands_alone_is_no_band() {
    check(
        "1. PACKING - Depth min 4 in.\n   Group 1 - min 4 pcf, joints of any width.\n   Group 2 - min 6 pcf, joints of any width.\n",
        &[
            "packing.depth: at least 4 in",
            "packing.density: at least 4 pcf",
            "packing.density: at least 6 pcf",
        ],
    );
    let counted = "1. JOINT - Width max 3 in.\n   Group A: two strips over the joint\n   Group B: three strips over the joint\n";
    let bounds = common::clauses(counted);
    assert!(
        bounds.iter().all(|clause| !clause.contains(" if ")),
        "{bounds:#?}"
    );
    assert!(bounds.len() >= 3, "{bounds:#?}");
}
