//! A row of a table written as a list: `Depth, min: 1 hr - 1/4 in.; 2 hr - 1/2 in.; 3 hr - 5/8 in.`
//!
//! The label stands for the row's, each rating for a column's heading. Anything else between the stops, and it is a sentence.

use super::heading::{Heading, heading};
use super::rating::{Rating, split_rating};
use crate::clauses::{Around, Yield};
use crate::layout::Flow;
use crate::model::{Condition, Span};
use crate::phrase::cell;

/// Reads a text that is such a list; says whether it is one.
pub(in crate::clauses) fn keyed_list(
    source: &str,
    flow: &Flow,
    around: &Around,
    found: &mut Yield,
) -> bool {
    let Some(list) = entries(flow.text()) else {
        return false;
    };
    let whole = flow.span(0, flow.text().len());
    found.covered.push(whole);
    for (rating, value) in list.entries {
        let condition = Condition {
            also: Vec::new(),
            words: rating.words,
            span: whole,
            expr: rating.expr,
        };
        let value = flow.span(value.start(), value.end());
        let value = Flow::of(source, [value]).with_usual_units(flow.usual_units());
        super::read_cell(&list.label, &value, Some(&condition), around, found);
    }
    true
}

struct List {
    label: Heading,
    entries: Vec<(Rating, Span)>,
}

/// The label and its list: `Layers: 1 h - 1; 2 h - 2`, `Layers, 1 h: 1; 2 h: 2`.
fn split_label(text: &str) -> Option<(&str, &str)> {
    let (label, list) = text.split_once(':')?;
    let keyed = label.rsplit_once(", ").filter(|(_, key)| {
        let (rest, rating) = split_rating(key.trim());
        rest.is_empty() && rating.is_some()
    });
    match keyed {
        Some((own, _)) => Some((own, text.get(own.len() + 1..)?)),
        None => Some((label, list)),
    }
}

fn entries(text: &str) -> Option<List> {
    const FEWEST: usize = 2;
    let (label, list) = split_label(text)?;
    let label = heading(label);
    let start = text.len() - list.len();
    if label.words.is_empty() || label.selects.is_some() || !list.contains(';') {
        return None;
    }
    let mut at = start;
    let mut entries = Vec::new();
    for entry in list.split(';') {
        let (key, value) = [" - ", " – ", " — ", ": ", " = "]
            .iter()
            .find_map(|joint| entry.split_once(joint))?;
        let (rest, rating) = split_rating(key.trim());
        let is_value = cell(value.trim(), label.unit, label.second_unit)
            .is_some_and(|cell| cell.unit.is_some() && !cell.goes_on);
        if !rest.is_empty() || !is_value {
            return None;
        }
        let lead = value.len() - value.trim_start().len();
        let from = at + entry.len() - value.len() + lead;
        entries.push((rating?, Span::new(from, from + value.trim().len())));
        at += entry.len() + 1;
    }
    (entries.len() >= FEWEST).then_some(List { label, entries })
}
