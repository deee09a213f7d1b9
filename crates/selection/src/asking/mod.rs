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
    /// The condition as conformance takes it, for any listing. What was said of one listing's own properties counts for that one alone.
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

    /// What is said of facts that count for no listing.
    pub(crate) fn note_of_left_out(&self) -> Option<String> {
        let mut of_none = self.facts.iter();
        let of_none = of_none.any(|fact| fact.is_of_one_listing() && fact.said_of().is_none());
        of_none.then(|| {
            "Something is known of a property that one listing has for itself, and nothing says which listing that is: it may mean something else in another, and counts for none. Name the listing, as `2A:runner.gauge@hw-d-0412-ed4`.".to_owned()
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
