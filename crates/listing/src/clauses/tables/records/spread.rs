//! Two limits of one row as the range that they are: `Density, pcf   105   150` under "Min" and "Max".
//!
//! Limits in two units stay two clauses, and so do those that contradict each other; gauges run the other way.

use measure::Dimension;

use crate::clauses::Draft;
use crate::model::{Bound, Relation, Requirement};

/// Makes one range of a lower and an upper limit, where these are all that a row asks.
pub(super) fn join_limits(clauses: &mut Vec<Draft>) {
    let [lower, upper] = clauses.as_slice() else {
        return;
    };
    let Some(bound) = range(lower, upper) else {
        return;
    };
    clauses.truncate(1);
    if let Some(draft) = clauses.first_mut() {
        draft.requirement = Requirement::Bound(bound);
    }
}

fn range(lower: &Draft, upper: &Draft) -> Option<Bound> {
    let (Requirement::Bound(low), Requirement::Bound(high)) =
        (&lower.requirement, &upper.requirement)
    else {
        return None;
    };
    let limits = low.relation == Relation::AtLeast && high.relation == Relation::AtMost;
    let alike = low.unit == high.unit
        && low.unit.dimension() != Dimension::Gauge
        && low.second.is_none()
        && high.second.is_none()
        && lower.property == upper.property
        && lower.condition == upper.condition
        && lower.confidence == upper.confidence;
    let ordered = low.lo.zip(high.hi).is_some_and(|(lo, hi)| lo <= hi);
    (limits && alike && ordered).then(|| Bound {
        relation: Relation::Between,
        hi: high.hi,
        at: low.at.join(high.at),
        ..low.clone()
    })
}
