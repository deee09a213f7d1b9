//! The joint's width as found against the width in the head of the listing. Every reading counts, and the worst decides:
//! a joint is as wide as its widest place.

use listing::{Bound, Relation, WidthLimit};

use super::{Context, Head};
use crate::assessment::Assessment;
use crate::decide;
use crate::evidence::property;
use crate::verdict::{Reason, Verdict};

pub(super) const PROPERTY: &str = "joint.width";

/// The joint's width against the head's.
pub(super) fn check<'a>(context: &Context<'a, '_>) -> Head<'a> {
    let width = context.checklist.reading.header.width.as_ref();
    let found = match width {
        Some(width) => decide::bound(&bound(width), PROPERTY, property(PROPERTY), context.subject),
        None => match context.width_clauses().next() {
            Some(item) => Assessment::plain(Verdict::NotApplicable, Reason::AsksNothing).saying(
                "a width",
                format!("The head of the listing states no width; item {item} does."),
            ),
            None => Assessment::open(Reason::ListingUnclear).saying(
                "a width",
                "No width could be read, neither from the head of the listing nor from its items.",
            ),
        },
    };
    Head {
        id: "header/width",
        property: PROPERTY,
        span: width.map(|width| width.span),
        found,
    }
}

/// The head's width as a bound. A width with no qualifier is a bare one.
pub(crate) fn bound(width: &WidthLimit) -> Bound {
    Bound {
        relation: width.relation,
        lo: width.lo,
        hi: width.hi,
        unit: width.unit,
        lo_excluded: false,
        bare: width.relation == Relation::Exactly,
        at: width.span,
        second: None,
    }
}
