//! An open clause as many joints have it alike.

use core::hash::Hash;
use std::collections::HashSet;
use std::sync::Arc;

use conformance::questions::{Gap, Topic};
use conformance::{Concern, Missing};

use super::Card;

/// An open clause as many joints have it alike: each of them holds the same one.
#[derive(Debug, PartialEq, Eq, Hash)]
pub(crate) struct Point {
    /// The question that it belongs to.
    pub(crate) topic: Arc<Topic>,
    /// What would close it.
    pub(crate) missing: Arc<Missing>,
    /// The file of the listing.
    pub(crate) file: Arc<str>,
    /// The listing.
    listing: Arc<str>,
    /// The clause's id.
    pub(crate) clause: Arc<str>,
    /// The words of the listing.
    pub(crate) words: Arc<str>,
    /// What the clause asks for.
    pub(crate) requirement: Arc<str>,
    /// Why it is open.
    pub(crate) sentence: Arc<str>,
}

impl Point {
    /// The open clause at one of the joints that have it.
    pub(crate) fn at(&self, card: &Card) -> Concern {
        Concern {
            joint: card.name.to_string(),
            mark: card.mark.to_string(),
            listing: self.listing.to_string(),
            clause: self.clause.to_string(),
            words: self.words.to_string(),
            requirement: self.requirement.to_string(),
            sentence: self.sentence.to_string(),
        }
    }
}

/// The open clauses that are on the board, each held once, and so are their texts.
#[derive(Debug, Default)]
pub(super) struct Points {
    whole: Pool<Point>,
    topics: Pool<Topic>,
    missing: Pool<Missing>,
    texts: Pool<str>,
}

impl Points {
    /// The one that is held of an open clause.
    pub(super) fn one(&mut self, gap: Gap, file: &str) -> Arc<Point> {
        let Concern {
            listing,
            clause,
            words,
            requirement,
            sentence,
            ..
        } = gap.concern;
        let point = Point {
            topic: self.topics.one(gap.topic),
            missing: self.missing.one(gap.missing),
            file: self.texts.one(file),
            listing: self.texts.one(listing),
            clause: self.texts.one(clause),
            words: self.texts.one(words),
            requirement: self.texts.one(requirement),
            sentence: self.texts.one(sentence),
        };
        self.whole.one(point)
    }

    /// How many are held.
    #[cfg(test)]
    pub(super) fn len(&self) -> usize {
        self.whole.held.len()
    }
}

/// Equal values, held once as long as anybody else holds them.
#[derive(Debug)]
struct Pool<T: ?Sized> {
    held: HashSet<Arc<T>>,
    /// At how many the ones that nobody holds any more are let go.
    full: usize,
}

/// With how many a pool is never full.
const FEW: usize = 1000;

impl<T: ?Sized> Default for Pool<T> {
    fn default() -> Self {
        Self {
            held: HashSet::new(),
            full: FEW,
        }
    }
}

impl<T: ?Sized + Eq + Hash> Pool<T> {
    fn one<B>(&mut self, value: B) -> Arc<T>
    where
        B: core::borrow::Borrow<T> + Into<Arc<T>>,
    {
        if let Some(held) = self.held.get(value.borrow()) {
            return held.clone();
        }
        if self.held.len() >= self.full {
            self.held.retain(|held| Arc::strong_count(held) > 1);
            self.full = self.held.len().saturating_mul(2).max(FEW);
        }
        let held: Arc<T> = value.into();
        self.held.insert(held.clone());
        held
    }
}
