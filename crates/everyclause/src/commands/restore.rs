use std::path::PathBuf;

use clap::Args;
use store::Store;

use crate::answer::Answer;
use crate::fault::Faults;
use crate::show;
use crate::stored::{Stored, waited};

/// Makes a store from a file that `everyclause export` wrote
///
/// All of the file is looked at first; a file that isn't as it was written is refused, and nothing is made of it.
#[derive(Debug, Args)]
#[command(
    after_long_help = "Example: everyclause restore clinic.zip --store another-clinic.sqlite"
)]
pub(crate) struct Restore {
    /// The file
    file: PathBuf,
    #[command(flatten)]
    stored: Stored,
}

impl Restore {
    /// What was restored.
    pub(crate) fn run(self) -> Result<Answer, Faults> {
        let (place, attachments) = self.stored.places()?;
        let head = waited(async {
            let store = Store::restore(&self.file, &place, &attachments).await?;
            let head = store.head().await?;
            store.close().await;
            Ok(head)
        })?;
        Ok(Answer::of(show::store::restored(&head, &self.stored.store)))
    }
}
