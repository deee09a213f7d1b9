//! Which values a bound allows, and which of two bounds allows more.

use core::cmp::Ordering;

use listing::{Bound, Relation};
use measure::Quantity;

use super::{ChangeKind, subset_kind};

/// What a bound became.
pub(super) fn kind(was: &Bound, is: &Bound) -> ChangeKind {
    let about = |bound: &Bound| bound.relation == Relation::About;
    if about(was) || about(is) {
        let same = was.relation == is.relation && same_values(was, is);
        return if same {
            ChangeKind::Unchanged
        } else {
            ChangeKind::Changed
        };
    }
    let (Some(old), Some(new)) = (Allowed::by(was), Allowed::by(is)) else {
        return ChangeKind::Changed;
    };
    let (Some(new_in_old), Some(old_in_new)) = (new.is_within(&old), old.is_within(&new)) else {
        return ChangeKind::Changed;
    };
    let kind = subset_kind(new_in_old, old_in_new);
    // The same values, but a nominal value isn't an exact one, and a second statement may have changed.
    let same_kind = was.relation == is.relation && was.bare == is.bare;
    let agreement = |bound: &Bound| bound.second.as_ref().map(|second| second.agreement);
    if kind == ChangeKind::Unchanged && !(same_kind && agreement(was) == agreement(is)) {
        return ChangeKind::Changed;
    }
    kind
}

fn same_values(was: &Bound, is: &Bound) -> bool {
    let same = |one: Option<Quantity>, other: Option<Quantity>| match (one, other) {
        (Some(one), Some(other)) => one.compare(other) == Some(Ordering::Equal),
        (None, None) => true,
        _ => false,
    };
    same(was.low(), is.low()) && same(was.high(), is.high())
}

/// The values that a bound allows, from one end to the other.
struct Allowed {
    from: Option<End>,
    to: Option<End>,
}

/// An end, and whether it is itself allowed.
#[derive(Clone, Copy)]
struct End {
    at: Quantity,
    included: bool,
}

impl Allowed {
    fn by(bound: &Bound) -> Option<Self> {
        let end = |at: Option<Quantity>, included| Some(Some(End { at: at?, included }));
        Some(match bound.relation {
            Relation::AtLeast => Self {
                from: end(bound.low(), true)?,
                to: None,
            },
            Relation::MoreThan => Self {
                from: end(bound.low(), false)?,
                to: None,
            },
            Relation::AtMost => Self {
                from: None,
                to: end(bound.high(), true)?,
            },
            Relation::LessThan => Self {
                from: None,
                to: end(bound.high(), false)?,
            },
            Relation::Between => Self {
                from: end(bound.low(), !bound.lo_excluded)?,
                to: end(bound.high(), true)?,
            },
            Relation::Nominal | Relation::Exactly => Self {
                from: end(bound.low(), true)?,
                to: end(bound.high().or(bound.low()), true)?,
            },
            Relation::About => return None,
        })
    }

    /// Whether all that is allowed here is allowed there; none when the two can't be compared.
    fn is_within(&self, other: &Self) -> Option<bool> {
        let from = reaches(self.from, other.from, Ordering::Greater)?;
        let to = reaches(self.to, other.to, Ordering::Less)?;
        Some(from && to)
    }
}

/// Whether an inner end stays on the inner side of an outer one.
fn reaches(inner: Option<End>, outer: Option<End>, inwards: Ordering) -> Option<bool> {
    let Some(outer) = outer else {
        return Some(true);
    };
    let Some(inner) = inner else {
        return Some(false);
    };
    Some(match inner.at.compare(outer.at)? {
        Ordering::Equal => outer.included || !inner.included,
        order => order == inwards,
    })
}
