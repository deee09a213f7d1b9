//! A column that says row by row how the values beside it are meant: `Property | Limit | Wall joint | Floor joint` over `Lap, mm | min. | 13 | 25`.
//!
//! A column with any cell that no list of limits knows is none of these. A row whose label says another limit than its column, or whose column
//! says that a range stands beside it where one number does, is left to a person.

use super::columns::Row;
use super::heading::Heading;
use super::records::{heads_limits, limit};

/// Limits the rows by such a column, and gives the column, which asks nothing itself.
pub(super) fn limit_rows(headings: &[Heading], rows: &mut [Row], label: usize) -> Option<usize> {
    let column = headings.iter().position(heads_limits)?;
    let known = |row: &Row| row.is_alone() || limit(row.text(column)).is_some();
    let says = |row: &Row| {
        row.text(column)
            .contains(|c: char| !matches!(c, '-' | '–' | '—'))
    };
    if column <= label || column + 1 >= headings.len() {
        return None;
    }
    if !rows.iter().all(known) || !rows.iter().any(says) {
        return None;
    }
    for row in rows {
        let Some(said) = limit(row.text(column)) else {
            continue;
        };
        let spread = said.is_none() && says(row);
        if let Some(label) = row.label.as_mut() {
            let against = label.relation.is_some() && said.is_some() && label.relation != said;
            label.relation = label.relation.or(said).filter(|_| !against);
            label.limit_unknown |= against || spread;
        }
    }
    Some(column)
}
