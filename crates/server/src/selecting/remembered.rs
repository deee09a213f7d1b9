//! What is kept between one search and the next. Each is bounded, and none can be out of date: what is asked goes with the entry of the journal up
//! to which it was read, a listing with a number that it hasn't with another document or confirmation, and what was found stays with the index
//! it was found in, by all that it was found from.

use std::fmt;
use std::sync::Arc;

use conformance::Checklist;
use quick_cache::Weighter;
use quick_cache::sync::Cache;
use selection::asking::Condition;
use selection::{Asked, Found};
use self_cell::self_cell;
use shelf::State;

use super::indexed::One;
use super::opened::checklist;

/// How many bytes of listings are kept opened, as they are unpacked; in memory they take some three times as many.
const MOST_OPENED: u64 = 8 << 20;

/// How many listings those are about.
const USUALLY_OPENED: usize = 512;

/// How many matches are kept of what was found; one takes a few hundred bytes.
const MOST_MATCHES: u64 = 20_000;

/// Of how many conditions those are about.
const USUALLY_FOUND: usize = 512;

/// How many joints and marks are kept as they were asked for; one takes some ten thousand bytes.
const MOST_ASKED: usize = 500;

self_cell!(
    struct Opened {
        owner: State,
        #[covariant]
        dependent: Checklist,
    }
);

/// A listing, opened and made ready for checking.
pub(super) struct Ready {
    opened: Opened,
    size: u64,
}

/// The listings that searches looked at last.
pub(super) struct Shelf(Cache<u64, Arc<Ready>, BySize>);

/// What was found in an index.
pub(super) struct Answers(Cache<Condition, Arc<Found>, ByMatches>);

/// Joints and marks as asked for, each with the entry of the journal up to which all is taken into account in it.
pub(super) struct Conditions(Cache<(i64, String), Arc<Asked>>);

#[derive(Clone)]
struct BySize;

#[derive(Clone)]
struct ByMatches;

impl Ready {
    pub(super) fn checklist(&self) -> &Checklist<'_> {
        self.opened.borrow_dependent()
    }
}

impl Shelf {
    /// A listing, made ready; nothing where what is held of it is damaged.
    pub(super) fn ready(&self, one: &One) -> Option<Arc<Ready>> {
        if let Some(ready) = self.0.get(&one.number) {
            return Some(ready);
        }
        let state = one.packed.open(one.overlay.as_deref())?;
        let ready = Arc::new(Ready {
            opened: Opened::new(state, checklist),
            size: one.packed.unpacked_bytes(),
        });
        self.0.insert(one.number, ready.clone());
        Some(ready)
    }
}

impl Answers {
    /// What was found for a condition before.
    pub(super) fn found(&self, condition: &Condition) -> Option<Arc<Found>> {
        self.0.get(condition)
    }

    /// Keeps what was found. Of the findings that it rests on nothing is kept: they name the cells of one joint.
    pub(super) fn keep(&self, condition: Condition, mut found: Found) -> Arc<Found> {
        let near = found.near.iter_mut();
        for change in near.flat_map(|one| &mut one.changes) {
            change.findings = Vec::new();
        }
        let found = Arc::new(found);
        self.0.insert(condition, found.clone());
        found
    }
}

impl Conditions {
    pub(super) fn get(&self, key: &(i64, String)) -> Option<Arc<Asked>> {
        self.0.get(key)
    }

    pub(super) fn keep(&self, key: (i64, String), asked: Arc<Asked>) {
        self.0.insert(key, asked);
    }
}

impl Default for Conditions {
    fn default() -> Self {
        Self(Cache::new(MOST_ASKED))
    }
}

impl Default for Shelf {
    fn default() -> Self {
        Self(Cache::with_weighter(USUALLY_OPENED, MOST_OPENED, BySize))
    }
}

impl Default for Answers {
    fn default() -> Self {
        Self(Cache::with_weighter(USUALLY_FOUND, MOST_MATCHES, ByMatches))
    }
}

impl Weighter<u64, Arc<Ready>> for BySize {
    fn weight(&self, _: &u64, ready: &Arc<Ready>) -> u64 {
        ready.size
    }
}

impl Weighter<Condition, Arc<Found>> for ByMatches {
    fn weight(&self, condition: &Condition, found: &Arc<Found>) -> u64 {
        let matches = [&found.fits, &found.open, &found.near];
        let matches: usize = matches.into_iter().map(Vec::len).sum();
        // A condition takes room by itself.
        u64::try_from(1 + condition.len() / 8 + matches).unwrap_or(u64::MAX)
    }
}

impl fmt::Debug for Conditions {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(formatter, "{} asked for", self.0.len())
    }
}

impl fmt::Debug for Shelf {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(formatter, "{} listings opened", self.0.len())
    }
}

impl fmt::Debug for Answers {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(formatter, "{} conditions", self.0.len())
    }
}
