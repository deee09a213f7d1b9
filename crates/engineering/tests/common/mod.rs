//! Short ways to say quantities in tests.

#![allow(
    dead_code,
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "each test file uses some of it, and may stop where it fails"
)]

use engineering::{Known, Readings};
use measure::{Number, Quantity, Unit};

/// A quantity in the trade's notation, or a number and a unit's symbol.
#[track_caller]
pub(crate) fn q(text: &str) -> Quantity {
    Quantity::parse(text).unwrap_or_else(|_| {
        let (number, unit) = text.split_once(' ').expect("a number and a unit");
        Quantity::new(number.parse().unwrap(), unit.parse::<Unit>().unwrap())
    })
}

/// A quantity, as given.
#[track_caller]
pub(crate) fn known(text: &str) -> Known {
    Known::new(q(text), "test")
}

/// Readings separated by semicolons.
#[track_caller]
pub(crate) fn readings(values: &str, resolution: Option<&str>) -> Readings {
    Readings::new(
        values.split(';').map(|v| q(v.trim())).collect(),
        resolution.map(q),
        "test",
    )
}

/// A number, exact.
pub(crate) fn n(text: &str) -> Number {
    text.parse().unwrap()
}

/// A quantity's number to so many decimals.
pub(crate) fn decimals(quantity: Quantity, digits: u32) -> String {
    quantity.number.to_decimal(digits)
}

/// For comparing with what is computed in floats elsewhere.
pub(crate) fn float(number: Number) -> f64 {
    number.to_decimal(12).parse().unwrap()
}
