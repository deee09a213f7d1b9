//! Columns of white space whose headings set limits: each cell is of the heading over it, and what can't be placed stays unread.

use listing::{WarningKind, read_text};

use crate::check;

/// A packing item with some lines in it.
fn packing(lines: &str) -> String {
    format!("1. Floor - Concrete.\n2. Packing\n{lines}3. Sealant - As needed.\n")
}

/// Whether nothing is read of some lines, and these numbers are shown.
#[track_caller]
fn refused(text: &str, numbers: &[&str]) {
    check(text, &[]);
    let reading = read_text("sample", text);
    let unread: Vec<&str> = reading
        .warnings
        .iter()
        .filter(|warning| warning.kind == WarningKind::UnreadNumber)
        .map(|warning| warning.words.as_str())
        .collect();
    assert_eq!(unread, numbers, "{text}");
}

#[test]
fn cells_left_empty_take_no_limit_of_another() {
    check(
        "1. Slab - Concrete.\n\
         Item      Min depth   Max spacing\n\
         Packing   4 in.\n\
         Clips                 24 in.\n\
         2. Sealant - As needed.\n",
        &[
            "packing.depth: at least 4 in.",
            "clip.spacing: at most 24 in.",
        ],
    );
    check(
        "1. Slab - Concrete.\n\
         Item            Minimum  Maximum\n\
         Packing depth   4 in.    6 in.\n\
         Clip spacing             24 in.\n\
         2. Sealant - As needed.\n",
        &[
            "packing.depth: between 4 in. and 6 in.",
            "clip.spacing: at most 24 in.",
        ],
    );
    check(
        "1. Slab - Concrete.\n\
         Item            Minimum value\n\
         Packing depth   4 in.\n\
         2. Sealant - As needed.\n",
        &["packing.depth: at least 4 in."],
    );
}

#[test]
fn materials_of_one_part_stay_apart() {
    check(
        &packing(
            "Part     Min. depth   Min. density\n\
             Wool     4 in.        4 pcf\n\
             Fiber    6 in.\n",
        ),
        &[
            "packing.depth: at least 4 in. [Part: Wool]",
            "packing.density: at least 4 pcf [Part: Wool]",
            "packing.depth: at least 6 in. [Part: Fiber]",
        ],
    );
}

#[test]
fn one_row_of_values_tells_no_case() {
    check(
        &packing("Depth (min)     Gap (max)\n4 in.           1/8 in.\n"),
        &[
            "packing.depth: at least 4 in.",
            "2:joint_gap_max: at most 1/8 in.",
        ],
    );
    check(
        "1. Clips - Steel.\n\
         Maximum spacing   Minimum thickness\n\
         24 in.            1/8 in.\n\
         2. Sealant - As needed.\n",
        &[
            "clip.spacing: at most 24 in.",
            "clip.steel_thickness: at least 1/8 in.",
        ],
    );
}

#[test]
fn what_cannot_be_placed() {
    // The second row has a cell less, and stands under no heading alone.
    refused(
        &packing(
            "Part  Min. depth  Min. density  Max. joint\n\
             Wool  4 in.  4 pcf  2 in.\n\
             Fiber  6 in.  1 pcf\n",
        ),
        &["4 in.", "4 pcf", "2 in.", "6 in.", "1 pcf"],
    );
    // A cell that reaches under two headings, and one that begins nowhere near its own.
    for clips in ["Clips     24 in. or 600 mm", "Clips            24 in."] {
        refused(
            &packing(&format!(
                "Item      Min. depth   Max. gap\nWool      4 in.\n{clips}\n"
            )),
            if clips.contains("mm") {
                &["4 in.", "24 in.", "600 mm"]
            } else {
                &["4 in.", "24 in."]
            },
        );
    }
    // A case and what it asks, or two that are asked for.
    refused(
        &packing("Max joint width   Min depth\n2 in.             4 in.\n"),
        &["2 in.", "4 in."],
    );
    refused(
        &packing("Depth (min)   Gap (max)\n4 in.         1/8 in.\n6 in.         1/4 in.\n"),
        &["4 in.", "1/8 in.", "6 in.", "1/4 in."],
    );
    // Without any item.
    refused(
        "Width     Min. depth    Clips\n\
         2 in.     4 in.         24 in.\n\
         4 in.     6 in.         12 in.\n\
         Clips shall be steel.\n",
        &["2 in.", "4 in.", "24 in.", "4 in.", "6 in.", "12 in."],
    );
}

#[test]
fn a_unit_that_the_heading_is_never_said_in() {
    refused(
        &packing("Part     Min. depth   Max. gap\nFiber    1 pcf        4 pcf\n"),
        &["1 pcf", "4 pcf"],
    );
}

#[test]
fn rows_that_name_their_parts() {
    let rows = |parts: [&str; 2]| {
        let [one, other] = parts;
        format!(
            "1. Floor - Concrete.\n\
             | Part | Min gauge | Max spacing |\n\
             |---|---|---|\n\
             | {one} | 20 ga | 24 in. |\n\
             | {other} | 22 ga | 18 in. |\n"
        )
    };
    check(
        &rows(["Z-clip", "Runner"]),
        &[
            "clip.gauge: at least 20 gauge",
            "clip.spacing: at most 24 in.",
            "runner.gauge: at least 22 gauge",
            "1:runner_max_spacing: at most 18 in.",
        ],
    );
    // Which of two clips it is remains a condition.
    check(
        &rows(["Z-clip", "L-clip"]),
        &[
            "clip.gauge: at least 20 gauge [Part: Z-clip]",
            "clip.spacing: at most 24 in. [Part: Z-clip]",
            "clip.gauge: at least 22 gauge [Part: L-clip]",
            "clip.spacing: at most 18 in. [Part: L-clip]",
        ],
    );
}

#[test]
fn a_number_of_a_column_without_a_unit_is_shown() {
    let shown = |heading: &str, value: &str| {
        let reading = read_text(
            "sample",
            &format!(
                "1. Floor - Concrete.\n\
                 ------------------------------\n\
                 Kind      Layers    {heading}\n\
                 ------------------------------\n\
                 Sheet     two       {value}\n\
                 Other     three     {value}\n\
                 ------------------------------\n\
                 2. Sealant - As needed.\n"
            ),
        );
        let unread = |warning: &&listing::Warning| warning.kind == WarningKind::UnreadNumber;
        reading.warnings.iter().filter(unread).count()
    };
    assert_eq!(shown("lb/roll", "4 (2)"), 2);
    assert_eq!(shown("Construction", "1.2(a)"), 0);
}
