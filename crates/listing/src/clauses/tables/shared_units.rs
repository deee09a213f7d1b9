//! Units of a column that names none, where its numbers stand in pairs, `400 (16)`, and another column of the table names such a pair: `mm (in.)`.
//!
//! They are taken only where every number of the column says the same in both.

use measure::dual::Agreement;
use measure::{Dimension, Unit};

use super::columns::Row;
use super::heading::Heading;
use super::is_blank_mark;
use crate::phrase::cell;

/// Gives columns of paired numbers the pair of units that the table's other columns name.
pub(super) fn share(headings: &mut [Heading], rows: &[Row]) {
    let Some((first, second)) = named_pair(headings) else {
        return;
    };
    for (column, heading) in headings.iter_mut().enumerate() {
        let open = heading.unit.is_none() && !heading.unit_unknown && heading.selects.is_none();
        if open && is_paired(rows, column, first, second) {
            heading.unit = Some(first);
            heading.second_unit = Some(second);
        }
    }
}

/// The one pair of lengths that the headings name.
fn named_pair(headings: &[Heading]) -> Option<(Unit, Unit)> {
    let pairs = headings.iter().filter_map(|heading| {
        let pair = (heading.unit?, heading.second_unit?);
        (pair.0.dimension() == Dimension::Length).then_some(pair)
    });
    let mut pairs = pairs.collect::<Vec<_>>();
    pairs.dedup();
    match pairs.as_slice() {
        [pair] => Some(*pair),
        _ => None,
    }
}

/// Whether all that stands in a column are numbers that say the same in both units; one row alone tells nothing.
fn is_paired(rows: &[Row], column: usize, first: Unit, second: Unit) -> bool {
    const FEWEST: usize = 2;
    let cells: Vec<&str> = rows
        .iter()
        .map(|row| row.text(column))
        .filter(|text| !text.is_empty() && !is_blank_mark(text))
        .collect();
    let agrees = |text: &&str| {
        let bare = !text.contains(char::is_alphabetic);
        let amount = cell(text, Some(first), Some(second)).filter(|_| bare);
        let other = amount.and_then(|amount| amount.second);
        other.is_some_and(|other| other.agreement != Agreement::InConflict)
    };
    cells.len() >= FEWEST && cells.iter().all(agrees)
}
