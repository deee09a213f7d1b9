//! A table's cells, whatever file they come from.

use std::collections::BTreeMap;

use crate::model::Cell;

/// The cells of one table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Sheet {
    /// The file it is from.
    pub file: String,
    /// Its name, in a workbook.
    pub name: Option<String>,
    /// The rows that aren't blank, from the top.
    pub rows: Vec<Row>,
    /// The cells that are merged.
    pub merged: Vec<Merged>,
}

/// Several cells of a workbook that are shown as one. The first has the text, the others nothing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Merged {
    /// The row of the first, from 1.
    pub row: usize,
    /// The column of the first, from 0.
    pub column: usize,
    /// All of them: `B3:B5`.
    pub range: String,
}

/// One row of a table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Row {
    /// The row as a spreadsheet counts it, from 1.
    pub number: usize,
    /// The cells that aren't empty, by column from 0.
    pub cells: BTreeMap<usize, String>,
    /// How many cells the row has, where the file says so even of empty ones (CSV does, a workbook doesn't).
    pub width: Option<usize>,
}

impl Sheet {
    /// The table as a whole, as a place.
    pub(crate) fn place(&self) -> Cell {
        Cell {
            file: self.file.clone(),
            sheet: self.name.clone(),
            row: 0,
            column: String::new(),
        }
    }

    /// A row, as a place.
    pub(crate) fn row_place(&self, row: &Row) -> Cell {
        Cell {
            row: row.number,
            ..self.place()
        }
    }

    /// A cell, as a place.
    pub(crate) fn cell(&self, row: &Row, column: usize) -> Cell {
        Cell {
            column: letters(column),
            ..self.row_place(row)
        }
    }
}

impl Row {
    /// The text of a cell; none when it is empty.
    pub(crate) fn text(&self, column: usize) -> Option<&str> {
        self.cells.get(&column).map(String::as_str)
    }
}

/// The letters of a column counted from 0: A, B, ... Z, AA, AB.
pub(crate) fn letters(column: usize) -> String {
    let mut letters = Vec::new();
    let mut left = Some(column);
    while let Some(at) = left {
        letters.push(char::from(b'A' + u8::try_from(at % 26).unwrap_or_default()));
        left = (at / 26).checked_sub(1);
    }
    letters.iter().rev().collect()
}

/// The text of a cell as people read it: white space of any kind is one space, and none at the ends.
pub(crate) fn clean(text: &str) -> String {
    let visible = text.replace(['\u{200b}', '\u{feff}'], "");
    visible.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn columns_are_lettered_as_spreadsheets_do() {
        for (column, expected) in [
            (0, "A"),
            (25, "Z"),
            (26, "AA"),
            (51, "AZ"),
            (52, "BA"),
            (701, "ZZ"),
            (702, "AAA"),
        ] {
            assert_eq!(letters(column), expected);
        }
    }

    #[test]
    fn white_space_of_any_kind_is_one_space() {
        assert_eq!(
            clean("\u{feff} 2-1/2\u{a0}in.\n (64\tmm) "),
            "2-1/2 in. (64 mm)"
        );
    }
}
