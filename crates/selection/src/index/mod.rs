//! What a library's listings ask, each distinct point once.
//!
//! Listings of one library ask many of the same things: a point that five hundred of them share is decided once for a condition.
//! The index holds no verdict and makes none.

mod build;
mod stored;

use conformance::points::{Point, Slot};
use conformance::{Checklist, Standing};

use crate::cost::Cost;

pub use build::Builder;
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
    /// Which points one fact alone decides.
    pub(crate) apart: Apart,
}

/// The points told apart by what decides them.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(crate) struct Apart {
    /// Those on which more than one fact may bear.
    pub(crate) alone: Vec<usize>,
    /// Those that the fact on their property decides, by the property's number.
    pub(crate) by_property: std::collections::BTreeMap<u32, Vec<usize>>,
}

impl Apart {
    pub(crate) fn of(points: &[Point], about: &[About]) -> Self {
        let mut apart = Self::default();
        for (at, (point, about)) in points.iter().zip(about).enumerate() {
            match point.rests_on() {
                Some(_) => apart
                    .by_property
                    .entry(about.property)
                    .or_default()
                    .push(at),
                None => apart.alone.push(at),
            }
        }
        apart
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
    /// The name of its file.
    pub file: String,
    /// Whether its reading is confirmed.
    pub standing: Standing,
    /// Whether a check may fail that no point stands for.
    pub(crate) may_ask_more: bool,
    /// How many choices each group of options has.
    pub(crate) choices: Vec<usize>,
    /// What it asks whatever is built, the head's points first.
    pub(crate) always: Vec<u32>,
    /// What else it asks.
    pub(crate) others: Vec<Asked>,
}

/// A point where a listing has it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
pub(crate) struct Asked {
    pub(crate) point: u32,
    pub(crate) slot: Slot,
    pub(crate) is_parted: bool,
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

    /// How many distinct points the listings ask.
    pub fn distinct_points(&self) -> usize {
        self.points.len()
    }
}
