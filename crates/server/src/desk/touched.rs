//! What changes of records bear upon.

use std::collections::BTreeSet;

use store::{Key, Kind, Owner};

use crate::board::Card;

/// What some changes bear upon.
#[derive(Debug, Default)]
pub(super) struct Touched {
    /// The schedule, or what is known of marks and barriers.
    pub(super) outline: bool,
    /// What people decided.
    pub(super) judgments: bool,
    /// Which listings there are, so that any name may mean another one.
    pub(super) listings: bool,
    /// The listings of which something was confirmed, by file.
    pub(super) confirmed: BTreeSet<String>,
    joints: BTreeSet<String>,
    marks: BTreeSet<String>,
    barriers: BTreeSet<String>,
}

impl Touched {
    /// Takes note of one record.
    pub(super) fn add(&mut self, key: Key) {
        match key.kind {
            Kind::Building => self.outline = true,
            Kind::Barrier => {
                self.outline = true;
                self.barriers.insert(key.name);
            }
            Kind::Mark => {
                self.outline = true;
                self.marks.insert(key.name);
            }
            Kind::Joint => {
                self.outline = true;
                self.joints.insert(key.name);
            }
            Kind::Fact => match key.name.parse() {
                Ok(Owner::Joint(name)) => {
                    self.joints.insert(name);
                }
                Ok(Owner::Mark(name)) => {
                    self.outline = true;
                    self.marks.insert(name);
                }
                Ok(Owner::Barrier(name)) => {
                    self.outline = true;
                    self.barriers.insert(name);
                }
                // A fact that is of nothing built bears upon nothing.
                Ok(Owner::Submittal(_)) | Err(_) => {}
            },
            Kind::Judgment => {
                self.judgments = true;
                match key.name.parse() {
                    Ok(Owner::Joint(name)) => self.joints.insert(name),
                    Ok(Owner::Mark(name)) => self.marks.insert(name),
                    Ok(Owner::Barrier(name)) => self.barriers.insert(name),
                    Ok(Owner::Submittal(_)) | Err(_) => false,
                };
            }
            Kind::Listing => self.listings = true,
            Kind::Confirmation => {
                self.confirmed.insert(key.name);
            }
            // A submittal is a proposal, and who may sign in says nothing of a joint.
            Kind::Attachment
            | Kind::Answer
            | Kind::Submittal
            | Kind::Comment
            | Kind::Person
            | Kind::Invitation => {}
        }
    }

    /// Whether what was found at a joint may be otherwise now; `file` gives the file of the listing that a name means.
    pub(super) fn bears_upon(&self, card: &Card, file: &dyn Fn(&str) -> Option<String>) -> bool {
        if self.listings
            || self.joints.contains(&*card.name)
            || self.marks.contains(&*card.mark)
            || self.barriers.contains(&*card.place.1)
        {
            return true;
        }
        if self.confirmed.is_empty() {
            return false;
        }
        let file = card.listing.as_deref().and_then(file);
        file.is_some_and(|file| self.confirmed.contains(&file))
    }
}
