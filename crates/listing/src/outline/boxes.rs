//! Lines drawn as boxes: `| F1 | PACKING | 4 pcf min |`.

use crate::layout::Line;
use crate::model::Span;

/// Whether a line is a row of a box: it begins and ends with an upright, or holds two or more.
pub(crate) fn is_boxed(text: &str) -> bool {
    let text = text.trim();
    let uprights = text.matches(['|', '│']).count();
    (uprights >= 2 && text.starts_with(['|', '│'])) || (uprights >= 1 && text.contains(" | "))
}

/// The cells of a boxed line, each the place of its visible words; an empty cell is an empty span.
pub(crate) fn cells(line: &Line<'_>) -> Vec<Span> {
    let mut cells = Vec::new();
    let mut start = 0;
    let text = line.text;
    let base = line.span.start();
    let uprights = text.char_indices().filter(|(_, c)| matches!(c, '|' | '│'));
    for (at, upright) in uprights.chain(core::iter::once((text.len(), ' '))) {
        cells.push(trimmed(text, start, at, base));
        start = at + upright.len_utf8();
    }
    // What stands outside the first and last upright is no cell when it is empty.
    if text.trim_start().starts_with(['|', '│']) {
        cells.remove(0);
    }
    if text.trim_end().ends_with(['|', '│']) {
        cells.pop();
    }
    cells
}

fn trimmed(text: &str, start: usize, end: usize, base: usize) -> Span {
    let words = text.get(start..end).unwrap_or_default();
    let from = start + (words.len() - words.trim_start().len());
    let to = from + words.trim().len();
    Span::new(base + from, base + to)
}
