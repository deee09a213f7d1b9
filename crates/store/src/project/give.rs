//! From records to a project, and to what people confirmed of a listing.

use std::collections::BTreeMap;

use listing::confirm::Overlay;
use site::{Barrier, Fact, Joint, Judgment, Mark, Project, Value};

use crate::error::StoreError;
use crate::key::{Kind, Owner};
use crate::records::{
    BarrierRecord, ConfirmationRecord, Held, JointRecord, Known, ListingRecord, MarkRecord,
};
use crate::store::Store;

/// The property that says how long a joint is.
const LENGTH: &str = "joint.length";

impl Store {
    /// The whole project, as it stood at one moment.
    ///
    /// # Errors
    /// When the store can't be read, or a record isn't what its kind says.
    pub async fn project(&self) -> Result<Project, StoreError> {
        let kinds = [
            Kind::Building,
            Kind::Barrier,
            Kind::Mark,
            Kind::Joint,
            Kind::Fact,
            Kind::Judgment,
        ];
        let mut project = Project::default();
        let mut known: BTreeMap<String, Vec<(String, Known)>> = BTreeMap::new();
        self.each(&kinds, |held| {
            match held.key.kind {
                Kind::Building => project.building = held.read()?.value,
                Kind::Barrier => project.barriers.push(barrier(held.read()?)),
                Kind::Mark => project.marks.push(mark(held.read()?)),
                Kind::Joint => project.joints.push(joint(held.read()?)),
                Kind::Judgment => project.judgments.push(held.read()?.value),
                _ => {
                    let Held { key, value, .. } = held.read()?;
                    known.entry(key.name).or_default().push((key.part, value));
                }
            }
            Ok(())
        })
        .await?;
        let mut of = |owner: Owner| known.remove(&owner.to_string()).unwrap_or_default();
        for barrier in &mut project.barriers {
            barrier.facts = facts(of(Owner::Barrier(barrier.name.clone())));
        }
        for mark in &mut project.marks {
            mark.facts = facts(of(Owner::Mark(mark.name.clone())));
        }
        for joint in &mut project.joints {
            know(joint, of(Owner::Joint(joint.name.clone())));
        }
        Ok(project)
    }

    /// The project without what is known of its joints, which may be much: the building, barriers and marks with what is known of them, the
    /// joints, the judgments.
    ///
    /// # Errors
    /// As [`project`](Self::project).
    pub async fn outline(&self) -> Result<Project, StoreError> {
        let mut project = Project::default();
        let kinds = [
            Kind::Building,
            Kind::Barrier,
            Kind::Mark,
            Kind::Joint,
            Kind::Judgment,
        ];
        self.each(&kinds, |held| {
            match held.key.kind {
                Kind::Building => project.building = held.read()?.value,
                Kind::Barrier => project.barriers.push(barrier(held.read()?)),
                Kind::Mark => project.marks.push(mark(held.read()?)),
                Kind::Joint => project.joints.push(joint(held.read()?)),
                _ => project.judgments.push(held.read()?.value),
            }
            Ok(())
        })
        .await?;
        for barrier in &mut project.barriers {
            let owner = Owner::Barrier(barrier.name.clone());
            barrier.facts = facts(parts(self.known(&owner).await?));
        }
        for mark in &mut project.marks {
            let owner = Owner::Mark(mark.name.clone());
            mark.facts = facts(parts(self.known(&owner).await?));
        }
        Ok(project)
    }

    /// What is known of an owner, each with its version.
    ///
    /// # Errors
    /// When the store can't be read.
    pub async fn known(&self, owner: &Owner) -> Result<Vec<Held<Known>>, StoreError> {
        self.get_all(&owner.to_string()).await
    }

    /// What is known of each of some joints, marks and barriers.
    ///
    /// # Errors
    /// When the store can't be read.
    pub async fn known_of(
        &self,
        owners: &[Owner],
    ) -> Result<BTreeMap<Owner, Vec<Held<Known>>>, StoreError> {
        let names: Vec<String> = owners.iter().map(Owner::to_string).collect();
        let mut known: BTreeMap<Owner, Vec<Held<Known>>> = BTreeMap::new();
        for held in self.database.records_of_names(Kind::Fact, &names).await? {
            let owner = held.key.name.parse()?;
            known.entry(owner).or_default().push(held.read()?);
        }
        Ok(known)
    }

    /// What people decided, in the order they did.
    ///
    /// # Errors
    /// When the store can't be read.
    pub async fn judgments(&self) -> Result<Vec<Judgment>, StoreError> {
        let mut judgments = Vec::new();
        self.each(&[Kind::Judgment], |held| {
            judgments.push(held.read()?.value);
            Ok(())
        })
        .await?;
        Ok(judgments)
    }

    /// The listings' documents, in the order they came.
    ///
    /// # Errors
    /// When the store can't be read.
    pub async fn listings(&self) -> Result<Vec<Held<ListingRecord>>, StoreError> {
        let mut listings = Vec::new();
        self.each(&[Kind::Listing], |held| {
            listings.push(held.read()?);
            Ok(())
        })
        .await?;
        Ok(listings)
    }

    /// What people have confirmed of a listing's file; none when nobody has confirmed anything.
    ///
    /// # Errors
    /// When the store can't be read.
    pub async fn overlay(&self, file: &str) -> Result<Option<Overlay>, StoreError> {
        let held: Vec<Held<ConfirmationRecord>> = self.get_all(file).await?;
        Ok(overlay(held))
    }

    /// What people have confirmed of each listing's file.
    ///
    /// # Errors
    /// When the store can't be read.
    pub async fn overlays(&self) -> Result<BTreeMap<String, Overlay>, StoreError> {
        let mut of_files: BTreeMap<String, Vec<Held<ConfirmationRecord>>> = BTreeMap::new();
        self.each(&[Kind::Confirmation], |held| {
            let held = held.read::<ConfirmationRecord>()?;
            of_files
                .entry(held.key.name.clone())
                .or_default()
                .push(held);
            Ok(())
        })
        .await?;
        Ok(of_files
            .into_iter()
            .filter_map(|(file, held)| Some((file, overlay(held)?)))
            .collect())
    }
}

/// The document that the latest entry was made on stands for all of them.
fn overlay(held: Vec<Held<ConfirmationRecord>>) -> Option<Overlay> {
    let last = &held.iter().max_by_key(|held| held.seq)?.value;
    Some(Overlay {
        source_sha256: last.source_sha256.clone(),
        source_name: last.source_name.clone(),
        entries: held.into_iter().map(|held| held.value.entry).collect(),
    })
}

fn barrier(held: Held<BarrierRecord>) -> Barrier {
    Barrier {
        name: held.key.name,
        kind: held.value.kind,
        title: held.value.title,
        ..Barrier::default()
    }
}

fn mark(held: Held<MarkRecord>) -> Mark {
    Mark {
        name: held.key.name,
        title: held.value.title,
        listing: held.value.listing,
        ..Mark::default()
    }
}

fn joint(held: Held<JointRecord>) -> Joint {
    let record = held.value;
    Joint {
        name: held.key.name,
        mark: record.mark,
        listing: record.listing,
        storey: record.storey,
        barrier: record.barrier,
        grid: record.grid,
        ..Joint::default()
    }
}

fn parts(known: Vec<Held<Known>>) -> Vec<(String, Known)> {
    let part = |held: Held<Known>| (held.key.part, held.value);
    known.into_iter().map(part).collect()
}

/// Fills in what is known of a joint.
pub fn fill(joint: &mut Joint, known: Vec<Held<Known>>) {
    know(joint, parts(known));
}

fn facts(known: Vec<(String, Known)>) -> BTreeMap<String, Fact> {
    let fact = |(property, known): (String, Known)| match known {
        Known::Fact(fact) => Some((property, *fact)),
        Known::NotKnown => None,
    };
    known.into_iter().filter_map(fact).collect()
}

fn know(joint: &mut Joint, known: Vec<(String, Known)>) {
    let gaps = known
        .iter()
        .filter(|(_, known)| *known == Known::NotKnown)
        .map(|(property, _)| property.clone());
    joint.not_known = gaps.collect();
    joint.facts = facts(known);
    joint.length = match joint.facts.get(LENGTH).map(|fact| &fact.value) {
        Some(Value::Quantity(length)) => Some(*length),
        _ => None,
    };
}
