//! Marks that repeat another cell: `do.`, `"`. Where the headings say what the cells are, that is the cell above; where each row has a label, a
//! value repeats the one to its left, and a label the one above.

use super::columns::Row;
use super::heading::Heading;
use super::labelled::heads_remarks;
use crate::layout::Flow;

/// What stands for the words of another cell.
const DITTO: &[&str] = &[
    "do", "do.", "ditto", "\"", "″", "〃", "''", "-\"-", "—\"—", "as above", "-do-", "- do -",
];

/// Whether a cell repeats another.
pub(super) fn repeats(words: &str) -> bool {
    DITTO.contains(&words.trim().to_lowercase().as_str())
}

/// Puts what is repeated in the place of the marks. A row that repeats something is marked as doing so in that column.
pub(super) fn fill(rows: &mut [Row], label: Option<usize>) {
    for at in 0..rows.len() {
        let columns = rows.get(at).map_or(0, |row| row.cells.len());
        for column in 0..columns {
            if !rows.get(at).is_some_and(|row| repeats(row.text(column))) {
                continue;
            }
            let across = label.is_some_and(|label| column > label);
            let repeated = if across {
                let left = column.checked_sub(1).filter(|left| Some(*left) != label);
                rows.get(at)
                    .zip(left)
                    .and_then(|(row, left)| row.cells.get(left))
            } else {
                at.checked_sub(1)
                    .and_then(|above| rows.get(above)?.cells.get(column))
            };
            let repeated = repeated.filter(|cell| !repeats(cell.text())).cloned();
            if let (Some(cell), Some(row)) = (repeated, rows.get_mut(at)) {
                row.repeated.push(column);
                if let Some(own) = row.cells.get_mut(column) {
                    *own = cell;
                }
            }
        }
    }
}

/// Puts a cell that says it is of every column, `8 in every column`, in those of the columns behind it that hold nothing of their own. What
/// remarks on a row is no such column.
pub(super) fn fill_every_column(rows: &mut [Row], label: usize, headings: &[Heading]) {
    const SAYS: &[&str] = &[
        "in every column",
        "in each column",
        "in all columns",
        "all columns",
        "every column",
        "each column",
    ];
    let valued: Vec<usize> = (label + 1..headings.len())
        .filter(|column| !headings.get(*column).is_some_and(heads_remarks))
        .collect();
    for row in rows {
        let mut cells = valued.iter().filter_map(|column| row.cells.get(*column));
        let Some(cell) = cells.find(|cell| !cell.text().trim().is_empty()).cloned() else {
            continue;
        };
        let words = cell.text().trim().trim_end_matches('.').to_lowercase();
        let free = |column: &usize| {
            let own = row.text(*column);
            own.is_empty() || own == cell.text().trim()
        };
        if !SAYS.iter().any(|says| words.ends_with(says)) || !valued.iter().all(free) {
            continue;
        }
        for column in &valued {
            while row.cells.len() <= *column {
                row.cells.push(Flow::default());
            }
            if let Some(own) = row.cells.get_mut(*column) {
                *own = cell.clone();
            }
        }
    }
}
