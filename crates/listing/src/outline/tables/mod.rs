//! Tables, drawn with uprights or rules or set in columns of white space or by tabs, as columns of cells.

mod aligned;
mod boxed;
mod carried;
mod case_pairs;
mod classed;
mod drawn;
mod grid;
mod labelled;
mod limited;
mod on_side;
mod ruled;
mod tabbed;
mod unruled;

use super::open_end::ends_open;
use crate::layout::Line;
use crate::model::Span;
use crate::sentences::{ends_in_abbreviation, sentences};

pub(super) use aligned::{Run, runs};
pub(super) use boxed::{cells, is_boxed};
pub(super) use carried::Above;
pub(crate) use limited::limit_columns;
pub(super) use tabbed::is_row as is_tabbed;

/// A table: the heading of each column, and the rows.
#[derive(Debug, Clone, Default)]
pub(crate) struct Table {
    /// For each column, the pieces of its heading from top to bottom.
    pub(crate) headings: Vec<Vec<Span>>,
    /// The rows.
    pub(crate) rows: Vec<Row>,
    /// Everything of it, headings and rules included.
    pub(crate) span: Span,
    /// Whether the first column is known to say what the others are.
    pub(crate) labelled: bool,
    /// Where its columns begin, where it is set in columns of white space.
    starts: Vec<usize>,
    /// The last column whose cell in the last line must go on in the next.
    open: Option<usize>,
}

/// A row of a table.
#[derive(Debug, Clone)]
pub(crate) struct Row {
    /// For each column, the pieces of its cell from top to bottom.
    pub(crate) cells: Vec<Vec<Span>>,
    /// From its first to its last visible character.
    pub(crate) span: Span,
}

/// The table that begins at a line, with the line after it; none when there is no table here.
pub(crate) fn table_at(lines: &[Line<'_>], start: usize) -> Option<(Table, usize)> {
    tabbed::tabbed_table(lines, start)
        .or_else(|| drawn::drawn_table(lines, start))
        .or_else(|| boxed::boxed_table(lines, start))
        .or_else(|| ruled::ruled_table(lines, start))
}

/// The table that begins at a line just below a caption: one that is drawn, or else columns of white space without any rule.
pub(crate) fn captioned_table_at(lines: &[Line<'_>], start: usize) -> Option<(Table, usize)> {
    table_at(lines, start)
        .or_else(|| unruled::captioned_table(lines, start))
        .or_else(|| plain_table_at(lines, start))
}

/// The table without rule or caption that begins at a line.
pub(crate) fn plain_table_at(lines: &[Line<'_>], start: usize) -> Option<(Table, usize)> {
    unruled::plain_table(lines, start)
        .or_else(|| classed::classed_table(lines, start))
        .or_else(|| case_pairs::pairs(lines, start))
        .or_else(|| aligned::aligned_table(lines, start))
        .or_else(|| limited::limited_table(lines, start))
        .or_else(|| on_side::table(lines, start))
}

/// Whether a line lies deep within a stretch of lines of one sort. A table that begins with none of the first lines begins with none of
/// the later ones: else a long stretch would be looked through from each of its lines.
fn is_deep_within(lines: &[Line<'_>], start: usize, is_of_it: impl Fn(&str) -> bool) -> bool {
    const FIRST_LINES: usize = 12;
    let before = start.checked_sub(FIRST_LINES);
    let before = before.and_then(|from| lines.get(from..start));
    before.is_some_and(|before| before.iter().all(|line| is_of_it(line.text)))
}

impl Table {
    /// A table of labels and values without rows, and what limits all its values.
    pub(super) fn of_labels(limit: Option<Span>) -> Self {
        Self {
            headings: vec![Vec::new(), limit.into_iter().collect()],
            labelled: true,
            ..Self::default()
        }
    }

    /// A table of the cells of other columns, whose rows stand nowhere in a line.
    pub(crate) fn of_columns(
        headings: Vec<Vec<Span>>,
        rows: Vec<Vec<Vec<Span>>>,
        span: Span,
    ) -> Self {
        Self {
            headings,
            rows: rows.into_iter().map(|cells| Row { cells, span }).collect(),
            span,
            ..Self::default()
        }
    }

    /// A table of one row under headings that stand elsewhere.
    pub(super) fn of_row(headings: Vec<Vec<Span>>, row: Row) -> Self {
        Self {
            headings,
            span: row.span,
            rows: vec![row],
            ..Self::default()
        }
    }

    /// Adds a row that is whole.
    pub(super) fn push_whole(&mut self, row: Row) {
        self.span = self.span.join(row.span);
        self.rows.push(row);
    }

    /// Adds a label and its value. What stands in one column alone goes on with the row above, unless it begins as labels do.
    pub(super) fn push_pair(&mut self, label: Span, value: Span, line: &Line<'_>) {
        let span = if label.is_empty() {
            value
        } else if value.is_empty() {
            label
        } else {
            label.join(value)
        };
        self.push(&[label, value], span, Words { line });
        self.span = if self.rows.len() == 1 && self.span.is_empty() {
            span
        } else {
            self.span.join(span)
        };
    }

    /// Adds more words to the row before.
    fn go_on(&mut self, cells: &[Span], span: Span) {
        if let Some(row) = self.rows.last_mut() {
            add(&mut row.cells, cells);
            row.span = row.span.join(span);
        }
    }

    /// Adds a row, or more words to the row before when the first cell is empty.
    fn push(&mut self, cells: &[Span], span: Span, source: Words<'_>) {
        self.push_line(cells, span, source);
        self.open = cells.iter().rposition(|cell| {
            let words = source.of(*cell);
            let limit = words.ends_with("min") || words.ends_with("max");
            // `a` alone numbers its row.
            !limit && words.contains(' ') && ends_open(words) || words.ends_with([',', '-'])
        });
    }

    fn push_line(&mut self, cells: &[Span], span: Span, source: Words<'_>) {
        let continues = cells.first().is_some_and(|cell| cell.is_empty());
        if continues && let Some(row) = self.rows.last_mut() {
            // A full row under one first cell is a row of its own; a wrapped one leaves cells empty.
            let rest = cells.get(1..).unwrap_or_default();
            let wraps = |cell: &Span| {
                let words = source.of(*cell);
                words.starts_with(char::is_lowercase) && words.contains(' ')
            };
            // `setting time   max. 48 h` under `depth   10 mm` of one part
            let whole = rest.len() >= 2
                && rest.iter().all(|cell| !cell.is_empty())
                && rest
                    .iter()
                    .skip(1)
                    .any(|cell| begins_value(source.of(*cell)))
                && self.open.is_none();
            let full = whole
                || rest.len() >= 2 && rest.iter().all(|cell| !cell.is_empty() && !wraps(cell));
            if full && row.cells.iter().skip(1).all(|cell| cell.len() == 1) {
                let mut own = row.clone();
                own.cells.truncate(1);
                own.cells.resize(cells.len(), Vec::new());
                add(&mut own.cells, cells);
                own.span = span;
                self.rows.push(own);
                return;
            }
            if let Some(own) = row.sub_row(cells, span, source, self.open) {
                self.rows.push(own);
                return;
            }
            add(&mut row.cells, cells);
            row.span = row.span.join(span);
            return;
        }
        // `track web` alone in the first column goes on with `Clearance, stud end to`.
        let (first, rest) = cells.split_first().unwrap_or((&span, &[]));
        let alone = rest.iter().all(|cell| cell.is_empty());
        let small = source.of(*first).starts_with(char::is_lowercase);
        let worded = !source.of(*first).contains(|c: char| c.is_ascii_digit());
        let whole = self.ends_in_a_first_cell() && begins_upper_end(source.of(*first));
        if (alone || self.open.is_some() && worded || whole)
            && small
            && !self.rows.is_empty()
            && self.headings.len() > 1
        {
            self.go_on(cells, span);
            return;
        }
        self.push_row(cells, span);
    }

    /// Whether the last row has nothing yet but its first cell: `Over 2 in.,`
    fn ends_in_a_first_cell(&self) -> bool {
        self.rows.last().is_some_and(|row| {
            let mut cells = row.cells.iter().map(|cell| !cell.is_empty());
            cells.next() == Some(true) && !cells.any(|filled| filled)
        })
    }

    /// Adds a row of its own.
    fn push_row(&mut self, cells: &[Span], span: Span) {
        let mut row = Row {
            cells: vec![Vec::new(); self.headings.len().max(cells.len())],
            span,
        };
        add(&mut row.cells, cells);
        self.rows.push(row);
    }
}

/// The words that spans of a line stand for.
#[derive(Debug, Clone, Copy)]
struct Words<'a> {
    line: &'a Line<'a>,
}

impl<'a> Words<'a> {
    fn of(self, span: Span) -> &'a str {
        let start = self.line.span.start();
        span.start()
            .checked_sub(start)
            .and_then(|from| self.line.text.get(from..span.end() - start))
            .unwrap_or_default()
    }
}

impl Row {
    /// The row that a line without a first cell begins under this one: its values stand under values that are whole, as `4 h   175` under
    /// `Dense concrete   2 h   140`. Its words go on with those of the row above. `open` is the last column whose cell isn't whole.
    fn sub_row(
        &mut self,
        cells: &[Span],
        span: Span,
        source: Words<'_>,
        open: Option<usize>,
    ) -> Option<Self> {
        let is_value = |cell: &Span| {
            let words = source.of(*cell);
            let none = ["not ", "none", "-", "–", "n/a"]
                .iter()
                .any(|none| words.starts_with(none));
            (none || words.starts_with(|c: char| c.is_ascii_digit()))
                && words.split_whitespace().count() <= VALUE_WORDS
        };
        let stands_under = |index: usize| {
            self.cells.get(index).is_some_and(|above| {
                above.len() == 1 && above.iter().all(|cell| cell.len() <= VALUE_BYTES)
            })
        };
        let values: Vec<usize> = cells
            .iter()
            .enumerate()
            .filter(|(index, cell)| is_value(cell) && stands_under(*index))
            .map(|(index, _)| index)
            .collect();
        let first = *values.first()?;
        let others = cells
            .iter()
            .enumerate()
            .filter(|(index, cell)| !cell.is_empty() && !values.contains(index));
        // Where every column from the first value on is filled, and none above was left open, words there are cells of their own: `both faces   21-50   25
        // wool   90` under `Concrete wall,   10-20   15   rod   120`.
        let filled = cells
            .iter()
            .zip(&self.cells)
            .skip(first)
            .all(|(cell, above)| !cell.is_empty() && above.len() == 1)
            && open.is_none_or(|open| open < first)
            && cells
                .iter()
                .take(first)
                .all(|cell| cell.is_empty() || source.of(*cell).starts_with(char::is_lowercase));
        // Else only words before the values go on with those above.
        if values.len() < 2 || !filled && others.clone().any(|(index, _)| index > first) {
            return None;
        }
        let more: Vec<(usize, Span)> = others
            .filter(|(index, _)| *index < first)
            .map(|(index, cell)| (index, *cell))
            .collect();
        for (index, cell) in more {
            if let Some(column) = self.cells.get_mut(index) {
                column.push(cell);
            }
        }
        let mut own = self.clone();
        // What is left empty takes what stands above: it would ask nothing otherwise.
        for (index, column) in own.cells.iter_mut().enumerate().skip(first) {
            if let Some(cell) = cells.get(index).filter(|cell| !cell.is_empty()) {
                *column = vec![*cell];
            }
        }
        own.span = span;
        Some(own)
    }
}

/// Whether words are the upper end of a range whose lower end stands above them: `to 4 in.`, `up to 100 mm`, `but not over 4 in.`
pub(super) fn begins_upper_end(words: &str) -> bool {
    const LEADS: &[&str] = &[
        "to ",
        "up to ",
        "and up to ",
        "but not ",
        "and not ",
        "through ",
    ];
    LEADS.iter().any(|lead| words.starts_with(lead)) && words.contains(|c: char| c.is_ascii_digit())
}

/// Whether a cell's words are a value from their first word on: `≥ 80 mm`, `max. 48 h`, `not less than 8 mm`.
pub(super) fn begins_value(words: &str) -> bool {
    const LEADS: &[&str] = &[
        "max", "min", "approx", "about", "at", "not", "no", "less", "more", "than", "least",
        "most", "up", "to", "nominal",
    ];
    let is_sign = |c: char| matches!(c, '≥' | '≤' | '>' | '<' | '±' | '(' | '+' | '-' | '−');
    words
        .split_whitespace()
        .map(|word| word.trim_matches(|c: char| is_sign(c) || c == '.'))
        .find(|word| !word.is_empty() && !LEADS.contains(&word.to_lowercase().as_str()))
        .is_some_and(|word| word.starts_with(|c: char| c.is_ascii_digit()))
}

/// The most words and bytes of a cell that holds a value.
const VALUE_WORDS: usize = 3;
const VALUE_BYTES: usize = 14;

fn add(columns: &mut Vec<Vec<Span>>, cells: &[Span]) {
    if columns.len() < cells.len() {
        columns.resize(cells.len(), Vec::new());
    }
    for (column, cell) in columns.iter_mut().zip(cells) {
        if !cell.is_empty() {
            column.push(*cell);
        }
    }
}

fn around(region: &[Line<'_>]) -> Option<Span> {
    Some(region.first()?.content().join(region.last()?.content()))
}

/// Whether a line holds the end of a sentence, which no heading does.
fn speaks(text: &str) -> bool {
    let text = text.trim();
    let stopped = text
        .strip_suffix('.')
        .is_some_and(|words| !ends_in_abbreviation(words));
    stopped || sentences(text).len() > 1
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::lines;

    fn check(text: &str, headings: &[&str], rows: &[&[&str]]) {
        let lines = lines(text);
        let (table, _) = table_at(&lines, 0).expect("a table");
        let words = |pieces: &Vec<Span>| {
            pieces
                .iter()
                .map(|piece| piece.of(text))
                .collect::<Vec<_>>()
                .join(" ")
        };
        let found: Vec<_> = table.headings.iter().map(words).collect();
        assert_eq!(found, headings);
        let found: Vec<Vec<_>> = table
            .rows
            .iter()
            .map(|row| row.cells.iter().map(words).collect())
            .collect();
        assert_eq!(found, rows);
    }

    #[test]
    fn boxed() {
        check(
            "+----+------+\n| W, | Hr   |\n| in |      |\n+----+------+\n| 1  | 2    |\n| 3  | 4    |\n+----+------+\n",
            &["W, in", "Hr"],
            &[&["1", "2"], &["3", "4"]],
        );
    }

    #[test]
    fn ruled() {
        check(
            "-------------------------------\nPipe size       Tabs   Height\n                (min)  mm\n-------------------------------\n\
             up to 50 (2)    two    40 (1-9/16)\n51 - 82 (2)     three  50 (2)\n",
            &["Pipe size", "Tabs (min)", "Height mm"],
            &[
                &["up to 50 (2)", "two", "40 (1-9/16)"],
                &["51 - 82 (2)", "three", "50 (2)"],
            ],
        );
        check(
            "Place   Width (mm)   Class\n-----   ----------   -----\nA wall  10 to 50     EI 120 - V\nB wall  51 to 90     EI 90 - V\n",
            &["Place", "Width (mm)", "Class"],
            &[
                &["A wall", "10 to 50", "EI 120 - V"],
                &["B wall", "51 to 90", "EI 90 - V"],
            ],
        );
    }

    #[test]
    fn without_rules() {
        let text = "Joint width     Packing                   Seal\n                depth       pressed, %    each face\nmm              mm                        mm\n\n\
                    20 – 40         50          10 – 20       12 ± 2\n41 – 60         80          15 – 25       15 ± 2\n";
        let lines = lines(text);
        let (table, end) = plain_table_at(&lines, 0).expect("a table");
        let words: Vec<String> = table
            .headings
            .iter()
            .map(|pieces| {
                let words: Vec<&str> = pieces.iter().map(|piece| piece.of(text)).collect();
                words.join(" ")
            })
            .collect();
        assert_eq!(
            words,
            [
                "Joint width mm",
                "Packing depth mm",
                "Packing pressed, %",
                "Seal each face mm"
            ]
        );
        assert_eq!((table.rows.len(), end), (2, 6));
        // Words in columns are no table of values.
        let text = "PART        SIZE        REMARKS\n\nRunner      deep leg    20 ga, legs as drawn\nStud        light       25 ga or heavier\n";
        assert!(plain_table_at(&crate::layout::lines(text), 0).is_none());
    }
}
