//! Tables drawn with rules or uprights, as columns of cells.

use crate::layout::{Line, is_rule};
use crate::model::Span;
use crate::sentences::{ends_in_abbreviation, sentences};

use super::boxes::{cells, is_boxed};

/// A table: the heading of each column, and the rows.
#[derive(Debug, Clone, Default)]
pub(crate) struct Table {
    /// For each column, the pieces of its heading from top to bottom.
    pub(crate) headings: Vec<Vec<Span>>,
    /// The rows.
    pub(crate) rows: Vec<Row>,
    /// Everything of it, headings and rules included.
    pub(crate) span: Span,
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
    boxed_table(lines, start).or_else(|| ruled_table(lines, start))
}

/// A table without rule or caption: headings without numbers over rows of numbers, three columns or more, no cell left empty and none
/// with more than a few words.
pub(crate) fn plain_table_at(lines: &[Line<'_>], start: usize) -> Option<(Table, usize)> {
    const WORDS: usize = 5;
    const COLUMNS: usize = 3;
    let heading = lines
        .get(start)
        .filter(|line| gaps(line.text) + 1 >= COLUMNS)?;
    if speaks(heading.text) {
        return None;
    }
    let (table, end) = unruled_table(lines, start)?;
    let numeric = |line: &Line<'_>| {
        let words = line.text.trim_start();
        words.starts_with(|c: char| c.is_ascii_digit() || matches!(c, '<' | '>' | '≤' | '≥'))
            || ["up to ", "over ", "above "]
                .iter()
                .any(|opening| words.to_lowercase().starts_with(opening))
    };
    let rows = lines
        .get(start..end)?
        .iter()
        .filter(|line| line.text.contains(|c: char| c.is_ascii_digit()));
    let short = rows.clone().all(|line| {
        line.text
            .trim()
            .split("  ")
            .all(|cell| cell.split_whitespace().count() <= WORDS)
    });
    let full = table.headings.len() >= COLUMNS
        && table.headings.iter().all(|heading| !heading.is_empty())
        && table
            .rows
            .iter()
            .all(|row| row.cells.iter().all(|cell| cell.len() == 1));
    (short && full && rows.clone().all(numeric)).then_some((table, end))
}

/// The table that begins at a line just below a caption: one that is drawn, or else columns of white space without any rule.
pub(crate) fn captioned_table_at(lines: &[Line<'_>], start: usize) -> Option<(Table, usize)> {
    table_at(lines, start).or_else(|| unruled_table(lines, start))
}

/// Rows in columns of white space, under headings that hold no number; a blank line may part the two. The first line that is no row ends
/// the table.
fn unruled_table(lines: &[Line<'_>], start: usize) -> Option<(Table, usize)> {
    const MOST_HEADING_LINES: usize = 4;
    let region = lines.get(start..)?;
    let block = |from: usize| {
        let rest = region.get(from..).unwrap_or_default();
        rest.iter()
            .take_while(|line| !line.is_blank() && !is_rule(line.text))
            .count()
    };
    let first = block(0);
    let numbered = |line: &Line<'_>| line.text.contains(|c: char| c.is_ascii_digit());
    let headed = region
        .iter()
        .take(first)
        .take_while(|line| !numbered(line))
        .count();
    let (headings, rows_start) = if (1..=MOST_HEADING_LINES).contains(&headed) && headed < first {
        (headed, headed)
    } else if headed == first && (1..=MOST_HEADING_LINES).contains(&first) {
        (first, first + 1)
    } else {
        return None;
    };
    let is_row = |line: &&Line<'_>| numbered(line) && gaps(line.text) >= 1;
    let rows_len = region
        .get(rows_start..rows_start + block(rows_start))?
        .iter()
        .take_while(is_row)
        .count();
    let end = rows_start + rows_len;
    let (headings, rows) = (region.get(..headings)?, region.get(rows_start..end)?);
    let plain = rows.len() >= 2 && headings.iter().any(|line| gaps(line.text) >= 1);
    let columns = columns(headings, rows);
    if !plain || columns.len() < 2 {
        return None;
    }
    let mut table = filled(headings, rows, &columns);
    table.span = around(region.get(..end)?)?;
    Some((table, start + end))
}

/// Rows between uprights, with a rule below the headings.
fn boxed_table(lines: &[Line<'_>], start: usize) -> Option<(Table, usize)> {
    let region = lines.get(start..)?;
    let len = region
        .iter()
        .take_while(|line| is_boxed(line.text) || is_rule(line.text))
        .count();
    let region = region.get(..len)?;
    let rows = region
        .iter()
        .filter(|line| is_boxed(line.text) && !is_rule(line.text))
        .count();
    if rows < 2 {
        return None;
    }
    let first_row = region.iter().position(|line| !is_rule(line.text))?;
    let rule = region
        .iter()
        .skip(first_row)
        .position(|line| is_rule(line.text))
        .map(|at| at + first_row);
    let width = region
        .iter()
        .filter(|line| !is_rule(line.text))
        .map(|line| cells(line).len())
        .max()?;
    let mut table = Table {
        headings: vec![Vec::new(); width],
        ..Table::default()
    };
    for (index, line) in region
        .iter()
        .enumerate()
        .filter(|(_, line)| !is_rule(line.text))
    {
        let found = cells(line);
        if rule.is_some_and(|rule| index < rule) {
            add(&mut table.headings, &found);
        } else {
            table.push(&found, line.content());
        }
    }
    table.span = around(region)?;
    Some((table, start + len))
}

/// Rows in columns of white space, headed by a rule: `rule, headings, rule, rows` or `headings, rule, rows`.
fn ruled_table(lines: &[Line<'_>], start: usize) -> Option<(Table, usize)> {
    const MOST_HEADING_LINES: usize = 5;
    let region = lines.get(start..)?;
    let mut at = 0;
    let ruled_above = region.first().is_some_and(|line| is_rule(line.text));
    if ruled_above {
        at += 1;
    }
    let heading_start = at;
    while region
        .get(at)
        .is_some_and(|line| !line.is_blank() && !is_rule(line.text))
        && at - heading_start <= MOST_HEADING_LINES
    {
        at += 1;
    }
    let headings = region.get(heading_start..at)?;
    let rule = region.get(at).filter(|line| is_rule(line.text))?;
    let split_rule = rule.text.trim().contains("  ");
    if headings.is_empty()
        || headings.len() > MOST_HEADING_LINES
        || !headings.iter().any(|line| gaps(line.text) >= 1)
        || headings.iter().any(|line| speaks(line.text))
    {
        return None;
    }
    let rows_start = at + 1;
    let rows_len = region
        .get(rows_start..)?
        .iter()
        .take_while(|line| !line.is_blank() && !is_rule(line.text))
        .count();
    let rows = region.get(rows_start..rows_start + rows_len)?;
    let columnar = rows.iter().filter(|line| gaps(line.text) >= 1).count();
    let plainly_columnar = rows_len >= 3
        && rows
            .iter()
            .chain(headings)
            .filter(|line| gaps(line.text) >= 2)
            .count()
            >= rows_len;
    if rows_len < 2
        || columnar * 2 < rows_len * 2 - 1
        || !(ruled_above || split_rule || plainly_columnar)
    {
        return None;
    }
    let columns = columns(headings, rows);
    if columns.len() < 2 {
        return None;
    }
    let mut table = filled(headings, rows, &columns);
    let mut end = rows_start + rows_len;
    if region.get(end).is_some_and(|line| is_rule(line.text)) {
        end += 1;
    }
    table.span = around(region.get(..end)?)?;
    Some((table, start + end))
}

/// A table of white space: headings and rows cut at its columns.
fn filled(headings: &[Line<'_>], rows: &[Line<'_>], columns: &[(usize, usize)]) -> Table {
    let mut table = Table {
        headings: vec![Vec::new(); columns.len()],
        ..Table::default()
    };
    for line in headings {
        add(&mut table.headings, &split_heading(line, columns));
    }
    for line in rows {
        table.push(&split(line, columns), line.content());
    }
    table
}

impl Table {
    /// Adds a row, or more words to the row before when the first cell is empty.
    fn push(&mut self, cells: &[Span], span: Span) {
        let continues = cells.first().is_some_and(|cell| cell.is_empty());
        if continues && let Some(row) = self.rows.last_mut() {
            add(&mut row.cells, cells);
            row.span = row.span.join(span);
            return;
        }
        let mut row = Row {
            cells: vec![Vec::new(); self.headings.len().max(cells.len())],
            span,
        };
        add(&mut row.cells, cells);
        self.rows.push(row);
    }
}

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

/// How many gaps of two or more spaces stand between words of a line.
fn gaps(text: &str) -> usize {
    text.trim()
        .split("  ")
        .filter(|part| !part.trim().is_empty())
        .count()
        .saturating_sub(1)
}

/// The columns of a table, as ranges of character places: runs that some row writes in, parted by two places that no row
/// writes in, or by one where a heading begins just after it.
fn columns(headings: &[Line<'_>], rows: &[Line<'_>]) -> Vec<(usize, usize)> {
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
fn split(line: &Line<'_>, columns: &[(usize, usize)]) -> Vec<Span> {
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

/// The cells of a heading's line. Its words stand in runs with one space between them, and a run heads the column that it stands over; a
/// run over several columns goes to them word by word.
fn split_heading(line: &Line<'_>, columns: &[(usize, usize)]) -> Vec<Span> {
    let mut cells = vec![Span::default(); columns.len()];
    let words = words(line);
    let runs = || words.chunk_by(|one, next| next.0 <= one.1 + 1);
    let one_each = runs().count() == columns.len();
    for (index, run) in runs().enumerate() {
        let (Some(first), Some(last)) = (run.first(), run.last()) else {
            continue;
        };
        let under: Vec<usize> = (0..columns.len())
            .filter(|index| {
                columns
                    .get(*index)
                    .is_some_and(|(start, end)| *start < last.1 && first.0 < *end)
            })
            .collect();
        let own = match under.as_slice() {
            [only] if !one_each => Some(*only),
            _ if one_each => Some(index),
            _ => None,
        };
        if let Some(cell) = own.and_then(|own| cells.get_mut(own)) {
            let span = first.2.join(last.2);
            *cell = if cell.is_empty() {
                span
            } else {
                cell.join(span)
            };
            continue;
        }
        for (from, to, span) in run {
            if let Some(cell) =
                column_of(*from, *to, columns).and_then(|index| cells.get_mut(index))
            {
                *cell = if cell.is_empty() {
                    *span
                } else {
                    cell.join(*span)
                };
            }
        }
    }
    cells
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
}
