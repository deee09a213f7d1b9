//! Labels and values in two columns that tabs, an upright or blanks part, and labels that end in a unit or a limit.

use listing::{WarningKind, read_text};

use crate::{bounds, check};

/// A packing item that ends in some lines.
fn packing(lines: &str) -> String {
    format!(
        "1. Floor - Concrete.\n2. Packing Material - Mineral wool.\n{lines}3. Sealant - As needed.\n"
    )
}

const DEPTH_AND_RECESS: &[&str] = &[
    "packing.depth: at least 3 in.",
    "packing.recess: at most 1/2 in.",
];

#[test]
fn no_label_heads_the_others() {
    check(
        &packing("Depth\t3 in. min\nRecess\t1/2 in. max\n"),
        DEPTH_AND_RECESS,
    );
    check(
        &packing("Min depth\t3 in.\nMax recess\t1/2 in.\n"),
        DEPTH_AND_RECESS,
    );
    check(
        &packing("Min depth | 3 in.\nMax recess | 1/2 in.\n"),
        DEPTH_AND_RECESS,
    );
    // A heading and its cases stay a table.
    check(
        &packing("Joint width\tMin depth\n2 in.\t3 in.\n4 in.\t4 in.\n"),
        &[
            "packing.depth: at least 3 in. [Joint width: 2 in.]",
            "packing.depth: at least 4 in. [Joint width: 4 in.]",
        ],
    );
}

#[test]
fn a_limit_behind_a_label_lasts_no_minutes() {
    check(
        &packing("Depth (min)      3 in.\nRecess, max      1/2 in.\n"),
        DEPTH_AND_RECESS,
    );
    check(
        &packing("Depth, min       3 in.\nRecess (max)     1/2 in.\n"),
        DEPTH_AND_RECESS,
    );
    let found = bounds(&packing("Depth (min)      3\nCure time (min)    30\n"));
    assert!(
        !found.iter().any(|bound| bound.contains("3 min")),
        "{found:?}"
    );
    assert!(
        found.iter().any(|bound| bound.contains("30 min")),
        "{found:?}"
    );
}

#[test]
fn a_label_ends_in_a_unit() {
    check(
        &packing("Min depth, in.: 3\nMax recess, in.: 1/2\n"),
        DEPTH_AND_RECESS,
    );
    check(
        &packing("Min depth (in.): 3\n\nMax recess (in.): 1/2\n"),
        DEPTH_AND_RECESS,
    );
    check(
        &packing("Depth (in.): min 3, max 6\nRecess (in.): max 1/2\n"),
        &[
            "packing.depth: between 3 in. and 6 in.",
            "packing.recess: at most 1/2 in.",
        ],
    );
}

#[test]
fn every_number_of_a_list_is_shown() {
    let text = packing("Joint width (in.): 1, 2, 4\nMin depth (in.): 3, 4, 6\n");
    let reading = read_text("sample", &text);
    assert_eq!(bounds(&text), [""; 0]);
    let shown = reading
        .warnings
        .iter()
        .filter(|warning| warning.kind == WarningKind::UnreadNumber);
    assert_eq!(shown.count(), 6);
}

#[test]
fn a_number_at_the_end_of_a_line_lasts_no_minutes() {
    check(
        &packing("Clause: 1.1\nMin depth 3 in.\n"),
        &["packing.depth: at least 3 in."],
    );
}
