//! Columns of white space without any rule, each cell under its heading: `Rating   Min Depth   Notes`.
//!
//! The first heading must name a case, and every cell must stand under one heading alone. Cells may be left empty, a column of notes may hold
//! words, and text may follow at once at the margin.

use super::boxed::holds_number;
use super::case_pairs::names_case;
use super::{Row, Table, around, begins_value, speaks};
use crate::layout::{Line, is_rule};
use crate::model::Span;

/// The fewest rows, the most lines, the most columns and the most words of a heading.
const FEWEST: usize = 2;
const MOST_LINES: usize = 80;
const MOST_COLUMNS: usize = 8;
const MOST_WORDS: usize = 8;

/// How far to the left of its heading a cell may begin.
const ASIDE: usize = 1;

/// The table that begins at a line.
pub(super) fn aligned_table(lines: &[Line<'_>], start: usize) -> Option<(Table, usize)> {
    let rest = lines.get(start..)?;
    // A longer stretch would be looked through from each of its lines.
    let region = rest.get(..MOST_LINES).unwrap_or(rest);
    let columns = Columns::headed_by(region.first()?)?;
    let mut headings: Vec<Vec<Span>> = columns.heads.iter().map(|run| vec![run.span]).collect();
    let mut at = 1;
    while let Some(more) = region.get(at).and_then(|line| columns.heading_below(line)) {
        for (heading, cell) in headings.iter_mut().zip(more) {
            heading.extend(cell.map(|run| run.span));
        }
        at += 1;
    }
    if region
        .get(at)
        .is_some_and(|line| line.is_blank() || is_rule(line.text))
    {
        at += 1;
    }
    let mut rows: Vec<Row> = Vec::new();
    let mut lines = Vec::new();
    while let Some(line) = region.get(at) {
        if let Some(more) = columns.more_of_row(line) {
            let row = rows.last_mut()?;
            for (cell, more) in row.cells.iter_mut().zip(&more) {
                cell.extend(more.map(|run| run.span));
            }
            row.span = row.span.join(line.content());
        } else if is_row(line) {
            let cells = columns.cells(line)?;
            Columns::add_row(&cells, line.content(), &mut rows)?;
            lines.push(cells);
        } else {
            break;
        }
        at += 1;
    }
    let ends = rest.get(at).is_none_or(|line| columns.ends_before(line));
    if rows.len() < FEWEST || !ends || !columns.are_of_values(&lines) {
        return None;
    }
    let table = Table {
        headings,
        rows,
        span: around(region.get(..at)?)?,
        ..Table::default()
    };
    Some((table, start + at))
}

/// A stretch of a line: words with one blank between them, and where they begin and end in characters.
#[derive(Debug, Clone, Copy)]
pub(in crate::outline) struct Run<'a> {
    pub(in crate::outline) words: &'a str,
    pub(in crate::outline) from: usize,
    pub(in crate::outline) to: usize,
    pub(in crate::outline) span: Span,
}

/// The columns that headings begin.
struct Columns<'a> {
    heads: Vec<Run<'a>>,
}

impl<'a> Columns<'a> {
    fn headed_by(line: &Line<'a>) -> Option<Self> {
        let heads = runs(line);
        let is_heading = |run: &Run<'_>| {
            run.words.starts_with(char::is_alphabetic)
                && run.words.split_whitespace().count() <= MOST_WORDS
                && !run.words.ends_with(':')
                && !holds_number(run.words)
        };
        let headed = (2..=MOST_COLUMNS).contains(&heads.len())
            && heads.iter().all(is_heading)
            && heads.first().is_some_and(|first| names_case(first.words))
            && !speaks(line.text);
        headed.then_some(Self { heads })
    }

    /// The cells of a line, one place a column; none where a cell stands under no heading or under two.
    fn cells<'b>(&self, line: &Line<'b>) -> Option<Vec<Option<Run<'b>>>> {
        let mut cells = vec![None; self.heads.len()];
        for run in runs(line) {
            let index = self
                .heads
                .iter()
                .rposition(|head| head.from <= run.from + ASIDE)?;
            let next = self.heads.get(index + 1);
            let within = next.is_none_or(|next| run.to < next.from);
            let cell = cells
                .get_mut(index)
                .filter(|cell| within && cell.is_none())?;
            *cell = Some(run);
        }
        Some(cells)
    }

    /// The further headings of a line: units and words in small letters or brackets.
    fn heading_below<'b>(&self, line: &Line<'b>) -> Option<Vec<Option<Run<'b>>>> {
        let more = |run: &Run<'_>| goes_on(run.words) && !holds_number(run.words);
        self.cells(line)
            .filter(|cells| cells.iter().flatten().all(more))
            .filter(|cells| cells.iter().any(Option::is_some))
    }

    /// The cells of a line that all go on with those above: `(76 mm)` under `3 in.`, the rest of a note.
    fn more_of_row<'b>(&self, line: &Line<'b>) -> Option<Vec<Option<Run<'b>>>> {
        let more = |(at, (head, cell)): (usize, (&Run<'_>, &Option<Run<'_>>))| {
            cell.is_none_or(|cell| match at {
                0 => cell.words.starts_with('(') || joins(cell.words),
                _ => goes_on(cell.words) || is_note(head.words),
            })
        };
        let cells = self.cells(line)?;
        let filled = cells.iter().any(Option::is_some);
        let all = self.heads.iter().zip(&cells).enumerate().all(more);
        (filled && all).then_some(cells)
    }

    /// Adds the row of a line. What stands first is that of the row above where it is left empty, and of both where it only goes on: `and over`
    /// under `4 in.`
    fn add_row(cells: &[Option<Run<'_>>], span: Span, rows: &mut Vec<Row>) -> Option<()> {
        let (first, others) = cells.split_first()?;
        let case = match (first, rows.last_mut()) {
            (None, above) => above?.cells.first()?.clone(),
            (Some(first), Some(above)) if joins(first.words) => {
                let case = above.cells.first_mut()?;
                case.push(first.span);
                case.clone()
            }
            (Some(first), _) => vec![Some(first.span).filter(|_| is_case(first.words))?],
        };
        let others = others
            .iter()
            .map(|cell| cell.iter().map(|run| run.span).collect());
        rows.push(Row {
            cells: core::iter::once(case).chain(others).collect(),
            span,
        });
        Some(())
    }

    /// Whether most cells of each column that isn't of cases or notes are values, and none is left without any.
    fn are_of_values(&self, rows: &[Vec<Option<Run<'_>>>]) -> bool {
        self.heads.iter().enumerate().all(|(at, head)| {
            let cells = || rows.iter().filter_map(|row| *row.get(at)?);
            let values = cells().filter(|cell| is_value(cell.words)).count();
            let other = at == 0 || is_note(head.words) || names_case(head.words);
            cells().next().is_some() && (other || values * 2 > cells().count())
        })
    }

    /// Whether the table ends before a line: a blank one, a rule, or text that begins at the margin and runs on under the other headings.
    fn ends_before(&self, line: &Line<'_>) -> bool {
        let second = self.heads.get(1).map_or(0, |head| head.from);
        let is_text = |run: &Run<'_>| {
            let runs_on = run.to > second || !goes_on(run.words) && run.words.contains(' ');
            run.from + ASIDE < second && runs_on
        };
        let runs = runs(line);
        line.is_blank() || is_rule(line.text) || runs.len() == 1 && runs.iter().all(is_text)
    }
}

/// Whether a line has cells: text at the margin ends the rows.
fn is_row(line: &Line<'_>) -> bool {
    !line.is_blank() && !is_rule(line.text) && runs(line).len() >= 2
}

/// The stretches of a line that two blanks or more part.
pub(in crate::outline) fn runs<'a>(line: &Line<'a>) -> Vec<Run<'a>> {
    let mut found = Vec::new();
    let mut at = 0;
    for part in line.text.split("  ") {
        let words = part.trim();
        let from = at + part.len() - part.trim_start().len();
        if !words.is_empty() {
            let before = line.text.get(..from).unwrap_or_default().chars().count();
            let start = line.span.start() + from;
            found.push(Run {
                words,
                from: before,
                to: before + words.chars().count(),
                span: Span::new(start, start + words.len()),
            });
        }
        at += part.len() + 2;
    }
    found
}

/// Whether a heading is of notes, which may be words.
pub(super) fn is_note(heading: &str) -> bool {
    const NOTES: &[&str] = &["note", "notes", "remark", "remarks", "comment", "comments"];
    NOTES.contains(&heading.to_lowercase().as_str())
}

/// Whether a cell may say which joints its row is for.
fn is_case(words: &str) -> bool {
    const MOST_WORDS: usize = 6;
    let short = words.split_whitespace().count() <= MOST_WORDS;
    let closed = !words.ends_with(['.', ':', ',', ';', '-']) || words.ends_with("in.");
    short && closed && !words.starts_with('(')
}

/// Whether a cell only goes on with the case above it: `and over`.
fn joins(words: &str) -> bool {
    const JOINING: &[&str] = &["and", "or", "to", "in.", "mm", "wide"];
    let first = words.split_whitespace().next();
    first.is_some_and(|first| JOINING.contains(&first))
}

/// Whether a cell is a value or leaves it open.
pub(super) fn is_value(words: &str) -> bool {
    const MOST_WORDS: usize = 6;
    const NONE: &[&str] = &["none", "n/a", "nil", "not ", "see ", "no "];
    let dash = !words.contains(char::is_alphanumeric);
    let short = words.split_whitespace().count() <= MOST_WORDS;
    let lower = words.to_lowercase();
    let none = NONE.iter().any(|none| lower.starts_with(none));
    dash || short && (none || begins_value(words))
}

/// Whether words go on with what stands above them, or say it in another unit.
fn goes_on(words: &str) -> bool {
    words.starts_with(|c: char| c.is_lowercase() || matches!(c, '(' | ','))
}
