use std::path::PathBuf;

use clap::Args;
use conformance::ChangeKind;

use crate::answer::{Answer, Outcome};
use crate::fault::Faults;
use crate::shelf::Held;
use crate::show;

/// Compares two editions of a listing, clause by clause
///
/// Ends with 0 when nothing is asked for otherwise than before, and with 1 when something is.
#[derive(Debug, Args)]
#[command(after_long_help = "\
Example:
  everyclause compare listings/hw-d-0412-ed3.txt listings/hw-d-0412-ed4.txt")]
pub(crate) struct Compare {
    /// The old edition
    old: PathBuf,
    /// The new edition
    new: PathBuf,
    /// Show the clauses that haven't changed, too
    #[arg(long)]
    all: bool,
    /// Print every clause and what became of it as JSON (see `everyclause schema compare`)
    #[arg(long)]
    json: bool,
}

impl Compare {
    /// What became of each clause.
    pub(crate) fn run(self) -> Result<Answer, Faults> {
        let (old, new) = (Held::open(&self.old)?, Held::open(&self.new)?);
        let changes = conformance::compare(old.reading(), new.reading());
        let same = |kind: ChangeKind| matches!(kind, ChangeKind::Unchanged | ChangeKind::Reworded);
        let differs = changes.iter().any(|change| !same(change.kind));
        let answer = if self.json {
            Answer::json(&changes)
        } else {
            Answer::of(show::compare::compare(&old, &new, &changes, self.all))
        };
        Ok(answer.ending(Outcome::unsettled_if(differs)))
    }
}
