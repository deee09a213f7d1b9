//! What the head of a listing asks, and what the building asks of the listing.
//!
//! These checks stand before the clauses, each as a finding of its own with an id under `header/`.

mod band;
mod kind;
mod leakage;
mod movement;
mod rating;
mod width;

use listing::{HeaderTopic, Requirement, Span};
use site::Barrier;
use vocabulary::Designation;

use crate::assessment::Assessment;
use crate::checklist::Checklist;
use crate::movement::direction::{COMPRESSION, EXTENSION, SHEAR};
use crate::options::Selection;
use crate::points::Topic;
use crate::subject::Case;

pub(crate) use leakage::LIMIT as LEAKAGE_LIMIT;
pub(crate) use rating::joined;
pub(crate) use width::{bound as width_bound, requirement as width_requirement};

/// What judgments call the head as an item; the ids of its checks begin with it.
pub(crate) const ITEM: &str = "header";

/// A check on the head of a listing.
pub(crate) struct Head<'a> {
    pub(crate) id: &'static str,
    pub(crate) property: &'static str,
    pub(crate) span: Option<Span>,
    pub(crate) found: Assessment<'a>,
}

/// What the checks have at hand.
pub(crate) struct Context<'a, 'b> {
    pub(crate) checklist: &'b Checklist<'a>,
    pub(crate) selection: &'b Selection<'a>,
    pub(crate) subject: &'b Case<'a>,
    pub(crate) designation: Option<Designation>,
}

impl<'a, 'b> Context<'a, 'b> {
    fn of(
        checklist: &'b Checklist<'a>,
        selection: &'b Selection<'a>,
        subject: &'b Case<'a>,
    ) -> Self {
        let designation = checklist.reading.header.designation.trim();
        let designation = Designation::parse_decorated(designation)
            .ok()
            .map(|(_, read)| read);
        Self {
            checklist,
            selection,
            subject,
            designation,
        }
    }

    /// Whether the head states something differently for different configurations or ratings.
    fn differs(&self, topic: HeaderTopic) -> bool {
        self.checklist.reading.header.differs.contains(&topic)
    }

    /// The bounds on the joint's width that chosen clauses state, by their items.
    fn width_clauses(&self) -> impl Iterator<Item = &'a str> + '_ {
        let states_width = |entry: &&crate::checklist::Entry<'a>| {
            entry.clause.property == "joint.width"
                && matches!(entry.clause.requirement, Requirement::Bound(_))
                && self.selection.unchosen(&entry.memberships).is_none()
        };
        self.checklist
            .entries
            .iter()
            .filter(states_width)
            .map(|entry| entry.clause.item.as_str())
    }
}

/// The checks that look at the head alone, but for what it states by configuration.
pub(crate) const CHECKS: &[Topic] = &[
    Topic::Kind,
    Topic::Rating,
    Topic::Width,
    Topic::Compression,
    Topic::Extension,
    Topic::Shear,
    Topic::LeakageAmbient,
    Topic::LeakageElevated,
];

/// The property that a check is about.
pub(crate) const fn property_of(topic: Topic) -> &'static str {
    match topic {
        Topic::Kind => kind::PROPERTY,
        Topic::Rating => Barrier::RATING,
        Topic::Width => width::PROPERTY,
        Topic::Compression => COMPRESSION.property,
        Topic::Extension => EXTENSION.property,
        Topic::Shear => SHEAR.property,
        Topic::LeakageAmbient | Topic::LeakageElevated => Barrier::SMOKE_BARRIER,
    }
}

/// One check on the head, whatever the options.
pub(crate) fn one<'a>(topic: Topic, checklist: &Checklist<'a>, subject: &Case<'a>) -> Head<'a> {
    let selection = Selection { states: Vec::new() };
    let context = Context::of(checklist, &selection, subject);
    match topic {
        Topic::Kind => kind::check(&context),
        Topic::Rating => rating::check(&context),
        Topic::Width => width::check(&context),
        Topic::Compression => movement::one(&context, &COMPRESSION),
        Topic::Extension => movement::one(&context, &EXTENSION),
        Topic::Shear => movement::one(&context, &SHEAR),
        Topic::LeakageAmbient => leakage::one(&context, &leakage::AMBIENT),
        Topic::LeakageElevated => leakage::one(&context, &leakage::ELEVATED),
    }
}

/// Every check on the head, in the order in which a head is read.
pub(crate) fn check<'a>(
    checklist: &Checklist<'a>,
    selection: &Selection<'a>,
    subject: &Case<'a>,
) -> Vec<Head<'a>> {
    let context = Context::of(checklist, selection, subject);
    let mut heads = Vec::with_capacity(10);
    heads.push(kind::check(&context));
    heads.push(rating::check(&context));
    heads.push(width::check(&context));
    heads.extend(band::check(&context));
    heads.extend(movement::check(&context));
    heads.extend(leakage::check(&context));
    heads
}
