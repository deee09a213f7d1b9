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
use vocabulary::Designation;

use crate::assessment::Assessment;
use crate::checklist::Checklist;
use crate::options::Selection;
use crate::subject::Subject;

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
    pub(crate) subject: &'b Subject<'a>,
    pub(crate) designation: Option<Designation>,
}

impl<'a> Context<'a, '_> {
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

/// Every check on the head, in the order in which a head is read.
pub(crate) fn check<'a>(
    checklist: &Checklist<'a>,
    selection: &Selection<'a>,
    subject: &Subject<'a>,
) -> Vec<Head<'a>> {
    let designation = checklist.reading.header.designation.trim();
    let designation = Designation::parse_decorated(designation)
        .ok()
        .map(|(_, read)| read);
    let context = Context {
        checklist,
        selection,
        subject,
        designation,
    };
    let mut heads = Vec::with_capacity(10);
    heads.push(kind::check(&context));
    heads.push(rating::check(&context));
    heads.push(width::check(&context));
    heads.extend(band::check(&context));
    heads.extend(movement::check(&context));
    heads.extend(leakage::check(&context));
    heads
}
