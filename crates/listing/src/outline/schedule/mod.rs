//! Schedules in columns of text: `PART   REQUIREMENT   REMARKS` over cells of several lines each. Read across, the end of one cell would run into
//! the next; each cell is a text of its own.

mod case;
mod heading;
mod paired;

pub(super) use self::case::is_case;
use self::heading::{ends_in_class, has_units, is_plain, names_sizes, ratings};
pub(super) use self::heading::{names_columns, names_property};
pub(super) use self::paired::Pairs;
use super::open_end;
use crate::layout::{Line, is_rule};
use crate::model::Span;

/// The columns of a schedule, by where each begins.
#[derive(Debug, Clone)]
pub(super) struct Columns {
    starts: Vec<usize>,
    /// The headings of the last columns, where each is a rating that its cells are for: `1 hr   2 hr`.
    pub(super) ratings: Vec<Span>,
    /// Whether each line of the last two columns is a label and its value.
    pub(super) pairs: Option<Pairs>,
}

/// A row: of each column the stretches of its cell, and of each stretch the lines from top to bottom.
#[derive(Debug, Default)]
pub(super) struct Row {
    pub(super) cells: Vec<Vec<Vec<Span>>>,
    /// The lines that it takes, from the first to the one after the last.
    pub(super) lines: core::ops::Range<usize>,
}

/// How many lines below the headings are looked at, and how many words a cell has at least on average.
const LOOKED_AT: usize = 12;
const WORDY: usize = 3;

/// The columns that a heading line opens; none when the lines below don't keep to them, or hold no more than a word or two a cell, as tables
/// do.
pub(super) fn columns(lines: &[Line<'_>], at: usize) -> Option<Columns> {
    let heading = lines.get(at)?;
    let starts = runs(heading.text);
    let ratings = ratings(heading, &starts);
    let words = ratings.first().map_or(heading.text.len(), |first| {
        first.start() - heading.span.start()
    });
    let plain = is_plain(heading.text.get(..words)?);
    if names_property(heading.text) || has_units(heading.text) {
        return None;
    }
    let next = lines.get(at + 1)?;
    let (ruled, blank) = (is_rule(next.text), next.is_blank());
    // Most lines are text, and head no columns.
    if !plain || !(ruled || blank) || !heading.text.trim().contains("  ") {
        return None;
    }
    let columns = Columns {
        starts,
        ratings,
        pairs: None,
    };
    // Without a rule, three columns of names over a blank line, or two that such lists are headed with.
    let parted = blank
        && (columns.starts.len() >= 3 || names_columns(heading.text))
        && heading.text.split_whitespace().count() <= columns.starts.len() * 2;
    if !(ruled || parted) {
        return None;
    }
    // A column that numbers the rows, and two or three of text.
    if !(2..=4).contains(&columns.wordy()) {
        return None;
    }
    let below: Vec<&Line<'_>> = first_rows(lines.get(at + 2..)?, &columns)
        .iter()
        .filter(|line| !line.is_blank() && !is_rule(line.text))
        .take(LOOKED_AT)
        .collect();
    // Rows that end in a class each are a table of cases, and the words of its code no text.
    if below.iter().filter(|line| ends_in_class(line.text)).count() * 2 > below.len() {
        return None;
    }
    let cells: Vec<Vec<Span>> = below
        .iter()
        .filter_map(|line| columns.cells(line))
        .collect();
    let texts = || {
        below.iter().flat_map(|line| {
            let cells = columns.cells(line).into_iter().flatten();
            let own = cells.take(columns.wordy()).map(|cell| {
                let start = line.span.start();
                line.text
                    .get(cell.start() - start..cell.end() - start)
                    .unwrap_or_default()
            });
            own.filter(|text| !text.is_empty()).collect::<Vec<_>>()
        })
    };
    let words: usize = texts().map(|text| text.split_whitespace().count()).sum();
    let filled = texts().count();
    let kept = cells.len() >= 4 && cells.len() * 4 >= below.len() * 3;
    let wide = cells
        .iter()
        .filter(|cells| cells.iter().filter(|cell| !cell.is_empty()).count() >= 2)
        .count();
    // Under ratings only the first line of a row fills several columns; so it is where the text of a part runs over many lines.
    let of_parts = columns.starts.len() == 2
        && names_columns(heading.text)
        && next.text.split_whitespace().count() == 2;
    let rows = if columns.ratings.is_empty() && !of_parts {
        2
    } else {
        5
    };
    let pairs = paired::pairs(&columns, heading, &below);
    // Rows that each begin with the code of an item hold what is said of it, be that ever so terse.
    let of_texts = words >= filled * WORDY
        || names_columns(heading.text) && columns.are_coded(&below) && !names_sizes(heading.text);
    let texts = kept && wide * rows >= cells.len() && of_texts;
    (texts || pairs.is_some()).then_some(Columns { pairs, ..columns })
}

/// Whether a line stands above other columns than a schedule's: it, or one of the two below it, is underlined column by column.
pub(super) fn heads_columns(lines: &[Line<'_>], at: usize) -> bool {
    const MOST: usize = 4;
    lines
        .iter()
        .skip(at + 1)
        .take(MOST - 1)
        .take_while(|line| !line.is_blank())
        .any(|line| is_rule(line.text) && line.text.split_whitespace().count() > 1)
}

/// The lines to judge a schedule by: those down to the first blank one, when they hold rows enough, for what follows may be something else.
fn first_rows<'l, 't>(lines: &'l [Line<'t>], columns: &Columns) -> &'l [Line<'t>] {
    const ENOUGH: usize = 3;
    let block = lines.iter().take_while(|line| !line.is_blank()).count();
    let rows = lines
        .iter()
        .take(block)
        .filter(|line| columns.begins_row(line))
        .count();
    let len = if rows >= ENOUGH { block } else { lines.len() };
    lines.get(..len).unwrap_or_default()
}

/// Whether a piece of a line ends in a word that must go on: `Faces plumb within`.
fn ends_open(line: &Line<'_>, piece: Span) -> bool {
    let words = piece
        .start()
        .checked_sub(line.span.start())
        .and_then(|from| {
            line.text
                .get(from..piece.end().saturating_sub(line.span.start()))
        });
    words.is_some_and(open_end::ends_open)
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
    /// Whether a line stands in the last column alone: what begins there is of the row above.
    pub(super) fn is_within_row(&self, line: &Line<'_>) -> bool {
        self.starts.len() >= 2
            && self
                .starts
                .last()
                .is_some_and(|last| line.text.chars().take(*last).all(char::is_whitespace))
    }

    /// How many columns hold text.
    fn wordy(&self) -> usize {
        self.starts.len() - self.ratings.len()
    }

    /// The cells of a line, an empty span for an empty one; none when words stand across a column's edge.
    pub(super) fn cells(&self, line: &Line<'_>) -> Option<Vec<Span>> {
        let places: Vec<(usize, char)> = line.text.char_indices().collect();
        let offset = |place: usize| places.get(place).map_or(line.text.len(), |(at, _)| *at);
        let written = |place: usize| places.get(place).is_some_and(|(_, c)| !c.is_whitespace());
        let edges = || self.starts.iter().skip(1).copied();
        let crosses = edges().any(|start| written(start - 1));
        // Words with one space at the edge only happen to part there, unless the line keeps another edge.
        let narrow = |start: usize| start >= 2 && written(start) && written(start - 2);
        let kept = edges().any(|start| written(start) && !narrow(start));
        if crosses || (edges().any(narrow) && !kept) {
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

    /// Whether the first column holds the codes of items: `W-2.1`, `J3`.
    fn are_coded(&self, lines: &[&Line<'_>]) -> bool {
        const LONGEST: usize = 6;
        const FEWEST: usize = 3;
        let is_code = |word: &str| {
            word.len() <= LONGEST
                && word.starts_with(|c: char| c.is_ascii_uppercase())
                && word.contains(|c: char| c.is_ascii_digit())
        };
        let begun: Vec<&str> = lines
            .iter()
            .filter(|line| self.begins_row(line))
            .filter_map(|line| line.text.split_whitespace().next())
            .collect();
        let coded = begun.iter().filter(|word| is_code(word)).count();
        coded >= FEWEST && coded == begun.len()
    }

    /// Whether a line has something in the first column.
    fn begins_row(&self, line: &Line<'_>) -> bool {
        self.starts
            .first()
            .and_then(|first| line.text.chars().nth(*first))
            .is_some_and(|c| !c.is_whitespace())
    }

    /// Whether a line opens a part of the row above: a letter set in below its number, or a dash before the name of the part.
    fn begins_part(&self, line: &Line<'_>) -> bool {
        let Some(cells) = self.cells(line) else {
            return false;
        };
        let text = |index: usize| {
            cells.get(index).and_then(|cell: &Span| {
                let start = line.span.start();
                line.text.get(cell.start() - start..cell.end() - start)
            })
        };
        let letter = text(0).is_some_and(|mark| {
            let mark = mark.trim_end_matches(['.', ')']);
            mark.len() == 1 && mark.starts_with(|c: char| c.is_ascii_lowercase())
        });
        let dashed = text(0) == Some("") && text(1).is_some_and(|part| part.starts_with("- "));
        self.starts.len() >= 3 && !self.begins_row(line) && (letter || dashed)
    }

    /// The row that begins at a line, and the line after it; none when no row does. A row begins where the first column does, and goes on
    /// over the lines that leave that place empty.
    pub(super) fn row(&self, lines: &[Line<'_>], at: usize) -> Option<(Row, usize)> {
        let begins = |line: &Line<'_>| self.begins_row(line) || self.begins_part(line);
        let opening = lines
            .get(at)
            .filter(|line| begins(line) && self.cells(line).is_some())?;
        let rest = lines.get(at + 1..)?.iter().take_while(|line| {
            !line.is_blank() && !is_rule(line.text) && !begins(line) && self.cells(line).is_some()
        });
        let mut row = Row {
            cells: vec![Vec::new(); self.starts.len()],
            lines: at..at,
        };
        let mut end = at;
        let mut before: Option<&Line<'_>> = None;
        for line in core::iter::once(opening).chain(rest) {
            let mut another = false;
            for (index, cell) in self.cells(line)?.into_iter().enumerate() {
                if let Some(column) = row.cells.get_mut(index).filter(|_| !cell.is_empty()) {
                    let stretches = column.len();
                    self.add(column, index, cell, (before, line), another);
                    // What stands beside the first line of another requirement is said of that.
                    another = index > 0 && stretches > 0 && column.len() > stretches;
                }
            }
            before = Some(line);
            end += 1;
        }
        row.lines.end = end;
        Some((row, end))
    }

    /// Adds a line to a cell. A line that the first word of the next would have fitted on was broken on purpose: what follows is a stretch
    /// of its own.
    fn add(
        &self,
        column: &mut Vec<Vec<Span>>,
        index: usize,
        cell: Span,
        (before, line): (Option<&Line<'_>>, &Line<'_>),
        another: bool,
    ) {
        let words = line
            .text
            .get(cell.start() - line.span.start()..cell.end() - line.span.start())
            .unwrap_or_default();
        let first = words.split_whitespace().next().unwrap_or_default();
        let begins = first.starts_with(|c: char| c.is_uppercase() || c.is_ascii_digit());
        let width = |index: usize| {
            let (start, next) = (self.starts.get(index)?, self.starts.get(index + 1)?);
            Some(next - start)
        };
        let open = column
            .last()
            .and_then(|stretch| stretch.last())
            .zip(before)
            .is_some_and(|(above, before)| ends_open(before, *above));
        let on_purpose = index > 0
            && begins
            && !open
            && width(index).is_some_and(|width| {
                column
                    .last()
                    .and_then(|stretch| stretch.last())
                    .is_some_and(|above| above.len() + 1 + first.len() + 2 <= width)
            });
        match column
            .last_mut()
            .filter(|_| !(on_purpose || another && (begins || is_case(words))))
        {
            Some(stretch) => stretch.push(cell),
            None => column.push(vec![cell]),
        }
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
                    .flatten()
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
