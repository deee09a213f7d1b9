//! Which values stand below a marked heading of a table: "Depth*" over the depths.

use crate::model::Span;

/// Whether values stand in the marked column.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Stands {
    Below,
    Elsewhere,
    /// Nobody can tell.
    Somewhere,
}

/// The rows below a heading's line: to the first empty line behind one.
pub(super) fn rows(text: &str, heading_end: usize) -> Span {
    let mut at = heading_end;
    let mut seen = false;
    for line in text
        .get(heading_end..)
        .unwrap_or_default()
        .split_inclusive('\n')
    {
        let empty = line.trim().is_empty();
        if empty && seen {
            break;
        }
        seen |= !empty;
        at += line.len();
    }
    Span::new(heading_end, at)
}

/// Where a value stands to a mark in a heading: both by their byte in the text.
pub(super) fn stands(text: &str, mark: usize, value: Span) -> Stands {
    let (heading, own) = (line_of(text, mark), line_of(text, value.start()));
    let before_mark = Span::new(heading.start(), mark).of(text);
    let before_value = Span::new(own.start(), value.start()).of(text);
    for sign in ['|', '\t'] {
        if heading.of(text).contains(sign) {
            let same = before_mark.matches(sign).count() == before_value.matches(sign).count();
            return if same {
                Stands::Below
            } else {
                Stands::Elsewhere
            };
        }
    }
    let first = before_value.chars().count();
    let last = first + value.of(text).chars().count();
    let cells = cells(heading.of(text));
    let marked = before_mark.chars().count();
    let overlaps = |cell: &(usize, usize)| cell.0 < last && first < cell.1;
    match cells.iter().find(|cell| overlaps(cell)) {
        Some(cell) if cell.0 <= marked && marked <= cell.1 => Stands::Below,
        Some(_) => Stands::Elsewhere,
        None => Stands::Somewhere,
    }
}

/// The line that a byte stands in.
pub(super) fn line_of(text: &str, at: usize) -> Span {
    let before = text.get(..at).unwrap_or_default();
    let start = before.rfind('\n').map_or(0, |line| line + 1);
    let behind = text.get(at..).unwrap_or_default();
    Span::new(start, at + behind.find('\n').unwrap_or(behind.len()))
}

/// The cells of a heading that two spaces part: where each begins and ends, in characters.
fn cells(line: &str) -> Vec<(usize, usize)> {
    let mut cells: Vec<(usize, usize)> = Vec::new();
    for (at, _) in line.chars().enumerate().filter(|(_, c)| !c.is_whitespace()) {
        match cells.last_mut() {
            Some((_, end)) if at <= *end + 1 => *end = at + 1,
            _ => cells.push((at, at + 1)),
        }
    }
    cells
}
