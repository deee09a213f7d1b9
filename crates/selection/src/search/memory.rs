//! What points came to before: of joints of one schedule much is known alike.

use core::hash::Hasher;
use std::collections::BTreeMap;
use std::sync::{Mutex, MutexGuard, PoisonError};

use conformance::points::Ready;
use conformance::{Subject, Verdict};
use rustc_hash::FxHasher;
use site::Fact;

use crate::index::{ByFacts, Index};
use crate::sameness::{feed, is_same};

/// How many bytes are remembered, about, before all of it is forgotten.
const MOST: usize = 8 << 20;

/// How many bytes a list of verdicts takes, besides one for each.
const OF_A_LIST: usize = 100;

/// How many bytes a fact takes.
const OF_A_FACT: usize = 400;

/// What points came to before, where a few facts decide them. Several may look at it at once.
#[derive(Default)]
pub(super) struct Memory(Mutex<Known>);

#[derive(Default)]
struct Known {
    facts: Facts,
    /// In the order of the points that the same facts decide: by the numbers of those facts the verdict on each point, in their order.
    places: Vec<BTreeMap<Vec<u32>, Vec<Verdict>>>,
    /// How many bytes the verdicts take.
    size: usize,
    /// How often all was forgotten: numbers of facts hold only until then.
    turn: u64,
}

/// Points on which nothing is known yet where some facts are.
struct Gap<'i> {
    place: usize,
    of: &'i ByFacts,
    numbers: Vec<u32>,
}

impl Memory {
    /// The verdict on each point, in their order.
    pub(super) fn verdicts(
        &self,
        index: &Index,
        points: &[Ready<'_>],
        subject: &Subject<'_>,
    ) -> Vec<Verdict> {
        let mut verdicts = vec![Verdict::Open; points.len()];
        let case = subject.before_any();
        let decide = |at: &usize| {
            let point = points.get(*at);
            point.map_or(Verdict::Open, |point| point.decide(&case))
        };
        for at in &index.apart.alone {
            if let Some(verdict) = verdicts.get_mut(*at) {
                *verdict = decide(at);
            }
        }
        let (turn, gaps) = self.known().tell(index, subject, &mut verdicts);
        // Nobody waits while points are decided.
        let decided: Vec<(Gap<'_>, Vec<Verdict>)> = gaps
            .into_iter()
            .map(|gap| {
                let decided: Vec<Verdict> = gap.of.points.iter().map(decide).collect();
                put(&gap.of.points, &decided, &mut verdicts);
                (gap, decided)
            })
            .collect();
        if !decided.is_empty() {
            self.known().learn(turn, decided);
        }
        verdicts
    }

    fn known(&self) -> MutexGuard<'_, Known> {
        // Nothing in it is ever half done that could be told.
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// Puts the verdicts on some points in their places.
fn put(points: &[usize], decided: &[Verdict], verdicts: &mut [Verdict]) {
    for (at, decided) in points.iter().zip(decided) {
        if let Some(verdict) = verdicts.get_mut(*at) {
            *verdict = *decided;
        }
    }
}

impl Known {
    /// Tells what is known, and gives what isn't.
    fn tell<'i>(
        &mut self,
        index: &'i Index,
        subject: &Subject<'_>,
        verdicts: &mut [Verdict],
    ) -> (u64, Vec<Gap<'i>>) {
        if self
            .size
            .saturating_add(self.facts.count().saturating_mul(OF_A_FACT))
            > MOST
        {
            *self = Self {
                turn: self.turn + 1,
                ..Self::default()
            };
        }
        let by_facts = &index.apart.by_facts;
        self.places.resize_with(by_facts.len(), BTreeMap::new);
        let numbers = self.facts.numbers(subject);
        let number = |property: &String| numbers.get(property.as_str()).copied().unwrap_or(0);
        let mut gaps = Vec::new();
        for (place, (of, known)) in by_facts.iter().zip(&self.places).enumerate() {
            let numbers: Vec<u32> = of.properties.iter().map(number).collect();
            match known.get(&numbers) {
                Some(decided) => put(&of.points, decided, verdicts),
                None => gaps.push(Gap { place, of, numbers }),
            }
        }
        (self.turn, gaps)
    }

    fn learn(&mut self, turn: u64, decided: Vec<(Gap<'_>, Vec<Verdict>)>) {
        if turn != self.turn {
            return;
        }
        for (gap, decided) in decided {
            if let Some(known) = self.places.get_mut(gap.place) {
                self.size += OF_A_LIST + decided.len();
                known.insert(gap.numbers, decided);
            }
        }
    }
}

/// Facts with a number each: the same for the same fact.
#[derive(Default)]
struct Facts {
    by_hash: BTreeMap<u64, Vec<(Fact, u32)>>,
    /// How many there are; none has the number nought.
    count: u32,
}

impl Facts {
    fn count(&self) -> usize {
        usize::try_from(self.count).unwrap_or(usize::MAX)
    }

    /// The number of each fact of a joint, by its property.
    fn numbers<'s>(&mut self, subject: &Subject<'s>) -> BTreeMap<&'s str, u32> {
        let facts = subject.facts.iter();
        facts
            .map(|fact| (fact.property.as_str(), self.number(fact)))
            .collect()
    }

    fn number(&mut self, fact: &Fact) -> u32 {
        let mut hasher = FxHasher::default();
        feed(fact, &mut hasher);
        let alike = self.by_hash.entry(hasher.finish()).or_default();
        if let Some((_, number)) = alike.iter().find(|(known, _)| is_same(known, fact)) {
            return *number;
        }
        self.count += 1;
        alike.push((fact.clone(), self.count));
        self.count
    }
}
