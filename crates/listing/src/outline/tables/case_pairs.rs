//! Two columns of white space or one upright, a case and its value, with a rule below the heading or none: `Joint width    Clip spacing` over `up to 2 in.    24 in.`
//!
//! The heading must name a case first, and every row must hold a number in both cells: two columns of words are text more often than not.

use super::{Row, Table, around, speaks};
use crate::layout::{Line, is_rule};
use crate::model::Span;

/// The fewest rows.
const FEWEST: usize = 2;

/// The most words of a cell.
const MOST_WORDS: usize = 8;

/// The table that begins at a line.
pub(super) fn pairs(lines: &[Line<'_>], start: usize) -> Option<(Table, usize)> {
    let region = lines.get(start..)?;
    let first = region.first()?;
    let headings = pair(first).filter(|[case, value]| heads(first, *case, *value))?;
    let body = region.get(1..)?;
    let parts = |line: &Line<'_>| line.is_blank() || is_rule(line.text);
    let blank = usize::from(body.first().is_some_and(parts));
    let body = body.get(blank..)?;
    let rows: Vec<(&Line<'_>, [Span; 2])> = body
        .iter()
        .map_while(|line| Some((line, values(line)?)))
        .collect();
    let end = 1 + blank + rows.len();
    // What goes on in the next line isn't such a table.
    let ends = region.get(end).is_none_or(parts);
    if rows.len() < FEWEST || !ends {
        return None;
    }
    let table = Table {
        headings: headings.into_iter().map(|cell| vec![cell]).collect(),
        rows: rows
            .into_iter()
            .map(|(line, cells)| Row {
                cells: cells.into_iter().map(|cell| vec![cell]).collect(),
                span: line.content(),
            })
            .collect(),
        span: around(region.get(..end)?)?,
        ..Table::default()
    };
    Some((table, start + end))
}

/// The two cells of a line, parted by an upright or by white space.
fn pair(line: &Line<'_>) -> Option<[Span; 2]> {
    let parted = |separator: &str| {
        let mut cells = Vec::new();
        let mut at = 0;
        for cell in line.text.split(separator) {
            let words = cell.trim();
            if !words.is_empty() {
                let from = line.span.start() + at + (cell.len() - cell.trim_start().len());
                cells.push(Span::new(from, from + words.len()));
            }
            at += cell.len() + separator.len();
        }
        <[Span; 2]>::try_from(cells).ok()
    };
    if line.text.contains('|') {
        let inner = line.text.trim().trim_matches('|');
        return (inner.matches('|').count() == 1).then(|| parted("|"))?;
    }
    parted("  ")
}

/// Whether a heading names which joints a row is for: `Joint width, in.`, `Rating`.
pub(super) fn names_case(heading: &str) -> bool {
    const CASES: &[&str] = &[
        "width", "widths", "joint", "joints", "gap", "gaps", "opening", "rating", "ratings",
    ];
    let lower = heading.to_lowercase();
    let mut words = lower.split(|c: char| !c.is_alphabetic());
    words.any(|word| CASES.contains(&word))
}

/// Whether a line heads a case and its value.
fn heads(line: &Line<'_>, case: Span, value: Span) -> bool {
    let of = |cell: Span| {
        let from = cell.start() - line.span.start();
        line.text
            .get(from..from + cell.len())
            .unwrap_or_default()
            .to_lowercase()
    };
    let (case, value) = (of(case), of(value));
    let has_no_number = !line.text.contains(|c: char| c.is_ascii_digit());
    let short = [&case, &value].iter().all(|cell| {
        cell.split_whitespace().count() <= MOST_WORDS && !cell.ends_with([':', '.'])
            || cell.ends_with("in.")
    });
    names_case(&case)
        && has_no_number
        && short
        && value.starts_with(char::is_alphabetic)
        && !speaks(line.text)
}

/// The two cells of a row, each with a number, the second a value and no more.
fn values(line: &Line<'_>) -> Option<[Span; 2]> {
    let cells = pair(line)?;
    let of = |cell: Span| {
        let from = cell.start() - line.span.start();
        line.text.get(from..from + cell.len()).unwrap_or_default()
    };
    let [case, value] = cells.map(of);
    let numbered = |cell: &str| cell.contains(|c: char| c.is_ascii_digit());
    let short = |cell: &str| cell.split_whitespace().count() <= MOST_WORDS;
    let is_value = value.starts_with(|c: char| c.is_ascii_digit())
        || ["min", "max", "nom", "≥", "≤", "not "]
            .iter()
            .any(|limit| value.to_lowercase().starts_with(limit));
    let reads = numbered(case) && numbered(value) && is_value && short(case) && short(value);
    (reads && !speaks(line.text)).then_some(cells)
}
