//! Tables of every layout: which cells say what others are, which joints they are for, and how they are limited.

#![allow(
    clippy::unwrap_used,
    reason = "what was set up is there; where it isn't, the test fails"
)]

mod aligned;
mod bands;
mod captions;
mod cells;
mod columns;
mod labelled;
mod labels;
mod led;
mod limit_columns;
mod limited;
mod limits;
mod pages;
mod records;
mod said_around;
mod shared_heads;
mod short_rows;
mod upright;

use listing::{Requirement, read_text};

/// The bounds of a text, each `property: words` and the words of its condition.
fn bounds(text: &str) -> Vec<String> {
    let reading = read_text("sample", text);
    let bounds = reading.clauses.iter().filter_map(|clause| {
        let Requirement::Bound(bound) = &clause.requirement else {
            return None;
        };
        let condition = clause.condition.as_ref();
        let condition = condition.map_or_else(String::new, |it| format!(" [{}]", it.words));
        Some(format!("{}: {bound}{condition}", clause.property))
    });
    bounds.collect()
}

/// Whether a text yields just these bounds.
#[track_caller]
fn check(text: &str, expected: &[&str]) {
    assert_eq!(bounds(text), expected, "{text}");
}
