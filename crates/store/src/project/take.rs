//! From tables and listings to the changes that would bring a store to what they say.
//!
//! What people entered in the store stays: a fact that came from no table, a judgment, a confirmed clause. What came from a table follows the
//! table.

use std::collections::{BTreeMap, BTreeSet};

use listing::confirm::Overlay;
use site::{Barrier, Building, Fact, Joint, Mark, Project};

use super::keys::judgment_key;
use crate::attachments::Attached;
use crate::change::Edit;
use crate::error::StoreError;
use crate::key::{Key, Kind, Owner};
use crate::records::{
    BarrierRecord, ConfirmationRecord, Held, JointRecord, Known, ListingRecord, MarkRecord, Record,
};
use crate::store::Store;

/// The changes that would bring a store to what some files say: to be looked at before they are made.
#[derive(Debug, Clone, Default)]
pub struct Proposal {
    /// The changes.
    pub edits: Vec<Edit>,
    /// How many records are new.
    pub new: usize,
    /// How many change.
    pub changed: usize,
    /// How many are removed: they came from a table, and aren't in it any more.
    pub removed: usize,
    /// What the files say otherwise, and stays as people entered it.
    pub kept: Vec<ToKeep>,
}

/// Something that stays as it is in the store, though the files say otherwise.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ToKeep {
    /// Which record.
    pub key: Key,
    /// Why, in a few words.
    pub why: &'static str,
}

/// What is in the store now, against which a proposal is made.
#[derive(Debug, Default)]
pub(super) struct Now {
    held: BTreeMap<Key, Held<String>>,
}

impl Store {
    /// What it would take to bring the store to what a project's tables say. A table that isn't given changes nothing.
    ///
    /// # Errors
    /// When the store can't be read.
    pub async fn propose(&self, project: &Project) -> Result<Proposal, StoreError> {
        let mut now = Now::default();
        let kinds = [
            Kind::Building,
            Kind::Barrier,
            Kind::Mark,
            Kind::Joint,
            Kind::Fact,
            Kind::Judgment,
            Kind::Attachment,
        ];
        self.each(&kinds, |held| {
            now.held.insert(held.key.clone(), held);
            Ok(())
        })
        .await?;
        let mut proposal = Proposal::default();
        proposal.take_building(&project.building, &now)?;
        proposal.take_barriers(&project.barriers, &now)?;
        proposal.take_marks(&project.marks, &now)?;
        proposal.take_joints(&project.joints, &now)?;
        proposal.take_judgments(project, &now)?;
        Ok(proposal)
    }

    /// What it would take to hold a listing's document, which is attached already, with its designation as read and what people
    /// confirmed of it.
    ///
    /// # Errors
    /// When the store can't be read.
    pub async fn propose_listing(
        &self,
        file: &str,
        document: &Attached,
        designation: &str,
        overlay: Option<&Overlay>,
    ) -> Result<Proposal, StoreError> {
        let mut now = Now::default();
        let key = Key::new(Kind::Listing, file, "");
        if let Some(held) = self.database.record(&key).await? {
            now.held.insert(key.clone(), held);
        }
        for held in self.database.records_of(Kind::Confirmation, file).await? {
            now.held.insert(held.key.clone(), held);
        }
        let mut proposal = Proposal::default();
        let record = ListingRecord {
            sha256: document.sha256.clone(),
            bytes: document.bytes,
            designation: Some(designation.to_owned()),
        };
        proposal.put(key, &record, &now)?;
        for entry in overlay.iter().flat_map(|overlay| &overlay.entries) {
            let key = Key::confirmation(file, &entry.clause);
            let record = ConfirmationRecord {
                source_sha256: overlay
                    .map_or_else(String::new, |overlay| overlay.source_sha256.clone()),
                source_name: overlay
                    .map_or_else(String::new, |overlay| overlay.source_name.clone()),
                entry: entry.clone(),
            };
            let edit = Edit::put(key.clone(), 0, &record)?;
            match now.held.get(&key) {
                Some(held) if edit.after() == Some(held.value.as_str()) => {}
                Some(_) => proposal.keep(key, "confirmed otherwise in the store"),
                None => {
                    proposal.new += 1;
                    proposal.edits.push(edit);
                }
            }
        }
        Ok(proposal)
    }
}

impl Proposal {
    /// Whether the store says all of it already.
    pub fn is_empty(&self) -> bool {
        self.edits.is_empty()
    }

    /// Adds another.
    pub fn extend(&mut self, other: Self) {
        self.edits.extend(other.edits);
        self.new += other.new;
        self.changed += other.changed;
        self.removed += other.removed;
        self.kept.extend(other.kept);
    }

    /// Leaves joints, marks and barriers that aren't in the tables where they are, with what is known of them: for tables that are a part
    /// of the project only.
    pub fn leave_others(&mut self) {
        let gone: BTreeSet<Key> = self
            .edits
            .iter()
            .filter(|edit| edit.after().is_none())
            .map(|edit| edit.key.clone())
            .filter(|key| matches!(key.kind, Kind::Joint | Kind::Mark | Kind::Barrier))
            .collect();
        let is_of_gone = |key: &Key| match (key.kind, key.name.parse()) {
            (Kind::Fact, Ok(Owner::Joint(name))) => gone.contains(&Key::new(Kind::Joint, name, "")),
            (Kind::Fact, Ok(Owner::Mark(name))) => gone.contains(&Key::new(Kind::Mark, name, "")),
            (Kind::Fact, Ok(Owner::Barrier(name))) => {
                gone.contains(&Key::new(Kind::Barrier, name, ""))
            }
            _ => gone.contains(key),
        };
        let before = self.edits.len();
        self.edits.retain(|edit| !is_of_gone(&edit.key));
        self.removed -= before - self.edits.len();
    }

    fn keep(&mut self, key: Key, why: &'static str) {
        self.kept.push(ToKeep { key, why });
    }

    fn put<T: Record>(&mut self, key: Key, value: &T, now: &Now) -> Result<(), StoreError> {
        let held = now.held.get(&key);
        let edit = Edit::put(key, held.map_or(0, |held| held.version), value)?;
        match held {
            Some(held) if edit.after() == Some(held.value.as_str()) => return Ok(()),
            Some(_) => self.changed += 1,
            None => self.new += 1,
        }
        self.edits.push(edit);
        Ok(())
    }

    fn take_building(&mut self, building: &Building, now: &Now) -> Result<(), StoreError> {
        if *building == Building::default() {
            return Ok(());
        }
        self.put(Key::building(), building, now)
    }

    fn take_barriers(&mut self, barriers: &[Barrier], now: &Now) -> Result<(), StoreError> {
        for barrier in barriers {
            let record = BarrierRecord {
                kind: barrier.kind.clone(),
                title: barrier.title.clone(),
            };
            self.put(Key::new(Kind::Barrier, &barrier.name, ""), &record, now)?;
            let owner = Owner::Barrier(barrier.name.clone());
            self.take_facts(&owner, barrier.facts.values(), &BTreeSet::new(), now)?;
        }
        let names = barriers.iter().map(|barrier| barrier.name.as_str());
        self.remove_others(Kind::Barrier, &names.collect(), now)
    }

    fn take_marks(&mut self, marks: &[Mark], now: &Now) -> Result<(), StoreError> {
        // Without a table of them, marks are what joints name; then nothing else is said of any.
        let is_bare =
            |mark: &Mark| mark.title.is_empty() && mark.listing.is_none() && mark.facts.is_empty();
        if marks.iter().all(is_bare) {
            return self.add_marks(marks, now);
        }
        for mark in marks {
            let record = MarkRecord {
                title: mark.title.clone(),
                listing: mark.listing.clone(),
            };
            self.put(Key::new(Kind::Mark, &mark.name, ""), &record, now)?;
            let owner = Owner::Mark(mark.name.clone());
            self.take_facts(&owner, mark.facts.values(), &BTreeSet::new(), now)?;
        }
        let names = marks.iter().map(|mark| mark.name.as_str());
        self.remove_others(Kind::Mark, &names.collect(), now)
    }

    /// Adds the marks that aren't there yet.
    fn add_marks(&mut self, marks: &[Mark], now: &Now) -> Result<(), StoreError> {
        for mark in marks {
            let key = Key::new(Kind::Mark, &mark.name, "");
            if !now.held.contains_key(&key) {
                self.put(key, &MarkRecord::default(), now)?;
            }
        }
        Ok(())
    }

    fn take_joints(&mut self, joints: &[Joint], now: &Now) -> Result<(), StoreError> {
        for joint in joints {
            let record = JointRecord {
                mark: joint.mark.clone(),
                listing: joint.listing.clone(),
                storey: joint.storey.clone(),
                barrier: joint.barrier.clone(),
                grid: joint.grid.clone(),
            };
            self.put(Key::new(Kind::Joint, &joint.name, ""), &record, now)?;
            let owner = Owner::Joint(joint.name.clone());
            self.take_facts(&owner, joint.facts.values(), &joint.not_known, now)?;
        }
        let names = joints.iter().map(|joint| joint.name.as_str());
        self.remove_others(Kind::Joint, &names.collect(), now)
    }

    /// What is known of an owner, in the place of what came from tables before.
    fn take_facts<'f>(
        &mut self,
        owner: &Owner,
        facts: impl Iterator<Item = &'f Fact>,
        not_known: &BTreeSet<String>,
        now: &Now,
    ) -> Result<(), StoreError> {
        let mut said = BTreeSet::new();
        let of_facts =
            facts.map(|fact| (fact.property.as_str(), Known::Fact(Box::new(fact.clone()))));
        let of_gaps = not_known
            .iter()
            .map(|property| (property.as_str(), Known::NotKnown));
        for (property, known) in of_facts.chain(of_gaps) {
            let key = Key::fact(owner, property);
            said.insert(property.to_owned());
            match now.held.get(&key) {
                Some(held) if !is_from_table(held)? => {
                    self.keep(key, "entered in the store by a person");
                }
                _ => self.put(key, &known, now)?,
            }
        }
        for held in now.facts_of(owner) {
            if !said.contains(&held.key.part) && is_from_table(held)? {
                self.remove(held);
            }
        }
        Ok(())
    }

    fn remove(&mut self, held: &Held<String>) {
        self.removed += 1;
        self.edits
            .push(Edit::remove(held.key.clone(), held.version));
    }

    /// Removes what came from a table that was given and doesn't have it any more; but nothing that people have worked on.
    fn remove_others(
        &mut self,
        kind: Kind,
        names: &BTreeSet<&str>,
        now: &Now,
    ) -> Result<(), StoreError> {
        if names.is_empty() {
            return Ok(());
        }
        for held in now.of_kind(kind) {
            let name = held.key.name.as_str();
            if names.contains(name) {
                continue;
            }
            let owner = match kind {
                Kind::Barrier => Owner::Barrier(name.to_owned()),
                Kind::Mark => Owner::Mark(name.to_owned()),
                _ => Owner::Joint(name.to_owned()),
            };
            if now.is_worked_on(&owner)? {
                self.keep(
                    held.key.clone(),
                    "no longer in the tables, but people have entered something of it",
                );
                continue;
            }
            self.remove(held);
            for fact in now.facts_of(&owner) {
                self.remove(fact);
            }
        }
        Ok(())
    }

    /// Adds the judgments that aren't there yet.
    fn take_judgments(&mut self, project: &Project, now: &Now) -> Result<(), StoreError> {
        let mut taken: BTreeMap<Key, String> = BTreeMap::new();
        for judgment in &project.judgments {
            for nth in 0.. {
                let key = judgment_key(judgment, nth)?;
                let edit = Edit::put(key.clone(), 0, judgment)?;
                let there = now.held.get(&key).map(|held| held.value.as_str());
                match there.or(taken.get(&key).map(String::as_str)) {
                    Some(value) if edit.after() == Some(value) => break,
                    Some(_) => {}
                    None => {
                        taken.insert(key, edit.after().unwrap_or_default().to_owned());
                        self.new += 1;
                        self.edits.push(edit);
                        break;
                    }
                }
            }
        }
        Ok(())
    }
}

impl Now {
    fn of_kind(&self, kind: Kind) -> impl Iterator<Item = &Held<String>> {
        self.held
            .range(Key::new(kind, "", "")..)
            .map(|(_, held)| held)
            .take_while(move |held| held.key.kind == kind)
    }

    fn of_owner(&self, kind: Kind, owner: &Owner) -> impl Iterator<Item = &Held<String>> {
        let name = owner.to_string();
        self.held
            .range(Key::new(kind, name.as_str(), "")..)
            .map(|(_, held)| held)
            .take_while(move |held| held.key.kind == kind && held.key.name == name)
    }

    fn facts_of(&self, owner: &Owner) -> impl Iterator<Item = &Held<String>> {
        self.of_owner(Kind::Fact, owner)
    }

    /// Whether people have entered anything of it.
    fn is_worked_on(&self, owner: &Owner) -> Result<bool, StoreError> {
        let mut others = self
            .of_owner(Kind::Judgment, owner)
            .chain(self.of_owner(Kind::Attachment, owner));
        if others.next().is_some() {
            return Ok(true);
        }
        for fact in self.facts_of(owner) {
            if !is_from_table(fact)? {
                return Ok(true);
            }
        }
        Ok(false)
    }
}

fn is_from_table(held: &Held<String>) -> Result<bool, StoreError> {
    let known: Held<Known> = held.clone().read()?;
    Ok(known.value.is_from_table())
}
