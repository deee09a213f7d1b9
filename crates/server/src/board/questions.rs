//! The questions that the board comes to, kept up as findings come and go.

use core::ops::Bound;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use conformance::questions::Topic;
use sha2::{Digest, Sha256};
use vocabulary::Trade;

use super::point::Point;

/// The questions, in their order.
#[derive(Debug, Default)]
pub(crate) struct Questions {
    asked: BTreeMap<Arc<Topic>, Asked>,
    /// Every topic that was ever asked about, so that a page that begins after one is found though it was answered meanwhile.
    by_id: BTreeMap<Box<str>, Arc<Topic>>,
}

/// Whose questions are asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Whom {
    /// Everybody's.
    Anybody,
    /// One trade's; or those that are nobody's in particular.
    Only(Option<Trade>),
}

/// One question.
#[derive(Debug)]
pub(crate) struct Asked {
    /// What it is about.
    pub(crate) topic: Arc<Topic>,
    /// What it goes by; the same for the same question, on any day.
    pub(crate) id: Box<str>,
    joints: BTreeSet<Arc<str>>,
    /// The sum of the joints' hashes, which tells other joints from these.
    sum: u64,
}

impl Questions {
    /// How many there are.
    pub(crate) fn len(&self) -> usize {
        self.asked.len()
    }

    /// One question; none when it isn't open.
    pub(crate) fn get(&self, id: &str) -> Option<&Asked> {
        self.asked.get(self.by_id.get(id)?)
    }

    /// The questions of a trade, or all.
    pub(crate) fn of(&self, whom: Whom) -> impl Iterator<Item = &Asked> {
        of_whom(self.asked.values(), whom)
    }

    /// Those of them that come after one; none when no such one was ever asked.
    pub(crate) fn after(&self, id: &str, whom: Whom) -> Option<impl Iterator<Item = &Asked>> {
        let topic = self.by_id.get(id)?.clone();
        let after = self.asked.range((Bound::Excluded(topic), Bound::Unbounded));
        Some(of_whom(after.map(|(_, asked)| asked), whom))
    }

    /// How many there are of each trade, in the order of the questions.
    pub(crate) fn by_trade(&self) -> Vec<(Option<Trade>, usize)> {
        let mut trades: Vec<(Option<Trade>, usize)> = Vec::new();
        for topic in self.asked.keys() {
            match trades.last_mut() {
                Some((trade, count)) if *trade == topic.trade() => *count += 1,
                _ => trades.push((topic.trade(), 1)),
            }
        }
        trades
    }

    /// Adds a joint to the questions that its open clauses ask.
    pub(super) fn add(&mut self, joint: &Arc<str>, open: &[Arc<Point>]) {
        for point in open {
            let asked = self.asked.entry(point.topic.clone()).or_insert_with(|| {
                let asked = Asked::about(point.topic.clone());
                self.by_id.insert(asked.id.clone(), point.topic.clone());
                asked
            });
            if asked.joints.insert(joint.clone()) {
                asked.sum = asked.sum.wrapping_add(hash(joint));
            }
        }
    }

    /// Takes a joint out of the questions that its open clauses asked.
    pub(super) fn remove(&mut self, joint: &str, open: &[Arc<Point>]) {
        for point in open {
            let Some(asked) = self.asked.get_mut(&point.topic) else {
                continue;
            };
            if asked.joints.remove(joint) {
                asked.sum = asked.sum.wrapping_sub(hash(joint));
            }
            if asked.joints.is_empty() {
                self.asked.remove(&point.topic);
            }
        }
    }
}

fn of_whom<'q>(
    asked: impl Iterator<Item = &'q Asked>,
    whom: Whom,
) -> impl Iterator<Item = &'q Asked> {
    asked.filter(move |asked| match whom {
        Whom::Anybody => true,
        Whom::Only(trade) => trade == asked.topic.trade(),
    })
}

impl Asked {
    fn about(topic: Arc<Topic>) -> Self {
        let id = format!("{:016x}", hash(&format!("{topic:?}")));
        Self {
            topic,
            id: id.into(),
            joints: BTreeSet::new(),
            sum: 0,
        }
    }

    /// How many joints it concerns.
    pub(crate) fn count(&self) -> usize {
        self.joints.len()
    }

    /// The joints that it concerns, by name.
    pub(crate) fn joints(&self) -> impl Iterator<Item = &str> {
        self.joints.iter().map(|joint| &**joint)
    }

    /// Those that come after one.
    pub(crate) fn joints_after(&self, name: &str) -> impl Iterator<Item = &str> {
        let after = (Bound::Excluded(name), Bound::Unbounded);
        self.joints.range::<str, _>(after).map(|joint| &**joint)
    }

    /// What tells the joints that it concerns from others: who answers for them has seen these.
    pub(crate) fn mark(&self) -> String {
        mark(self.joints.len(), self.sum)
    }
}

fn mark(count: usize, sum: u64) -> String {
    format!("{count}-{sum:016x}")
}

/// What tells some joints, each named once, from others.
pub(crate) fn mark_of<'n>(names: impl IntoIterator<Item = &'n str>) -> String {
    let (count, sum) = names.into_iter().fold((0, 0_u64), |(count, sum), name| {
        (count + 1, sum.wrapping_add(hash(name)))
    });
    mark(count, sum)
}

/// Some bytes of a name's hash.
fn hash(name: &str) -> u64 {
    let hash = Sha256::digest(name.as_bytes());
    hash.iter()
        .take(8)
        .fold(0, |sum, byte| sum << 8 | u64::from(*byte))
}
