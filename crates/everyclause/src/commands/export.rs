use std::path::PathBuf;

use clap::Args;

use crate::answer::Answer;
use crate::fault::Faults;
use crate::show;
use crate::stored::Stored;

/// Writes all of a store as one file, to keep or to move: the journal and the attachments
///
/// Others may go on working meanwhile. `everyclause restore` makes a store of the file, on either database.
#[derive(Debug, Args)]
#[command(after_long_help = "Example: everyclause export --store clinic.sqlite --out clinic.zip")]
pub(crate) struct Export {
    #[command(flatten)]
    stored: Stored,
    /// The file; there must be none yet
    #[arg(long, value_name = "FILE")]
    out: PathBuf,
}

impl Export {
    /// What was written.
    pub(crate) fn run(self) -> Result<Answer, Faults> {
        let manifest = self
            .stored
            .with(async |store| store.export(&self.out).await)?;
        Ok(Answer::of(show::store::exported(&manifest, &self.out)))
    }
}
