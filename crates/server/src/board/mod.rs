//! What was found at every joint, brought up to date as the store changes.
//!
//! There may be many joints: of each the board keeps what tables and questions need, what joints have in common once for all of them, and
//! sums that are kept up as findings come and go, so that no page adds anything up.

mod card;
mod filter;
mod found;
mod point;
mod questions;
mod tally;

use std::collections::BTreeMap;
use std::collections::btree_map;
use std::sync::Arc;

use conformance::questions::sentence;
use conformance::{Missing, Question};
use site::Project;

pub(crate) use card::Card;
use card::Names;
pub(crate) use filter::{Chosen, Filter, State};
pub(crate) use found::{Found, Looked};
pub(crate) use point::Point;
use point::Points;
pub(crate) use questions::{Asked, Questions, Whom, mark_of};
pub(crate) use tally::{Tally, state};

/// A storey's name and a barrier's; empty where a joint names none.
pub(crate) type Place = (Arc<str>, Arc<str>);

/// What was found at the joints, by name.
#[derive(Debug, Default)]
pub(crate) struct Board {
    rows: BTreeMap<Arc<str>, Row>,
    all: Tally,
    places: BTreeMap<Place, Tally>,
    cautions: BTreeMap<&'static str, usize>,
    questions: Questions,
    points: Points,
    names: Names,
    /// How often something changed that findings rest on.
    epoch: u64,
}

/// One joint on the board.
#[derive(Debug)]
pub(crate) struct Row {
    /// The joint.
    pub(crate) card: Arc<Card>,
    /// What was found; none while it is to be looked at.
    pub(crate) found: Option<Found>,
    /// The epoch since which what was found before is out of date.
    stale_since: u64,
}

impl Board {
    /// How often something changed that findings rest on: to be asked for before a joint is looked at.
    pub(crate) const fn epoch(&self) -> u64 {
        self.epoch
    }

    /// The joints, by name.
    pub(crate) fn rows(&self) -> btree_map::Values<'_, Arc<str>, Row> {
        self.rows.values()
    }

    /// One joint.
    pub(crate) fn row(&self, name: &str) -> Option<&Row> {
        self.rows.get(name)
    }

    /// How many joints came to what.
    pub(crate) const fn all(&self) -> Tally {
        self.all
    }

    /// The same for each barrier of each storey.
    pub(crate) const fn places(&self) -> &BTreeMap<Place, Tally> {
        &self.places
    }

    /// What must be said before anybody goes to any of the joints.
    pub(crate) fn cautions(&self) -> Vec<&'static str> {
        self.cautions.keys().copied().collect()
    }

    /// What would close whatever is open.
    pub(crate) const fn questions(&self) -> &Questions {
        &self.questions
    }

    /// Follows the schedule: joints that are new are to be looked at, joints that are gone go.
    pub(crate) fn follow(&mut self, project: &Project) {
        let mut before = core::mem::take(&mut self.rows);
        self.all = Tally::default();
        self.places.clear();
        let mut rows = BTreeMap::new();
        for card in self.names.cards(project) {
            let name = card.name.clone();
            let (stale_since, found) = match before.remove(&name) {
                Some(row) => (row.stale_since, row.found),
                None => (self.epoch, None),
            };
            self.count(&card.place, |tally| tally.add(found.as_ref()));
            let row = Row {
                card: Arc::new(card),
                found,
                stale_since,
            };
            rows.insert(name, row);
        }
        for (name, row) in before {
            if let Some(found) = row.found {
                self.forget(&name, &found);
            }
        }
        self.rows = rows;
    }

    /// Takes note that what was found at some joints is out of date, and that what is being looked at now will be.
    pub(crate) fn wipe<'n>(&mut self, names: impl IntoIterator<Item = &'n str>) {
        self.epoch += 1;
        for name in names {
            let Some(row) = self.rows.get_mut(name) else {
                continue;
            };
            row.stale_since = self.epoch;
            if let Some(found) = row.found.take() {
                let card = row.card.clone();
                self.count(&card.place, |tally| {
                    tally.remove(Some(&found));
                    tally.add(None);
                });
                self.forget(&card.name, &found);
            }
        }
    }

    /// Puts what was found at a joint on the board, unless it was out of date before it was found: the look began at an epoch.
    pub(crate) fn insert(&mut self, name: &str, begun: u64, looked: Looked) {
        let Some(row) = self.rows.get_mut(name) else {
            return;
        };
        if begun < row.stale_since {
            return;
        }
        let found = looked.kept(&mut self.points);
        if row.found.as_ref() == Some(&found) {
            return;
        }
        let before = row.found.replace(found.clone());
        let card = row.card.clone();
        self.count(&card.place, |tally| {
            tally.remove(before.as_ref());
            tally.add(Some(&found));
        });
        if let Some(before) = before {
            self.forget(&card.name, &before);
        }
        for caution in &found.cautions {
            *self.cautions.entry(caution).or_default() += 1;
        }
        self.questions.add(&card.name, &found.open);
    }

    /// What would be put on the board.
    #[cfg(test)]
    pub(crate) fn kept(&mut self, looked: Looked) -> Found {
        looked.kept(&mut self.points)
    }

    /// The joints that are to be looked at.
    pub(crate) fn waiting(&self) -> Vec<Arc<Card>> {
        if self.all.waiting == 0 {
            return Vec::new();
        }
        let waiting = self.rows.values().filter(|row| row.found.is_none());
        waiting.map(|row| row.card.clone()).collect()
    }

    /// The open clauses of a joint that a question would close.
    pub(crate) fn points<'b>(
        &'b self,
        joint: &str,
        asked: &'b Asked,
    ) -> impl Iterator<Item = (&'b Card, &'b Point)> {
        let row = self.rows.get(joint);
        let found = row.and_then(|row| Some((row, row.found.as_ref()?)));
        let points = found.into_iter().flat_map(|(row, found)| {
            let points = found.open.iter();
            points.map(|point| (&*row.card, &**point))
        });
        points.filter(|(_, point)| *point.topic == *asked.topic)
    }

    /// A question in words, without the clauses that it would close but the first.
    pub(crate) fn question(&self, asked: &Asked) -> Option<Question> {
        let names: Vec<&str> = asked.joints().take(3).collect();
        let (card, point) = self.points(names.first()?, asked).next()?;
        let first = point.at(card);
        let missing = Missing::clone(&point.missing);
        Some(Question {
            trade: missing.trade,
            stage: missing.until,
            sentence: sentence(&missing, &first, &names, asked.count()),
            property: missing.property,
            title: missing.title,
            ask: missing.ask,
            help: missing.help,
            instrument: missing.instrument,
            concerns: vec![first],
        })
    }

    fn count(&mut self, place: &Place, change: impl Fn(&mut Tally)) {
        change(&mut self.all);
        change(self.places.entry(place.clone()).or_default());
    }

    /// Takes what was found at a joint out of the sums over joints, but for how many came to what.
    fn forget(&mut self, name: &Arc<str>, found: &Found) {
        for caution in &found.cautions {
            if let Some(count) = self.cautions.get_mut(caution) {
                *count -= 1;
                if *count == 0 {
                    self.cautions.remove(caution);
                }
            }
        }
        self.questions.remove(name, &found.open);
    }
}

#[cfg(test)]
mod tests;
