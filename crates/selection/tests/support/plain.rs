//! The answer by checking every listing in full, with nothing left out: what the index is held against.

use std::collections::BTreeSet;

use conformance::{Checklist, JointResult, Subject, Verdict};
use selection::cost::is_asked_of_the_building;
use selection::{Cost, Wanted};
use vocabulary::vocabulary;

/// A listing in the answer, by its place in the library: its order, and the clauses that aren't met.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Stands {
    /// Class, number of changes, their cost, open, and whether it is provisional.
    pub order: (u8, usize, u32, usize, bool),
    pub at: usize,
    pub unmet: Vec<String>,
}

/// The whole answer in order, and how many listings aren't for such a joint.
pub fn all(checklists: &[Checklist<'_>], subject: &Subject<'_>) -> (Vec<Stands>, usize) {
    let mut beyond = 0;
    let mut answer = Vec::new();
    for (at, checklist) in checklists.iter().enumerate() {
        let decided = checklist.decide(subject);
        let result = checklist.explain(subject, &decided);
        match stands(at, &result) {
            Some(stands) => answer.push(stands),
            None => beyond += 1,
        }
    }
    answer.sort();
    (answer, beyond)
}

fn stands(at: usize, result: &JointResult) -> Option<Stands> {
    let unmet = || result.with(Verdict::NotMet);
    let properties: BTreeSet<&str> = unmet()
        .map(|finding| finding.explanation.property.as_str())
        .collect();
    if properties
        .iter()
        .any(|property| is_asked_of_the_building(property))
    {
        return None;
    }
    let owner = |property: &str| {
        let known = vocabulary().property(property).map(|known| known.trade);
        let component = property.split_once('.').map_or(property, |(one, _)| one);
        known.or_else(|| vocabulary().component(component).map(|known| known.trade))
    };
    let cost: u32 = properties
        .iter()
        .map(|property| Cost::of(property, owner(property)).0)
        .sum();
    let open = result.with(Verdict::Open).count();
    let provisional = result.standing == conformance::Standing::Provisional;
    let class = match (properties.len(), result.conforms()) {
        (0, true) => 0,
        (0, false) => 1,
        _ => 2,
    };
    Some(Stands {
        order: (class, properties.len(), cost, open, provisional),
        at,
        unmet: unmet()
            .map(|finding| finding.explanation.clause.clone())
            .collect(),
    })
}

/// As much of it as is wanted: those that fit, those with open questions only, those that need a change.
pub fn wanted(all: &[Stands], wanted: &Wanted) -> [Vec<Stands>; 3] {
    let of = |class: u8| all.iter().filter(move |one| one.order.0 == class);
    let near = of(2).enumerate().filter(|(place, one)| {
        *place < wanted.near || (wanted.every_single_change && one.order.1 == 1)
    });
    [
        of(0).cloned().collect(),
        of(1).take(wanted.open).cloned().collect(),
        near.map(|(_, one)| one.clone()).collect(),
    ]
}
