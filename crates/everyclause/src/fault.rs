//! What is wrong with the input, said so that it can be put right: the problem, its place, and what would be right.

use std::process::ExitCode;

use listing::Span;

use crate::answer::to_stderr;
use crate::show::Excerpt;
use crate::show::marked::{self, Note};

/// One thing that is wrong with the input.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Fault {
    pub(crate) problem: String,
    pub(crate) place: Place,
    /// What would be right.
    pub(crate) help: Vec<String>,
}

/// Where something is wrong.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Place {
    /// In the command itself.
    Command,
    /// In a file, or in several, as a whole.
    Files(Vec<String>),
    /// At words of a file.
    Words { file: String, excerpt: Excerpt },
    /// In a cell of a table, whose words stand there.
    Cell {
        cell: String,
        row: usize,
        words: String,
    },
}

/// Everything that is wrong with the input; never empty.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Faults {
    pub(crate) faults: Vec<Fault>,
    /// What became of the work: "nothing was written".
    pub(crate) closing: Option<String>,
}

impl Fault {
    /// A fault of the command.
    pub(crate) fn of_command(problem: impl Into<String>) -> Self {
        Self {
            problem: problem.into(),
            place: Place::Command,
            help: Vec::new(),
        }
    }

    /// A fault of a whole file.
    pub(crate) fn of_file(problem: impl Into<String>, file: impl Into<String>) -> Self {
        Self {
            problem: problem.into(),
            place: Place::Files(vec![file.into()]),
            help: Vec::new(),
        }
    }

    /// A fault at words of a text.
    pub(crate) fn of_words(problem: impl Into<String>, file: &str, text: &str, span: Span) -> Self {
        let place = Place::Words {
            file: file.to_owned(),
            excerpt: Excerpt::of(text, span),
        };
        Self {
            problem: problem.into(),
            place,
            help: Vec::new(),
        }
    }

    /// The same fault, saying what would be right.
    pub(crate) fn help(mut self, help: impl Into<String>) -> Self {
        self.help.push(help.into());
        self
    }

    fn shown(&self) -> String {
        let notes: Vec<Note<'_>> = self.help.iter().map(|help| Note::Help(help)).collect();
        match &self.place {
            Place::Command => marked::error(&self.problem, &[], None, &notes),
            Place::Files(files) => marked::error(&self.problem, files, None, &notes),
            Place::Words { file, excerpt } => marked::error(
                &self.problem,
                std::slice::from_ref(file),
                Some(excerpt),
                &notes,
            ),
            Place::Cell { cell, row, words } => {
                let excerpt = (!words.trim().is_empty()).then(|| Excerpt::whole(words, *row));
                marked::at_cell(&self.problem, cell, excerpt.as_ref(), &notes)
            }
        }
    }
}

impl From<&site::Problem> for Fault {
    fn from(problem: &site::Problem) -> Self {
        let place = Place::Cell {
            cell: problem.cell.to_string(),
            row: problem.cell.row,
            words: problem.words.clone(),
        };
        Self {
            problem: problem.message.clone(),
            place,
            help: vec![problem.help.clone()],
        }
    }
}

impl From<Fault> for Faults {
    fn from(fault: Fault) -> Self {
        Self {
            faults: vec![fault],
            closing: None,
        }
    }
}

/// The most faults that are shown; more have one cause for most of them.
const MOST_SHOWN: usize = 25;

impl Faults {
    /// Prints the faults and ends with 2.
    pub(crate) fn report(&self) -> ExitCode {
        let mut text = String::new();
        for fault in self.faults.iter().take(MOST_SHOWN) {
            text.push_str(&fault.shown());
            text.push_str("\n\n");
        }
        if let Some(more) = self
            .faults
            .len()
            .checked_sub(MOST_SHOWN)
            .filter(|more| *more > 0)
        {
            text.push_str(&format!("and {more} more of the kind.\n"));
        }
        if let Some(closing) = &self.closing {
            text.push_str(closing);
            text.push('\n');
        }
        to_stderr(text.trim_end());
        to_stderr("\n");
        ExitCode::from(2)
    }
}
