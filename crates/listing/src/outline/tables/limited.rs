//! Columns of white space whose headings set limits: `Item   Min depth   Max spacing` over `Packing   4 in.   12 in.`
//!
//! A cell is of the one heading that it stands under. Where a row has a cell for every heading they are told apart by their order, too. What stands under
//! two headings or under none leaves the whole of it unread: a limit never goes to a number of another column.

use super::aligned::{Run, is_note, is_value, runs};
use super::case_pairs::names_case;
use super::{Row, Table, around, begins_value, speaks};
use crate::layout::{Line, is_rule};
use crate::model::{Relation, Span};
use crate::rules::qualifier;

/// The most rows, the most columns and the most words of a heading.
const MOST_ROWS: usize = 60;
const MOST_COLUMNS: usize = 8;
const MOST_WORDS: usize = 5;

/// The table that begins at a line; none where a cell can't be placed.
pub(super) fn limited_table(lines: &[Line<'_>], start: usize) -> Option<(Table, usize)> {
    let block = Block::at(lines, start)?;
    let table = block.placed()?;
    Some((table, start + block.len))
}

/// Where headings of limits stand with their rows, whether they make a table or not.
pub(crate) fn limit_columns(lines: &[Line<'_>]) -> Vec<Span> {
    let mut found = Vec::new();
    let mut at = 0;
    while at < lines.len() {
        let block = Block::at(lines, at);
        at += block.as_ref().map_or(1, |block| block.len);
        found.extend(block.map(|block| block.span));
    }
    found
}

/// Headings that set limits, with the rows below them.
struct Block<'a> {
    heads: Vec<Run<'a>>,
    rows: Vec<(Vec<Run<'a>>, Span)>,
    /// Everything of it.
    span: Span,
    /// How many lines it takes.
    len: usize,
}

impl<'a> Block<'a> {
    /// The block that begins at a line.
    fn at(lines: &[Line<'a>], start: usize) -> Option<Self> {
        let region = lines.get(start..)?;
        let heads = headings(region.first()?)?;
        let blank = usize::from(region.get(1).is_some_and(Line::is_blank));
        let from = 1 + blank;
        let rows: Vec<(Vec<Run<'_>>, Span)> = region
            .get(from..)?
            .iter()
            .take(MOST_ROWS)
            .map_while(|line| Some((row(line, &heads)?, line.content())))
            .collect();
        let len = from + rows.len();
        let span = around(region.get(..len)?)?;
        (!rows.is_empty()).then_some(Self {
            heads,
            rows,
            span,
            len,
        })
    }

    /// The same as a table; none where a cell can't be placed, or nobody can say what the first column is.
    fn placed(&self) -> Option<Table> {
        let labelled = self
            .rows
            .iter()
            .all(|(cells, _)| cells.first().is_some_and(|first| is_label(first.words)));
        let unheaded = labelled && self.leads_left();
        let first = self.heads.first()?;
        let one_row = self.rows.len() == 1;
        // `Max width   Min depth` over one row may be a case and what it asks, or two that are asked for.
        let told = if labelled {
            unheaded || limit_of(first.words).is_none()
        } else {
            one_row && !names_case(first.words)
        };
        if !told {
            return None;
        }
        let rows: Option<Vec<Row>> = self
            .rows
            .iter()
            .map(|(cells, span)| {
                let (label, values) = if unheaded {
                    cells.split_at(1)
                } else {
                    cells.split_at(0)
                };
                let label = label.iter().map(|run| vec![run.span]);
                let values = self.cells(values)?;
                Some(Row {
                    cells: label.chain(values).collect(),
                    span: *span,
                })
            })
            .collect();
        let heads = self.heads.iter().map(|head| vec![head.span]);
        let corner = unheaded.then(Vec::new);
        Some(Table {
            headings: corner.into_iter().chain(heads).collect(),
            rows: rows?,
            span: self.span,
            ..Table::default()
        })
    }

    /// Whether the first cells stand left of all headings, and are labels without one.
    fn leads_left(&self) -> bool {
        let first = self.heads.first().map_or(0, |head| head.from);
        self.rows
            .iter()
            .all(|(cells, _)| cells.first().is_some_and(|cell| cell.to < first))
    }

    /// The cells of a row, one place a heading.
    fn cells(&self, runs: &[Run<'_>]) -> Option<Vec<Vec<Span>>> {
        if let Some(cells) = self.by_place(runs) {
            return Some(cells);
        }
        let full = runs.len() == self.heads.len();
        full.then(|| runs.iter().map(|run| vec![run.span]).collect())
    }

    /// The cells of a row by the headings over them; none where one stands under two headings, under none, or beside another.
    fn by_place(&self, runs: &[Run<'_>]) -> Option<Vec<Vec<Span>>> {
        let mut cells: Vec<Vec<Span>> = vec![Vec::new(); self.heads.len()];
        for run in runs {
            let mut over = self
                .heads
                .iter()
                .enumerate()
                .filter(|(_, head)| head.from < run.to && run.from < head.to);
            let (index, head) = over.next().filter(|_| over.next().is_none())?;
            if !stands_under(run, head) {
                return None;
            }
            cells
                .get_mut(index)
                .filter(|cell| cell.is_empty())?
                .push(run.span);
        }
        Some(cells)
    }
}

/// Whether a cell begins or ends with its heading, or stands in the middle of it.
fn stands_under(cell: &Run<'_>, head: &Run<'_>) -> bool {
    const ASIDE: usize = 2;
    let middle = |run: &Run<'_>| usize::midpoint(run.from, run.to);
    let near = |one: usize, other: usize| one.abs_diff(other) <= ASIDE;
    near(cell.from, head.from) || near(cell.to, head.to) || near(middle(cell), middle(head))
}

/// The headings of a line, one of them of a limit.
fn headings<'a>(line: &Line<'a>) -> Option<Vec<Run<'a>>> {
    let heads = runs(line);
    let is_heading = |run: &Run<'_>| {
        run.words.starts_with(char::is_alphabetic)
            && run.words.split_whitespace().count() <= MOST_WORDS
            && !run.words.ends_with([':', ',', '-', ';'])
            && !run.words.contains(|c: char| c.is_ascii_digit())
    };
    let capital = line.text.trim_start().starts_with(char::is_uppercase);
    let limited = heads.iter().any(|head| limit_of(head.words).is_some());
    let headed = (2..=MOST_COLUMNS).contains(&heads.len())
        && heads.iter().all(is_heading)
        && capital
        && limited
        && !speaks(line.text);
    headed.then_some(heads)
}

/// The limit that a heading begins or ends with: `Min depth`, `Depth (max.)`, `Minimum`.
fn limit_of(heading: &str) -> Option<Relation> {
    let lower = heading.to_lowercase();
    let mut words = lower
        .split(|c: char| !c.is_alphabetic())
        .filter(|word| !word.is_empty());
    let first = words.next().and_then(qualifier);
    let last = words.next_back().and_then(qualifier);
    first
        .or(last)
        .filter(|relation| matches!(relation, Relation::AtLeast | Relation::AtMost))
}

/// The cells of a row: behind the first each is a value, or words under a heading of notes.
fn row<'a>(line: &Line<'a>, heads: &[Run<'_>]) -> Option<Vec<Run<'a>>> {
    if line.is_blank() || is_rule(line.text) || line.after_page_break {
        return None;
    }
    let cells = runs(line);
    let noted = heads.last().is_some_and(|head| is_note(head.words));
    let (_, others) = cells.split_first()?;
    let values = others
        .iter()
        .enumerate()
        .all(|(at, cell)| is_value(cell.words) || noted && at + 1 == others.len());
    let holds_value = cells.iter().any(|cell| begins_value(cell.words));
    (!others.is_empty() && values && holds_value).then_some(cells)
}

/// Whether a first cell says what the others are of.
fn is_label(words: &str) -> bool {
    const MOST_WORDS: usize = 8;
    words.starts_with(char::is_alphabetic)
        && words.split_whitespace().count() <= MOST_WORDS
        && !words.ends_with([':', '.', ',', ';'])
        && !words.contains(|c: char| c.is_ascii_digit())
        && !begins_value(words)
}
