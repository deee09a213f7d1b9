//! The rating that is asked of the joint, and the one of the listing's that applies.
//!
//! The joint must be rated at least as long as the element it lies in or between (IBC 715). What is asked is the
//! barrier's rating, or the joint's own where the drawings give a longer one. A listing rated 1 and 2 h that serves a
//! 1-1/2 h barrier is built to its 2 h clauses: the smallest of its ratings that reaches.

use core::cmp::Ordering;

use measure::{Dimension, Number, Quantity, Unit};
use site::{Barrier, Fact, Value};

use crate::evidence::{Evidence, evidence};
use crate::subject::Case;

/// The property that conditions on the rating test.
pub(crate) const JOINT_RATING: &str = "joint.rating";

/// The rating asked of a joint, with the fact that asks it.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Asked<'a> {
    pub(crate) rating: Quantity,
    pub(crate) fact: &'a Fact,
}

/// The barrier's rating, or the evidence that isn't enough.
pub(crate) fn of_barrier<'a>(subject: &Case<'a>) -> Result<Asked<'a>, Evidence<'a>> {
    time(evidence(Barrier::RATING, subject))
}

/// The rating the drawings give the joint itself.
pub(crate) fn of_joint<'a>(subject: &Case<'a>) -> Result<Asked<'a>, Evidence<'a>> {
    time(evidence(JOINT_RATING, subject))
}

fn time(found: Evidence<'_>) -> Result<Asked<'_>, Evidence<'_>> {
    match found {
        Evidence::Shown(fact) => match fact.value {
            Value::Quantity(rating)
                if rating.dimension() == Dimension::Time && rating.number > Number::ZERO =>
            {
                Ok(Asked { rating, fact })
            }
            _ => Err(Evidence::Unreadable(fact)),
        },
        other => Err(other),
    }
}

/// What is asked of the joint: the longer of its barrier's rating and its own. A rating that is given but can't be
/// used leaves it open.
pub(crate) fn asked<'a>(subject: &Case<'a>) -> Result<Asked<'a>, (&'static str, Evidence<'a>)> {
    match (of_barrier(subject), of_joint(subject)) {
        (Ok(barrier), Ok(joint)) => match joint.rating.compare(barrier.rating) {
            Some(Ordering::Greater) => Ok(joint),
            _ => Ok(barrier),
        },
        (Ok(only), Err(Evidence::None)) | (Err(Evidence::None), Ok(only)) => Ok(only),
        (Err(found), _) => Err((Barrier::RATING, found)),
        (_, Err(found)) => Err((JOINT_RATING, found)),
    }
}

/// The smallest rating of the listing that is at least as long as asked; none when no rating reaches, or none was read.
pub(crate) fn applicable(ratings_hr: &[Number], asked: Quantity) -> Option<Quantity> {
    let ratings = ratings_hr
        .iter()
        .map(|hours| Quantity::new(*hours, Unit::Hour));
    let reach = ratings.filter(|rating| rating.compare(asked).is_some_and(Ordering::is_ge));
    reach.reduce(|least, other| {
        if other.compare(least).is_some_and(Ordering::is_lt) {
            other
        } else {
            least
        }
    })
}
