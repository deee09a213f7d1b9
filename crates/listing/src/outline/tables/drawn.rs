//! Tables drawn with corners and rules, whose cells may lie over several rows or columns:
//!
//! ```text
//! +---------+-------------------+
//! | RATING  | WOOL              |
//! |         +---------+---------+
//! |         | depth   | density |
//! +---------+---------+---------+
//! ```
//!
//! Each column between two uprights and each stretch between two rules is a field; fields with no line drawn between them are one cell, and a
//! row has in each column the cell that lies over it.

use crate::layout::Line;
use crate::model::Span;

use super::{Row, Table, Words, around, is_deep_within};

/// The table that begins with a drawn rule at this line, and the line after it.
pub(super) fn drawn_table(lines: &[Line<'_>], start: usize) -> Option<(Table, usize)> {
    const FEWEST_LINES: usize = 4;
    if is_deep_within(lines, start, is_framed) {
        return None;
    }
    let region = lines.get(start..)?;
    let len = region
        .iter()
        .take_while(|line| is_framed(line.text))
        .count();
    let region = region
        .get(..len)
        .filter(|region| region.len() >= FEWEST_LINES)?;
    let drawing = Drawing::of(region)?;
    let mut table = drawing.table()?;
    table.span = around(region)?;
    Some((table, start + len))
}

fn is_framed(text: &str) -> bool {
    let text = text.trim();
    let edge = |c: char| is_upright(c) || is_corner(c);
    text.len() > 1 && text.starts_with(edge) && text.ends_with(edge)
}

const fn is_upright(c: char) -> bool {
    matches!(c, '|' | '│' | '!')
}

const fn is_corner(c: char) -> bool {
    matches!(c, '+' | '┌' | '┐' | '└' | '┘' | '├' | '┤' | '┬' | '┴' | '┼')
}

const fn is_dash(c: char) -> bool {
    matches!(c, '-' | '=' | '─' | '═')
}

/// A drawn table as its characters.
struct Drawing<'l, 't> {
    lines: &'l [Line<'t>],
    chars: Vec<Vec<(usize, char)>>,
    /// Where the uprights stand, from left to right.
    edges: Vec<usize>,
    /// The lines on which some rule is drawn.
    rules: Vec<usize>,
    /// For each field, by stretch and column, the field that stands for its cell.
    cells: Vec<usize>,
}

impl<'l, 't> Drawing<'l, 't> {
    fn of(lines: &'l [Line<'t>]) -> Option<Self> {
        let chars: Vec<Vec<(usize, char)>> = lines
            .iter()
            .map(|line| line.text.char_indices().collect())
            .collect();
        let mut drawing = Self {
            lines,
            chars,
            edges: Vec::new(),
            rules: Vec::new(),
            cells: Vec::new(),
        };
        drawing.edges = drawing.uprights();
        let columns = drawing.columns();
        // The first line is a rule with corners all along.
        if columns < 2 || !(0..columns).all(|column| drawing.is_ruled(0, column)) {
            return None;
        }
        // Rows whose uprights stand elsewhere are parted by those, and not by the rules.
        if drawing.has_uprights_astray() {
            return None;
        }
        drawing.rules = (0..lines.len())
            .filter(|line| (0..columns).any(|column| drawing.is_ruled(*line, column)))
            .collect();
        drawing.join_fields();
        Some(drawing)
    }

    fn columns(&self) -> usize {
        self.edges.len().saturating_sub(1)
    }

    fn char_at(&self, line: usize, place: usize) -> Option<char> {
        self.chars.get(line)?.get(place).map(|(_, c)| *c)
    }

    /// Where corners stand that a rule runs into, on any line.
    fn uprights(&self) -> Vec<usize> {
        let mut places: Vec<usize> = Vec::new();
        for (index, line) in self.chars.iter().enumerate() {
            for (place, (_, c)) in line.iter().enumerate() {
                let beside = |place: Option<usize>| {
                    place
                        .and_then(|place| self.char_at(index, place))
                        .is_some_and(is_dash)
                };
                if is_corner(*c) && (beside(place.checked_sub(1)) || beside(Some(place + 1))) {
                    places.push(place);
                }
            }
        }
        places.sort_unstable();
        places.dedup();
        places
    }

    /// Whether words run over where an upright should stand, on a line that has uprights where none should.
    fn has_uprights_astray(&self) -> bool {
        self.chars.iter().any(|line| {
            let mut places = line.iter().map(|(_, c)| *c).enumerate();
            let astray = places.any(|(place, c)| is_upright(c) && !self.edges.contains(&place));
            let at_edge = |edge: &usize| line.get(*edge).map(|(_, c)| *c);
            astray
                && self
                    .edges
                    .iter()
                    .filter_map(at_edge)
                    .any(char::is_alphanumeric)
        })
    }

    /// Whether a rule is drawn through a column on a line.
    fn is_ruled(&self, line: usize, column: usize) -> bool {
        let (Some(from), Some(to)) = (self.edges.get(column), self.edges.get(column + 1)) else {
            return false;
        };
        to > &(from + 1)
            && (from + 1..*to).all(|place| self.char_at(line, place).is_some_and(is_dash))
    }

    /// The stretches between two rules, as lines `[first, last)`.
    fn stretches(&self) -> Vec<(usize, usize)> {
        self.rules
            .windows(2)
            .filter_map(|pair| match pair {
                [above, below] => Some((above + 1, *below)),
                _ => None,
            })
            .collect()
    }

    fn join_fields(&mut self) {
        let (stretches, columns) = (self.stretches(), self.columns());
        self.cells = (0..stretches.len() * columns).collect();
        for (stretch, (first, last)) in stretches.iter().enumerate() {
            for column in 0..columns {
                let field = stretch * columns + column;
                // No rule below: the cell goes on in the next stretch.
                if stretch + 1 < stretches.len() && !self.is_ruled(*last, column) {
                    self.join(field, field + columns);
                }
                let edge = self.edges.get(column + 1).copied().unwrap_or_default();
                let parted = (*first..*last).any(|line| {
                    self.char_at(line, edge)
                        .is_some_and(|c| is_upright(c) || is_corner(c))
                });
                if column + 1 < columns && !parted && first < last {
                    self.join(field, field + 1);
                }
            }
        }
    }

    fn join(&mut self, one: usize, other: usize) {
        let (one, other) = (self.cell(one), self.cell(other));
        for cell in &mut self.cells {
            if *cell == other {
                *cell = one;
            }
        }
    }

    fn cell(&self, field: usize) -> usize {
        self.cells.get(field).copied().unwrap_or(field)
    }

    /// The words of a line from one upright to another.
    fn words(&self, line: usize, from: usize, to: usize) -> Option<Span> {
        let own = self.lines.get(line)?;
        let chars = self.chars.get(line)?;
        let offset = |place: usize| chars.get(place).map_or(own.text.len(), |(at, _)| *at);
        let words = own.text.get(offset(from + 1)..offset(to))?;
        let lead = words.len() - words.trim_start().len();
        let begin = own.span.start() + offset(from + 1) + lead;
        (!words.trim().is_empty()).then(|| Span::new(begin, begin + words.trim().len()))
    }

    /// The column behind what stands in one on a line: cells may lie over several, and so may the words of one line of them, where no upright is drawn on it.
    fn end_on(&self, line: usize, stretch: usize, column: usize) -> usize {
        let columns = self.columns();
        let cell = self.cell(stretch * columns + column);
        let parted = |end: usize| {
            let edge = self.edges.get(end).copied().unwrap_or_default();
            self.char_at(line, edge)
                .is_none_or(|c| is_upright(c) || is_corner(c))
        };
        (column + 1..columns)
            .find(|end| {
                let joined = self.cell(stretch * columns + end) == cell || !parted(*end);
                !joined || self.is_ruled(line, *end)
            })
            .unwrap_or(columns)
    }

    /// For each field that stands for a cell, the pieces of its words from top to bottom.
    fn pieces(&self) -> Vec<Vec<Span>> {
        let (stretches, columns) = (self.stretches(), self.columns());
        let mut pieces = vec![Vec::new(); stretches.len() * columns];
        for (stretch, (first, last)) in stretches.iter().enumerate() {
            // A line that is a rule in some columns holds words in the others.
            for line in *first..=*last {
                let mut column = 0;
                while column < columns {
                    let end = self.end_on(line, stretch, column);
                    let place = self.edges.get(column).zip(self.edges.get(end));
                    let words = place.and_then(|(from, to)| self.words(line, *from, *to));
                    let mut own: Vec<usize> = (column..end)
                        .map(|column| self.cell(stretch * columns + column))
                        .collect();
                    own.dedup();
                    if let Some(words) = words.filter(|_| !self.is_ruled(line, column)) {
                        for cell in own {
                            if let Some(held) = pieces.get_mut(cell) {
                                held.push(words);
                            }
                        }
                    }
                    column = end;
                }
            }
        }
        pieces
    }

    /// The first stretch below the headings: below a double rule, or else below the first rule through every column.
    fn body(&self) -> Option<usize> {
        let columns = self.columns();
        let double = |line: usize| {
            self.chars
                .get(line)
                .is_some_and(|line| line.iter().any(|(_, c)| matches!(c, '=' | '═')))
        };
        let through = |line: usize| (0..columns).all(|column| self.is_ruled(line, column));
        let inner = || self.rules.iter().enumerate().skip(1);
        // A table whose first cell numbers an item has no headings.
        let marked = self.stretches().first().is_some_and(|(first, _)| {
            let place = self.edges.first().zip(self.edges.get(1));
            let words = place.and_then(|(from, to)| self.words(*first, *from, *to));
            words.is_some_and(|words| is_mark(self.lines, *first, words, columns == 2))
        });
        if marked {
            return Some(0);
        }
        inner()
            .find(|(_, line)| double(**line))
            .or_else(|| inner().find(|(_, line)| through(**line)))
            .map(|(index, _)| index)
    }

    fn table(&self) -> Option<Table> {
        let (stretches, columns) = (self.stretches(), self.columns());
        let body = self.body().filter(|body| *body < stretches.len())?;
        let pieces = self.pieces();
        let of = |stretch: usize, column: usize| {
            let cell = self.cell(stretch * columns + column);
            pieces.get(cell).cloned().unwrap_or_default()
        };
        let mut table = Table {
            headings: vec![Vec::new(); columns],
            ..Table::default()
        };
        for (column, heading) in table.headings.iter_mut().enumerate() {
            for stretch in 0..body {
                for piece in of(stretch, column) {
                    if !heading.contains(&piece) {
                        heading.push(piece);
                    }
                }
            }
        }
        for (stretch, (first, last)) in stretches.iter().enumerate().skip(body) {
            if (*first..*last)
                .filter(|line| self.begins_row(*line))
                .count()
                > 1
            {
                self.push_lines(&mut table, stretch, (*first, *last));
                continue;
            }
            let cells: Vec<Vec<Span>> = (0..columns).map(|column| of(stretch, column)).collect();
            let span = cells.iter().flatten().copied().reduce(Span::join);
            if let Some(span) = span {
                table.rows.push(Row { cells, span });
            }
        }
        (table.rows.len() >= 2).then_some(table)
    }

    /// Whether a line begins a row where no rule parts it from the one above: its first cell does not go on with a word, and another cell holds something.
    fn begins_row(&self, line: usize) -> bool {
        let words = |column: usize| {
            let place = self.edges.get(column).zip(self.edges.get(column + 1));
            place.and_then(|(from, to)| self.words(line, *from, *to))
        };
        let first = words(0).filter(|span| {
            let start = self.lines.get(line).map_or(0, |line| line.span.start());
            let text = self.lines.get(line).map_or("", |line| line.text);
            !text
                .get(span.start() - start..)
                .unwrap_or_default()
                .starts_with(char::is_lowercase)
        });
        first.is_some() && (1..self.columns()).any(|column| words(column).is_some())
    }

    /// Takes each line of a stretch for a row, or for more words of the row before.
    fn push_lines(&self, table: &mut Table, stretch: usize, (first, last): (usize, usize)) {
        let columns = self.columns();
        for index in first..last {
            let Some(line) = self.lines.get(index) else {
                continue;
            };
            let mut cells = vec![Span::default(); columns];
            let mut column = 0;
            while column < columns {
                let end = self.end_on(index, stretch, column);
                let place = self.edges.get(column).zip(self.edges.get(end));
                let words = place.and_then(|(from, to)| self.words(index, *from, *to));
                for cell in cells.iter_mut().take(end).skip(column) {
                    *cell = words.unwrap_or_default();
                }
                column = end;
            }
            table.push(&cells, line.content(), Words { line });
        }
    }
}

/// Whether words are the mark of an item: `4.1`, `W1.a`, `J3`. A dotted one may have its title behind it, `5.1 Splices`, where only the text follows.
fn is_mark(lines: &[Line<'_>], line: usize, words: Span, titled: bool) -> bool {
    const LONGEST: usize = 5;
    let text = lines.get(line).and_then(|line| {
        let start = line.span.start();
        line.text.get(words.start() - start..words.end() - start)
    });
    let first = text.and_then(|text| text.split_whitespace().next());
    let dotted = first.is_some_and(|mark| {
        mark.contains('.') && mark.chars().all(|c| c.is_ascii_digit() || c == '.')
    });
    text.filter(|_| !(titled && dotted))
        .or(first)
        .is_some_and(|text| {
            text.len() <= LONGEST
                && text.contains(|c: char| c.is_ascii_digit())
                && text.chars().all(|c| c.is_ascii_alphanumeric() || c == '.')
        })
}
