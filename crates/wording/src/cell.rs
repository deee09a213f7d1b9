//! A cell of a table, with its row and its column.

use listing::Clause;

use crate::text::{on_one_line, shortened};

/// The most of a row's or column's name that is shown, in characters.
const MOST: usize = 60;

/// What a number stands at in a table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Cell {
    /// The row, as its first cell names it; empty when the number is that cell.
    pub row: String,
    /// The heading of the column; empty when it is no condition.
    pub column: String,
    /// The number as written.
    pub number: String,
}

impl Cell {
    /// The cell that a clause was read from; nothing when it wasn't read from one.
    pub fn of(text: &str, clause: &Clause) -> Option<Self> {
        let at = clause.bound()?.at;
        if at.is_empty() || !clause.read_by.iter().any(|rule| rule == "table cell") {
            return None;
        }
        let before = text.get(..at.start())?;
        let line = before.rsplit('\n').next().unwrap_or_default();
        let short = |words: &str| shortened(&on_one_line(words), MOST);
        let first = first_cell(line);
        let (row, column) = match &clause.condition {
            // The heading of the column stands elsewhere than the row.
            Some(condition) if !condition.also.is_empty() => (first, condition.words.as_str()),
            // A row that is called by a number is told by its case.
            Some(condition) if !first.contains(char::is_alphabetic) => {
                (condition.words.as_str(), "")
            }
            _ => (first, ""),
        };
        Some(Self {
            row: short(row),
            column: short(column),
            number: on_one_line(at.of(text)),
        })
    }

    /// Where the number stands: `Depth, min, 2 h`.
    pub fn place(&self) -> String {
        let parts = [self.row.as_str(), self.column.as_str()];
        let parts: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
        parts.join(", ")
    }
}

/// The first cell of a row that is set between uprights or with wide spaces.
fn first_cell(line: &str) -> &str {
    let line = line.trim_start_matches(|c: char| c.is_whitespace() || c == '|');
    let ends = ["|", "   ", "\t"]
        .into_iter()
        .filter_map(|end| line.find(end));
    let end = ends.min().unwrap_or(0);
    line.get(..end).unwrap_or_default().trim()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_cell_says_its_row_and_column() {
        let text = "1. Packing\n\n| | 1 h | 2 h |\n|---|---|---|\n| Packing depth, min, in. | 3 | 4-1/2 |\n";
        let reading = listing::read_text("a.txt", text);
        let cells: Vec<String> = reading
            .clauses
            .iter()
            .filter_map(|clause| Cell::of(text, clause))
            .map(|cell| format!("{}: {}", cell.place(), cell.number))
            .collect();
        assert_eq!(
            cells,
            [
                "Packing depth, min, in., 1 h: 3",
                "Packing depth, min, in., 2 h: 4-1/2"
            ]
        );
    }

    #[test]
    fn a_row_called_by_a_number_is_told_by_its_case() {
        let text =
            "1. Packing\n\n| Assembly rating, h | Min packing depth, in. |\n|---|---|\n| 1 | 3 |\n";
        let reading = listing::read_text("a.txt", text);
        let cell = Cell::of(text, &reading.clauses[0]).unwrap();
        assert_eq!(cell.place(), "Assembly rating, h: 1");
    }

    #[test]
    fn the_first_cell_may_be_the_number_itself() {
        assert_eq!(first_cell("| "), "");
        assert_eq!(
            first_cell("  J1  Width, smallest   |   "),
            "J1  Width, smallest"
        );
        assert_eq!(first_cell("   Seal depth\t"), "Seal depth");
    }
}
