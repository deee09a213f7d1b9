//! The joint's width as found against the width in the head of the listing. Every reading counts, and the worst decides:
//! a joint is as wide as its widest place.

use listing::{Bound, HeaderTopic, Relation, WidthLimit};

use super::{Context, Head};
use crate::assessment::Assessment;
use crate::decide;
use crate::evidence::property;
use crate::explain::requirement::of_bound;
use crate::verdict::{Reason, Verdict};

pub(super) const PROPERTY: &str = "joint.width";

/// What is said where the head's width differs, and its statements don't agree on the joint.
const DIFFERS: &str = "The head states it by configuration or rating, and whether the joint's width fits the statement \
                       that holds here can't be told; see the items.";

/// The joint's width against the head's.
pub(super) fn check<'a>(context: &Context<'a, '_>) -> Head<'a> {
    let width = context.checklist.reading.header.width.as_ref();
    let found = match width {
        Some(width) => against(context, width),
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

/// A width that the head states once; or the strictest and the most generous of several, which must agree. Of several
/// low values only the least is kept, so that none is shown to be met.
fn against<'a>(context: &Context<'a, '_>, width: &WidthLimit) -> Assessment<'a> {
    let check = |bound: &Bound| decide::bound(bound, PROPERTY, property(PROPERTY), context.subject);
    let generous = check(&bound(width));
    let strictest = match strictest(width) {
        Some(strictest) => Some(check(&strictest)),
        None if context.differs(HeaderTopic::Width) => None,
        None => return generous,
    };
    match (strictest, generous.verdict) {
        (_, Verdict::Open) => generous,
        (Some(strictest), Verdict::NotMet) if strictest.verdict == Verdict::NotMet => generous,
        (Some(strictest), Verdict::Met)
            if strictest.verdict == Verdict::Met && width.lo.is_none() =>
        {
            strictest
        }
        _ => Assessment::open(Reason::ListingUnclear)
            .on(generous.fact)
            .saying(requirement(width), DIFFERS),
    }
}

/// The width as the strictest of several statements has it.
fn strictest(width: &WidthLimit) -> Option<Bound> {
    let hi = width.strictest_hi?;
    Some(Bound {
        hi: Some(hi),
        ..bound(width)
    })
}

/// What the head asks of the width, in words.
pub(crate) fn requirement(width: &WidthLimit) -> String {
    let generous = of_bound(&bound(width));
    match strictest(width) {
        Some(strictest) => format!(
            "{} or {generous}, by configuration or rating",
            of_bound(&strictest)
        ),
        None => generous,
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
