//! A place in the project's files.

use core::fmt;

use serde::{Deserialize, Serialize};

/// A place in one of the project's files: a cell of a table, a row, or the whole file.
#[derive(
    Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, schemars::JsonSchema,
)]
pub struct Cell {
    /// The file's name, as it was given.
    pub file: String,
    /// The sheet, in a workbook.
    pub sheet: Option<String>,
    /// The row as a spreadsheet counts it, from 1; a line, in a file that isn't a table; 0 for the file as a whole.
    pub row: usize,
    /// The column's letter, as a spreadsheet names it; empty for the row as a whole.
    pub column: String,
}

impl fmt::Display for Cell {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.file)?;
        if let Some(sheet) = &self.sheet {
            write!(f, ", sheet {sheet}")?;
        }
        match (self.row, self.column.as_str()) {
            (0, "") => Ok(()),
            (0, column) => write!(f, ", column {column}"),
            (row, "") => write!(f, ", row {row}"),
            (row, column) => write!(f, ", cell {column}{row}"),
        }
    }
}
