//! What a command answers, and how it ends.

use std::io::{self, Write};
use std::process::ExitCode;

use serde::Serialize;

/// What a command answers.
#[derive(Debug, Default)]
pub(crate) struct Answer {
    /// For standard output.
    pub(crate) text: String,
    /// What is worth knowing besides, for standard error.
    pub(crate) aside: String,
    /// How it ends.
    pub(crate) outcome: Outcome,
}

/// How a command ends, as its exit code says.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub(crate) enum Outcome {
    /// 0: there is nothing to do.
    #[default]
    Clear,
    /// 1: something doesn't conform, is open, or differs.
    Unsettled,
}

impl Outcome {
    /// Unsettled if something is.
    pub(crate) const fn unsettled_if(something: bool) -> Self {
        if something {
            Self::Unsettled
        } else {
            Self::Clear
        }
    }
}

impl Answer {
    /// An answer with nothing to do.
    pub(crate) fn of(text: String) -> Self {
        Self {
            text,
            ..Self::default()
        }
    }

    /// An answer for programs: the value as JSON.
    pub(crate) fn json(value: &impl Serialize) -> Self {
        // Plain data with text keys always serialises.
        let text = serde_json::to_string_pretty(value).unwrap_or_default();
        Self::of(text + "\n")
    }

    /// The same answer, ending otherwise.
    pub(crate) fn ending(self, outcome: Outcome) -> Self {
        Self { outcome, ..self }
    }

    /// The same answer with something worth knowing besides.
    pub(crate) fn with_aside(self, aside: String) -> Self {
        Self { aside, ..self }
    }

    /// Prints the answer and ends.
    pub(crate) fn give(self) -> ExitCode {
        to_stderr(&self.aside);
        // A reader that has seen enough closes the pipe; that is no fault of anybody's.
        if let Err(error) = print(&self.text)
            && error.kind() != io::ErrorKind::BrokenPipe
        {
            to_stderr(&format!("error: the answer can't be written: {error}\n"));
            return ExitCode::from(2);
        }
        match self.outcome {
            Outcome::Clear => ExitCode::SUCCESS,
            Outcome::Unsettled => ExitCode::from(1),
        }
    }
}

fn print(text: &str) -> io::Result<()> {
    let mut out = anstream::stdout().lock();
    out.write_all(text.as_bytes())?;
    out.flush()
}

/// Prints to standard error, where nothing can be done about a failure.
pub(crate) fn to_stderr(text: &str) {
    let _ = anstream::stderr().lock().write_all(text.as_bytes());
}
