//! A value against one limit or two.

use listing::{Bound, Relation, SecondValue};
use measure::{Number, Quantity};

use super::difference::{above, in_unit};
use super::guard::Guard;
use super::{Compared, Outcome, Side};

/// The limits that a bound states in one of its units.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Limits {
    pub(crate) relation: Relation,
    pub(crate) lo: Option<Quantity>,
    pub(crate) hi: Option<Quantity>,
    pub(crate) lo_excluded: bool,
}

impl Limits {
    /// The limits as the bound's first unit states them.
    pub(crate) fn of(bound: &Bound) -> Self {
        Self {
            relation: bound.relation,
            lo: bound.low(),
            hi: bound.high(),
            lo_excluded: bound.lo_excluded,
        }
    }

    /// The limits as its second unit states them; of a bound with only a high value the second is the high one too.
    pub(crate) fn of_second(bound: &Bound, second: &SecondValue) -> Self {
        let value =
            |number: Option<Number>| number.map(|number| Quantity::new(number, second.unit));
        let upper = bound.lo.is_none() && second.hi.is_none();
        let (lo, hi) = if upper {
            (None, second.lo)
        } else {
            (second.lo, second.hi)
        };
        Self {
            lo: value(lo),
            hi: value(hi),
            ..Self::of(bound)
        }
    }

    /// Either value, to see what is measured and in which unit.
    pub(crate) fn any(&self) -> Option<Quantity> {
        self.lo.or(self.hi)
    }

    /// A value against these limits. A limit that the relation needs and the bound lacks can't be compared.
    pub(crate) fn against(&self, value: Quantity, guard: Guard) -> Compared {
        let low = || {
            self.lo
                .and_then(|lo| edge(value, lo, Side::AtLeast, self.is_strict(), guard))
        };
        let high = || {
            self.hi
                .and_then(|hi| edge(value, hi, Side::AtMost, self.is_strict(), guard))
        };
        let compared = match self.relation {
            Relation::AtLeast | Relation::MoreThan => low(),
            Relation::AtMost | Relation::LessThan => high(),
            Relation::Between => self.between(value, guard),
            Relation::Nominal | Relation::Exactly | Relation::About => None,
        };
        compared.unwrap_or_else(|| Compared::unreadable(value))
    }

    const fn is_strict(&self) -> bool {
        matches!(self.relation, Relation::LessThan | Relation::MoreThan)
    }

    fn between(&self, value: Quantity, guard: Guard) -> Option<Compared> {
        let (lo, hi) = (self.lo?, self.hi?);
        // A gauge range is written the light gauge first or last; either way round its ends are its ends.
        let (lo, hi) = match hi.compare(lo)? {
            core::cmp::Ordering::Less if lo.dimension().lower_is_heavier() => (hi, lo),
            core::cmp::Ordering::Less => return None,
            _ => (lo, hi),
        };
        let from = edge(value, lo, Side::AtLeast, self.lo_excluded, guard)?;
        let to = edge(value, hi, Side::AtMost, false, guard)?;
        Some(from.worse(to))
    }
}

/// A value against one limit. A strict limit excludes itself.
fn edge(
    value: Quantity,
    limit: Quantity,
    side: Side,
    strict: bool,
    guard: Guard,
) -> Option<Compared> {
    let order = match side {
        Side::AtMost => limit.compare(value)?,
        Side::AtLeast | Side::Neither => value.compare(limit)?,
    };
    let right_side = if strict { order.is_gt() } else { order.is_ge() };
    let too_close = match guard {
        Guard::Exact => false,
        Guard::Unknown => order.is_eq(),
        Guard::Within(half) => {
            let half = in_unit(half, limit.unit)?;
            let distance = above(value, limit)?.number.abs();
            // Half a division away the true value may be the limit itself, which a strict limit excludes.
            distance < half || (strict && right_side && distance == half)
        }
    };
    let outcome = match (too_close, right_side) {
        (true, _) => Outcome::TooClose,
        (false, true) => Outcome::Holds,
        (false, false) => Outcome::Fails,
    };
    let guard = match guard {
        Guard::Within(half) => Some(half),
        Guard::Exact | Guard::Unknown => None,
    };
    Some(Compared {
        outcome,
        value,
        limit: Some(limit),
        side,
        guard,
        tolerance: None,
    })
}
