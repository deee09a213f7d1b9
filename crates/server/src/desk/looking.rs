//! Looking at joints: what is known of each, and what that comes to.

use std::collections::BTreeMap;
use std::sync::Arc;

use conformance::{Checklist, JointResult, Subject};
use shelf::State;
use site::{Joint, Project};
use store::project::fill;
use store::records::Known;
use store::{Held, Owner};
use workcard::{AtHand, BuiltTo, Checked, JointCard};

use super::Desk;
use crate::board::Looked;
use crate::listings::{Read, working};
use crate::trouble::Trouble;

/// How many joints of one listing are looked at together.
const TOGETHER: usize = 64;

/// A joint with everything known of it.
#[derive(Debug)]
pub(crate) struct Seen {
    /// The last entry of the journal when it was looked at.
    pub(crate) seq: i64,
    /// The joint, its own facts filled in.
    pub(crate) joint: Joint,
    /// What is known of it alone, with the versions that were seen.
    pub(crate) known: Vec<Held<Known>>,
    /// The project that it is part of, without what is known of other joints.
    pub(crate) project: Arc<Project>,
    /// The listing it is to be built to, as read.
    pub(crate) listing: Option<Arc<Read>>,
    /// What was found; none without a listing.
    pub(crate) result: Option<JointResult>,
}

impl Seen {
    /// Where it is, in a few words.
    pub(crate) fn place(&self) -> String {
        let parts = [&self.joint.storey, &self.joint.grid, &self.joint.barrier];
        let parts: Vec<&str> = parts.into_iter().flatten().map(String::as_str).collect();
        parts.join(" ")
    }

    fn checked(&self) -> Checked<'_> {
        let built_to = self.listing.as_ref().zip(self.result.as_ref());
        Checked {
            joint: &self.joint,
            place: self.place(),
            facts: self.project.facts(&self.joint),
            built_to: built_to.map(|(read, result)| BuiltTo {
                reading: &read.state,
                result,
            }),
        }
    }
}

impl Desk {
    /// Looks at a joint: what is known of it now, and what that comes to.
    ///
    /// # Errors
    /// When there is no such joint, or the store can't be read.
    pub(crate) async fn look(&self, name: &str) -> Result<Seen, Trouble> {
        let seq = self.catch_up().await?;
        let epoch = self.board(crate::board::Board::epoch);
        let project = self.project();
        let mut joint = project.joint(name).cloned().ok_or_else(|| {
            Trouble::Unknown(format!("There is no joint {name} in the schedule."))
        })?;
        let known = self.store.known(&Owner::Joint(name.to_owned())).await?;
        fill(&mut joint, known.clone());
        let listing = self.listing_in(&project, &joint).await?;
        let seen = working(move || {
            let result = listing.as_ref().map(|read| {
                let subject = Subject::of(&project, &joint);
                result(&checklist(read), &subject)
            });
            Seen {
                seq,
                joint,
                known,
                project,
                listing,
                result,
            }
        })
        .await?;
        let looked = Looked::of(seen.result.as_ref());
        self.on_board(|board| board.insert(name, epoch, looked));
        Ok(seen)
    }

    /// The listing that a joint is to be built to, as read; none where there is none.
    ///
    /// # Errors
    /// When the store can't be read.
    pub(crate) async fn listing_of(&self, joint: &str) -> Result<Option<Arc<Read>>, Trouble> {
        let project = self.project();
        match project.joint(joint) {
            Some(joint) => self.listing_in(&project, joint).await,
            None => Ok(None),
        }
    }

    async fn listing_in(
        &self,
        project: &Project,
        joint: &Joint,
    ) -> Result<Option<Arc<Read>>, Trouble> {
        match project.listing(joint).and_then(|name| self.file(name)) {
            Some(file) => self.listings.read(&self.store, &file).await,
            None => Ok(None),
        }
    }

    /// Looks at a joint, and makes its work card; none without a listing.
    ///
    /// # Errors
    /// As [`look`](Self::look); and when what it takes can't be computed.
    pub(crate) async fn card(&self, name: &str) -> Result<(Seen, Option<JointCard>), Trouble> {
        let seen = self.look(name).await?;
        working(move || {
            let card = JointCard::of(&seen.checked(), &AtHand::usual()).map_err(|error| {
                Trouble::Refused {
                    message: format!(
                        "what {} takes can't be worked out: {error}",
                        seen.joint.name
                    ),
                    help: "put that value right at the joint or its mark".to_owned(),
                }
            })?;
            Ok((seen, card))
        })
        .await?
    }

    /// Looks at every joint that wasn't looked at yet, those of one listing together.
    ///
    /// # Errors
    /// When the store can't be read.
    pub async fn look_at_all(&self) -> Result<(), Trouble> {
        self.catch_up().await?;
        let (epoch, waiting) = self.board(|board| (board.epoch(), board.waiting()));
        let mut of_files: BTreeMap<Option<String>, Vec<Arc<str>>> = BTreeMap::new();
        for card in waiting {
            let file = card.listing.as_deref().and_then(|name| self.file(name));
            of_files.entry(file).or_default().push(card.name.clone());
        }
        for (file, names) in of_files {
            for names in names.chunks(TOGETHER) {
                self.look_at(file.as_deref(), names, epoch).await?;
            }
        }
        Ok(())
    }

    /// Looks at the first of some joints at once, so that whoever has changed them sees what that comes to; the others follow.
    pub(crate) async fn look_again(&self, joints: &[String]) {
        for joint in joints.iter().take(TOGETHER) {
            // What can't be looked at now is looked at later, and says what is wrong where it is opened.
            let _ = self.look(joint).await;
        }
    }

    /// Looks at some joints that are to be built to one listing, and puts what was found on the board. What was changed since the epoch
    /// when they were chosen is found to be out of date there.
    async fn look_at(
        &self,
        file: Option<&str>,
        names: &[Arc<str>],
        epoch: u64,
    ) -> Result<(), Trouble> {
        let project = self.project();
        let owner = |name: &Arc<str>| Owner::Joint(name.to_string());
        let owners: Vec<Owner> = names.iter().map(owner).collect();
        let mut known = self.store.known_of(&owners).await?;
        let mut joints = Vec::new();
        for (name, owner) in names.iter().zip(&owners) {
            // Somebody may have removed it meanwhile.
            if let Some(joint) = project.joint(name) {
                let mut joint = joint.clone();
                fill(&mut joint, known.remove(owner).unwrap_or_default());
                joints.push(joint);
            }
        }
        let listing = match file {
            // A document that can't be read says so where it is opened; a joint that is to be built to it is open.
            Some(file) => match self.listings.read(&self.store, file).await {
                Err(Trouble::Refused { .. } | Trouble::Store(store::StoreError::Attachment(_))) => {
                    None
                }
                other => other?,
            },
            None => None,
        };
        let looked = working(move || {
            let checklist = listing.as_deref().map(checklist);
            let look = |joint: &Joint| {
                let subject = Subject::of(&project, joint);
                let result = checklist.as_ref().map(|list| result(list, &subject));
                (joint.name.clone(), Looked::of(result.as_ref()))
            };
            joints.iter().map(look).collect::<Vec<_>>()
        })
        .await?;
        for (name, looked) in looked {
            self.on_board(|board| board.insert(&name, epoch, looked));
        }
        Ok(())
    }
}

/// A confirmed listing gives a final result, a draft a provisional one.
fn checklist(read: &Read) -> Checklist<'_> {
    match &read.state {
        State::Draft(reading) => Checklist::of_draft(reading),
        State::Confirmed(listing) => Checklist::of_confirmed(listing),
    }
}

fn result<'r>(checklist: &Checklist<'r>, subject: &Subject<'r>) -> JointResult {
    checklist.explain(subject, &checklist.decide(subject))
}
