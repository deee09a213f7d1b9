//! The text cut into rows, and what stands beside each.

use listing::{Item, Reading, Span};

/// A row: a stretch of the text, and what begins in it.
#[derive(Debug, PartialEq, Eq)]
pub(crate) struct Row<'a> {
    pub(crate) span: Span,
    /// The item that begins with it.
    pub(crate) item: Option<&'a Item>,
    /// What stands beside it.
    pub(crate) beside: Vec<Beside>,
}

/// What stands beside a row.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Beside {
    /// The clause with this place in the reading.
    Clause(usize),
    /// The warning with this place in the reading.
    Warning(usize),
}

/// The rows of a text: cut where an item begins and after blank lines, never within a clause. Together they are the whole text.
pub(crate) fn rows<'a>(text: &str, reading: &'a Reading) -> Vec<Row<'a>> {
    let items: Vec<(usize, &Item)> = reading
        .items
        .iter()
        .map(|item| (line_start(text, item.span.start()), item))
        .collect();
    let within = within_clauses(reading);
    let is_free = |at: usize| {
        let before = within.partition_point(|span| span.end() <= at);
        within.get(before).is_none_or(|span| at <= span.start())
    };
    let mut cuts: Vec<usize> = after_blank_lines(text);
    cuts.extend(items.iter().map(|(at, _)| *at));
    cuts.retain(|at| *at > 0 && *at < text.len() && is_free(*at));
    cuts.sort_unstable();
    cuts.dedup();
    let starts = core::iter::once(0).chain(cuts.iter().copied());
    let ends = cuts.iter().copied().chain([text.len()]);
    let mut rows: Vec<Row<'a>> = starts
        .zip(ends)
        .map(|(start, end)| Row {
            span: Span::new(start, end),
            item: None,
            beside: Vec::new(),
        })
        .collect();
    for (at, item) in items {
        if let Some(row) = row_at(&mut rows, at) {
            row.item = row.item.or(Some(item));
        }
    }
    for (at, beside) in in_order(reading) {
        if let Some(row) = row_at(&mut rows, at) {
            row.beside.push(beside);
        }
    }
    joined(rows)
}

/// Clauses, then warnings, each with where it begins.
fn in_order(reading: &Reading) -> impl Iterator<Item = (usize, Beside)> {
    let clauses = reading.clauses.iter().enumerate();
    let warnings = reading.warnings.iter().enumerate();
    clauses
        .map(|(index, clause)| (clause.span.start(), Beside::Clause(index)))
        .chain(
            warnings
                .filter(|(_, warning)| !warning.span.is_empty())
                .map(|(index, warning)| (warning.span.start(), Beside::Warning(index))),
        )
}

fn row_at<'r, 'a>(rows: &'r mut [Row<'a>], at: usize) -> Option<&'r mut Row<'a>> {
    let after = rows.partition_point(|row| row.span.start() <= at);
    rows.get_mut(after.checked_sub(1)?)
}

/// Rows beside which nothing stands, joined with the like row before.
fn joined(rows: Vec<Row<'_>>) -> Vec<Row<'_>> {
    let mut kept: Vec<Row<'_>> = Vec::new();
    for row in rows {
        let is_plain = |row: &Row<'_>| row.item.is_none() && row.beside.is_empty();
        match kept.last_mut() {
            Some(last) if is_plain(last) && is_plain(&row) => last.span = last.span.join(row.span),
            _ => kept.push(row),
        }
    }
    kept
}

/// The stretches that clauses stand on, in order and without overlap.
fn within_clauses(reading: &Reading) -> Vec<Span> {
    let mut spans: Vec<Span> = reading.clauses.iter().map(|clause| clause.span).collect();
    spans.sort_unstable();
    let mut merged: Vec<Span> = Vec::new();
    for span in spans {
        match merged.last_mut().filter(|last| span.start() < last.end()) {
            Some(last) => *last = last.join(span),
            None => merged.push(span),
        }
    }
    merged
}

/// Where the line begins that a place stands on, when nothing but white space lies between; else the place.
fn line_start(text: &str, at: usize) -> usize {
    let before = text.get(..at).unwrap_or_default();
    let line = before.rfind(['\n', '\u{c}']).map_or(0, |end| end + 1);
    if Span::new(line, at).of(text).trim().is_empty() {
        line
    } else {
        at
    }
}

/// Where a line begins after one or more blank lines.
fn after_blank_lines(text: &str) -> Vec<usize> {
    let mut found = Vec::new();
    let mut at = 0;
    let mut is_after_blank = false;
    for line in text.split_inclusive('\n') {
        let is_blank = line.trim().is_empty();
        if is_after_blank && !is_blank {
            found.push(at);
        }
        is_after_blank = is_blank;
        at += line.len();
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rows_begin_with_items_and_hold_the_whole_text() {
        let text = "WIDE JOINT\n\n1. Wall - Concrete, min 4 in. thick.\n   2. Packing - Min 3 in. deep.\n\n\nPage 1 of 1\n";
        let reading = listing::read_text("a.txt", text);
        let rows = rows(text, &reading);
        let words: Vec<&str> = rows.iter().map(|row| row.span.of(text)).collect();
        assert_eq!(words.concat(), text);
        let items: Vec<&str> = rows
            .iter()
            .filter_map(|row| row.item)
            .map(|item| item.path.as_str())
            .collect();
        assert_eq!(items, ["1", "2"]);
        let first = rows.iter().find(|row| row.item.is_some()).unwrap();
        assert!(first.span.of(text).starts_with("1. Wall"));
    }
}
