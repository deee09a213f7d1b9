//! A number with its unit.

use core::cmp::Ordering;
use core::fmt;
use core::str::FromStr;

use serde::{Deserialize, Serialize};

use crate::dimension::Dimension;
use crate::notation::{self, ParseQuantityError};
use crate::number::Number;
use crate::unit::Unit;

/// An exact number with its unit, such as 5/2 in.
///
/// Two quantities are `==` only when number and unit are the same; [`Quantity::compare`] asks which
/// is the greater whatever their units.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, schemars::JsonSchema)]
pub struct Quantity {
    /// How many of the unit.
    pub number: Number,
    /// The unit.
    pub unit: Unit,
}

impl Quantity {
    /// A quantity of `number` units.
    pub const fn new(number: Number, unit: Unit) -> Self {
        Self { number, unit }
    }

    /// Reads a whole text as one quantity, in any spelling of [`notation`].
    ///
    /// # Errors
    /// When the text isn't a number with a unit, or has anything before or after it.
    ///
    /// ```
    /// use measure::{Number, Quantity, Unit};
    /// let read = Quantity::parse("2-1/2 in.").unwrap();
    /// assert_eq!(read, Quantity::new(Number::new(5, 2).unwrap(), Unit::Inch));
    /// ```
    pub fn parse(text: &str) -> Result<Self, ParseQuantityError> {
        notation::quantity(text).map(|stated| stated.quantity())
    }

    /// What is measured.
    pub const fn dimension(self) -> Dimension {
        self.unit.dimension()
    }

    /// The number in the base unit of the dimension.
    fn in_base(self) -> Option<Number> {
        self.number
            .times(self.unit.size())?
            .plus(self.unit.offset())
    }

    /// The same quantity in another unit, exactly; none when the dimensions differ.
    ///
    /// ```
    /// use measure::{Quantity, Unit};
    /// let half_inch = Quantity::parse("1/2 in.").unwrap();
    /// assert_eq!(half_inch.to(Unit::Millimetre).unwrap().number.to_string(), "127/10");
    /// ```
    pub fn to(self, unit: Unit) -> Option<Self> {
        if self.dimension() != unit.dimension() {
            return None;
        }
        if self.unit == unit {
            return Some(self);
        }
        let number = self.in_base()?.minus(unit.offset())?.over(unit.size())?;
        Some(Self { number, unit })
    }

    /// Which is the greater, exactly; none when the dimensions differ.
    ///
    /// A gauge counts by weight: 20 gauge is greater than 25 gauge, since the sheet is heavier.
    pub fn compare(self, other: Self) -> Option<Ordering> {
        if self.dimension() != other.dimension() {
            return None;
        }
        let order = if self.unit == other.unit {
            self.number.cmp(&other.number)
        } else {
            self.in_base()?.cmp(&other.in_base()?)
        };
        let reversed = self.dimension().lower_is_heavier();
        Some(if reversed { order.reverse() } else { order })
    }

    /// The sum, in this quantity's unit; none when the dimensions differ.
    pub fn plus(self, other: Self) -> Option<Self> {
        let other = other.to(self.unit)?;
        Some(Self {
            number: self.number.plus(other.number)?,
            unit: self.unit,
        })
    }

    /// The difference, in this quantity's unit; none when the dimensions differ.
    pub fn minus(self, other: Self) -> Option<Self> {
        let other = other.to(self.unit)?;
        Some(Self {
            number: self.number.minus(other.number)?,
            unit: self.unit,
        })
    }

    /// This many times the quantity.
    pub fn times(self, factor: Number) -> Option<Self> {
        Some(Self {
            number: self.number.times(factor)?,
            unit: self.unit,
        })
    }
}

impl fmt::Display for Quantity {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&crate::print::trade(*self))
    }
}

impl FromStr for Quantity {
    type Err = ParseQuantityError;

    fn from_str(text: &str) -> Result<Self, Self::Err> {
        Self::parse(text)
    }
}
