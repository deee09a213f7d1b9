//! Taking files into the store: one change, of what was shown and nothing else.

use std::collections::hash_map::DefaultHasher;
use std::hash::{Hash as _, Hasher as _};

use store::{Done, Edit};

use super::looking::{Look, read};
use super::waiting::Lot;
use crate::desk::Desk;
use crate::person::{By, Reviewer};
use crate::trouble::Trouble;

/// What a person wants of what was shown.
#[derive(Debug, Default)]
pub(crate) struct Chosen {
    /// The listings, by file.
    pub(crate) listings: Vec<String>,
    /// Whether the tables are taken.
    pub(crate) tables: bool,
    /// Whether what the tables don't have any more is removed.
    pub(crate) remove: bool,
}

impl Look {
    /// What would be changed.
    pub(crate) fn edits(&self, chosen: &Chosen) -> Vec<Edit> {
        let mut edits = Vec::new();
        let changes = self
            .tables
            .as_ref()
            .and_then(|tables| tables.result.as_ref().ok());
        if let Some(changes) = changes.filter(|_| chosen.tables) {
            let mut proposal = changes.proposal.clone();
            if !chosen.remove {
                proposal.leave_others();
            }
            edits.extend(proposal.edits);
        }
        let is_chosen = |name: &String| chosen.listings.contains(name);
        for listing in self
            .listings
            .iter()
            .filter(|listing| is_chosen(&listing.name))
        {
            let proposed = listing.read.iter().flat_map(|heard| &heard.proposal.edits);
            edits.extend(proposed.cloned());
        }
        edits
    }

    /// What stands for all that could be changed, so that what is taken is what was shown.
    pub(crate) fn mark(&self) -> u64 {
        let all = Chosen {
            listings: self.listings.iter().map(|one| one.name.clone()).collect(),
            tables: true,
            remove: true,
        };
        let mut hasher = DefaultHasher::new();
        self.edits(&all).hash(&mut hasher);
        hasher.finish()
    }
}

impl Desk {
    /// Takes what was chosen of a lot. `shown` is the mark of what the person saw; where the store was changed since so that taking the
    /// files would come to something else, nothing is taken and none is given back.
    ///
    /// # Errors
    /// When nothing was chosen, or somebody else was first.
    pub(crate) async fn take(
        &self,
        person: &By<Reviewer>,
        lot: &Lot,
        chosen: &Chosen,
        shown: u64,
    ) -> Result<Option<Done>, Trouble> {
        let look = self.understand(lot).await?;
        if look.mark() != shown {
            return Ok(None);
        }
        let edits = look.edits(chosen);
        if edits.is_empty() {
            return Err(Trouble::Refused {
                message: "there is nothing to take".to_owned(),
                help: "tick what is to be taken; what the store says already needn't be".to_owned(),
            });
        }
        // The documents first: a record never names what isn't there.
        let files = lot.arrived.files.iter();
        for file in files.filter(|file| chosen.listings.contains(&file.name)) {
            self.store.attach(read(file)?).await?;
        }
        let done = self.change(person, said(&look, chosen), edits).await?;
        self.waiting.drop(lot.number);
        Ok(Some(done))
    }
}

/// What is done, in a few words.
fn said(look: &Look, chosen: &Chosen) -> String {
    // By the names that were brought: the form could say anything.
    let names = look.listings.iter().map(|listing| &listing.name);
    let taken: Vec<&String> = names
        .filter(|name| chosen.listings.contains(name))
        .collect();
    let listings = match taken.as_slice() {
        [] => None,
        [one] => Some(format!("the listing {one}")),
        several => Some(format!("{} listings", several.len())),
    };
    let tables = look.tables.iter().flat_map(|tables| &tables.understood);
    let mut tables: Vec<&str> = tables.map(|table| table.of.as_str()).collect();
    tables.dedup();
    let tables = match tables.as_slice() {
        _ if !chosen.tables => None,
        [] => Some("the building".to_owned()),
        tables => Some(format!("a table of {}", tables.join(", "))),
    };
    let parts: Vec<String> = listings.into_iter().chain(tables).collect();
    format!("took in {}", parts.join(" and "))
}
