//! A bound stated as a multiple of the joint's width: "half the joint width".

use listing::Bound;
use measure::Quantity;

use super::guard::Guard;
use crate::evidence::{Evidence, evidence, property};
use crate::subject::Case;

/// The property that the multiple is of.
pub(crate) const JOINT_WIDTH: &str = "joint.width";

/// The bound as lengths, one for each reading of the width, with what the width's own measurement leaves open; the
/// evidence on the width where it can't be used.
pub(crate) fn as_lengths<'a>(
    bound: &Bound,
    subject: &Case<'a>,
) -> Result<Vec<(Bound, Guard)>, Evidence<'a>> {
    let found = evidence(JOINT_WIDTH, subject);
    let Evidence::Shown(fact) = found else {
        return Err(found);
    };
    let lengths = crate::evidence::quantities(fact).map(|width| {
        let times = |number: Option<measure::Number>| match number {
            Some(number) => number.times(width.number).map(Some),
            None => Some(None),
        };
        let factor = bound.lo.or(bound.hi)?;
        let length = Bound {
            lo: times(bound.lo)?,
            hi: times(bound.hi)?,
            unit: width.unit,
            second: None,
            ..bound.clone()
        };
        let guard = match Guard::of(fact, property(JOINT_WIDTH), width) {
            Guard::Within(half) => half
                .times(factor.abs())
                .map_or(Guard::Unknown, Guard::Within),
            other => other,
        };
        (width.dimension() == measure::Dimension::Length).then_some((length, guard))
    });
    let lengths: Option<Vec<(Bound, Guard)>> = lengths.collect();
    lengths
        .filter(|lengths| !lengths.is_empty())
        .ok_or(Evidence::Unreadable(fact))
}

/// Whether a bound is stated so.
pub(crate) fn is_so_stated(bound: &Bound) -> bool {
    Quantity::new(measure::Number::ONE, bound.unit).dimension() == measure::Dimension::JointWidths
}
