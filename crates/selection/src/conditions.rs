//! Joints of which the same is known, told once.

use core::hash::{Hash, Hasher};
use std::collections::BTreeMap;

use conformance::Subject;
use rustc_hash::FxHasher;
use site::{Fact, Facts, Joint, Judgment, Project, Scope};

use crate::index::Index;
use crate::sameness::{feed, is_same};

/// What is known of some joints alike.
#[derive(Debug, Clone)]
pub struct Condition<'a> {
    /// The first of the joints, with what is known of each.
    pub subject: Subject<'a>,
    /// The joints, in the order of the schedule.
    pub joints: Vec<&'a Joint>,
}

/// How long a run is: it makes a condition of its own only where a listing asks about it.
const LENGTH: &str = "joint.length";

/// The distinct conditions of a project, in the order of its schedule. Joints are of one condition when the same facts from the same
/// sources are known of them, and the same people have decided the same, whatever cells that was read from.
pub fn conditions<'a>(project: &'a Project, index: &Index) -> Vec<Condition<'a>> {
    let judged = Judged::of(project);
    let told = Told {
        length_counts: index.asks_about(LENGTH),
    };
    let mut places: BTreeMap<u64, Vec<usize>> = BTreeMap::new();
    let mut conditions: Vec<Condition<'_>> = Vec::new();
    for (joint, facts) in project.joints_with_facts() {
        let judgments = judged.on(joint);
        let alike = places.entry(told.hash(&facts, &judgments)).or_default();
        let known = alike.iter().copied().find(|at| {
            conditions.get(*at).is_some_and(|known| {
                known.subject.judgments == judgments && told.is_same(&known.subject.facts, &facts)
            })
        });
        if let Some(known) = known.and_then(|at| conditions.get_mut(at)) {
            known.joints.push(joint);
            continue;
        }
        alike.push(conditions.len());
        conditions.push(Condition {
            joints: vec![joint],
            subject: Subject {
                joint: &joint.name,
                mark: &joint.mark,
                facts,
                judgments,
            },
        });
    }
    conditions
}

/// Which facts tell conditions apart.
struct Told {
    length_counts: bool,
}

impl Told {
    fn of<'f>(&self, facts: &Facts<'f>) -> impl Iterator<Item = &'f Fact> {
        let facts = facts.iter();
        facts.filter(move |fact| self.length_counts || fact.property != LENGTH)
    }

    /// The same wherever the same is known; now and then elsewhere too.
    fn hash(&self, facts: &Facts<'_>, judgments: &[&Judgment]) -> u64 {
        let mut hasher = FxHasher::default();
        for fact in self.of(facts) {
            feed(fact, &mut hasher);
        }
        judgments.len().hash(&mut hasher);
        hasher.finish()
    }

    fn is_same(&self, known: &Facts<'_>, other: &Facts<'_>) -> bool {
        let each = |facts| -> Vec<&Fact> { self.of(facts).collect() };
        let (known, other) = (each(known), each(other));
        known.len() == other.len()
            && known
                .iter()
                .zip(&other)
                .all(|(known, other)| is_same(known, other))
    }
}

/// What people have decided, by the joint or mark that it is on.
struct Judged<'a> {
    on_joints: BTreeMap<&'a str, Vec<(usize, &'a Judgment)>>,
    on_marks: BTreeMap<&'a str, Vec<(usize, &'a Judgment)>>,
}

impl<'a> Judged<'a> {
    fn of(project: &'a Project) -> Self {
        let mut judged = Self {
            on_joints: BTreeMap::new(),
            on_marks: BTreeMap::new(),
        };
        for (place, judgment) in project.judgments.iter().enumerate() {
            let (on, name) = match &judgment.scope {
                Scope::Joint(name) => (&mut judged.on_joints, name),
                Scope::Mark(name) => (&mut judged.on_marks, name),
            };
            on.entry(name).or_default().push((place, judgment));
        }
        judged
    }

    /// Those that bear on a joint, in file order.
    fn on(&self, joint: &Joint) -> Vec<&'a Judgment> {
        let on_joint = self.on_joints.get(joint.name.as_str());
        let on_mark = self.on_marks.get(joint.mark.as_str());
        let mut all: Vec<(usize, &Judgment)> = on_joint
            .into_iter()
            .chain(on_mark)
            .flatten()
            .copied()
            .collect();
        all.sort_by_key(|(place, _)| *place);
        all.into_iter().map(|(_, judgment)| judgment).collect()
    }
}
