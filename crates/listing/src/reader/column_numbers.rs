//! Bare numbers whose unit stands in another column: over them, `Packing depth (in.)`, or before them, `Clip spacing, in. ....... 24`. The second pass
//! shows those that nothing holds.

use measure::Unit;
use measure::notation::{numeral_at, unit_at};

use crate::layout::lines;
use crate::model::Span;

/// The fewest dots of a leader.
const LEADER: &str = "...";

/// Every bare number of a text that a heading or a label beside it gives a unit.
pub(super) fn column_numbers(text: &str) -> Vec<Span> {
    let mut found = Vec::new();
    let mut headed = false;
    for line in lines(text) {
        // Most lines hold no columns.
        if !(line.text.contains("  ") || line.text.contains(LEADER)) {
            headed &= line.is_blank();
            continue;
        }
        let cells = cells(line.text, line.span.start());
        if heads_units(&cells, text) {
            headed = true;
            continue;
        }
        let labelled = cells
            .first()
            .is_some_and(|first| ends_in_unit(first.of(text)))
            || cells
                .get(1)
                .is_some_and(|second| cells.len() == 3 && ends_in_unit(second.of(text)));
        let values: Vec<Span> = cells
            .iter()
            .filter(|cell| is_value(cell.of(text)))
            .copied()
            .collect();
        let row = headed && !values.is_empty() && values.len() + 1 >= cells.len();
        let label = labelled && cells.last().is_some_and(|last| values.contains(last));
        if row || label {
            found.extend(values.iter().flat_map(|cell| numbers(text, *cell)));
        }
        headed &= row;
    }
    found
}

/// What wide gaps or leaders part on a line.
fn cells(line: &str, start: usize) -> Vec<Span> {
    // The stop of `in.` is its own, and makes no difference here.
    const AROUND: [char; 3] = [' ', '\t', '.'];
    let mut found = Vec::new();
    let mut at = start;
    for part in line.split("  ") {
        let mut from = at;
        for piece in part.split(LEADER) {
            let words = piece.trim_matches(AROUND);
            let lead = piece.len() - piece.trim_start_matches(AROUND).len();
            if !words.is_empty() {
                found.push(Span::new(from + lead, from + lead + words.len()));
            }
            from += piece.len() + LEADER.len();
        }
        at += part.len() + 2;
    }
    found
}

/// Whether the cells of a line are headings, one of them with a unit.
fn heads_units(cells: &[Span], text: &str) -> bool {
    let words = || cells.iter().map(|cell| cell.of(text));
    cells.len() >= 2
        && words().all(|cell| {
            cell.starts_with(char::is_alphabetic) && !cell.contains(|c: char| c.is_ascii_digit())
        })
        && words().any(ends_in_unit)
}

/// Whether a heading or a label ends in a unit, in brackets or behind a comma, before its limit or not: `Depth (in.)`, `Depth, in. (min)`.
fn ends_in_unit(words: &str) -> bool {
    const LIMITS: &[&str] = &["min", "max", "minimum", "maximum"];
    let lower = words.to_lowercase();
    let mut parts: Vec<&str> = lower.split(' ').collect();
    let is_limit = |word: &&str| LIMITS.contains(&word.trim_matches(['(', ')', '.', ',']));
    if parts.last().is_some_and(is_limit) {
        parts.pop();
    }
    let Some((last, name)) = parts.split_last() else {
        return false;
    };
    let bracketed = last.starts_with('(');
    let behind_comma = name.last().is_some_and(|word| word.ends_with(','));
    let stated = format!("1 {}", last.trim_matches(['(', ')', '.', ',']));
    let known =
        unit_at(&stated, 1).is_some_and(|(unit, end)| unit != Unit::Count && end == stated.len());
    (bracketed || behind_comma) && known
}

/// Whether a cell is a number or a range of numbers, and no word of another thing: `4`, `up to 2`, `2 to 4`.
fn is_value(cell: &str) -> bool {
    const WORDS: &[&str] = &[
        "up", "to", "over", "under", "and", "min", "max", "min.", "max.", "-", "–",
    ];
    let figures = |word: &str| {
        word.starts_with(|c: char| c.is_ascii_digit())
            && word
                .chars()
                .all(|c| c.is_ascii_digit() || matches!(c, '.' | ',' | '/' | '-' | '–'))
    };
    cell.split_whitespace().any(figures)
        && cell
            .split_whitespace()
            .all(|word| figures(word) || WORDS.contains(&word.to_lowercase().as_str()))
}

/// The numbers of a cell.
fn numbers(text: &str, cell: Span) -> Vec<Span> {
    let mut found = Vec::new();
    let mut at = cell.start();
    while at < cell.end() {
        match numeral_at(text, at) {
            Some((_, end)) if end <= cell.end() => {
                found.push(Span::new(at, end));
                at = end;
            }
            _ => {
                let next = text.get(at..).and_then(|rest| rest.chars().next());
                at += next.map_or(1, char::len_utf8);
            }
        }
    }
    found
}
