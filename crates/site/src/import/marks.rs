//! Tables of marks.

use super::names::Names;
use super::problem::Findings;
use super::rows::entries;
use super::table::Table;
use crate::model::Mark;

/// Reads the marks of tables.
pub(crate) fn read<'t>(
    tables: impl Iterator<Item = &'t Table<'t>>,
    names: &mut Names,
    findings: &mut Findings,
) -> Vec<Mark> {
    let mut marks = Vec::new();
    for table in tables {
        for entry in entries(table, findings) {
            if !entry.name.is_empty() {
                names
                    .marks
                    .enter(&entry.name, entry.place("mark"), findings);
            }
            if entry.is_whole() {
                let listing = entry.text("listing", findings);
                marks.push(Mark {
                    title: entry.text("title", findings).unwrap_or_default(),
                    facts: entry.known(listing.as_deref(), findings).facts,
                    listing,
                    name: entry.name,
                });
            }
        }
    }
    marks
}
