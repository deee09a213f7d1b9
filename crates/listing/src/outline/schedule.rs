//! Schedules in columns of text: `PART   REQUIREMENT   REMARKS` over cells of several lines each. Read across, the end of one cell would run into
//! the next; each cell is a text of its own.

use crate::layout::{Line, is_rule};
use crate::model::Span;

/// The columns of a schedule, by where each begins.
#[derive(Debug, Clone)]
pub(super) struct Columns {
    starts: Vec<usize>,
}

/// A row: the cells of its first column, and of each other, line by line from top to bottom.
#[derive(Debug, Default)]
pub(super) struct Row {
    pub(super) cells: Vec<Vec<Span>>,
}

/// How many lines below the headings are looked at, and how many words a cell has at least on average.
const LOOKED_AT: usize = 12;
const WORDY: usize = 3;

/// The columns that a heading line opens; none when the lines below don't keep to them, or hold no more than a word or two a cell, as tables
/// do.
pub(super) fn columns(lines: &[Line<'_>], at: usize) -> Option<Columns> {
    let heading = lines.get(at)?;
    let plain = !heading
        .text
        .contains(|c: char| c.is_ascii_digit() || matches!(c, '|' | '.' | ':'));
    let ruled = lines.get(at + 1).is_some_and(|line| is_rule(line.text));
    if !plain || !ruled {
        return None;
    }
    let columns = Columns {
        starts: runs(heading.text),
    };
    if !(2..=4).contains(&columns.starts.len()) {
        return None;
    }
    let below: Vec<&Line<'_>> = lines
        .get(at + 2..)?
        .iter()
        .filter(|line| !line.is_blank() && !is_rule(line.text))
        .take(LOOKED_AT)
        .collect();
    let cells: Vec<Vec<Span>> = below
        .iter()
        .filter_map(|line| columns.cells(line))
        .collect();
    let words: usize = below
        .iter()
        .filter(|line| columns.cells(line).is_some())
        .map(|line| line.text.split_whitespace().count())
        .sum();
    let filled: usize = cells
        .iter()
        .flatten()
        .filter(|cell| !cell.is_empty())
        .count();
    let kept = cells.len() >= 4 && cells.len() * 4 >= below.len() * 3;
    let wide = cells
        .iter()
        .filter(|cells| cells.iter().filter(|cell| !cell.is_empty()).count() >= 2)
        .count();
    (kept && wide * 2 >= cells.len() && words >= filled * WORDY).then_some(columns)
}

/// Where the runs of a line begin, parted by two spaces or more.
fn runs(text: &str) -> Vec<usize> {
    let chars: Vec<char> = text.chars().collect();
    let blank = |at: usize| chars.get(at).is_none_or(|c| c.is_whitespace());
    (0..chars.len())
        .filter(|at| !blank(*at) && (*at == 0 || blank(at - 1)) && (*at < 2 || blank(at - 2)))
        .collect()
}

impl Columns {
    /// The cells of a line, an empty span for an empty one; none when words stand across a column's edge.
    pub(super) fn cells(&self, line: &Line<'_>) -> Option<Vec<Span>> {
        let places: Vec<(usize, char)> = line.text.char_indices().collect();
        let offset = |place: usize| places.get(place).map_or(line.text.len(), |(at, _)| *at);
        let crosses = self.starts.iter().skip(1).any(|start| {
            let char_at = |place: usize| places.get(place).map_or(' ', |(_, c)| *c);
            !char_at(start - 1).is_whitespace()
        });
        if crosses {
            return None;
        }
        let ends = self.starts.iter().skip(1).copied().chain([usize::MAX]);
        let cells = self
            .starts
            .iter()
            .zip(ends)
            .enumerate()
            .map(|(index, (start, end))| {
                let from = if index == 0 { 0 } else { offset(*start) };
                let to = if end == usize::MAX {
                    line.text.len()
                } else {
                    offset(end)
                };
                let words = line.text.get(from..to).unwrap_or_default();
                let lead = words.len() - words.trim_start().len();
                let begin = line.span.start() + from + lead;
                Span::new(begin, begin + words.trim().len())
            });
        Some(cells.collect())
    }

    /// The row that begins at a line, and the line after it; none when no row does. A row begins where the first column does, and goes on
    /// over the lines that leave that place empty.
    pub(super) fn row(&self, lines: &[Line<'_>], at: usize) -> Option<(Row, usize)> {
        let first = *self.starts.first()?;
        let begins = |line: &Line<'_>| {
            line.text
                .chars()
                .nth(first)
                .is_some_and(|c| !c.is_whitespace())
        };
        let opening = lines
            .get(at)
            .filter(|line| begins(line) && self.cells(line).is_some())?;
        let rest = lines.get(at + 1..)?.iter().take_while(|line| {
            !line.is_blank() && !is_rule(line.text) && !begins(line) && self.cells(line).is_some()
        });
        let mut row = Row {
            cells: vec![Vec::new(); self.starts.len()],
        };
        let mut end = at;
        for line in core::iter::once(opening).chain(rest) {
            for (column, cell) in row.cells.iter_mut().zip(self.cells(line)?) {
                if !cell.is_empty() {
                    column.push(cell);
                }
            }
            end += 1;
        }
        Some((row, end))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::layout::lines;

    const SCHEDULE: &str = "PART          REQUIREMENT                REMARKS\n\
                            ------------------------------------------------\n\
                            1  Floor,     4-1/2 in. min for 1 hr,    Flat to 1/8 in. in\n\
                            \x20  slab       5 in. for 2 hr.            10 ft.\n\n\
                            2  Runner     20 ga, legs 2 in. min,     Pins 0.145 in. dia,\n\
                            \x20             anchored 16 in. o.c. max.  1 in. deep min.\n";

    #[test]
    fn cells_are_texts_of_their_own() {
        let lines = lines(SCHEDULE);
        let columns = columns(&lines, 0).expect("a schedule");
        let (row, end) = columns.row(&lines, 2).expect("a row");
        let words: Vec<String> = row
            .cells
            .iter()
            .map(|cells| {
                cells
                    .iter()
                    .map(|cell| cell.of(SCHEDULE))
                    .collect::<Vec<_>>()
                    .join(" ")
            })
            .collect();
        assert_eq!(
            words,
            [
                "1  Floor, slab",
                "4-1/2 in. min for 1 hr, 5 in. for 2 hr.",
                "Flat to 1/8 in. in 10 ft."
            ]
        );
        assert_eq!(end, 4);
    }

    #[test]
    fn tables_of_numbers_are_none() {
        let text = "Width      Depth      Lap\n-------------------------\n1 in.      4 in.      1 in.\n2 in.      5 in.      1 in.\n3 in.      6 in.      2 in.\n4 in.      7 in.      2 in.\n";
        assert!(columns(&lines(text), 0).is_none());
    }
}
