//! Tables of which each row is one requirement, every part of it in a column of its own: `Part | Property | Limit | Value | Unit | When`,
//! `No. | Requirement | Min | Max | Unit`, `Item | 1 hr | 2 hr | Unit`.
//!
//! A mark such as "do." repeats the cell above. A limit or a unit that isn't known leaves the row as words, and so does a label that says
//! "minimum" beside a value under "Max"; a column of cases that says more than "all" is the row's condition. A table with a heading that no
//! list knows is none of these, but for the one column that says what is asked.

mod cases;
mod columns;
mod label;
mod roles;
mod row;
mod spread;
mod units;

use super::columns::Row;
use super::ditto::repeats;
use super::heading::Heading;
use super::labels::group_rows;
use crate::clauses::{Around, Yield};
use crate::layout::Flow;
use crate::model::Span;
use crate::outline::Table;

use self::columns::Records;
pub(super) use self::units::limit;

/// Whether a heading is that of units.
pub(super) fn heads_units(heading: &Heading) -> bool {
    matches!(roles::role(&heading.words), roles::Role::Unit)
}

/// Whether a heading is that of how values are meant.
pub(super) fn heads_limits(heading: &Heading) -> bool {
    matches!(roles::role(&heading.words), roles::Role::Limit)
}

/// Reads a table of this kind; says whether it is one.
pub(super) fn read(source: &str, table: &Table, around: &Around, found: &mut Yield) -> bool {
    let mut rows: Vec<Row> = Vec::new();
    for row in &table.rows {
        let above = rows.last();
        let cells = row.cells.iter().enumerate().map(|(column, pieces)| {
            let own = Flow::of(source, pieces.iter().copied()).with_usual_units(around.usual_units);
            let repeats = repeats(own.text());
            above
                .and_then(|above| above.cells.get(column))
                .filter(|_| repeats)
                .cloned()
                .unwrap_or(own)
        });
        let cells = cells.collect();
        rows.push(Row::of(cells, row.span));
    }
    let headings = table
        .headings
        .iter()
        .map(|pieces| {
            Flow::of(source, pieces.iter().copied())
                .text()
                .trim()
                .to_owned()
        })
        .collect();
    let Some(records) = Records::of(headings, &rows) else {
        return false;
    };
    if table.headings.len() >= 3 {
        found.lead_ins.extend(group_rows(&mut rows));
    }
    found.lead_ins.extend(records.rated().filter_map(|column| {
        let pieces = table.headings.get(column)?;
        pieces.iter().copied().reduce(Span::join)
    }));
    for row in &rows {
        records.read_row(source, row, around, found);
    }
    true
}
