//! What a whole schedule asks.

use std::collections::BTreeMap;

use site::{Mark, Project};

use super::Asked;
use crate::conditions::{Condition, conditions};
use crate::index::Index;

/// The conditions of a schedule, mark by mark: of each mark as many as its joints are of, and as many as they are to be built to
/// different listings. Marks stand in the order of the schedule, and so do the joints of each.
pub fn of_schedule(project: &Project, index: &Index) -> Vec<Asked> {
    let known: BTreeMap<&str, &Mark> = project
        .marks
        .iter()
        .rev()
        .map(|mark| (mark.name.as_str(), mark))
        .collect();
    let mut order: BTreeMap<&str, usize> = BTreeMap::new();
    for joint in &project.joints {
        let next = order.len();
        order.entry(&joint.mark).or_insert(next);
    }
    let mut asked: Vec<Asked> = Vec::new();
    for Condition { subject, joints } in conditions(project, index) {
        let mut split: BTreeMap<(&str, Option<&str>), Vec<String>> = BTreeMap::new();
        for joint in joints {
            let of_mark = || known.get(joint.mark.as_str())?.listing.as_deref();
            let own = joint.listing.as_deref().or_else(of_mark);
            let joints = split.entry((&joint.mark, own)).or_default();
            joints.push(joint.name.clone());
        }
        for ((mark, own), joints) in split {
            asked.push(Asked {
                name: mark.to_owned(),
                title: known
                    .get(mark)
                    .map(|mark| mark.title.clone())
                    .unwrap_or_default(),
                mark: mark.to_owned(),
                joints,
                own: own.map(str::to_owned),
                facts: subject.facts.iter().cloned().collect(),
                judgments: subject.judgments.iter().map(|one| (*one).clone()).collect(),
                ..Asked::default()
            });
        }
    }
    asked.sort_by_key(|one| order.get(one.mark.as_str()).copied());
    asked
}
