//! Tables of barriers.

use super::names::Names;
use super::problem::Findings;
use super::rows::entries;
use super::table::Table;
use crate::model::Barrier;

/// Reads the barriers of tables.
pub(crate) fn read<'t>(
    tables: impl Iterator<Item = &'t Table<'t>>,
    names: &mut Names,
    findings: &mut Findings,
) -> Vec<Barrier> {
    let mut barriers = Vec::new();
    for table in tables {
        for entry in entries(table, findings) {
            if !entry.name.is_empty() {
                names
                    .barriers
                    .enter(&entry.name, entry.place("barrier"), findings);
            }
            if entry.is_whole() {
                barriers.push(Barrier {
                    kind: entry.text("kind", findings).unwrap_or_default(),
                    title: entry.text("title", findings).unwrap_or_default(),
                    facts: entry.known(None, findings).facts,
                    name: entry.name,
                });
            }
        }
    }
    barriers
}
