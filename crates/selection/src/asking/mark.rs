//! What a mark asks, one condition for all its joints.

use std::collections::BTreeMap;

use site::{Barrier, Fact, Joint, Judgment, Project, Scope, Value, without_listing};
use wording::text::listed;

use super::Asked;

/// The condition of a mark: what is known alike of all its joints; where they differ, what the mark itself says. Of barriers
/// that are rated differently, the longest rating is asked for, and where one is a smoke barrier, that: the listing must serve them all.
pub(super) fn of_mark(project: &Project, name: &str) -> Asked {
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
            .map(|of_joint| of_joint.named(property))
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
            || without_listing(property).to_owned(),
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
        "Its joints differ in {}: there the value of the mark itself is taken, or none. Ask for a joint by its name to have what is known of it.",
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
