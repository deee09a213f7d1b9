//! The listings told apart by what the building asks of them.
//!
//! Most of a library is for other joints: of another kind, not rated so long, or not tested for smoke. Listings that say the same of
//! all of that are passed over together.

use std::collections::BTreeMap;

use super::{About, Entry};

/// Listings that the building rules out together, or not at all.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Gate {
    /// The points on what the building asks: any of them unmet rules the listings out.
    pub(crate) points: Vec<u32>,
    /// The places of the listings.
    pub(crate) listings: Vec<usize>,
}

/// The gates of a library, by their points.
pub(super) fn of(entries: &[Entry], about: &[About]) -> Vec<Gate> {
    let of_the_building = |point: &u32| {
        let about = usize::try_from(*point).ok().and_then(|at| about.get(at));
        about.is_some_and(|about| about.of_the_building)
    };
    let mut gates: BTreeMap<Vec<u32>, Vec<usize>> = BTreeMap::new();
    for (at, entry) in entries.iter().enumerate() {
        let points = entry.always.iter().copied().filter(of_the_building);
        gates.entry(points.collect()).or_default().push(at);
    }
    let gates = gates.into_iter();
    gates
        .map(|(points, listings)| Gate { points, listings })
        .collect()
}
