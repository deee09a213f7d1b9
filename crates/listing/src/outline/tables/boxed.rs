//! Lines drawn as boxes: `| F1 | PACKING | 4 pcf min |`.

use crate::layout::{Line, is_rule};
use crate::model::Span;

use super::{Table, add, around};

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

/// Rows between uprights, with a rule below the headings.
pub(super) fn boxed_table(lines: &[Line<'_>], start: usize) -> Option<(Table, usize)> {
    let region = lines.get(start..)?;
    let len = region
        .iter()
        .take_while(|line| is_boxed(line.text) || is_rule(line.text))
        .count();
    let region = region.get(..len)?;
    let rows = region
        .iter()
        .filter(|line| is_boxed(line.text) && !is_rule(line.text))
        .count();
    if rows < 2 {
        return None;
    }
    let first_row = region.iter().position(|line| !is_rule(line.text))?;
    let rule = region
        .iter()
        .skip(first_row)
        .position(|line| is_rule(line.text))
        .map(|at| at + first_row);
    let width = region
        .iter()
        .filter(|line| !is_rule(line.text))
        .map(|line| cells(line).len())
        .max()?;
    let mut table = Table {
        headings: vec![Vec::new(); width],
        ..Table::default()
    };
    for (index, line) in region
        .iter()
        .enumerate()
        .filter(|(_, line)| !is_rule(line.text))
    {
        let found = cells(line);
        if rule.is_some_and(|rule| index < rule) {
            add(&mut table.headings, &found);
        } else {
            table.push(&found, line.content());
        }
    }
    table.span = around(region)?;
    Some((table, start + len))
}
