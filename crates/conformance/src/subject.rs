//! One joint, and what is known of it.

use site::{Facts, Joint, Judgment, Project};

/// One joint, and what is known of it.
#[derive(Debug, Clone, Default)]
pub struct Subject<'a> {
    /// The joint's name.
    pub joint: &'a str,
    /// Its mark's name.
    pub mark: &'a str,
    /// What is known of it, its mark's and barrier's facts included.
    pub facts: Facts<'a>,
    /// What named people have decided about it or its mark, in file order.
    pub judgments: Vec<&'a Judgment>,
}

impl<'a> Subject<'a> {
    /// A joint of a project.
    pub fn of(project: &'a Project, joint: &'a Joint) -> Self {
        Self {
            joint: &joint.name,
            mark: &joint.mark,
            facts: project.facts(joint),
            judgments: project.judgments_on(joint).collect(),
        }
    }
}
