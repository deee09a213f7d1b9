//! A bound against a value: which rule applies, and what comes of it.
//!
//! | what the listing states | rule |
//! |---|---|
//! | at least, at most, less than, more than, between | [`limits`]: an exact comparison, guarded where the value is measured |
//! | exactly; a count | [`equality`]: that value and no other |
//! | a nominal or bare value that a product is bought by | that nominal value and no other, lighter or heavier |
//! | a nominal or bare value that is measured in place | that value, or one within a [`tolerance`] that a cited standard gives; else a person judges |
//! | about | that value; else a person judges |
//!
//! A value in two units is one requirement or two, as [`dual`] says; every reading of a measurement is compared, and the
//! worst decides ([`readings`]).

pub(crate) mod difference;
pub(crate) mod dual;
pub(crate) mod equality;
pub(crate) mod guard;
pub(crate) mod joint_widths;
pub(crate) mod limits;
pub(crate) mod readings;
pub(crate) mod rule;
pub(crate) mod tolerance;

use measure::Quantity;

pub(crate) use guard::Guard;
pub(crate) use limits::Limits;
pub(crate) use rule::Rule;
pub(crate) use tolerance::Tolerance;

/// What comes of comparing a value with a bound, from the best to the worst.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Outcome {
    /// The value is what is asked for.
    Holds,
    /// The value deviates from a nominal or approximate one: a person must judge.
    Deviates,
    /// The listing's two statements of the value give different outcomes.
    BetweenStatements,
    /// The measurement is closer to the limit than its instrument can tell.
    TooClose,
    /// The two can't be compared.
    Unreadable,
    /// The value isn't what is asked for.
    Fails,
}

/// On which side of a limit a value must lie.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Side {
    /// At the limit or above it.
    AtLeast,
    /// At the limit or below it.
    AtMost,
    /// Neither: it is one value that is asked for.
    Neither,
}

/// A value compared with a bound.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Compared {
    /// What comes of it.
    pub(crate) outcome: Outcome,
    /// The value, or the reading that decided.
    pub(crate) value: Quantity,
    /// The limit or nominal value it was compared with; of two limits the nearer.
    pub(crate) limit: Option<Quantity>,
    /// Which side of the limit is the right one.
    pub(crate) side: Side,
    /// Half the instrument's resolution, where it played a part.
    pub(crate) guard: Option<Quantity>,
    /// The tolerance that was applied.
    pub(crate) tolerance: Option<&'static Tolerance>,
}

impl Compared {
    /// A value that couldn't be compared.
    pub(crate) const fn unreadable(value: Quantity) -> Self {
        Self {
            outcome: Outcome::Unreadable,
            value,
            limit: None,
            side: Side::Neither,
            guard: None,
            tolerance: None,
        }
    }

    /// How far the value lies on the right side of the limit, above zero, or on the wrong one, below. Of an equality, how
    /// far it deviates, above zero when it is greater.
    pub(crate) fn margin(&self) -> Option<Quantity> {
        let above = difference::above(self.value, self.limit?)?;
        match self.side {
            Side::AtMost => Some(Quantity::new(-above.number, above.unit)),
            Side::AtLeast | Side::Neither => Some(above),
        }
    }

    /// The worse of two; of two alike the one with the smaller margin, and of those the first.
    pub(crate) fn worse(self, other: Self) -> Self {
        let other_is_worse = match other.outcome.cmp(&self.outcome) {
            core::cmp::Ordering::Equal => match (other.margin(), self.margin()) {
                (Some(theirs), Some(ours)) => {
                    theirs.compare(ours).is_some_and(core::cmp::Ordering::is_lt)
                }
                _ => false,
            },
            order => order.is_gt(),
        };
        if other_is_worse { other } else { self }
    }
}
