//! What points came to before: of joints of one schedule much is known alike.

use core::fmt::Write;
use std::collections::BTreeMap;

use conformance::points::Ready;
use conformance::{Subject, Verdict};

use crate::index::Index;

/// What points came to before, where one fact alone decides them.
#[derive(Default)]
pub(super) struct Memory {
    /// By the property's number and its fact in full: the verdict on each of the property's points, in their order.
    known: BTreeMap<(u32, String), Vec<Verdict>>,
}

impl Memory {
    /// The verdict on each point, in their order.
    pub(super) fn verdicts(
        &mut self,
        index: &Index,
        points: &[Ready<'_>],
        subject: &Subject<'_>,
    ) -> Vec<Verdict> {
        let mut verdicts = vec![Verdict::Open; points.len()];
        let decide = |at: &usize| {
            let point = points.get(*at);
            point.map_or(Verdict::Open, |point| point.decide(subject))
        };
        for at in &index.apart.alone {
            if let Some(verdict) = verdicts.get_mut(*at) {
                *verdict = decide(at);
            }
        }
        for (property, of_property) in &index.apart.by_property {
            let key = (*property, told(index, *property, subject));
            let decided = self
                .known
                .entry(key)
                .or_insert_with(|| of_property.iter().map(decide).collect());
            for (at, decided) in of_property.iter().zip(decided.iter()) {
                if let Some(verdict) = verdicts.get_mut(*at) {
                    *verdict = *decided;
                }
            }
        }
        verdicts
    }
}

/// The fact on a property, in full; empty where there is none.
fn told(index: &Index, property: u32, subject: &Subject<'_>) -> String {
    let name = usize::try_from(property)
        .ok()
        .and_then(|at| index.properties.get(at));
    let fact = name.and_then(|name| subject.facts.get(name));
    let mut text = String::new();
    if let Some(fact) = fact {
        // Writing to a string can't fail.
        let _ = write!(text, "{:?} {:?}", fact.value, fact.provenance);
    }
    text
}
