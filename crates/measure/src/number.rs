//! An exact number: a ratio of two integers.

use core::cmp::Ordering;
use core::fmt;
use core::str::FromStr;

use num_integer::Integer;
use num_rational::Ratio;
use num_traits::{CheckedAdd, CheckedDiv, CheckedMul, CheckedSub, Signed, Zero};

/// The largest numerator or denominator that a number may be made from.
///
/// Trade quantities are far smaller. The limit leaves room for every unit conversion, so that
/// comparing two quantities can't overflow.
pub const LIMIT: i128 = 1_000_000_000_000_000;

/// An exact number, such as `9/2` or `4`: never a binary float.
///
/// ```
/// use measure::Number;
/// let half = Number::new(1, 2).unwrap();
/// assert_eq!(half.to_string(), "1/2");
/// assert_eq!("0.125".parse::<Number>().unwrap(), Number::new(1, 8).unwrap());
/// ```
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub struct Number(Ratio<i128>);

/// Why a text isn't a number.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("`{0}` is not a number; write `4`, `-4`, `9/2` or `4.5`")]
pub struct ParseNumberError(String);

impl Number {
    /// Zero.
    pub const ZERO: Self = Self(Ratio::new_raw(0, 1));
    /// One.
    pub const ONE: Self = Self(Ratio::new_raw(1, 1));

    /// `numerator / denominator`; none when the denominator is zero or either is beyond [`LIMIT`].
    pub fn new(numerator: i128, denominator: i128) -> Option<Self> {
        let fits = |n: i128| (-LIMIT..=LIMIT).contains(&n);
        (denominator != 0 && fits(numerator) && fits(denominator))
            .then(|| Self(Ratio::new(numerator, denominator)))
    }

    /// A whole number.
    pub const fn whole(n: i32) -> Self {
        Self(Ratio::new_raw(n as i128, 1))
    }

    /// A ratio of two small numbers known when the program is written; a zero denominator counts as one.
    pub(crate) const fn fixed(numerator: i64, denominator: i64) -> Self {
        let mut a = numerator.unsigned_abs();
        let mut b = denominator.unsigned_abs();
        while b != 0 {
            (a, b) = (b, a % b);
        }
        let common = if a == 0 { 1 } else { a as i128 };
        Self(Ratio::new_raw(
            numerator as i128 / common,
            denominator as i128 / common,
        ))
    }

    /// The numerator, in lowest terms; it carries the sign.
    pub fn numerator(self) -> i128 {
        *self.0.numer()
    }

    /// The denominator, in lowest terms; always above zero.
    pub fn denominator(self) -> i128 {
        *self.0.denom()
    }

    /// Whether this is a whole number.
    pub fn is_whole(self) -> bool {
        self.0.is_integer()
    }

    /// Whether this is below zero.
    pub fn is_negative(self) -> bool {
        self.0.is_negative()
    }

    /// Whether this is zero.
    pub fn is_zero(self) -> bool {
        self.0.is_zero()
    }

    /// The number without its sign.
    #[must_use]
    pub fn abs(self) -> Self {
        Self(self.0.abs())
    }

    /// The sum; none when it can't be held exactly.
    pub fn plus(self, other: Self) -> Option<Self> {
        // Most units have no offset.
        if other.is_zero() {
            return Some(self);
        }
        self.0.checked_add(&other.0).map(Self)
    }

    /// The difference; none when it can't be held exactly.
    pub fn minus(self, other: Self) -> Option<Self> {
        self.0.checked_sub(&other.0).map(Self)
    }

    /// The product; none when it can't be held exactly.
    pub fn times(self, other: Self) -> Option<Self> {
        self.times_small(other)
            .or_else(|| self.0.checked_mul(&other.0).map(Self))
    }

    /// The product of numbers that a machine word holds, which all but the strangest are: division of larger ones is slow.
    fn times_small(self, other: Self) -> Option<Self> {
        let small = |number: Self| -> Option<(i64, i64)> {
            let numerator = i64::try_from(number.numerator()).ok()?;
            let denominator = i64::try_from(number.denominator()).ok()?;
            Some((numerator, denominator))
        };
        let ((a, b), (c, d)) = (small(self)?, small(other)?);
        // Both are in lowest terms, so only across can anything be common to what is above the line and below.
        let common = |one: i64, other: i64| -> Option<i64> {
            i64::try_from(one.unsigned_abs().gcd(&other.unsigned_abs())).ok()
        };
        let (ad, cb) = (common(a, d)?, common(c, b)?);
        let numerator = i128::from(a.checked_div(ad)?) * i128::from(c.checked_div(cb)?);
        let denominator = i128::from(b.checked_div(cb)?) * i128::from(d.checked_div(ad)?);
        Some(Self(Ratio::new_raw(numerator, denominator)))
    }

    /// The quotient; none when dividing by zero or when it can't be held exactly.
    pub fn over(self, other: Self) -> Option<Self> {
        if other.is_zero() {
            return None;
        }
        self.0.checked_div(&other.0).map(Self)
    }

    /// The nearest multiple of `step`, halves away from zero; none for a step of zero or less.
    pub fn nearest(self, step: Self) -> Option<Self> {
        if step <= Self::ZERO {
            return None;
        }
        Self(self.over(step)?.0.round()).times(step)
    }

    /// The decimal digits after the point that write this exactly, when twelve or fewer do.
    pub fn exact_decimals(self) -> Option<u32> {
        let mut power = 1_i128;
        for digits in 0..=12 {
            if power % self.denominator() == 0 {
                return Some(digits);
            }
            power = power.checked_mul(10)?;
        }
        None
    }

    /// The number in decimal notation, rounded to `digits` after the point (halves away from zero).
    /// For showing only; a verdict never reads it back.
    pub fn to_decimal(self, digits: u32) -> String {
        let scale = 10_i128.saturating_pow(digits.min(12));
        let scaled = self
            .times(Self(Ratio::from_integer(scale)))
            .map_or(0, |n| n.0.round().to_integer());
        let (whole, part) = (scaled.abs() / scale, scaled.abs() % scale);
        let sign = if scaled < 0 { "-" } else { "" };
        if digits == 0 {
            return format!("{sign}{whole}");
        }
        format!("{sign}{whole}.{part:0width$}", width = digits as usize)
    }
}

impl Ord for Number {
    fn cmp(&self, other: &Self) -> Ordering {
        let (a, b) = (self.0, other.0);
        // Both are in lowest terms and above zero below the line, so cross-multiplying compares them; numbers too large for that take the
        // slower way.
        match (
            i128::checked_mul(*a.numer(), *b.denom()),
            i128::checked_mul(*b.numer(), *a.denom()),
        ) {
            (Some(left), Some(right)) => left.cmp(&right),
            _ => Ord::cmp(&a, &b),
        }
    }
}

impl PartialOrd for Number {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl From<i32> for Number {
    fn from(n: i32) -> Self {
        Self::whole(n)
    }
}

impl core::ops::Neg for Number {
    type Output = Self;
    fn neg(self) -> Self {
        Self(-self.0)
    }
}

impl PartialEq<i32> for Number {
    fn eq(&self, other: &i32) -> bool {
        *self == Self::whole(*other)
    }
}

impl PartialOrd<i32> for Number {
    fn partial_cmp(&self, other: &i32) -> Option<Ordering> {
        self.partial_cmp(&Self::whole(*other))
    }
}

impl fmt::Display for Number {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.is_whole() {
            write!(f, "{}", self.numerator())
        } else {
            write!(f, "{}/{}", self.numerator(), self.denominator())
        }
    }
}

impl fmt::Debug for Number {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

impl FromStr for Number {
    type Err = ParseNumberError;

    fn from_str(text: &str) -> Result<Self, Self::Err> {
        let read = || -> Option<Self> {
            if let Some((over, under)) = text.split_once('/') {
                return Self::new(over.trim().parse().ok()?, under.trim().parse().ok()?);
            }
            let (sign, digits) = text.strip_prefix('-').map_or((1, text), |rest| (-1, rest));
            let (whole, part) = digits.split_once('.').unwrap_or((digits, ""));
            let all_digits = format!("{whole}{part}");
            if all_digits.is_empty() || !all_digits.bytes().all(|b| b.is_ascii_digit()) {
                return None;
            }
            let scale = 10_i128.checked_pow(u32::try_from(part.len()).ok()?)?;
            Self::new(sign * all_digits.parse::<i128>().ok()?, scale)
        };
        read().ok_or_else(|| ParseNumberError(text.to_owned()))
    }
}

impl serde::Serialize for Number {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> serde::Deserialize<'de> for Number {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        text.parse().map_err(serde::de::Error::custom)
    }
}

impl schemars::JsonSchema for Number {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Number".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({
            "type": "string",
            "description": "An exact number: a whole number or a ratio in lowest terms.",
            "pattern": "^-?[0-9]+(/[0-9]+)?$",
            "examples": ["4", "9/2"]
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_and_prints_what_it_prints() {
        for text in ["0", "4", "-4", "9/2", "-1/16", "12700000/127"] {
            let number: Number = text.parse().unwrap();
            assert_eq!(number.to_string().parse::<Number>().unwrap(), number);
        }
    }

    #[test]
    fn refuses_what_is_not_a_number() {
        for text in [
            "",
            "-",
            "1/0",
            "a",
            "1.2.3",
            "99999999999999999999",
            "1e3",
            ".",
        ] {
            assert!(text.parse::<Number>().is_err(), "{text}");
        }
    }

    #[test]
    fn rounds_halves_away_from_zero() {
        let sixteenth = Number::fixed(1, 16);
        assert_eq!(
            Number::fixed(3, 32).nearest(sixteenth),
            Some(Number::fixed(1, 8))
        );
        assert_eq!(
            Number::fixed(-3, 32).nearest(sixteenth),
            Some(Number::fixed(-1, 8))
        );
        assert_eq!(Number::ONE.nearest(Number::ZERO), None);
    }

    #[test]
    fn shows_decimals() {
        assert_eq!(Number::fixed(127, 10).to_decimal(1), "12.7");
        assert_eq!(Number::fixed(-1, 3).to_decimal(2), "-0.33");
        assert_eq!(Number::fixed(2, 3).to_decimal(0), "1");
        assert_eq!(Number::fixed(1, 8).exact_decimals(), Some(3));
        assert_eq!(Number::fixed(1, 3).exact_decimals(), None);
    }
}
