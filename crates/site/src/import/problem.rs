//! What is wrong with the files, said so that it can be put right.

use core::fmt;

use serde::{Deserialize, Serialize};

use crate::model::Cell;

/// One thing that is wrong in the project's files.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, schemars::JsonSchema)]
pub struct Problem {
    /// Where.
    pub cell: Cell,
    /// The words that stand there; empty when something is missing.
    pub words: String,
    /// What is wrong.
    pub message: String,
    /// What would be right.
    pub help: String,
}

/// Something worth knowing that doesn't stop an import.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, schemars::JsonSchema)]
pub struct Notice {
    /// Where.
    pub cell: Cell,
    /// What.
    pub message: String,
}

/// Everything that is wrong with the project's files; nothing of them was imported.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, schemars::JsonSchema)]
pub struct ImportError {
    /// The problems, in the order of the files and of the cells in them.
    pub problems: Vec<Problem>,
    /// How many more there are than are listed.
    pub left_out: usize,
}

/// What is wrong with a piece of text, before it is known where it stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Wrong {
    /// What is wrong.
    pub message: String,
    /// What would be right.
    pub help: String,
}

impl Wrong {
    /// A message with what would be right.
    pub(crate) fn new(message: impl Into<String>, help: impl Into<String>) -> Self {
        Self {
            message: message.into(),
            help: help.into(),
        }
    }
}

/// Collects what is wrong and what is worth knowing while the files are read.
#[derive(Debug, Default)]
pub(crate) struct Findings {
    problems: Vec<Problem>,
    left_out: usize,
    notices: Vec<Notice>,
    /// The tables, in the order they were read.
    tables: Vec<Cell>,
}

/// The most problems that are listed; a project with more has one cause for most of them.
const MOST_PROBLEMS: usize = 2000;

/// The most characters of a bad cell that a problem repeats.
const MOST_WORDS: usize = 120;

impl Findings {
    /// Notes that a table is read next, so that findings can be put in the order of the tables.
    pub(crate) fn begin(&mut self, table: Cell) {
        self.tables.push(table);
    }

    /// Notes something wrong at a place.
    pub(crate) fn problem(&mut self, cell: Cell, words: &str, wrong: Wrong) {
        if self.problems.len() >= MOST_PROBLEMS {
            self.left_out += 1;
            return;
        }
        let Wrong { message, help } = wrong;
        self.problems.push(Problem {
            cell,
            words: shortened(words),
            message,
            help,
        });
    }

    /// Notes something wrong at a place; what is said of it is only made up while problems are still listed, as
    /// the search for the nearest name takes its time.
    pub(crate) fn problem_if_listed(
        &mut self,
        cell: &Cell,
        words: &str,
        wrong: impl FnOnce() -> Wrong,
    ) {
        if self.problems.len() >= MOST_PROBLEMS {
            self.left_out += 1;
        } else {
            self.problem(cell.clone(), words, wrong());
        }
    }

    /// Notes something worth knowing at a place.
    pub(crate) fn notice(&mut self, cell: Cell, message: impl Into<String>) {
        self.notices.push(Notice {
            cell,
            message: message.into(),
        });
    }

    /// The notices, when nothing is wrong.
    ///
    /// # Errors
    /// When anything is.
    pub(crate) fn finish(self) -> Result<Vec<Notice>, ImportError> {
        let Self {
            mut problems,
            left_out,
            mut notices,
            tables,
        } = self;
        if problems.is_empty() {
            notices.sort_by_cached_key(|notice| order(&notice.cell, &tables));
            return Ok(notices);
        }
        problems.sort_by_cached_key(|problem| order(&problem.cell, &tables));
        Err(ImportError { problems, left_out })
    }
}

/// Where a place comes in the order of tables, rows and columns.
fn order(cell: &Cell, tables: &[Cell]) -> (Option<usize>, usize, usize, String) {
    let same = |table: &Cell| table.file == cell.file && table.sheet == cell.sheet;
    let table = tables.iter().position(same);
    (table, cell.row, cell.column.len(), cell.column.clone())
}

/// A text shortened for showing, in quotes.
pub(crate) fn quoted(text: &str) -> String {
    format!("`{}`", shortened(text))
}

fn shortened(text: &str) -> String {
    let mut chars = text.chars();
    let mut short: String = chars.by_ref().take(MOST_WORDS).collect();
    if chars.next().is_some() {
        short.push('…');
    }
    short
}

/// Several names in quotes, joined by commas, at most twelve of them.
pub(crate) fn listed<'n>(names: impl IntoIterator<Item = &'n str>) -> String {
    const MOST: usize = 12;
    let names: Vec<_> = names.into_iter().collect();
    let mut listed: Vec<_> = names.iter().take(MOST).map(|name| quoted(name)).collect();
    if let Some(more) = names.len().checked_sub(MOST).filter(|more| *more > 0) {
        listed.push(format!("and {more} more"));
    }
    listed.join(", ")
}

impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}; {}", self.cell, self.message, self.help)
    }
}

impl fmt::Display for Notice {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.cell, self.message)
    }
}

impl fmt::Display for ImportError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let count = self.problems.len() + self.left_out;
        let things = if count == 1 { "problem" } else { "problems" };
        write!(f, "{count} {things}; nothing was imported")?;
        for problem in &self.problems {
            write!(f, "\n  {problem}")?;
        }
        if self.left_out > 0 {
            write!(f, "\n  and {} more", self.left_out)?;
        }
        Ok(())
    }
}

impl core::error::Error for ImportError {}
