//! All of a project, and what is known of each of its joints.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::said::said_of;
use super::{Barrier, Building, Fact, Facts, GoesBy, Joint, Judgment, Mark, Scope};

/// The building with everything in it, in the order of its files.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize, schemars::JsonSchema)]
pub struct Project {
    /// The building.
    pub building: Building,
    /// Its rated barriers.
    pub barriers: Vec<Barrier>,
    /// The types of joint.
    pub marks: Vec<Mark>,
    /// The joints.
    pub joints: Vec<Joint>,
    /// What named people have decided.
    pub judgments: Vec<Judgment>,
}

impl Project {
    /// The mark of that name.
    pub fn mark(&self, name: &str) -> Option<&Mark> {
        self.marks.iter().find(|mark| mark.name == name)
    }

    /// The joint of that name.
    pub fn joint(&self, name: &str) -> Option<&Joint> {
        self.joints.iter().find(|joint| joint.name == name)
    }

    /// The barrier of that name.
    pub fn barrier(&self, name: &str) -> Option<&Barrier> {
        self.barriers.iter().find(|barrier| barrier.name == name)
    }

    /// The listing a joint is to be built to: its own, else its mark's.
    pub fn listing<'a>(&'a self, joint: &'a Joint) -> Option<&'a str> {
        let of_mark = || self.mark(&joint.mark)?.listing.as_deref();
        joint.listing.as_deref().or_else(of_mark)
    }

    /// What is known of a joint: its own facts; else those of the barrier it is part of; else those of its mark.
    /// What the schedule says is not known at this joint is not known, whatever its mark says.
    pub fn facts<'a>(&'a self, joint: &'a Joint) -> Facts<'a> {
        let mark = self.mark(&joint.mark).map(|mark| &mark.facts);
        let barrier = joint.barrier.as_deref().and_then(|name| self.barrier(name));
        let barrier = barrier.map(|barrier| &barrier.facts);
        Facts::of(joint, mark, barrier)
    }

    /// Every joint with what is known of it, in file order: as [`facts`](Self::facts), for all at once.
    pub fn joints_with_facts(&self) -> impl Iterator<Item = (&Joint, Facts<'_>)> {
        let marks: BTreeMap<_, _> = self
            .marks
            .iter()
            .rev()
            .map(|mark| (mark.name.as_str(), &mark.facts))
            .collect();
        let barriers: BTreeMap<_, _> = self
            .barriers
            .iter()
            .rev()
            .map(|barrier| (barrier.name.as_str(), &barrier.facts))
            .collect();
        self.joints.iter().map(move |joint| {
            let mark = marks.get(joint.mark.as_str()).copied();
            let barrier = joint
                .barrier
                .as_deref()
                .and_then(|name| barriers.get(name).copied());
            (joint, Facts::of(joint, mark, barrier))
        })
    }

    /// Names the documents that facts of tables are said of, where they name the listing alone: of those given, the one that goes by the name,
    /// where just one does. So they don't count for another edition that comes under the name later.
    pub fn say_of_documents(&mut self, listings: &[GoesBy<'_>]) {
        for mark in &mut self.marks {
            say_of_documents(&mut mark.facts, listings);
        }
        for barrier in &mut self.barriers {
            say_of_documents(&mut barrier.facts, listings);
        }
        for joint in &mut self.joints {
            say_of_documents(&mut joint.facts, listings);
        }
    }

    /// The judgments that bear on a joint: those made for it and those made for its mark, in file order.
    pub fn judgments_on<'a>(&'a self, joint: &'a Joint) -> impl Iterator<Item = &'a Judgment> {
        self.judgments
            .iter()
            .filter(|judgment| match &judgment.scope {
                Scope::Joint(name) => *name == joint.name,
                Scope::Mark(name) => *name == joint.mark,
            })
    }
}

fn say_of_documents(facts: &mut BTreeMap<String, Fact>, listings: &[GoesBy<'_>]) {
    let named: Vec<(String, String)> = facts
        .keys()
        .filter_map(|name| Some((name.clone(), of_document(name, listings)?)))
        .collect();
    for (name, of_document) in named {
        // Where two names for one listing lead to one document, both stay as they are, and neither counts where they differ.
        if facts.contains_key(&of_document) {
            continue;
        }
        if let Some(mut fact) = facts.remove(&name) {
            fact.property.clone_from(&of_document);
            facts.insert(of_document, fact);
        }
    }
}

/// The name of a fact with the document that it is said of; none where it names one, or several or none go by the name.
fn of_document(name: &str, listings: &[GoesBy<'_>]) -> Option<String> {
    let said = said_of(name).filter(|said| said.document.is_none())?;
    let mut meant = listings.iter().filter(|listing| listing.is_meant(said));
    let one = meant.next()?;
    meant.next().is_none().then(|| one.saying(name))
}
