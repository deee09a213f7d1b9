//! What is asked: the condition of a joint, of a mark, or of facts given by themselves.

mod condition;
mod mark;
mod schedule;

use conformance::Subject;
use site::{Fact, Joint, Judgment, Project};

pub use condition::Condition;
pub use schedule::of_schedule;

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
    /// The condition as conformance takes it, for any listing. What is known of a property that one listing has for itself is left out: which
    /// listing that is isn't known here, and to another it must show nothing.
    pub fn subject(&self) -> Subject<'_> {
        Subject {
            joint: if self.name.is_empty() {
                "the joint"
            } else {
                &self.name
            },
            mark: &self.mark,
            facts: self.facts_for_any().collect(),
            judgments: self.judgments.iter().collect(),
        }
    }

    fn facts_for_any(&self) -> impl Iterator<Item = &Fact> {
        self.facts.iter().filter(|fact| !fact.is_of_one_listing())
    }

    /// What is said of facts that are left out.
    pub(crate) fn note_of_left_out(&self) -> Option<String> {
        let count = self.facts.len() - self.facts_for_any().count();
        (count > 0).then(|| {
            "What is known of properties that one listing has for itself isn't taken here, as it may mean something else in another: there such clauses are open, and the joint's own page decides them.".to_owned()
        })
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
    mark.map(|mark| mark::of_mark(project, mark))
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
