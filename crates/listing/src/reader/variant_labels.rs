//! The labels by which tables name variants in their first column: `V1`, `V2` under "Variant", `C1` to `C4` under "Config."
//!
//! Letters with a number each, of a column that holds nothing else. What is numbered so otherwise is left out: the items of the document, the classes of
//! reaction to fire and those of movement.

use crate::layout::Flow;
use crate::outline::{Outline, Paragraph, Table};

/// Headings of columns that name variants.
const VARIANTS: &[&str] = &[
    "variant",
    "variants",
    "var",
    "configuration",
    "config",
    "execution",
];

/// Headings of columns that name them where each has its class, and else whatever the rows are of.
const REFERENCES: &[&str] = &["system", "ref", "reference", "kind"];

/// Headings of columns of classes.
const CLASSES: &[&str] = &["class", "classes", "classification", "frl", "frr"];

/// The labels of a document's variants.
pub(super) fn variant_labels(text: &str, outline: &Outline) -> Vec<String> {
    let tables = outline.items.iter().flat_map(|item| {
        item.paragraphs
            .iter()
            .filter_map(|paragraph| match paragraph {
                Paragraph::Table(table) => Some(table),
                _ => None,
            })
    });
    let mut labels: Vec<String> = tables.flat_map(|table| of_table(text, table)).collect();
    labels.sort();
    labels.dedup();
    labels.retain(|label| !outline.items.iter().any(|item| item.path == *label));
    labels
}

/// The labels of a table's first column; none where it holds anything else.
fn of_table(text: &str, table: &Table) -> Vec<String> {
    const FEWEST: usize = 2;
    let words = |pieces: &Vec<crate::model::Span>| {
        let flow = Flow::of(text, pieces.iter().copied());
        flow.text().trim().to_owned()
    };
    let headings: Vec<String> = table.headings.iter().map(words).collect();
    let is_any = |heading: &String, names: &[&str]| {
        let lower = heading.trim_end_matches('.').to_lowercase();
        names.contains(&lower.as_str())
    };
    let classed = || headings.iter().any(|heading| is_any(heading, CLASSES));
    let first = headings.first();
    let names_variants = first.is_some_and(|heading| {
        is_any(heading, VARIANTS) || is_any(heading, REFERENCES) && classed()
    });
    if !names_variants {
        return Vec::new();
    }
    let cells = table.rows.iter().filter_map(|row| row.cells.first());
    let labels: Vec<String> = cells.map(words).filter(|cell| !cell.is_empty()).collect();
    let named = labels.len() >= FEWEST && labels.iter().all(|label| is_label(label));
    labels.into_iter().filter(|_| named).collect()
}

/// `V1`, `HW12`; no class of reaction to fire, `A1`, or of movement, `M25`.
fn is_label(cell: &str) -> bool {
    let letters = cell.chars().take_while(char::is_ascii_uppercase).count();
    let digits = cell.get(letters..).unwrap_or_default();
    let numbered = (1..=2).contains(&digits.len()) && digits.bytes().all(|b| b.is_ascii_digit());
    let classed = matches!(cell, "A1" | "A2") || cell.starts_with('M') && digits.len() == 2;
    (1..=2).contains(&letters) && numbered && !classed
}
