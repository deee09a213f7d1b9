//! Bare numbers whose unit stands in another column: read where the label says all of them, and else shown.

use listing::{Requirement, WarningKind, read_text};

/// The bounds of a text, each `property: words`, and the numbers that are shown as unread.
fn read(text: &str) -> (Vec<String>, Vec<String>) {
    let reading = read_text("sample", text);
    let bounds = reading.clauses.iter().filter_map(|clause| {
        let Requirement::Bound(bound) = &clause.requirement else {
            return None;
        };
        Some(format!("{}: {bound}", clause.property))
    });
    let unread = reading
        .warnings
        .iter()
        .filter(|warning| warning.kind == WarningKind::UnreadNumber)
        .map(|warning| warning.words.clone());
    (bounds.collect(), unread.collect())
}

#[track_caller]
fn check(text: &str, bounds: &[&str], unread: &[&str]) {
    let (found, shown) = read(text);
    assert_eq!(found, bounds, "{text}");
    assert_eq!(shown, unread, "{text}");
}

#[test]
fn a_limit_behind_the_unit_of_a_label() {
    check(
        "1. Floor - Concrete.\n\
         Slab thickness, in. (min) ......... 6\n\
         Joint width, in. (max) ............ 3\n\
         Clip spacing, in. (max) ........... 24\n",
        &[
            "floor.thickness: at least 6 in.",
            "joint.width: at most 3 in.",
            "clip.spacing: at most 24 in.",
        ],
        &[],
    );
    check(
        "1. Packing - Mineral wool.\n\
         \x20  Depth (in.), min        4\n\
         \x20  Density, pcf min.       4\n",
        &[
            "packing.depth: at least 4 in.",
            "packing.density: at least 4 pcf",
        ],
        &[],
    );
    // `min` behind a time is its unit.
    check(
        "1. Sealant - Silicone.\n\
         \x20  Skin time (min)         30\n",
        &["1:sealant_skin_time: nominal 30 min"],
        &[],
    );
}

#[test]
fn rows_under_units_without_an_item() {
    for before in [
        "Joint System 12\nRating - 2 hr\n",
        "The joint is filled.\n\n",
    ] {
        let text =
            format!("{before}Joint width (in.)  Packing depth (in.)\nup to 2   4\n2 to 4    6\n");
        check(&text, &[], &["2", "4", "2", "4", "6"]);
        let text = format!("{text}1. Floor - Concrete.\n");
        check(&text, &[], &["2", "4", "2", "4", "6"]);
    }
    // A heading without a unit says nothing of them.
    check(
        "The joint is filled.\n\nSheet of   Drawing no.\n1   4\n2   6\n",
        &[],
        &[],
    );
}

#[test]
fn numbers_behind_a_label_that_no_rule_takes() {
    check(
        "SYSTEM 12\nSlab (in.)  3-1/2  4-1/2  6\n1. Floor - Concrete.\n",
        &[],
        &["3-1/2", "4-1/2", "6"],
    );
    check(
        "1. Floor - Concrete.\n2. Packing          min depth, in.      4\n",
        &[],
        &["4"],
    );
    // Without a unit it may be a count.
    check(
        "1. Floor - Concrete.\n2. Packing          see sheet      4\n",
        &[],
        &[],
    );
}
