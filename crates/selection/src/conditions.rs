//! Joints of which the same is known, told once.

use core::fmt::Write;
use std::collections::BTreeMap;

use conformance::Subject;
use site::{Fact, Project};

use crate::index::Index;

/// What is known of some joints alike.
#[derive(Debug, Clone)]
pub struct Condition<'a> {
    /// The first of the joints, with what is known of each.
    pub subject: Subject<'a>,
    /// The joints, in the order of the schedule.
    pub joints: Vec<&'a str>,
    /// Their marks, each once, in the order of the schedule.
    pub marks: Vec<&'a str>,
}

/// How long a run is: it makes a condition of its own only where a listing asks about it.
const LENGTH: &str = "joint.length";

/// The distinct conditions of a project, in the order of its schedule. Joints are of one condition when the same facts from the same
/// sources are known of them, and the same people have decided the same, whatever cells that was read from.
pub fn conditions<'a>(project: &'a Project, index: &Index) -> Vec<Condition<'a>> {
    let length_counts = index.asks_about(LENGTH);
    let is_told = |property: &str| length_counts || property != LENGTH;
    let mut places: BTreeMap<String, usize> = BTreeMap::new();
    let mut conditions: Vec<Condition<'_>> = Vec::new();
    for (joint, facts) in project.joints_with_facts() {
        let subject = Subject {
            joint: &joint.name,
            mark: &joint.mark,
            facts,
            judgments: project.judgments_on(joint).collect(),
        };
        let at = *places
            .entry(told(&subject, &is_told))
            .or_insert(conditions.len());
        match conditions.get_mut(at) {
            Some(known) => {
                known.joints.push(&joint.name);
                if !known.marks.contains(&joint.mark.as_str()) {
                    known.marks.push(&joint.mark);
                }
            }
            None => conditions.push(Condition {
                joints: vec![&joint.name],
                marks: vec![&joint.mark],
                subject,
            }),
        }
    }
    conditions
}

/// What is known, in one text that is the same only where all of it is.
fn told(subject: &Subject<'_>, is_told: &dyn Fn(&str) -> bool) -> String {
    let mut text = String::new();
    let facts = subject.facts.iter();
    for Fact {
        property,
        value,
        provenance,
        cell: _,
    } in facts.filter(|fact| is_told(&fact.property))
    {
        // Writing to a string can't fail.
        let _ = writeln!(text, "{property:?} {value:?} {provenance:?}");
    }
    for judgment in &subject.judgments {
        let _ = writeln!(text, "{judgment:?}");
    }
    text
}
