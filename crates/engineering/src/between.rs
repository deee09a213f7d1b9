//! A value known to lie between two others, and what can be told of it.

use measure::Number;

use crate::error::Error;
use crate::exact::exact;
use crate::worked::Standing;

/// The least and the greatest that a value can be.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Between {
    /// The least.
    pub low: Number,
    /// The greatest.
    pub high: Number,
}

impl Between {
    /// A value that is known.
    pub const fn exactly(value: Number) -> Self {
        Self {
            low: value,
            high: value,
        }
    }

    /// A reading and half the resolution of its instrument.
    pub(crate) fn around(value: Number, half: Number, what: &str) -> Result<Self, Error> {
        Ok(Self {
            low: (exact(value) - half).get(what)?,
            high: (exact(value) + half).get(what)?,
        })
    }

    /// Whether it is at least a limit; open when it may lie on either side.
    pub fn at_least(self, limit: Number) -> Standing {
        if self.low >= limit {
            Standing::Met
        } else if self.high < limit {
            Standing::NotMet
        } else {
            Standing::Open
        }
    }

    /// Whether it is above a limit and not merely as much; open when it may lie on either side.
    pub fn above(self, limit: Number) -> Standing {
        if self.low > limit {
            Standing::Met
        } else if self.high <= limit {
            Standing::NotMet
        } else {
            Standing::Open
        }
    }

    /// Whether it is at most a limit; open when it may lie on either side.
    pub fn at_most(self, limit: Number) -> Standing {
        if self.high <= limit {
            Standing::Met
        } else if self.low > limit {
            Standing::NotMet
        } else {
            Standing::Open
        }
    }
}
