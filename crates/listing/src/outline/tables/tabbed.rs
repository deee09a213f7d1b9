//! Tables whose cells tabs part, as a page or a sheet of cells gives them when it is copied as text.

use super::labelled::{Pair, are_labels, table_of};
use super::{Row, Table, Words, around, speaks};
use crate::layout::Line;
use crate::model::Span;

/// The table that begins at a line: headings, then rows, each with as many tabs as it has. Rows may leave off tabs behind their last cell, and a
/// line without any may stand over rows. A heading alone heads nothing.
pub(super) fn tabbed_table(lines: &[Line<'_>], start: usize) -> Option<(Table, usize)> {
    let region = lines.get(start..)?;
    let first = region.first().filter(|line| is_row(line))?;
    let parted = Parted::of(region);
    let cells = |line: &Line<'_>| parted.cells(line);
    if let Some(found) = labels(region, &parted) {
        return Some((found.0, start + found.1));
    }
    let headings = cells(first);
    let plain = headings.len() >= 2
        && headings.iter().filter(|cell| !cell.is_empty()).count() * 2 > headings.len()
        && !speaks(first.text)
        && !first.text.starts_with(|c: char| c.is_ascii_digit());
    if !plain {
        return None;
    }
    let fits = |line: &Line<'_>| is_row(line) && cells(line).len() <= headings.len();
    let heads = |at: usize| {
        let short = |line: &&Line<'_>| {
            !line.is_blank()
                && line.text.split_whitespace().count() <= MOST_WORDS
                && !speaks(line.text)
        };
        region.get(at).as_ref().is_some_and(short) && region.get(at + 1).is_some_and(fits)
    };
    let rows = (1..region.len())
        .take_while(|at| region.get(*at).is_some_and(|line| fits(line) || heads(*at)))
        .count();
    let body = region.get(1..=rows)?;
    if body.iter().filter(|line| fits(line)).count() < FEWEST {
        return None;
    }
    let width = headings.len();
    let mut table = Table {
        headings: headings.into_iter().map(piece).collect(),
        span: around(region.get(..=rows)?)?,
        ..Table::default()
    };
    for line in body {
        let mut row: Vec<Vec<Span>> = cells(line).into_iter().map(piece).collect();
        row.resize(width, Vec::new());
        table.rows.push(Row {
            cells: row,
            span: line.content(),
        });
    }
    Some((table, start + rows + 1))
}

/// The labels and values that lines are, with the line after them.
fn labels(region: &[Line<'_>], parted: &Parted) -> Option<(Table, usize)> {
    let pair = |line: &Line<'_>| -> Option<[Span; 2]> {
        is_row(line)
            .then(|| <[Span; 2]>::try_from(parted.cells(line)).ok())
            .flatten()
    };
    let pairs: Vec<Pair<'_>> = region
        .iter()
        .take(MOST_LABELS)
        .map_while(|line| {
            let words = Words { line };
            let [label, value] = pair(line)?;
            Some(Pair {
                label: (words.of(label), label),
                value: (words.of(value), value),
            })
        })
        .collect();
    let end = pairs.len();
    let span = around(region.get(..end)?)?;
    are_labels(&pairs).then(|| (table_of(&pairs, span), end))
}

/// The most labels of one list: a longer one goes on in the next.
const MOST_LABELS: usize = 200;

/// The most words of a line over rows, and the fewest rows.
const MOST_WORDS: usize = 5;
const FEWEST: usize = 2;

/// Whether a line has a tab between words.
pub(in crate::outline) fn is_row(line: &Line<'_>) -> bool {
    line.text.trim().contains('\t')
}

fn piece(cell: Span) -> Vec<Span> {
    if cell.is_empty() {
        Vec::new()
    } else {
        vec![cell]
    }
}

/// How tabs part the cells of a table.
struct Parted {
    /// Whether several tabs in a row only push a cell to its place.
    pushing: bool,
}

impl Parted {
    /// Tabs only push where that leaves each line as many cells as the first.
    fn of(lines: &[Line<'_>]) -> Self {
        let block = || lines.iter().take_while(|line| is_row(line));
        let doubled = lines
            .first()
            .is_some_and(|line| line.text.trim().contains("\t\t"));
        let pushed = Self { pushing: true };
        let mut counts = block().map(|line| pushed.cells(line).len());
        let first = counts.next();
        Self {
            pushing: doubled && counts.all(|count| Some(count) == first),
        }
    }

    /// The cells of a line, an empty span for an empty one.
    fn cells(&self, line: &Line<'_>) -> Vec<Span> {
        let mut cells = Vec::new();
        let mut at = line.span.start();
        for cell in line.text.trim_end().split('\t') {
            let words = cell.trim();
            let start = at + (cell.len() - cell.trim_start().len()).min(cell.len() - words.len());
            if !(self.pushing && words.is_empty()) {
                cells.push(Span::new(start, start + words.len()));
            }
            at += cell.len() + 1;
        }
        cells
    }
}
