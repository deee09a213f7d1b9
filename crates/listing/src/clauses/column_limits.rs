//! The limits that columns of a schedule have by their headings, "Minimum" and "Maximum", for the values printed under them in rows that read as text: "1.2 Hollow
//! core   Thickness   8 in.   -   grouted".
//!
//! It goes by where things stand on their lines. A value counts that stands alone in its column, between blanks, and begins or ends with the heading, as all must
//! that stands beside it: where the blanks between columns were lost, a maximum may come to stand under "Minimum". A line that runs on across a column is no row,
//! and ends the schedule. What it would misread: a value that is printed under the wrong heading.

use crate::model::{Relation, Span};

/// The cells of a document that stand under a limit, in order.
#[derive(Debug, Default)]
pub(crate) struct ColumnLimits(Vec<(Span, Relation)>);

/// A heading's words, or a cell's, on their line.
#[derive(Debug, Clone, Copy)]
struct Cell {
    /// Its place in the text.
    span: Span,
    /// Its first column, and the one behind its last, in characters.
    from: usize,
    to: usize,
}

/// A column of a schedule.
#[derive(Debug, Clone, Copy)]
struct Column {
    from: usize,
    /// Where its heading ends.
    end: usize,
    /// Where the next one begins.
    to: usize,
    limit: Option<Relation>,
}

impl ColumnLimits {
    /// The cells under limits in a document.
    pub(crate) fn of(text: &str) -> Self {
        let mut found = Vec::new();
        let mut columns: Vec<Column> = Vec::new();
        let mut at = 0;
        for line in text.split_inclusive('\n') {
            let cells = cells(line, at);
            at += line.len();
            if !line.contains(char::is_alphanumeric) {
                continue;
            }
            if let Some(headed) = headings(text, &cells) {
                columns = headed;
            } else if is_row(&cells, &columns) {
                let kept = keeps_columns(&cells, &columns);
                let values = cells
                    .iter()
                    .filter(|cell| kept && is_value(cell.span.of(text)));
                found.extend(values.filter_map(|cell| Some((cell.span, limit(cell, &columns)?))));
            } else {
                columns.clear();
            }
        }
        Self(found)
    }

    /// The limit of the column that a place stands in.
    pub(crate) fn over(&self, place: Span) -> Option<Relation> {
        let (cell, relation) = self.begun(place)?;
        (place.end() <= cell.end()).then_some(relation)
    }

    /// Whether a place begins in such a column and goes on behind it: the dash of an empty column was taken for that of a range.
    pub(crate) fn is_left_by(&self, place: Span) -> bool {
        self.begun(place)
            .is_some_and(|(cell, _)| cell.end() < place.end())
    }

    /// The cell that a place begins in.
    fn begun(&self, place: Span) -> Option<(Span, Relation)> {
        let behind = self
            .0
            .partition_point(|(cell, _)| cell.start() <= place.start());
        let held = self.0.get(behind.checked_sub(1)?).copied();
        held.filter(|(cell, _)| place.start() < cell.end())
    }
}

/// The stretches of a line that two blanks or more part.
fn cells(line: &str, at: usize) -> Vec<Cell> {
    let mut cells: Vec<Cell> = Vec::new();
    for (column, (byte, c)) in line.char_indices().enumerate() {
        if c.is_whitespace() {
            continue;
        }
        let end = at + byte + c.len_utf8();
        match cells.last_mut().filter(|last| column <= last.to + 1) {
            Some(last) => {
                last.to = column + 1;
                last.span = Span::new(last.span.start(), end);
            }
            None => cells.push(Cell {
                span: Span::new(at + byte, end),
                from: column,
                to: column + 1,
            }),
        }
    }
    cells
}

/// The columns of a line that is headings alone, one of them a limit and another no limit before it.
fn headings(text: &str, cells: &[Cell]) -> Option<Vec<Column>> {
    const FEWEST: usize = 3;
    let worded = cells.iter().all(|cell| {
        let words = cell.span.of(text);
        words.starts_with(char::is_alphabetic) && !words.contains(|c: char| c.is_ascii_digit())
    });
    let limits = |cell: &Cell| limit_of(cell.span.of(text));
    let first = cells.iter().position(|cell| limits(cell).is_some())?;
    if !worded || cells.len() < FEWEST || first == 0 {
        return None;
    }
    let ends = cells.iter().skip(1).map(|next| next.from);
    let columns = cells.iter().zip(ends.chain([usize::MAX]));
    let columns = columns.map(|(cell, to)| Column {
        from: cell.from,
        end: cell.to,
        to,
        limit: limits(cell),
    });
    Some(columns.collect())
}

/// The limit that a heading is, and nothing else.
fn limit_of(words: &str) -> Option<Relation> {
    match words.trim_end_matches(['.', ':']).to_lowercase().as_str() {
        "min" | "minimum" | "at least" | "not less than" => Some(Relation::AtLeast),
        "max" | "maximum" | "at most" | "not more than" => Some(Relation::AtMost),
        _ => None,
    }
}

/// Whether a line may be a row of a schedule: nothing in it runs from before a column of limits into it.
fn is_row(cells: &[Cell], columns: &[Column]) -> bool {
    let limits = || columns.iter().filter(|column| column.limit.is_some());
    let runs_on = |cell: &Cell| limits().any(|column| runs_into(cell, column));
    !columns.is_empty() && !cells.iter().any(runs_on)
}

/// Whether a cell begins before a column and goes on in it.
fn runs_into(cell: &Cell, column: &Column) -> bool {
    cell.from + REACH < column.from && column.from < cell.to
}

/// How far before its heading a value may begin, in characters.
const REACH: usize = 2;

/// The limit of the column that a cell stands in and doesn't leave.
fn limit(cell: &Cell, columns: &[Column]) -> Option<Relation> {
    let column = own_column(cell, columns)?;
    (cell.to <= column.to && is_aligned(cell, column)).then_some(column.limit)?
}

/// The column that a cell stands in.
fn own_column<'c>(cell: &Cell, columns: &'c [Column]) -> Option<&'c Column> {
    let begins = |column: &&Column| column.from <= cell.from + REACH;
    columns.iter().rev().find(begins)
}

/// Whether a cell begins where the heading of its column does, or ends there.
const fn is_aligned(cell: &Cell, column: &Column) -> bool {
    cell.from.abs_diff(column.from) <= REACH || cell.to.abs_diff(column.end) <= REACH
}

/// Whether all of a row that stands from the first column of limits on is aligned with the headings.
fn keeps_columns(cells: &[Cell], columns: &[Column]) -> bool {
    let Some(first) = columns.iter().find(|column| column.limit.is_some()) else {
        return false;
    };
    let mut beside = cells.iter().filter(|cell| cell.from + REACH >= first.from);
    let aligned = |cell: &Cell| own_column(cell, columns).is_some_and(|own| is_aligned(cell, own));
    beside.all(aligned)
}

/// Whether words are a value: a number first, and few words.
fn is_value(words: &str) -> bool {
    const MOST_WORDS: usize = 4;
    words.starts_with(|c: char| c.is_ascii_digit())
        && words.split_whitespace().count() <= MOST_WORDS
}
