//! A whole project as one file: a ZIP archive.
//!
//! | member | what it is |
//! |---|---|
//! | `everyclause.json` | a [`Manifest`]: the archive's form, and where the journal ends |
//! | `journal.jsonl` | the journal, one [`Entry`](crate::Entry) a line, from the first |
//! | `attachments/` and a hash | the bytes of each attachment that the journal names |
//!
//! The journal is all there is to say: the records follow from it. As nothing in it ever changes, an archive is whole though others go on
//! writing while it is made; it ends where the journal ended when it was begun.
//!
//! An archive may come from anywhere. No member is ever written to a path of its own; a name that isn't one of the above, a second
//! member of a name, and more bytes than a project can have are refused, and everything is looked at before anything is kept.

mod limits;
mod read;
mod write;

use serde::{Deserialize, Serialize};

use crate::error::StoreError;
use crate::journal::Head;

/// The form that this program writes; it reads earlier ones too. The second has the designations of listings.
pub const FORM: u32 = 2;

const MANIFEST: &str = "everyclause.json";
const JOURNAL: &str = "journal.jsonl";
const ATTACHMENTS: &str = "attachments/";

/// What an archive says of itself.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Manifest {
    /// The form of the archive.
    pub form: u32,
    /// Where its journal ends.
    pub head: Head,
    /// How many attachments it has.
    pub attachments: usize,
}

fn refused(problem: impl core::fmt::Display) -> StoreError {
    StoreError::Archive(format!("the archive is refused: {problem}"))
}
