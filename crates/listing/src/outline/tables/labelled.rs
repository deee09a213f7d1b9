//! Labels and their values in two columns without any heading: `Min depth | 3 in.` over `Max recess | 1/2 in.`

use vocabulary::vocabulary;

use super::boxed::holds_number;
use super::unruled::is_rating;
use super::{Row, Table, begins_value};
use crate::model::Span;

/// Two cells of a line, a label and its value.
#[derive(Debug, Clone, Copy)]
pub(super) struct Pair<'a> {
    pub(super) label: (&'a str, Span),
    pub(super) value: (&'a str, Span),
}

/// Whether cells are labels and values: the first of two lines or more has a value already, which no heading has, all labels are words, and most say what
/// is measured. A rating first says which joints the others are for.
pub(super) fn are_labels(pairs: &[Pair<'_>]) -> bool {
    const FEWEST: usize = 2;
    const MOST_WORDS: usize = 6;
    let begins = pairs
        .first()
        .is_some_and(|first| begins_value(first.value.0) && !is_rating(&[first.value.0]));
    let is_label = |pair: &Pair<'_>| {
        let (label, _) = pair.label;
        label.starts_with(char::is_alphabetic)
            && label.split_whitespace().count() <= MOST_WORDS
            && !holds_number(label)
    };
    let measures = pairs.iter().filter(|pair| names_measure(pair.label.0));
    pairs.len() >= FEWEST
        && begins
        && pairs.iter().all(is_label)
        && pairs.iter().all(|pair| !pair.value.0.is_empty())
        && measures.count() * 2 > pairs.len()
}

/// The labels and values as a table.
pub(super) fn table_of(pairs: &[Pair<'_>], span: Span) -> Table {
    let mut table = Table::of_labels(None);
    table.span = span;
    table.rows = pairs
        .iter()
        .map(|pair| Row {
            cells: vec![vec![pair.label.1], vec![pair.value.1]],
            span: pair.label.1.join(pair.value.1),
        })
        .collect();
    table
}

/// Whether words name what is measured: "Depth", "Max recess".
fn names_measure(label: &str) -> bool {
    const LIMITS: &[&str] = &["min", "max", "minimum", "maximum"];
    let lower = label.to_lowercase();
    let mut words = lower.split(|c: char| !c.is_alphabetic());
    words.any(|word| LIMITS.contains(&word) || vocabulary().attribute(word).is_some())
}
