//! What a library's listings ask, each distinct point once.
//!
//! Listings of one library ask many of the same things: a point that five hundred of them share is decided once for a condition.
//! The index holds no verdict and makes none.

mod build;
mod gates;
mod likeness;
mod stored;

use std::collections::BTreeMap;

use conformance::points::{Point, Slot, Tells};
use conformance::{Checklist, Standing, Subject, is_judged};
use site::GoesBy;

use crate::cost::Cost;

pub use build::Builder;
pub(crate) use gates::Gate;
use likeness::Likeness;
pub use stored::IndexError;

/// The listings of a library, made ready for checking when they are looked at.
pub trait Library: Sync {
    /// The listing at a place of the index; nothing where it can't be had.
    fn checklist(&self, at: usize) -> Option<&Checklist<'_>>;
}

impl Library for Vec<Checklist<'_>> {
    fn checklist(&self, at: usize) -> Option<&Checklist<'_>> {
        self.get(at)
    }
}

/// What the listings of a library ask.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Index {
    /// Every distinct point.
    pub(crate) points: Vec<Point>,
    /// What each point is about, in the order of the points.
    pub(crate) about: Vec<About>,
    /// The properties that points are about, by number.
    pub(crate) properties: Vec<String>,
    /// The listings.
    pub(crate) entries: Vec<Entry>,
    /// Which points a few facts decide.
    pub(crate) apart: Apart,
    /// The listings by what the building asks of them.
    pub(crate) gates: Vec<Gate>,
    /// For each listing the place of the first that comes to the same wherever nobody has decided anything of either.
    pub(crate) firsts: Vec<usize>,
}

/// The points told apart by what decides them.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(crate) struct Apart {
    /// Those on which anything may bear.
    pub(crate) alone: Vec<usize>,
    /// Those that the facts on some properties decide, with these.
    pub(crate) by_facts: Vec<ByFacts>,
}

/// Points that the same facts decide.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct ByFacts {
    /// The properties that the facts are on.
    pub(crate) properties: Vec<String>,
    /// The points, in order.
    pub(crate) points: Vec<usize>,
}

impl Apart {
    pub(crate) fn of(points: &[Point]) -> Self {
        let mut alone = Vec::new();
        let mut by_facts: BTreeMap<Vec<&str>, Vec<usize>> = BTreeMap::new();
        for (at, point) in points.iter().enumerate() {
            match point.rests_on() {
                Some(properties) => by_facts.entry(properties).or_default().push(at),
                None => alone.push(at),
            }
        }
        let owned = |names: Vec<&str>| names.into_iter().map(str::to_owned).collect();
        let by_facts = by_facts.into_iter().map(|(names, points)| ByFacts {
            properties: owned(names),
            points,
        });
        Self {
            alone,
            by_facts: by_facts.collect(),
        }
    }
}

/// What a point is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
pub(crate) struct About {
    /// The property's number.
    pub(crate) property: u32,
    /// What a change of it costs.
    pub(crate) cost: Cost,
    /// Whether the building asks it, and nobody changes it to suit a listing.
    pub(crate) of_the_building: bool,
}

/// A listing of the index.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
pub struct Entry {
    /// Its designation; empty where none was read.
    pub designation: String,
    /// Its edition, as written.
    pub edition: String,
    /// The name of its file.
    pub file: String,
    /// SHA-256 of its document, in hexadecimal digits.
    pub sha256: String,
    /// Whether its reading is confirmed.
    pub standing: Standing,
    /// All of it but what only tells which listing it is.
    pub(crate) likeness: Likeness,
    /// Whether a check may fail that no point stands for.
    pub(crate) may_ask_more: bool,
    /// How many choices each group of options has.
    pub(crate) choices: Vec<usize>,
    /// What it asks whatever is built, the head's points first.
    pub(crate) always: Vec<u32>,
    /// What else it asks.
    pub(crate) others: Vec<Asked>,
}

impl Entry {
    /// What it goes by, where something is said of it.
    pub(crate) fn goes_by(&self) -> GoesBy<'_> {
        GoesBy {
            file: &self.file,
            designation: &self.designation,
            sha256: &self.sha256,
        }
    }
}

/// A point where a listing has it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
pub(crate) struct Asked {
    pub(crate) point: u32,
    pub(crate) slot: Slot,
    pub(crate) is_parted: bool,
    pub(crate) tells: Tells,
}

impl Index {
    /// The listings, in their order.
    pub fn entries(&self) -> &[Entry] {
        &self.entries
    }

    /// Whether any listing asks about a property, or hangs a clause on it.
    pub fn asks_about(&self, property: &str) -> bool {
        self.points.iter().any(|point| point.is_about(property))
    }

    /// The place of the listing that may be checked in the place of one: the first that comes to the same. Where people have decided something that
    /// may bear on either by its name, or where something is known that was said of either alone, each is checked itself.
    pub(crate) fn stands_for(&self, at: usize, subject: &Subject<'_>) -> usize {
        let first = self.firsts.get(at).copied().unwrap_or(at);
        let is_apart = |at: usize| {
            let entry = self.entries.get(at);
            entry.is_none_or(|entry| is_told_apart(entry, subject))
        };
        if first == at || is_apart(at) || is_apart(first) {
            at
        } else {
            first
        }
    }

    /// How many distinct points the listings ask.
    pub fn distinct_points(&self) -> usize {
        self.points.len()
    }
}

/// Whether anything that people decided or said may bear on a listing by its name.
fn is_told_apart(entry: &Entry, subject: &Subject<'_>) -> bool {
    let goes_by = entry.goes_by();
    let is_judged = !subject.judgments.is_empty() && is_judged(subject, &goes_by);
    is_judged || subject.facts.any_said_of(&goes_by)
}
