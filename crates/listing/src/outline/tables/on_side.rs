//! Columns of white space that lie on their side, without a rule or a caption: `Joint width, mm   12-20   over 20-38` over `Compression, max. %   10   20`.
//!
//! The first line must name the widths or ratings that its columns are for, and each line below one property with a cell under each of them. Where a line has
//! more cells or fewer, nobody knows which are empty.

use super::aligned::{Run, runs};
use super::case_pairs::names_case;
use super::{Row, Table, around, begins_value, speaks};
use crate::layout::{Line, is_rule};

/// The most lines below the first, and the most words of a label.
const MOST_ROWS: usize = 20;
const MOST_WORDS: usize = 6;

/// The table that begins at a line.
pub(super) fn table(lines: &[Line<'_>], start: usize) -> Option<(Table, usize)> {
    let region = lines.get(start..)?;
    let heads = runs(region.first()?);
    let (label, cases) = heads.split_first()?;
    if !is_label(label) || !names_case(label.words) || !are_cases(cases) {
        return None;
    }
    let ruled = usize::from(region.get(1).is_some_and(|line| is_rule(line.text)));
    let rows: Vec<(Vec<Run<'_>>, &Line<'_>)> = region
        .get(1 + ruled..)?
        .iter()
        .take(MOST_ROWS)
        .take_while(|line| !line.is_blank() && !is_rule(line.text) && !line.after_page_break)
        .map(|line| (runs(line), line))
        .collect();
    let whole = rows.iter().all(|(cells, line)| {
        let labelled = cells.first().is_some_and(is_label);
        cells.len() == heads.len() && labelled && stand_under(cells, &heads) && !speaks(line.text)
    });
    let valued = rows.iter().any(|(cells, _)| are_values(cells));
    if rows.is_empty() || !whole || !valued {
        return None;
    }
    let end = 1 + ruled + rows.len();
    let table = Table {
        headings: heads.iter().map(|head| vec![head.span]).collect(),
        rows: rows
            .iter()
            .map(|(cells, line)| Row {
                cells: cells.iter().map(|cell| vec![cell.span]).collect(),
                span: line.content(),
            })
            .collect(),
        span: around(region.get(..end)?)?,
        ..Table::default()
    };
    Some((table, start + end))
}

fn is_label(run: &Run<'_>) -> bool {
    run.from < 8
        && run.words.starts_with(char::is_alphabetic)
        && run.words.split_whitespace().count() <= MOST_WORDS
        && !run.words.ends_with([':', ';'])
}

/// Whether cells are widths or ratings, two at least, and hold no more.
fn are_cases(cells: &[Run<'_>]) -> bool {
    const LEADS: &[&str] = &["over ", "up to ", "to ", "under ", "above ", ">", "<", "≤"];
    const LONGEST: usize = 24;
    let is_case = |cell: &Run<'_>| {
        let lower = cell.words.to_lowercase();
        let bare = LEADS
            .iter()
            .find_map(|lead| lower.strip_prefix(lead))
            .unwrap_or(&lower);
        cell.words.len() <= LONGEST && bare.trim_start().starts_with(|c: char| c.is_ascii_digit())
    };
    cells.len() >= 2 && cells.iter().all(is_case)
}

/// Whether all cells behind the label are amounts or left empty.
fn are_values(cells: &[Run<'_>]) -> bool {
    let empty = |words: &str| words.chars().all(|c| matches!(c, '-' | '–' | '—'));
    let values = cells.get(1..).unwrap_or_default();
    values
        .iter()
        .all(|cell| begins_value(cell.words) || empty(cell.words))
        && values.iter().any(|cell| begins_value(cell.words))
}

/// Whether each cell stands under the case that it is counted to, and under no other.
fn stand_under(cells: &[Run<'_>], heads: &[Run<'_>]) -> bool {
    const ASIDE: usize = 3;
    let near = |(at, (cell, head)): (usize, (&Run<'_>, &Run<'_>))| {
        let next = heads.get(at + 1).map_or(usize::MAX, |next| next.from);
        at == 0 || cell.from + ASIDE >= head.from && cell.to <= next
    };
    cells.iter().zip(heads).enumerate().all(near)
}
