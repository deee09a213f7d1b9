//! The listings that a search looks at, opened for it.

use std::sync::{Arc, OnceLock};

use conformance::Checklist;
use selection::search::NotThere;
use selection::{Named as _, Search};
use shelf::{Named, State, Which, which};
use tokio::sync::OwnedSemaphorePermit;

use super::indexed::Indexed;
use crate::trouble::Trouble;

/// The index with its listings, each opened when it is looked at.
pub(crate) struct Opened {
    indexed: Arc<Indexed>,
    states: Vec<OnceLock<Option<State>>>,
    /// Given back when the listings are let go.
    _turn: OwnedSemaphorePermit,
}

/// The listings made ready for checking.
struct Ready<'o> {
    opened: &'o Opened,
    made: Vec<OnceLock<Option<Checklist<'o>>>>,
}

impl Opened {
    pub(super) fn of(indexed: Arc<Indexed>, turn: OwnedSemaphorePermit) -> Self {
        Self {
            _turn: turn,
            states: indexed.listings.iter().map(|_| OnceLock::new()).collect(),
            indexed,
        }
    }

    /// How many listings there are.
    pub(crate) fn len(&self) -> usize {
        self.indexed.listings.len()
    }

    /// The listings that can't be read, and aren't in the answer.
    pub(crate) fn unread(&self) -> &[String] {
        &self.indexed.unread
    }

    /// The file of the listing of that stem.
    pub(crate) fn file(&self, stem: &str) -> Option<&str> {
        let mut headings = self.indexed.listings.iter().map(|one| &one.heading);
        headings
            .find(|heading| heading.stem == stem)
            .map(|heading| heading.file.as_str())
    }

    /// Looks through the listings.
    ///
    /// # Errors
    /// When one of them can't be had any more.
    pub(crate) fn search<T>(
        &self,
        look: impl FnOnce(&Search<'_>) -> Result<T, NotThere>,
    ) -> Result<T, Trouble> {
        let ready = Ready {
            opened: self,
            made: self.states.iter().map(|_| OnceLock::new()).collect(),
        };
        let threads = std::thread::available_parallelism().map_or(1, usize::from);
        let search = Search::of(&ready, &self.indexed.index, threads);
        look(&search).map_err(|error| {
            let name = ready.stem(error.0).to_owned();
            Trouble::Broken(format!("{name} can't be read any more"))
        })
    }

    fn state(&self, at: usize) -> Option<&State> {
        let open = || self.indexed.listings.get(at)?.open();
        self.states.get(at)?.get_or_init(open).as_ref()
    }
}

impl selection::Library for Ready<'_> {
    fn checklist(&self, at: usize) -> Option<&Checklist<'_>> {
        let make = || self.opened.state(at).map(checklist);
        self.made.get(at)?.get_or_init(make).as_ref()
    }
}

impl selection::Named for Ready<'_> {
    fn stem(&self, at: usize) -> &str {
        let one = self.opened.indexed.listings.get(at);
        one.map_or("", |one| &one.heading.stem)
    }

    fn which(&self, name: &str) -> Option<usize> {
        let listings = &self.opened.indexed.listings;
        let named: Vec<Named<'_>> = listings
            .iter()
            .map(|one| Named {
                stem: &one.heading.stem,
                designation: &one.heading.designation,
            })
            .collect();
        match which(name, &named) {
            Which::One(at) => Some(at),
            Which::Nothing | Which::Several(_) => None,
        }
    }
}

pub(super) fn checklist(state: &State) -> Checklist<'_> {
    match state {
        State::Draft(reading) => Checklist::of_draft(reading),
        State::Confirmed(listing) => Checklist::of_confirmed(listing),
    }
}
