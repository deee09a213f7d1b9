//! One joint, and what is known of it.

use listing::Reading;
use site::{Facts, FactsFor, GoesBy, Joint, Judgment, Project};

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

    /// The joint as it stands before one listing: what was said of another's own requirements is left out. Every verdict is decided from this,
    /// and from nothing else.
    pub(crate) fn before(&self, reading: &Reading) -> Case<'a> {
        Case {
            facts: self.facts.for_listing(&goes_by(reading)),
            judgments: self.judgments.clone(),
        }
    }

    /// The joint as it stands before any listing.
    pub fn before_any(&self) -> Case<'a> {
        Case {
            facts: self.facts.for_any_listing(),
            judgments: self.judgments.clone(),
        }
    }
}

/// A joint as it stands before one listing, or before any: what is known of it that counts there.
#[derive(Debug, Clone)]
pub struct Case<'a> {
    pub(crate) facts: FactsFor<'a>,
    pub(crate) judgments: Vec<&'a Judgment>,
}

/// What a listing goes by, where something is said of it.
pub fn goes_by(reading: &Reading) -> GoesBy<'_> {
    GoesBy {
        file: &reading.source.name,
        designation: &reading.header.designation,
        sha256: &reading.source.sha256,
    }
}
