//! What points came to before: of joints of one schedule much is known alike.

use core::hash::Hasher;
use std::collections::BTreeMap;

use conformance::points::Ready;
use conformance::{Subject, Verdict};
use rustc_hash::FxHasher;
use site::Fact;

use crate::index::Index;
use crate::sameness::{feed, is_same};

/// What points came to before, where a few facts decide them.
#[derive(Default)]
pub(super) struct Memory<'s> {
    facts: Facts<'s>,
    /// By the place of the points that the same facts decide, and those facts' numbers: the verdict on each point, in their order.
    known: BTreeMap<(usize, Vec<u32>), Vec<Verdict>>,
}

impl<'s> Memory<'s> {
    /// The verdict on each point, in their order.
    pub(super) fn verdicts(
        &mut self,
        index: &Index,
        points: &[Ready<'_>],
        subject: &Subject<'s>,
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
        let numbers = self.facts.numbers(subject);
        let number = |property: &String| numbers.get(property.as_str()).copied().unwrap_or(0);
        for (place, of) in index.apart.by_facts.iter().enumerate() {
            let key = (place, of.properties.iter().map(number).collect());
            let decided = self.known.entry(key);
            let decided = decided.or_insert_with(|| of.points.iter().map(decide).collect());
            for (at, decided) in of.points.iter().zip(decided.iter()) {
                if let Some(verdict) = verdicts.get_mut(*at) {
                    *verdict = *decided;
                }
            }
        }
        verdicts
    }
}

/// Facts with a number each: the same for the same fact.
#[derive(Default)]
struct Facts<'s> {
    by_hash: BTreeMap<u64, Vec<(&'s Fact, u32)>>,
    /// How many there are; none has the number nought.
    count: u32,
}

impl<'s> Facts<'s> {
    /// The number of each fact of a joint, by its property.
    fn numbers(&mut self, subject: &Subject<'s>) -> BTreeMap<&'s str, u32> {
        let facts = subject.facts.iter();
        facts
            .map(|fact| (fact.property.as_str(), self.number(fact)))
            .collect()
    }

    fn number(&mut self, fact: &'s Fact) -> u32 {
        let mut hasher = FxHasher::default();
        feed(fact, &mut hasher);
        let alike = self.by_hash.entry(hasher.finish()).or_default();
        if let Some((_, number)) = alike.iter().find(|(known, _)| is_same(known, fact)) {
            return *number;
        }
        self.count += 1;
        alike.push((fact, self.count));
        self.count
    }
}
