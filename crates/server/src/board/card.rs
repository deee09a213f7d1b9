//! A joint as tables name it.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use site::Project;

use super::Place;

/// A joint as tables name it; what many joints share is held once.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Card {
    /// Its name.
    pub(crate) name: Arc<str>,
    /// Its mark.
    pub(crate) mark: Arc<str>,
    /// Where it is.
    pub(crate) place: Place,
    /// The listing it is to be built to, by the name that the schedule has for it.
    pub(crate) listing: Option<Arc<str>>,
    /// Its name, mark, title and place in small letters: what words are looked for in.
    words: Box<str>,
}

impl Card {
    /// Whether each of some words, in small letters, is in its name, mark, title or place.
    pub(crate) fn has<'w>(&self, words: impl IntoIterator<Item = &'w str>) -> bool {
        words.into_iter().all(|word| self.words.contains(word))
    }
}

/// Texts that many joints share, each held once.
#[derive(Debug, Default)]
pub(crate) struct Names(BTreeSet<Arc<str>>);

impl Names {
    fn one(&mut self, text: &str) -> Arc<str> {
        if let Some(held) = self.0.get(text) {
            return held.clone();
        }
        let held: Arc<str> = text.into();
        self.0.insert(held.clone());
        held
    }

    /// A card for each joint of the schedule.
    pub(super) fn cards(&mut self, project: &Project) -> Vec<Card> {
        self.0.clear();
        let marks: BTreeMap<&str, _> = project
            .marks
            .iter()
            .rev()
            .map(|mark| (mark.name.as_str(), mark))
            .collect();
        let cards = project.joints.iter().map(|joint| {
            let mark = marks.get(joint.mark.as_str());
            let title = mark.map_or("", |mark| mark.title.as_str());
            let listing = joint.listing.as_deref();
            let listing = listing.or_else(|| mark?.listing.as_deref());
            let storey = joint.storey.as_deref().unwrap_or_default();
            let barrier = joint.barrier.as_deref().unwrap_or_default();
            let grid = joint.grid.as_deref().unwrap_or_default();
            let words = [&joint.name, &joint.mark, title, storey, barrier, grid].join(" ");
            Card {
                name: joint.name.as_str().into(),
                mark: self.one(&joint.mark),
                place: (self.one(storey), self.one(barrier)),
                listing: listing.map(|name| self.one(name)),
                words: words.to_lowercase().into(),
            }
        });
        cards.collect()
    }
}
