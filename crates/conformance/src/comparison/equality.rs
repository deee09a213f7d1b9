//! A value against the one value that is asked for.

use measure::unit::System;
use measure::{Number, Quantity};

use super::difference::{above, in_unit};
use super::guard::Guard;
use super::limits::Limits;
use super::rule::Rule;
use super::tolerance::Tolerance;
use super::{Compared, Outcome, Side};

/// A value against a nominal, exact or approximate one.
///
/// An equality is no limit, so that a reading that shows the very value is taken at its word: no instrument could
/// ever show more. A nominal value given as two ("1 and 2 in. nominal") is met by either, and by nothing between.
pub(crate) fn against(
    value: Quantity,
    limits: &Limits,
    rule: Rule,
    guard: Guard,
    tolerance: Option<&'static Tolerance>,
) -> Compared {
    let compared = match (limits.lo, limits.hi) {
        (Some(one), None) | (None, Some(one)) => against_one(value, one, rule, guard, tolerance),
        (Some(one), Some(other)) => against_two(value, one, other),
        (None, None) => None,
    };
    compared.unwrap_or_else(|| Compared::unreadable(value))
}

fn against_two(value: Quantity, one: Quantity, other: Quantity) -> Option<Compared> {
    let from_one = above(value, one)?;
    let from_other = above(value, other)?;
    let (limit, deviation) = if in_unit(from_other, one.unit)?.abs() < from_one.number.abs() {
        (other, from_other)
    } else {
        (one, from_one)
    };
    let outcome = if deviation.number.is_zero() {
        Outcome::Holds
    } else {
        Outcome::Deviates
    };
    Some(deviating(outcome, value, limit))
}

fn against_one(
    value: Quantity,
    asked: Quantity,
    rule: Rule,
    guard: Guard,
    tolerance: Option<&'static Tolerance>,
) -> Option<Compared> {
    let outcome = |outcome| deviating(outcome, value, asked);
    if value.compare(asked)?.is_eq() {
        return Some(outcome(Outcome::Holds));
    }
    let deviation = above(value, asked)?;
    if let Some(tolerance) = tolerance
        && guard.is_measured()
        && matches!(rule, Rule::NominalProduct | Rule::NominalDimension)
    {
        return within(
            deviation,
            tolerance,
            rule,
            guard,
            outcome(Outcome::Deviates),
        );
    }
    Some(outcome(match rule {
        Rule::Exactly | Rule::NominalProduct if is_soft_conversion(value, asked) => {
            Outcome::Deviates
        }
        // A measurement doesn't tell which nominal value the product was sold by.
        Rule::NominalProduct if guard.is_measured() => Outcome::Deviates,
        Rule::NominalProduct => Outcome::Fails,
        Rule::NominalDimension | Rule::About => Outcome::Deviates,
        Rule::Exactly => match guard {
            Guard::Unknown => Outcome::TooClose,
            Guard::Within(half) if deviation.number.abs() < in_unit(half, asked.unit)? => {
                Outcome::TooClose
            }
            Guard::Exact | Guard::Within(_) => Outcome::Fails,
        },
        Rule::Limit => return None,
    }))
}

/// A measured deviation against the tolerance of a cited standard. A product outside it isn't that product; a
/// dimension outside it goes to a person.
fn within(
    deviation: Quantity,
    tolerance: &'static Tolerance,
    rule: Rule,
    guard: Guard,
    compared: Compared,
) -> Option<Compared> {
    let allowed = if deviation.number.is_negative() {
        tolerance.minus
    } else {
        tolerance.plus
    };
    let allowed = in_unit(allowed, deviation.unit)?;
    let spare = allowed.minus(deviation.number.abs())?;
    let too_close = match guard {
        Guard::Exact => false,
        Guard::Unknown => spare.is_zero(),
        Guard::Within(half) => spare.abs() < in_unit(half, deviation.unit)?,
    };
    let outcome = match rule {
        _ if too_close => Outcome::TooClose,
        _ if spare >= Number::ZERO => Outcome::Holds,
        Rule::NominalProduct => Outcome::Fails,
        _ => Outcome::Deviates,
    };
    Some(Compared {
        outcome,
        tolerance: Some(tolerance),
        ..compared
    })
}

/// Whether a value in one system may only be a rounded conversion of the value asked for in the other: within 3 %,
/// as soft conversions are (common practice; see `measure::dual`). Whether it is, a person must say.
fn is_soft_conversion(value: Quantity, asked: Quantity) -> bool {
    let (ours, theirs) = (value.unit.system(), asked.unit.system());
    if ours == theirs || ours == System::Shared || theirs == System::Shared {
        return false;
    }
    let close = || {
        let apart = above(value, asked)?.number.abs();
        Some(apart <= asked.number.abs().times(Number::new(3, 100)?)?)
    };
    close().unwrap_or(false)
}

const fn deviating(outcome: Outcome, value: Quantity, limit: Quantity) -> Compared {
    Compared {
        outcome,
        value,
        limit: Some(limit),
        side: Side::Neither,
        guard: None,
        tolerance: None,
    }
}
