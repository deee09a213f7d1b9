//! What is wrong with an input, in words for the person who gave it.

use core::fmt;

use measure::{Dimension, Number, ParseQuantityError};

/// Why nothing was computed.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum Error {
    /// The value can't be.
    #[error("{input} is {value}; it must be {valid}")]
    OutOfRange {
        /// Which input.
        input: String,
        /// What was given.
        value: String,
        /// What would be right.
        valid: String,
    },
    /// The value measures something else.
    #[error("{input} is {value}, which measures {is}; it must be a {expected}")]
    WrongKind {
        /// Which input.
        input: String,
        /// What was given.
        value: String,
        /// What that measures.
        is: Dimension,
        /// What is asked for.
        expected: &'static str,
    },
    /// An input is needed that nobody gave.
    #[error("{input} is missing: {help}")]
    Missing {
        /// Which input.
        input: String,
        /// What would do.
        help: String,
    },
    /// A name that nothing has.
    #[error("there is no {what} `{name}`; known are {known}")]
    Unknown {
        /// What was named.
        what: &'static str,
        /// The name given.
        name: String,
        /// The names there are.
        known: String,
    },
    /// Numbers so large or so fine that they can't be computed exactly.
    #[error(
        "{input} can't be computed exactly with numbers so large or so fine; give them with fewer digits"
    )]
    Beyond {
        /// What was being computed.
        input: String,
    },
    /// The data compiled in can't be read.
    #[error("the table of {table} can't be read: {why}")]
    Table {
        /// Which table.
        table: &'static str,
        /// What the reader says.
        why: String,
    },
}

impl Error {
    /// A value outside its range.
    pub(crate) fn range(input: &str, value: impl fmt::Display, valid: impl fmt::Display) -> Self {
        Self::OutOfRange {
            input: input.to_owned(),
            value: value.to_string(),
            valid: valid.to_string(),
        }
    }

    /// An input that isn't there.
    pub(crate) fn missing(input: &str, help: &str) -> Self {
        Self::Missing {
            input: input.to_owned(),
            help: help.to_owned(),
        }
    }

    /// A quantity of a table that can't be read.
    pub(crate) fn table(table: &'static str, why: &ParseQuantityError) -> Self {
        Self::Table {
            table,
            why: why.to_string(),
        }
    }
}

/// A number for messages: decimals, three digits after the point at most.
pub(crate) fn plain(number: Number) -> String {
    match number.exact_decimals() {
        Some(digits) if digits <= 4 => number.to_decimal(digits),
        _ => number.to_decimal(3),
    }
}
