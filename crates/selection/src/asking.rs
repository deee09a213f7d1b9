//! What is asked: the condition of a joint, of a mark, or of facts given by themselves.

use std::collections::BTreeMap;

use conformance::Subject;
use site::{Barrier, Fact, Joint, Judgment, Project, Scope, Value};

/// A condition that listings are asked for.
#[derive(Debug, Clone, Default)]
pub struct Asked {
    /// The joint or mark; empty for facts by themselves.
    pub name: String,
    /// The mark in words.
    pub title: String,
    /// The mark.
    pub mark: String,
    /// The joints concerned.
    pub joints: Vec<String>,
    /// The listing they are to be built to, as the schedule names it.
    pub own: Option<String>,
    /// What is known.
    pub facts: Vec<Fact>,
    /// What people have decided.
    pub judgments: Vec<Judgment>,
    /// What is supposed to be otherwise, in words.
    pub supposed: Vec<String>,
    /// What was taken to be so, each in a sentence.
    pub notes: Vec<String>,
}

impl Asked {
    /// The condition as conformance takes it.
    pub fn subject(&self) -> Subject<'_> {
        Subject {
            joint: if self.name.is_empty() {
                "the joint"
            } else {
                &self.name
            },
            mark: &self.mark,
            facts: self.facts.iter().collect(),
            judgments: self.judgments.iter().collect(),
        }
    }
}

/// The condition of the joint or mark of that name, whatever its capitals; none where the schedule has neither.
pub fn of_name(project: &Project, name: &str) -> Option<Asked> {
    let name = name.trim();
    let joint = |joint: &&Joint| joint.name.eq_ignore_ascii_case(name);
    if let Some(joint) = project.joints.iter().find(joint) {
        return Some(of_joint(project, joint));
    }
    let of_mark = |joint: &&Joint| joint.mark.eq_ignore_ascii_case(name);
    let marks = project.marks.iter().map(|mark| mark.name.as_str());
    let mark = marks
        .chain(
            project
                .joints
                .iter()
                .filter(of_mark)
                .map(|joint| joint.mark.as_str()),
        )
        .find(|mark| mark.eq_ignore_ascii_case(name));
    mark.map(|mark| self::of_mark(project, mark))
}

fn of_joint(project: &Project, joint: &Joint) -> Asked {
    Asked {
        name: joint.name.clone(),
        title: project
            .mark(&joint.mark)
            .map(|mark| mark.title.clone())
            .unwrap_or_default(),
        mark: joint.mark.clone(),
        joints: vec![joint.name.clone()],
        own: project.listing(joint).map(str::to_owned),
        facts: project.facts(joint).iter().cloned().collect(),
        judgments: project.judgments_on(joint).cloned().collect(),
        ..Asked::default()
    }
}

/// The condition of each mark that has joints, in the order of the schedule.
pub fn of_marks(project: &Project) -> Vec<Asked> {
    let mut marks: Vec<&str> = Vec::new();
    for joint in &project.joints {
        if !marks.contains(&joint.mark.as_str()) {
            marks.push(&joint.mark);
        }
    }
    marks
        .into_iter()
        .map(|mark| of_mark(project, mark))
        .collect()
}

/// The condition of a mark: what is known alike of all its joints; where they differ, what the mark itself says. Of barriers
/// that are rated differently, the longest rating is asked for: the listing must serve them all.
fn of_mark(project: &Project, name: &str) -> Asked {
    let mark = project.mark(name);
    let joints: Vec<&Joint> = project
        .joints
        .iter()
        .filter(|joint| joint.mark == name)
        .collect();
    let mut known: BTreeMap<&str, Vec<Option<&Fact>>> = BTreeMap::new();
    let of_each: Vec<_> = joints.iter().map(|joint| project.facts(joint)).collect();
    for facts in &of_each {
        for fact in facts.iter() {
            known.entry(&fact.property).or_default();
        }
    }
    for (property, facts) in &mut known {
        *facts = of_each
            .iter()
            .map(|of_joint| of_joint.get(property))
            .collect();
    }
    let mut asked = Asked {
        name: name.to_owned(),
        title: mark.map(|mark| mark.title.clone()).unwrap_or_default(),
        mark: name.to_owned(),
        joints: joints.iter().map(|joint| joint.name.clone()).collect(),
        own: mark
            .and_then(|mark| mark.listing.clone())
            .or_else(|| Some(project.listing(joints.first()?)?.to_owned())),
        judgments: of_the_mark(project, name),
        ..Asked::default()
    };
    for (property, facts) in known {
        let of_the_mark = || mark.and_then(|mark| mark.facts.get(property));
        let fact = match property {
            _ if are_alike(&facts) => facts.first().copied().flatten(),
            Barrier::RATING => longest(&facts, &mut asked.notes),
            _ => of_the_mark(),
        };
        asked.facts.extend(fact.cloned());
    }
    if joints.is_empty() {
        asked.facts = mark
            .map(|mark| mark.facts.values().cloned().collect())
            .unwrap_or_default();
    }
    asked
}

fn of_the_mark(project: &Project, name: &str) -> Vec<Judgment> {
    let is_of_it =
        |judgment: &&Judgment| matches!(&judgment.scope, Scope::Mark(mark) if mark == name);
    project.judgments.iter().filter(is_of_it).cloned().collect()
}

/// Whether the same is known of each, from the same source.
fn are_alike(facts: &[Option<&Fact>]) -> bool {
    let known = |fact: Option<&Fact>| fact.map(|one| (one.value.clone(), one.provenance.clone()));
    let mut each = facts.iter().copied().map(known);
    let first = each.next();
    each.all(|other| Some(other) == first)
}

fn longest<'f>(facts: &[Option<&'f Fact>], notes: &mut Vec<String>) -> Option<&'f Fact> {
    let rating = |fact: &Fact| match fact.value {
        Value::Quantity(rating) => Some(rating),
        _ => None,
    };
    if facts.iter().any(Option::is_none) {
        notes.push("Not every joint says how long its barrier is rated, so that no rating is taken for all of them.".to_owned());
        return None;
    }
    let longest = facts.iter().copied().flatten().reduce(|longest, other| {
        let is_longer = rating(other)
            .zip(rating(longest))
            .and_then(|(other, longest)| other.compare(longest))
            .is_some_and(core::cmp::Ordering::is_gt);
        if is_longer { other } else { longest }
    })?;
    notes.push(format!(
        "Its joints lie in barriers of different ratings; the longest, {}, is asked for.",
        longest.value
    ));
    Some(longest)
}
