use clap::Args;

use crate::answer::Answer;
use crate::fault::Faults;
use crate::show;
use crate::stored::Stored;

/// Shows who changed what in a store, the latest first
#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  everyclause journal --store clinic.sqlite
  everyclause journal --store clinic.sqlite --last 5 --json")]
pub(crate) struct Journal {
    #[command(flatten)]
    stored: Stored,
    /// How many changes
    #[arg(long, value_name = "COUNT", default_value_t = 20)]
    last: usize,
    /// Print the changes as JSON (see `everyclause schema journal`)
    #[arg(long)]
    json: bool,
}

impl Journal {
    /// The changes.
    pub(crate) fn run(self) -> Result<Answer, Faults> {
        let made = self
            .stored
            .with(async |store| store.changes_before(i64::MAX, self.last).await)?;
        Ok(if self.json {
            Answer::json(&made)
        } else {
            Answer::of(show::store::journal(&made))
        })
    }
}
