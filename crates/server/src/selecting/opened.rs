//! The listings that a search looks at, opened for it.

use std::sync::{Arc, OnceLock};

use conformance::Checklist;
use selection::search::NotThere;
use selection::{Answered, Asked, Named as _, Search, Wanted};
use shelf::State;
use tokio::sync::OwnedSemaphorePermit;

use super::indexed::Indexed;
use super::remembered::{Ready, Shelf};
use crate::trouble::Trouble;

/// How much of the answer a page tells: of the others, how many there are.
const WANTED: Wanted = Wanted {
    open: 8,
    near: 10,
    every_single_change: false,
};

/// The index with its listings, each opened when it is looked at.
pub(crate) struct Opened {
    indexed: Arc<Indexed>,
    shelf: Arc<Shelf>,
    /// Given back when the listings are let go.
    _turn: OwnedSemaphorePermit,
}

/// The listings that one search looks at: each stays opened until it is done.
struct Looked<'o> {
    opened: &'o Opened,
    ready: Vec<OnceLock<Option<Arc<Ready>>>>,
}

impl Opened {
    pub(super) const fn of(
        indexed: Arc<Indexed>,
        shelf: Arc<Shelf>,
        turn: OwnedSemaphorePermit,
    ) -> Self {
        Self {
            indexed,
            shelf,
            _turn: turn,
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

    /// The file of the listing at a place of the answer.
    pub(crate) fn file(&self, at: usize) -> Option<&str> {
        let one = self.indexed.listings.get(at);
        one.map(|one| one.heading.file.as_str())
    }

    /// Looks through the listings.
    ///
    /// # Errors
    /// When one of them can't be had any more.
    pub(crate) fn search<T>(
        &self,
        look: impl FnOnce(&Search<'_>) -> Result<T, NotThere>,
    ) -> Result<T, Trouble> {
        let listings = self.indexed.listings.iter();
        let looked = Looked {
            opened: self,
            ready: listings.map(|_| OnceLock::new()).collect(),
        };
        let threads = std::thread::available_parallelism().map_or(1, usize::from);
        let search = Search::of(&looked, self.indexed.finder(), threads);
        look(&search).map_err(|error| {
            let name = looked.stem(error.0).to_owned();
            Trouble::Broken(format!("{name} can't be read any more"))
        })
    }

    /// The answer to one question. What was found for the same condition before is told again.
    ///
    /// # Errors
    /// As [`search`](Self::search).
    pub(crate) fn answer(&self, asked: &Asked) -> Result<Answered, Trouble> {
        let condition = asked.condition();
        let answers = &self.indexed.answers;
        self.search(|search| {
            let found = match answers.found(&condition) {
                Some(found) => found,
                None => answers.keep(condition, search.find_one(asked, &WANTED)?),
            };
            Ok(search.told(asked, found.as_ref().clone(), true))
        })
    }

    /// The answer were something otherwise than known, with what that turns.
    ///
    /// # Errors
    /// As [`search`](Self::search).
    pub(crate) fn answer_if(&self, known: &Asked, supposed: &Asked) -> Result<Answered, Trouble> {
        let answers = self.search(|search| search.answer_if(known, supposed, &WANTED))?;
        let answer = answers.into_iter().next();
        answer.ok_or_else(|| Trouble::Broken("nothing was answered".to_owned()))
    }
}

impl selection::Library for Looked<'_> {
    fn checklist(&self, at: usize) -> Option<&Checklist<'_>> {
        let open = || {
            let one = self.opened.indexed.listings.get(at)?;
            self.opened.shelf.ready(one)
        };
        let ready = self.ready.get(at)?.get_or_init(open);
        ready.as_deref().map(Ready::checklist)
    }
}

impl selection::Named for Looked<'_> {
    fn stem(&self, at: usize) -> &str {
        let one = self.opened.indexed.listings.get(at);
        one.map_or("", |one| &one.heading.stem)
    }

    fn which(&self, name: &str) -> Option<usize> {
        self.opened.indexed.place(name)
    }
}

pub(super) fn checklist(state: &State) -> Checklist<'_> {
    match state {
        State::Draft(reading) => Checklist::of_draft(reading),
        State::Confirmed(listing) => Checklist::of_confirmed(listing),
    }
}
