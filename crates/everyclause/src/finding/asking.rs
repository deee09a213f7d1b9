//! What is asked: the condition of a joint, of a mark, or of facts given by themselves.

use std::collections::BTreeMap;

use conformance::Subject;
use selection::{Condition, Index};
use site::{Barrier, Fact, Joint, Judgment, Mark, Project, Scope, Value};

use crate::fault::{Fault, Faults};
use crate::files;
use crate::show::words::listed;

/// A condition that listings are asked for.
#[derive(Debug, Clone, Default)]
pub(crate) struct Asked {
    /// The joint or mark; empty for facts by themselves.
    pub(crate) name: String,
    /// The mark in words.
    pub(crate) title: String,
    /// The mark.
    pub(crate) mark: String,
    /// The joints concerned.
    pub(crate) joints: Vec<String>,
    /// The listing they are to be built to, as the schedule names it.
    pub(crate) own: Option<String>,
    /// What is known.
    pub(crate) facts: Vec<Fact>,
    /// What people have decided.
    pub(crate) judgments: Vec<Judgment>,
    /// What is supposed to be otherwise, in words.
    pub(crate) supposed: Vec<String>,
    /// What was taken to be so, each in a sentence.
    pub(crate) notes: Vec<String>,
}

impl Asked {
    /// The condition as conformance takes it.
    pub(crate) fn subject(&self) -> Subject<'_> {
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

/// The condition of the joint or mark of that name.
///
/// # Errors
/// When the schedule has neither.
pub(crate) fn of_name(project: &Project, name: &str) -> Result<Asked, Faults> {
    let name = name.trim();
    let joint = |joint: &&Joint| joint.name.eq_ignore_ascii_case(name);
    if let Some(joint) = project.joints.iter().find(joint) {
        return Ok(of_joint(project, joint));
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
    match mark {
        Some(mark) => Ok(self::of_mark(project, mark)),
        None => Err(unknown(project, name).into()),
    }
}

fn unknown(project: &Project, name: &str) -> Fault {
    let fault = Fault::of_command(format!("the project has no joint and no mark `{name}`"));
    let names = project
        .joints
        .iter()
        .flat_map(|joint| [joint.name.clone(), joint.mark.clone()]);
    match files::nearest(name, names) {
        Some(near) => fault.help(format!("is `{near}` meant?")),
        None => fault.help("name a joint or mark of the schedule, or ask by facts: `--where \"joint.width=1 in.\"`"),
    }
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

/// The conditions of a schedule, mark by mark: of each mark as many as its joints are of, and as many as they are to be built to
/// different listings. Marks stand in the order of the schedule, and so do the joints of each.
pub(crate) fn of_schedule(project: &Project, index: &Index) -> Vec<Asked> {
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
    for Condition { subject, joints } in selection::conditions(project, index) {
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

/// The condition of a mark: what is known alike of all its joints; where they differ, what the mark itself says. Of barriers
/// that are rated differently, the longest rating is asked for, and where one is a smoke barrier, that: the listing must serve them all.
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
    let mut differing: Vec<&str> = Vec::new();
    for (property, facts) in known {
        let of_the_mark = || mark.and_then(|mark| mark.facts.get(property));
        let fact = match property {
            _ if are_alike(&facts) => facts.first().copied().flatten(),
            Barrier::RATING => longest(&facts, &mut asked.notes),
            Barrier::SMOKE_BARRIER => smoke_barrier(&facts, &mut asked.notes),
            _ => {
                differing.push(property);
                of_the_mark()
            }
        };
        asked.facts.extend(fact.cloned());
    }
    asked.notes.extend(differences(&differing));
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

/// What is taken where joints differ, in a sentence; how long they are makes no difference worth a word.
fn differences(properties: &[&str]) -> Option<String> {
    const MOST: usize = 5;
    let title = |property: &&str| {
        let known = vocabulary::vocabulary().property(property);
        known.map_or_else(
            || (*property).to_owned(),
            |known| known.title.to_lowercase(),
        )
    };
    let told = properties.iter().filter(|one| **one != "joint.length");
    let mut titles: Vec<String> = told.map(title).collect();
    if titles.is_empty() {
        return None;
    }
    let more = titles.len().saturating_sub(MOST);
    titles.truncate(MOST);
    if more > 0 {
        titles.push(format!("{more} more"));
    }
    Some(format!(
        "Its joints differ in {}: there the value of the mark itself is taken, or none. Ask for a joint by its name, or for each with `--all`.",
        listed(&titles)
    ))
}

/// Of joints in smoke barriers and in others, what a smoke barrier asks: the listing must serve them all.
fn smoke_barrier<'f>(facts: &[Option<&'f Fact>], notes: &mut Vec<String>) -> Option<&'f Fact> {
    let mut known = facts.iter().copied().flatten();
    let is_one = known.find(|fact| fact.value == Value::Flag(true))?;
    notes.push("Some of its joints lie in smoke barriers: what those ask is asked for.".to_owned());
    Some(is_one)
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
