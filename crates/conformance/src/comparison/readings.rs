//! Every reading of a fact against a bound: the worst decides.

use core::cmp::Ordering;

use listing::Bound;
use measure::{Number, Quantity};
use site::{Fact, ProvenanceKind, Value};
use vocabulary::Property;

use super::guard::Guard;
use super::tolerance::Tolerance;
use super::{Compared, Rule, dual, equality};
use crate::subject::Case;

/// A fact against a bound: the worst of its readings, each with a guard as wide as its instrument and the limit's own
/// uncertainty make it. None when the fact is no quantity.
pub(crate) fn against(
    fact: &Fact,
    bound: &Bound,
    property: Option<&Property>,
    limit_guard: Guard,
    subject: &Case<'_>,
) -> Option<Compared> {
    let rule = Rule::of(bound, property);
    let each = Guard::of_each(fact, property).map(|(value, guard)| {
        let guard = guard.widened(limit_guard);
        dual::against(value, bound, rule.is_equality(), |limits| {
            if rule == Rule::Limit {
                return limits.against(value, guard);
            }
            let nominal = limits.any();
            let tolerance =
                nominal.and_then(|nominal| Tolerance::of(fact.asked_as(), nominal, subject));
            equality::against(value, limits, rule, guard, tolerance)
        })
    });
    each.reduce(Compared::worse)
}

/// Whether a value lies outside its own readings, so that nobody can tell what was measured.
pub(crate) fn is_scattered(fact: &Fact) -> bool {
    let (Value::Quantity(value), ProvenanceKind::Measured { readings, .. }) =
        (&fact.value, &fact.provenance.kind)
    else {
        return false;
    };
    if readings.is_empty() {
        return false;
    }
    let on_side = |side: fn(Ordering) -> bool| {
        readings
            .iter()
            .any(|reading| value.compare(*reading).is_some_and(side))
    };
    !(on_side(Ordering::is_ge) && on_side(Ordering::is_le))
}

/// The exact mean of several readings, in the unit of the first; none when they can't be added.
pub(crate) fn mean(readings: &[Quantity]) -> Option<Quantity> {
    let (first, rest) = readings.split_first()?;
    let mut sum = first.number;
    for reading in rest {
        sum = sum.plus(reading.to(first.unit)?.number)?;
    }
    let count = Number::whole(i32::try_from(readings.len()).ok()?);
    Some(Quantity::new(sum.over(count)?, first.unit))
}
