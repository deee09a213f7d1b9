//! What a short text yields, one line a clause.

#![allow(
    dead_code,
    clippy::unwrap_used,
    reason = "each test file uses some of it"
)]

pub(crate) mod cases;
pub(crate) mod product_names;
pub(crate) mod scoring;

use listing::{Clause, Requirement, read_text};

/// Every clause but prose: its property, what it asks for, and when.
pub(crate) fn clauses(text: &str) -> Vec<String> {
    let reading = read_text("sample", text);
    reading.clauses.iter().filter_map(shown).collect()
}

/// A clause in a line, unless it is prose.
pub(crate) fn shown(clause: &Clause) -> Option<String> {
    let asked = match &clause.requirement {
        Requirement::Bound(bound) => {
            let number = |n: Option<measure::Number>| n.map(|n| n.to_string());
            let value = match (number(bound.lo), number(bound.hi)) {
                (Some(lo), Some(hi)) => format!("{lo} to {hi}"),
                (one, other) => one.or(other).unwrap_or_default(),
            };
            format!("{} {value} {}", bound.relation.words(), bound.unit)
        }
        Requirement::Named { names } => {
            let names: Vec<&str> = names.iter().map(|name| name.product.as_str()).collect();
            format!("one of {}", names.join(" | "))
        }
        _ => return None,
    };
    let condition = clause.condition.as_ref();
    let when = condition.map_or_else(String::new, |own| format!(" if {}", own.expr));
    let option = clause.option.as_ref();
    let of = option.map_or_else(String::new, |own| format!(" in {own}"));
    Some(format!("{}: {asked}{when}{of}", clause.property))
}

/// Whether a text yields just these clauses.
#[track_caller]
pub(crate) fn check(text: &str, expected: &[&str]) {
    assert_eq!(clauses(text), expected, "{text}");
}

/// The numbers that a reading shows as unread.
pub(crate) fn unread(text: &str) -> Vec<String> {
    let reading = listing::read_text("sample", text);
    let unread = reading.warnings.into_iter();
    unread
        .filter(|warning| warning.kind == listing::WarningKind::UnreadNumber)
        .map(|warning| warning.words)
        .collect()
}

/// An item of its own before the text, so that it is a listing.
fn with_a_floor(item: &str) -> String {
    format!("1. Floor - 5 in. thick min.\n\n2. {item}\n")
}

/// Whether an item yields just these clauses.
#[track_caller]
pub(crate) fn check_item(item: &str, expected: &[&str]) {
    let expected: Vec<&str> = core::iter::once("floor.thickness: at least 5 in")
        .chain(expected.iter().copied())
        .collect();
    check(&with_a_floor(item), &expected);
}

/// The numbers of an item that are shown as unread.
pub(crate) fn unread_in(item: &str) -> Vec<String> {
    unread(&with_a_floor(item))
}
