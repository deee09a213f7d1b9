//! Formulas on exact numbers, written as one would write them.
//!
//! [`Number`]'s own arithmetic answers with an option, as an exact sum may not fit. Here the option travels along, and
//! is asked for once at the end of a formula.

use core::ops::{Add, Div, Mul, Sub};

use measure::Number;

use crate::error::Error;

/// A number being computed; nothing once a step couldn't be done exactly.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Exact(Option<Number>);

impl Exact {
    /// The number.
    ///
    /// # Errors
    /// When a step divided by zero or couldn't be held exactly.
    pub(crate) fn get(self, what: &str) -> Result<Number, Error> {
        self.0.ok_or_else(|| Error::Beyond {
            input: what.to_owned(),
        })
    }

    /// The number times itself, so many times.
    pub(crate) fn power(self, times: u32) -> Self {
        (0..times).fold(Self::from(1), |product, _| product * self)
    }
}

impl From<Number> for Exact {
    fn from(number: Number) -> Self {
        Self(Some(number))
    }
}

impl From<i32> for Exact {
    fn from(number: i32) -> Self {
        Self(Some(Number::whole(number)))
    }
}

macro_rules! operator {
    ($trait:ident, $name:ident, $by:ident) => {
        impl<T: Into<Exact>> $trait<T> for Exact {
            type Output = Self;
            fn $name(self, other: T) -> Self {
                Self(
                    self.0
                        .zip(other.into().0)
                        .and_then(|(one, other)| one.$by(other)),
                )
            }
        }
    };
}

operator!(Add, add, plus);
operator!(Sub, sub, minus);
operator!(Mul, mul, times);
operator!(Div, div, over);

/// A number about to be computed with.
pub(crate) fn exact(number: impl Into<Exact>) -> Exact {
    number.into()
}

/// A count as a number.
///
/// # Errors
/// When it is beyond what can be computed with.
pub(crate) fn count(of: u64) -> Result<Number, Error> {
    Number::new(i128::from(of), 1).ok_or_else(|| Error::Beyond {
        input: "a count".to_owned(),
    })
}

/// The least whole number not below this one; none when it is below zero or beyond counting.
pub(crate) fn ceiling(number: Number) -> Option<u64> {
    let (over, under) = (number.numerator(), number.denominator());
    let whole = over.div_euclid(under) + i128::from(over.rem_euclid(under) != 0);
    u64::try_from(whole).ok()
}

/// The greatest whole number not above this one; none when it is below zero or beyond counting.
pub(crate) fn floor(number: Number) -> Option<u64> {
    u64::try_from(number.numerator().div_euclid(number.denominator())).ok()
}

/// A count from a quotient.
///
/// # Errors
/// When it can't be counted.
pub(crate) fn counted(number: Option<u64>, what: &str) -> Result<u64, Error> {
    number.ok_or_else(|| Error::Beyond {
        input: what.to_owned(),
    })
}
