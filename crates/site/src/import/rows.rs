//! The rows of a table, each checked to have the table's columns.

use std::collections::{BTreeMap, BTreeSet};

use super::problem::{Findings, Wrong, quoted};
use super::reading::{fact, is_spreadsheet_error, says_not_known};
use super::sheet::Row;
use super::table::Table;
use crate::model::{Cell, Fact};

/// A row of a table, with its name.
pub(crate) struct Entry<'t> {
    table: &'t Table<'t>,
    row: &'t Row,
    /// The name that stands in the key column; empty where it is missing.
    pub name: String,
}

/// What a row's property columns say.
#[derive(Debug, Default)]
pub(crate) struct Known {
    pub facts: BTreeMap<String, Fact>,
    /// The properties that the row says are not known.
    pub not_known: BTreeSet<String>,
}

/// The rows of a table. A row without a name is a problem, and given with an empty one so that its cells are checked;
/// a row with too many or too few cells is a problem, and given without its cells.
pub(crate) fn entries<'t>(table: &'t Table<'t>, findings: &mut Findings) -> Vec<Entry<'t>> {
    let mut entries = Vec::new();
    let mut reported = BTreeSet::new();
    for row in table.rows {
        let mut entry = Entry {
            table,
            row,
            name: String::new(),
        };
        entry.name = entry
            .required(table.kind.key(), findings)
            .unwrap_or_default();
        if entry.name.starts_with('#') {
            findings.problem(
                entry.place(table.kind.key()),
                &entry.name,
                hash_name(&entry.name),
            );
            continue;
        }
        let whole = has_its_columns(table, row, &mut reported, findings);
        if whole || !entry.name.is_empty() {
            entries.push(entry);
        }
    }
    entries
}

fn hash_name(name: &str) -> Wrong {
    let message = format!("{} isn't a name", quoted(name));
    Wrong::new(
        message,
        "a row of sources begins with `#source` and stands right under the headings",
    )
}

/// Whether a row has just the cells that the headings ask for.
fn has_its_columns(
    table: &Table<'_>,
    row: &Row,
    reported: &mut BTreeSet<usize>,
    findings: &mut Findings,
) -> bool {
    if let Some(cells) = table.other_width(row) {
        findings.problem(table.sheet.row_place(row), "", table.ragged(cells));
        return false;
    }
    for (column, text) in row
        .cells
        .iter()
        .filter(|(column, _)| !table.headed.contains(column))
    {
        if reported.insert(*column) {
            let wrong = Wrong::new("the column has no heading", "name it in the first row");
            findings.problem(table.sheet.cell(row, *column), text, wrong);
        }
    }
    true
}

impl Entry<'_> {
    /// Whether the row has as many cells as the headings; one that hasn't says nothing that can be relied on.
    pub(crate) fn is_whole(&self) -> bool {
        self.table.other_width(self.row).is_none()
    }

    /// The place of a column in this row; of the row, where the table has no such column.
    pub(crate) fn place(&self, heading: &str) -> Cell {
        match self.table.named.get(heading) {
            Some(column) => self.table.sheet.cell(self.row, *column),
            None => self.table.sheet.row_place(self.row),
        }
    }

    /// The text of a column; none when it is empty or says that nothing is known.
    pub(crate) fn text(&self, heading: &str, findings: &mut Findings) -> Option<String> {
        let text = self.row.text(*self.table.named.get(heading)?)?;
        if is_spreadsheet_error(text) {
            let wrong = Wrong::new(
                format!("{} is a formula's error", quoted(text)),
                "mend the formula or write the value",
            );
            findings.problem(self.place(heading), text, wrong);
            return None;
        }
        (!says_not_known(text)).then(|| text.to_owned())
    }

    /// The text of a column that no row may leave out.
    pub(crate) fn required(&self, heading: &str, findings: &mut Findings) -> Option<String> {
        // That the table hasn't the column at all is said once, of its headings.
        let column = *self.table.named.get(heading)?;
        let stands = self.row.text(column).unwrap_or_default();
        if !says_not_known(stands) && !stands.is_empty() {
            return self.text(heading, findings);
        }
        let wrong = Wrong::new(format!("the row has no `{heading}`"), "every row needs one");
        findings.problem(self.place(heading), stands, wrong);
        None
    }

    /// What the row's property columns say; what they say of a listing's own properties, of the listing that the row names.
    pub(crate) fn known(&self, listing: Option<&str>, findings: &mut Findings) -> Known {
        let mut known = Known::default();
        for (column, about, source) in &self.table.properties {
            let Some(text) = self.row.text(*column) else {
                continue;
            };
            let cell = self.table.sheet.cell(self.row, *column);
            let name = about.name_of(listing);
            if known.facts.contains_key(&name) || known.not_known.contains(&name) {
                let message = format!("another column of the row says what {} is", quoted(&name));
                let wrong = Wrong::new(message, "say it in one of them");
                findings.problem(cell, text, wrong);
                continue;
            }
            match fact(about, text, source, cell.clone()) {
                Ok(Some(mut fact)) => {
                    fact.property.clone_from(&name);
                    known.facts.insert(name, fact);
                }
                Ok(None) => drop(known.not_known.insert(name)),
                Err(wrong) => findings.problem(cell, text, wrong),
            }
        }
        known
    }
}
