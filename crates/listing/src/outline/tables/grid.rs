//! The columns of a table of white space, and its cells.

use crate::layout::Line;
use crate::model::Span;

use super::{Table, Words, add};

/// A rule within a heading: the place of the heading's line below it, and where it stands.
pub(super) type InnerRule = (usize, (usize, usize));

/// A table of white space: headings and rows cut at its columns. What stands over an inner rule heads all columns under the rule.
pub(super) fn filled(
    headings: &[Line<'_>],
    rows: &[Line<'_>],
    columns: &[(usize, usize)],
    inner: &[InnerRule],
) -> Table {
    let mut table = Table {
        headings: vec![Vec::new(); columns.len()],
        starts: columns.iter().map(|(start, _)| *start).collect(),
        ..Table::default()
    };
    for cells in heading_cells(headings, columns, inner) {
        add(&mut table.headings, &cells);
    }
    head_behind_marks(&mut table.headings, rows, columns);
    let product = product_column(headings, columns);
    for line in rows {
        let cells = split(line, columns);
        // `(25 to 51)` under `1 to 2` says the same in another unit.
        let alone = cells
            .iter()
            .skip(1)
            .all(|cell| cell.is_empty() || Words { line }.of(*cell).starts_with('('));
        let another = product.is_some_and(|product| {
            let words = Words { line }.of(cells.get(product).copied().unwrap_or_default());
            words.starts_with(|c: char| c.is_uppercase() || c.is_ascii_digit())
        });
        if another {
            table.push_row(&cells, line.content());
        } else if alone && line.text.trim_start().starts_with('(') && !table.rows.is_empty() {
            table.go_on(&cells, line.content());
        } else {
            table.push(&cells, line.content(), Words { line });
        }
    }
    table
}

/// Where the first column only numbers the rows, `4.1  Layers, minimum`, the one heading over it and the next is of what the rows are.
fn head_behind_marks(headings: &mut [Vec<Span>], rows: &[Line<'_>], columns: &[(usize, usize)]) {
    const LONGEST: usize = 5;
    let is_mark = |words: &str| {
        words.is_empty()
            || words.len() <= LONGEST
                && words.contains('.')
                && words.chars().all(|c| c.is_ascii_digit() || c == '.')
    };
    let [first, second, ..] = headings else {
        return;
    };
    let marks = rows.iter().all(|line| {
        let cells = split(line, columns);
        is_mark(Words { line }.of(cells.first().copied().unwrap_or_default()))
    });
    if second.is_empty() && marks {
        core::mem::swap(first, second);
    }
}

/// The column headed "Product", in which each line names another; none in a table without a column of makers.
fn product_column(headings: &[Line<'_>], columns: &[(usize, usize)]) -> Option<usize> {
    let line = headings.last()?;
    let cells = split(line, columns);
    let headed = |names: &[&str]| {
        cells.iter().position(|cell| {
            let words = Words { line }.of(*cell).to_lowercase();
            names.contains(&words.as_str())
        })
    };
    headed(&["maker", "manufacturer", "company", "supplier", "producer"])?;
    headed(&["product", "products", "product name", "name", "trade name"])
}

/// How many gaps of two or more spaces stand between words of a line.
pub(super) fn gaps(text: &str) -> usize {
    text.trim()
        .split("  ")
        .filter(|part| !part.trim().is_empty())
        .count()
        .saturating_sub(1)
}

/// The columns of a table, as ranges of character places: runs that some row writes in, parted by two places that no row
/// writes in, or by one where a heading begins just after it.
pub(super) fn columns(headings: &[Line<'_>], rows: &[Line<'_>]) -> Vec<(usize, usize)> {
    let written = |lines: &[Line<'_>]| {
        let width = lines
            .iter()
            .map(|line| line.text.chars().count())
            .max()
            .unwrap_or(0);
        let mut written = vec![false; width + 2];
        for line in lines {
            for (slot, c) in written.iter_mut().zip(line.text.chars()) {
                *slot |= !c.is_whitespace();
            }
        }
        written
    };
    let in_rows = written(rows);
    let in_headings = written(headings);
    // A heading stands over its column, not always flush with it.
    let heading_begins = |from: usize, at: usize| {
        const ASIDE: usize = 3;
        let mark = |at: usize| in_headings.get(at).copied().unwrap_or_default();
        (at.saturating_sub(ASIDE).max(from + 1)..=at)
            .any(|at| mark(at) && at >= 2 && !mark(at - 1) && !mark(at - 2))
    };
    let mut columns: Vec<(usize, usize)> = Vec::new();
    let mut start = None;
    for at in 0..in_rows.len() {
        let here = in_rows.get(at).copied().unwrap_or_default();
        let next = in_rows.get(at + 1).copied().unwrap_or_default();
        match start {
            None if here => start = Some(at),
            Some(from)
                if !here
                    && (!next || (heading_begins(from, at + 1) && begins_cells(rows, at + 1))) =>
            {
                columns.push((from, at));
                start = None;
            }
            _ => {}
        }
    }
    columns
}

/// Whether what stands at a place begins a cell in every row that has something there: "4 in." is never parted from its unit.
fn begins_cells(rows: &[Line<'_>], place: usize) -> bool {
    rows.iter()
        .filter_map(|line| line.text.chars().nth(place))
        .all(|c| !c.is_lowercase() && !matches!(c, '(' | '%' | '"'))
}

/// The cells of a line: its words by the column that their middle is nearest to.
pub(super) fn split(line: &Line<'_>, columns: &[(usize, usize)]) -> Vec<Span> {
    let mut cells = vec![Span::default(); columns.len()];
    for (from, to, span) in words(line) {
        if let Some(cell) = column_of(from, to, columns).and_then(|index| cells.get_mut(index)) {
            *cell = if cell.is_empty() {
                span
            } else {
                cell.join(span)
            };
        }
    }
    cells
}

/// A run of a line: words with one space between them.
#[derive(Clone)]
struct Run {
    /// Whether it begins with a small letter.
    small: bool,
    from: usize,
    to: usize,
    span: Span,
    words: Vec<(usize, usize, Span)>,
}

fn runs(line: &Line<'_>) -> Vec<Run> {
    words(line)
        .chunk_by(|one, next| next.0 <= one.1 + 1)
        .filter_map(|words| {
            let (first, last) = (words.first()?, words.last()?);
            let begins = line.text.chars().nth(first.0)?;
            Some(Run {
                small: begins.is_lowercase(),
                from: first.0,
                to: last.1,
                span: first.2.join(last.2),
                words: words.to_vec(),
            })
        })
        .collect()
}

/// The cells of the heading's lines, one list a line. A run heads the column that it stands over; one over several columns that have
/// headings of their own below heads each of them, and else goes to them word by word.
fn heading_cells(
    lines: &[Line<'_>],
    columns: &[(usize, usize)],
    inner: &[InnerRule],
) -> Vec<Vec<Span>> {
    let all: Vec<Parted> = lines.iter().map(parted).collect();
    let lines: Vec<Vec<Run>> = all.iter().map(|(words, _)| words.clone()).collect();
    lines
        .iter()
        .enumerate()
        .map(|(index, line)| {
            let below = lines.get(index + 1..).unwrap_or_default();
            let rules = inner.iter().filter(|(below, _)| *below == index + 1);
            let drawn = all.get(index + 1).map(|(_, drawn)| drawn.as_slice());
            let rules: Vec<(usize, usize)> = rules
                .map(|(_, rule)| *rule)
                .chain(drawn.unwrap_or_default().iter().copied())
                .collect();
            line_cells(line, below, columns, &rules)
        })
        .collect()
}

/// The runs of a heading's line: those of words, and where rules are drawn between them.
type Parted = (Vec<Run>, Vec<(usize, usize)>);

fn parted(line: &Line<'_>) -> Parted {
    const SHORTEST: usize = 4;
    let is_drawn = |run: &Run| {
        let length = run.to - run.from;
        let mut chars = line.text.chars().skip(run.from).take(length);
        length >= SHORTEST && chars.all(|c| matches!(c, '-' | '–' | '_' | '='))
    };
    let (drawn, words): (Vec<Run>, Vec<Run>) = runs(line).into_iter().partition(is_drawn);
    let places = drawn.iter().map(|run| (run.from, run.to)).collect();
    (words, places)
}

fn line_cells(
    line: &[Run],
    below: &[Vec<Run>],
    columns: &[(usize, usize)],
    rules: &[(usize, usize)],
) -> Vec<Span> {
    let mut cells = vec![Span::default(); columns.len()];
    let mut put = |index: usize, span: Span| {
        if let Some(cell) = cells.get_mut(index) {
            *cell = if cell.is_empty() {
                span
            } else {
                cell.join(span)
            };
        }
    };
    if line.len() == columns.len() {
        for (index, run) in line.iter().enumerate() {
            put(index, run.span);
        }
        return cells;
    }
    for (index, run) in line.iter().enumerate() {
        let rule = rules
            .iter()
            .find(|(from, to)| *from <= run.from && run.to <= *to);
        if let Some((from, to)) = rule {
            let under = columns.iter().enumerate().filter(|(_, (start, end))| {
                let middle = usize::midpoint(*start, *end);
                (*from..*to).contains(&middle)
            });
            under.for_each(|(index, _)| put(index, run.span));
            continue;
        }
        let grouped = grouped(run, line.get(index + 1), below, columns);
        let under: Vec<usize> = (0..columns.len())
            .filter(|index| {
                columns
                    .get(*index)
                    .is_some_and(|(start, end)| *start < run.to && run.from < *end)
            })
            .collect();
        match (grouped.as_slice(), under.as_slice()) {
            (group @ [_, _, ..], _) => group.iter().for_each(|index| put(*index, run.span)),
            (_, [only]) => put(*only, run.span),
            _ => {
                for (from, to, span) in &run.words {
                    if let Some(index) = column_of(*from, *to, columns) {
                        put(index, *span);
                    }
                }
            }
        }
    }
    cells
}

/// The columns that a run heads together: from where it begins to where the next begins, each with a heading of its own below, all in
/// capitals or all in small letters.
fn grouped(
    run: &Run,
    next: Option<&Run>,
    below: &[Vec<Run>],
    columns: &[(usize, usize)],
) -> Vec<usize> {
    const ASIDE: usize = 2;
    let Some(own) = below.first() else {
        return Vec::new();
    };
    let heading_of = |(start, end): (usize, usize)| {
        own.iter()
            .find(|run| run.from < end + ASIDE && start < run.to + ASIDE)
    };
    let mut group = Vec::new();
    let mut small = None;
    for (index, (start, end)) in columns.iter().copied().enumerate() {
        let Some(heading) = heading_of((start, end)) else {
            continue;
        };
        let begins = start.min(heading.from);
        // A column set a little before the next run is under that one.
        let reach = next.map_or(run.to + ASIDE, |next| next.from.saturating_sub(ASIDE));
        if begins + ASIDE < run.from || begins >= reach {
            continue;
        }
        if *small.get_or_insert(heading.small) == heading.small {
            group.push(index);
        }
    }
    group
}

/// The column that a word stands in, or else the nearest to its middle.
fn column_of(from: usize, to: usize, columns: &[(usize, usize)]) -> Option<usize> {
    columns
        .iter()
        .position(|(start, end)| *start <= from && from < *end)
        .or_else(|| nearest(columns, usize::midpoint(from, to)))
}

fn nearest(columns: &[(usize, usize)], place: usize) -> Option<usize> {
    let distance = |(start, end): &(usize, usize)| ((start + end) / 2).abs_diff(place);
    columns
        .iter()
        .enumerate()
        .min_by_key(|(_, column)| distance(column))
        .map(|(index, _)| index)
}

/// The words of a line with their character places.
fn words(line: &Line<'_>) -> Vec<(usize, usize, Span)> {
    let mut words = Vec::new();
    let mut open: Option<(usize, usize)> = None;
    let end = core::iter::once((line.text.len(), ' '));
    for (place, (at, c)) in line.text.char_indices().chain(end).enumerate() {
        match (open, c.is_whitespace()) {
            (None, false) => open = Some((place, at)),
            (Some((from, start)), true) => {
                words.push((
                    from,
                    place,
                    Span::new(line.span.start() + start, line.span.start() + at),
                ));
                open = None;
            }
            _ => {}
        }
    }
    words
}
