//! Lines drawn as boxes: `| F1 | PACKING | 4 pcf min |`.

use crate::layout::{Line, is_rule};
use crate::model::Span;

use super::case_pairs::names_case;
use super::labelled::{Pair, are_labels, table_of};
use super::unruled::is_rating;
use super::{Table, Words, add, around, is_deep_within};

/// Whether a line is a row of a box: it begins and ends with an upright, or holds two or more.
pub(crate) fn is_boxed(text: &str) -> bool {
    let text = text.trim();
    let uprights = text.matches(['|', '│']).count();
    let drawn =
        (uprights >= 2 && text.starts_with(['|', '│'])) || (uprights >= 1 && text.contains(" | "));
    drawn || is_in_marks(text)
}

/// Whether a line is drawn with exclamation marks for uprights, as line printers did: `! 2 hr ! 4 in. !`
fn is_in_marks(text: &str) -> bool {
    text.starts_with("! ") && text.ends_with(" !") && text.matches('!').count() > 2
}

/// The cells of a boxed line, each the place of its visible words; an empty cell is an empty span.
pub(crate) fn cells(line: &Line<'_>) -> Vec<Span> {
    let base = line.span.start();
    between_uprights(line.text)
        .into_iter()
        .map(|(start, end)| trimmed(line.text, start, end, base))
        .collect()
}

/// The stretches between the uprights of a line, in bytes.
fn between_uprights(text: &str) -> Vec<(usize, usize)> {
    let mut found = Vec::new();
    let mut start = 0;
    let in_marks = is_in_marks(text.trim());
    let is_upright = |c: char| matches!(c, '|' | '│') || in_marks && c == '!';
    let uprights = text.char_indices().filter(|(_, c)| is_upright(*c));
    for (at, upright) in uprights.chain(core::iter::once((text.len(), ' '))) {
        found.push((start, at));
        start = at + upright.len_utf8();
    }
    // What stands outside the first and last upright is no cell when it is empty. In a row without a first one, the last leads to an empty cell.
    if text.trim_start().starts_with(is_upright) {
        found.remove(0);
        if text.trim_end().ends_with(is_upright) {
            found.pop();
        }
    }
    found
}

/// The cells of a line for each column of a table: a cell over several columns is in each of them.
fn cells_by_column(line: &Line<'_>, columns: &[(usize, usize)]) -> Vec<Span> {
    let own = cells(line);
    if own.len() == columns.len() {
        return own;
    }
    let places = in_characters(line.text);
    let over = |column: &(usize, usize)| {
        let middle = usize::midpoint(column.0, column.1);
        let at = places
            .iter()
            .position(|(start, end)| *start <= middle && middle < *end)?;
        own.get(at).copied()
    };
    columns
        .iter()
        .map(|column| over(column).unwrap_or_default())
        .collect()
}

/// The stretches between the uprights of a line, in characters.
fn in_characters(text: &str) -> Vec<(usize, usize)> {
    let characters = |at: usize| text.get(..at).map_or(0, |before| before.chars().count());
    between_uprights(text)
        .into_iter()
        .map(|(start, end)| (characters(start), characters(end)))
        .collect()
}

fn trimmed(text: &str, start: usize, end: usize, base: usize) -> Span {
    let words = text.get(start..end).unwrap_or_default();
    let from = start + (words.len() - words.trim_start().len());
    let to = from + words.trim().len();
    Span::new(base + from, base + to)
}

/// Rows between uprights, with a rule below the headings.
pub(super) fn boxed_table(lines: &[Line<'_>], start: usize) -> Option<(Table, usize)> {
    let is_of_it = |text: &str| is_boxed(text) || is_rule(text);
    if is_deep_within(lines, start, is_of_it) {
        return None;
    }
    let region = lines.get(start..)?;
    let len = region.iter().take_while(|line| is_of_it(line.text)).count();
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
        .map(|at| at + first_row)
        .or_else(|| heads_without_rule(region, first_row).then_some(first_row + 1));
    let columns = region
        .iter()
        .filter(|line| !is_rule(line.text))
        .map(|line| in_characters(line.text))
        .max_by_key(Vec::len)?;
    if rule.is_none()
        && let Some(table) = labels(region)
    {
        return Some((table, start + len));
    }
    let mut table = Table {
        headings: vec![Vec::new(); columns.len()],
        ..Table::default()
    };
    for (index, line) in region
        .iter()
        .enumerate()
        .filter(|(_, line)| !is_rule(line.text))
    {
        if rule.is_some_and(|rule| index < rule) {
            add(&mut table.headings, &cells_by_column(line, &columns));
        } else {
            table.push(
                &cells_by_column(line, &columns),
                line.content(),
                Words { line },
            );
        }
    }
    table.span = around(region)?;
    Some((table, start + len))
}

/// The labels and values that rows of two cells are.
fn labels(region: &[Line<'_>]) -> Option<Table> {
    let pairs: Vec<Pair<'_>> = region
        .iter()
        .map(|line| {
            let words = Words { line };
            let [label, value] = <[Span; 2]>::try_from(cells(line)).ok()?;
            Some(Pair {
                label: (words.of(label), label),
                value: (words.of(value), value),
            })
        })
        .collect::<Option<_>>()?;
    let span = around(region)?;
    are_labels(&pairs).then(|| table_of(&pairs, span))
}

/// Whether the first row of a box without a rule heads the others: it has a word in every cell and no number but ratings, and they have numbers. The
/// first of two columns must name a case.
fn heads_without_rule(region: &[Line<'_>], first: usize) -> bool {
    const FEWEST_ROWS: usize = 3;
    let numbered = |text: &str| text.contains(|c: char| c.is_ascii_digit());
    let Some(head) = region.get(first) else {
        return false;
    };
    let heads: Vec<&str> = between_uprights(head.text)
        .into_iter()
        .filter_map(|(start, end)| head.text.get(start..end))
        .map(str::trim)
        .collect();
    let Some((case, others)) = heads.split_first() else {
        return false;
    };
    let worded = |cell: &&str| cell.contains(char::is_alphabetic);
    let filled = heads.iter().all(worded);
    let ratings: Vec<&str> = others
        .iter()
        .copied()
        .filter(|cell| holds_number(cell))
        .collect();
    let told = others.len() >= 2 || others.len() == 1 && names_case(case);
    let rows = region.get(first + 1..).unwrap_or_default();
    filled
        && told
        && !holds_number(case)
        && (ratings.is_empty() || is_rating(&ratings))
        && rows.len() + 1 >= FEWEST_ROWS
        && rows.iter().all(|row| numbered(row.text))
}

/// Whether words hold a digit that isn't of a unit, as in `kg/m3`.
pub(super) fn holds_number(words: &str) -> bool {
    let before = core::iter::once(' ').chain(words.chars());
    words
        .chars()
        .zip(before)
        .any(|(c, before)| c.is_ascii_digit() && !before.is_alphabetic())
}
