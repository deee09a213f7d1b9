use std::path::{Path, PathBuf};

use clap::Args;
use conformance::goes_by;
use jiff::Timestamp;
use site::GoesBy;
use store::attachments::Attached;
use store::project::Proposal;
use store::{Change, Store, StoreError};

use crate::answer::Answer;
use crate::fault::{Fault, Faults};
use crate::files;
use crate::inputs::Inputs;
use crate::shelf::{Held, Shelf};
use crate::show;
use crate::source::MOST_BYTES;
use crate::stored::{Stored, waited};

/// Puts a project's files into a store, or brings a store up to them
///
/// A store keeps all of a project in one database, with a journal of who changed what and when. What came from a table follows the
/// table; what people entered in the store stays. The listings' documents are kept with it, and what was confirmed of them.
#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  everyclause keep --project demo-project --into clinic.sqlite --by \"R. Reviewer\"
  everyclause keep --project demo-project --into clinic.sqlite --look
  everyclause keep --project demo-project --into postgres://localhost/clinic --into-attachments clinic-attachments --by \"R. Reviewer\"")]
pub(crate) struct Keep {
    #[command(flatten)]
    inputs: Inputs,
    /// The store: a file, or a database's URL; made if it isn't there
    #[arg(long, value_name = "PLACE")]
    into: String,
    /// The store's attachments, unless they are in the folder beside its file
    #[arg(long, value_name = "PLACE")]
    into_attachments: Option<String>,
    /// Who puts them there: the name that stands behind it
    #[arg(long, value_name = "WHO", required_unless_present = "look")]
    by: Option<String>,
    /// Only say what would change
    #[arg(long)]
    look: bool,
}

/// A listing's document, on its way into the store.
struct Document<'h> {
    name: String,
    bytes: Vec<u8>,
    held: &'h Held,
}

impl Keep {
    /// Keeping the files of a folder that holds everything.
    pub(crate) fn of_project(folder: PathBuf, into: Stored, by: Option<String>) -> Self {
        Self {
            inputs: Inputs::of_project(folder),
            into: into.store,
            into_attachments: into.attachments,
            by,
            look: false,
        }
    }

    /// What was kept.
    pub(crate) fn run(self) -> Result<Answer, Faults> {
        if self.inputs.is_a_store() {
            return Err(Fault::of_command("a store can't be kept in another")
                .help("`everyclause export` writes it as one file, and `everyclause restore` makes a store of that")
                .into());
        }
        let mut import = self.inputs.import()?;
        let folder = self.inputs.listings()?;
        let listings = Shelf::open(&folder)?;
        let documents = documents(&folder, &listings)?;
        let readings = listings.held.iter().map(Held::reading);
        let kept: Vec<GoesBy<'_>> = readings.map(goes_by).collect();
        import.project.say_of_documents(&kept);
        let stored = Stored {
            store: self.into.clone(),
            attachments: self.into_attachments.clone(),
        };
        let (place, attachments) = stored.places()?;
        let (proposal, head) = waited(async {
            let store = match Store::open(&place, &attachments).await {
                Err(StoreError::NoStore(_)) if !self.look => {
                    Store::make(&place, &attachments).await?
                }
                other => other?,
            };
            let mut proposal = store.propose(&import.project).await?;
            for document in &documents {
                proposal.extend(self.proposed(&store, document).await?);
            }
            if let Some(by) = self
                .by
                .as_ref()
                .filter(|_| !self.look && !proposal.is_empty())
            {
                let change = Change {
                    by: by.trim().to_owned(),
                    at: Timestamp::now(),
                    what: "took the project's files".to_owned(),
                    edits: proposal.edits.clone(),
                };
                store.change(&change).await?;
            }
            let head = store.head().await?;
            store.close().await;
            Ok((proposal, head))
        })?;
        let text = show::store::kept(&proposal, &head, self.look);
        Ok(Answer::of(text).with_aside(show::check::unread(&listings)))
    }

    /// What it takes to keep a document; unless one only looks, its bytes are kept already.
    async fn proposed(
        &self,
        store: &Store,
        document: &Document<'_>,
    ) -> Result<Proposal, StoreError> {
        let attached = if self.look {
            Attached::of(&document.bytes)
        } else {
            store.attach(document.bytes.clone()).await?
        };
        let overlay = document.held.confirmation.as_ref();
        let overlay = overlay.map(|confirmation| &confirmation.overlay);
        store
            .propose_listing(
                &document.name,
                &attached,
                &document.held.reading().header.designation,
                overlay,
            )
            .await
    }
}

fn documents<'h>(folder: &Path, shelf: &'h Shelf) -> Result<Vec<Document<'h>>, Fault> {
    shelf
        .held
        .iter()
        .map(|held| {
            let name = held.reading().source.name.clone();
            let bytes = files::read(&folder.join(&name), "a listing", MOST_BYTES)?;
            Ok(Document { name, bytes, held })
        })
        .collect()
}
