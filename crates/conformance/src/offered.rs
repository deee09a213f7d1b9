//! What a listing offers rather than asks: a movement it was tested to, a rating, a leakage.
//!
//! "The joint takes up 25 percent compression" bounds no part of the joint: it says how far the joint may be asked to
//! move. So the fact of such a property is what is *needed*, and it must not pass what is offered, however the listing
//! qualifies the number. What a listing says of its leakage counts only in a smoke barrier, where the code limits it.

use listing::{Bound, Relation};
use measure::{Quantity, print};
use site::{Barrier, Value};

use crate::assessment::Assessment;
use crate::condition::reason_of;
use crate::evidence::{Evidence, evidence};
use crate::explain::requirement;
use crate::header::LEAKAGE_LIMIT;
use crate::subject::Case;
use crate::verdict::{Reason, Verdict};

/// Properties of which the listing states what it offers.
const OFFERED: &[&str] = &[
    "joint.movement_compression",
    "joint.movement_extension",
    "joint.movement_shear",
    "joint.closing_displacement",
    "joint.opening_displacement",
    "joint.shear_displacement",
    "joint.rating",
    "joint.f_rating",
    "joint.t_rating",
    "joint.ft_rating",
    "joint.fh_rating",
    "joint.fth_rating",
    "joint.integrity",
    "joint.insulation",
];

const LEAKAGE: &[&str] = &["joint.leakage_ambient", "joint.leakage_elevated"];

/// Whether a property's clauses say what the listing offers.
pub(crate) fn is_offered(property: &str) -> bool {
    OFFERED.contains(&property)
}

/// Whether a property's clauses say how much the joint leaks.
pub(crate) fn is_leakage(property: &str) -> bool {
    LEAKAGE.contains(&property)
}

/// What is offered, as a limit on what may be needed: the only value however it is qualified, and of a range the least,
/// which is all that is sure.
pub(crate) fn as_limit(bound: &Bound) -> Bound {
    let only = bound.lo.or(bound.hi);
    let relation = match bound.relation {
        Relation::LessThan => Relation::LessThan,
        _ => Relation::AtMost,
    };
    let second = bound
        .second
        .clone()
        .map(|second| listing::SecondValue { hi: None, ..second });
    Bound {
        relation,
        lo: None,
        hi: only,
        second,
        bare: false,
        ..bound.clone()
    }
}

/// Whether a need that passes the limit may still be offered: it lies within a range, or the value is about that.
pub(crate) fn may_be_offered(bound: &Bound, needed: Quantity) -> bool {
    let within = || {
        bound
            .high()
            .is_some_and(|high| needed.compare(high).is_some_and(core::cmp::Ordering::is_le))
    };
    bound.relation == Relation::About || (bound.lo.is_some() && within())
}

/// What a clause on leakage comes to at a joint.
pub(crate) fn leakage<'a>(bound: &Bound, subject: &Case<'a>) -> Assessment<'a> {
    let found = evidence(Barrier::SMOKE_BARRIER, subject);
    let offers = requirement::of_bound(bound);
    let Evidence::Shown(fact) = found else {
        return Assessment::open(reason_of(found))
            .on(found.fact())
            .asking(Barrier::SMOKE_BARRIER)
            .saying(offers, "Whether the barrier is a smoke barrier isn't known; only in one is leakage limited.");
    };
    let (assessed, sentence) = match (&fact.value, bound.high().or(bound.low())) {
        (Value::Flag(false), _) => (
            Assessment::plain(Verdict::NotApplicable, Reason::NotAsked),
            "The barrier is no smoke barrier: leakage isn't limited.".to_owned(),
        ),
        (Value::Flag(true), Some(leaks)) => (in_smoke_barrier(bound, leaks), sentence(leaks)),
        (Value::Flag(true), None) => (
            Assessment::open(Reason::ListingUnclear),
            "The leakage couldn't be read.".to_owned(),
        ),
        _ => (
            Assessment::open(Reason::Unreadable),
            "Whether the barrier is a smoke barrier can't be read from its value.".to_owned(),
        ),
    };
    assessed.on(fact).saying(offers, sentence)
}

fn in_smoke_barrier<'a>(bound: &Bound, leaks: Quantity) -> Assessment<'a> {
    let is_upper_bound = !matches!(
        bound.relation,
        Relation::AtLeast | Relation::MoreThan | Relation::About
    );
    match leaks.compare(LEAKAGE_LIMIT) {
        Some(order) if order.is_gt() => Assessment::plain(Verdict::NotMet, Reason::NotOffered),
        Some(_) if is_upper_bound => Assessment::plain(Verdict::Met, Reason::Holds),
        // A rating for each area, or one that sets no upper limit: nobody can tell what was meant.
        _ => Assessment::open(Reason::ListingUnclear),
    }
}

fn sentence(leaks: Quantity) -> String {
    format!(
        "The listing states a leakage of {}; in a smoke barrier at most {} is allowed.",
        print::both(leaks),
        print::both(LEAKAGE_LIMIT)
    )
}
