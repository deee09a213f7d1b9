//! A column of units between a row's label and its values: `Property | Unit | Min | Max`. Its cell is the unit of the row's bare numbers; one that
//! names no unit leaves the row's numbers to a person, as they are no counts.

use super::columns::Row;
use super::heading::Heading;
use super::records::{heads_units, unit};

/// The column headed "Unit", behind the label.
pub(super) fn unit_column(headings: &[Heading], label: usize) -> Option<usize> {
    let column = headings.iter().position(heads_units)?;
    (column > label).then_some(column)
}

/// Gives each row's label the unit of its row.
pub(super) fn give_units(rows: &mut [Row], column: usize) {
    for row in rows {
        let named = unit(without_of_what(row.text(column)));
        row.unit_unknown = named.is_none();
        if let (Some(Some(unit)), Some(label)) = (named, row.label.as_mut()) {
            label.unit = Some(unit);
            label.second_unit = None;
        }
    }
}

/// `% by mass`, `% (m/m)`: the share alone.
fn without_of_what(words: &str) -> &str {
    words.strip_prefix('%').map_or(words, |_| "%")
}
