//! Tables whose cells are parted by tabs, as text copied from a page or a sheet has them: the first line heads the columns.

use super::{Table, around};
use crate::layout::Line;
use crate::model::Span;

/// The fewest cells of a row.
const FEWEST: usize = 3;

/// The table whose headings stand on a line, and the line after it. Each line has as many cells as the first.
pub(super) fn tabbed_table(lines: &[Line<'_>], start: usize) -> Option<(Table, usize)> {
    let region = lines.get(start..)?;
    let headings = cells(region.first()?);
    if headings.len() < FEWEST {
        return None;
    }
    let rows = region
        .iter()
        .skip(1)
        .take_while(|line| cells(line).len() == headings.len())
        .count();
    let plain = headings.iter().all(|cell| !cell.is_empty());
    if rows == 0 || !plain {
        return None;
    }
    let mut table = Table {
        headings: headings.into_iter().map(|cell| vec![cell]).collect(),
        ..Table::default()
    };
    for line in region.iter().skip(1).take(rows) {
        table.push_row(&cells(line), line.content());
    }
    table.span = around(region.get(..=rows)?)?;
    Some((table, start + rows + 1))
}

/// The cells of a line, an empty span for an empty one; one cell where it has no tab between words.
fn cells(line: &Line<'_>) -> Vec<Span> {
    let mut start = line.span.start();
    line.text
        .split('\t')
        .map(|cell| {
            let from = start + cell.len() - cell.trim_start().len();
            start += cell.len() + 1;
            Span::new(from, from + cell.trim().len())
        })
        .collect()
}

/// Whether a line may head such a table, or be a row of one.
pub(crate) fn is_tabbed(text: &str) -> bool {
    text.trim().matches('\t').count() + 1 >= FEWEST
}
