//! Cells of words under a heading: the heading says what a value alone is, and which part the words are about.

use super::tables::{heading, read_cell};
use super::{Around, Yield, read_text};
use crate::layout::Flow;
use crate::model::Span;
use crate::naming::{Subject, components_in};
use crate::phrase::cell;

/// Reads one cell.
pub(super) fn read(
    source: &str,
    heading_pieces: &[Span],
    text: &[Span],
    around: &Around,
    subject: &mut Subject,
    found: &mut Yield,
) {
    let words = Flow::of(source, heading_pieces.iter().copied());
    let flow = Flow::of(source, text.iter().copied()).with_usual_units(around.usual_units);
    let column = heading(words.text());
    let is_value = cell(flow.text(), column.unit, column.second_unit)
        .is_some_and(|cell| cell.unit.is_some() && !cell.goes_on);
    if is_value {
        found.covered.extend(text.iter().copied());
        read_cell(&column.requiring(), &flow, None, around, found);
        return;
    }
    let own = Around {
        subject: headed(words.text(), &around.subject),
        ..around.clone()
    };
    *subject = own.subject.clone();
    read_text(source, text, &own, subject, found);
    *subject = around.subject.clone();
}

/// What words under a heading are about: the part that it names before what the item is about.
fn headed(heading: &str, around: &Subject) -> Subject {
    let mut titles: Vec<_> = components_in(heading)
        .into_iter()
        .filter(|(_, weak, _)| !weak)
        .map(|(component, ..)| (component, 0))
        .collect();
    titles.extend(
        around
            .titles
            .iter()
            .map(|(component, depth)| (*component, depth + 1)),
    );
    Subject {
        titles,
        title: around.title.clone(),
        before: None,
    }
}
