use clap::Args;

use crate::answer::{Answer, Outcome};
use crate::fault::Faults;
use crate::show;
use crate::stored::Stored;

/// Looks whether a store is as it was written: the journal's chain, the records, the attachments
///
/// Finds whatever was changed in the database or among the attachments by any other way than through this program. Note the hash
/// that it prints somewhere else: with --noted it later shows that nothing before it was rewritten.
#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  everyclause verify --store clinic.sqlite
  everyclause verify --store clinic.sqlite --noted 5f0c…  (the whole hash)")]
pub(crate) struct Verify {
    #[command(flatten)]
    stored: Stored,
    /// The hash of an entry that was noted before: the chain must lead through it
    #[arg(long, value_name = "HASH")]
    noted: Option<String>,
    /// Print what was found as JSON (see `everyclause schema verify`)
    #[arg(long)]
    json: bool,
}

impl Verify {
    /// What was found.
    pub(crate) fn run(self) -> Result<Answer, Faults> {
        let noted = self.noted.as_deref().map(str::trim);
        let verified = self.stored.with(async |store| store.verify(noted).await)?;
        let answer = if self.json {
            Answer::json(&verified)
        } else {
            Answer::of(show::store::verified(&verified))
        };
        Ok(answer.ending(Outcome::unsettled_if(!verified.flaws.is_empty())))
    }
}
