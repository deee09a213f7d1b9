//! Tables of white space under a rule.

use crate::layout::{Line, is_rule};

use super::grid::{columns, filled, gaps};
use super::{Table, around, speaks};

/// Rows in columns of white space, headed by a rule: `rule, headings, rule, rows` or `headings, rule, rows`.
pub(super) fn ruled_table(lines: &[Line<'_>], start: usize) -> Option<(Table, usize)> {
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
