//! Marks that repeat another cell: `do.`, `"`. Where the headings say what the cells are, that is the cell above; where each row has a label, a
//! value repeats the one to its left, and a label the one above.

use super::columns::Row;

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
