//! The units that results are given in: inches and their kin, or millimetres and theirs.

use measure::{Number, Unit};

use crate::error::Error;
use crate::exact::exact;

/// The area unit that goes with a length unit.
pub(crate) const fn square(unit: Unit) -> Unit {
    match unit {
        Unit::Millimetre => Unit::SquareMillimetre,
        _ => Unit::SquareInch,
    }
}

/// The volume unit that goes with a length unit, and how many cubes of the length make one of it.
pub(crate) const fn cubic(unit: Unit) -> (Unit, i32) {
    match unit {
        Unit::Millimetre => (Unit::Millilitre, 1000),
        _ => (Unit::CubicInch, 1),
    }
}

/// What widths are cut and drawn to: an eighth of an inch, or 5 mm. Common practice.
pub(crate) fn rule_step(length: Unit) -> Result<Number, Error> {
    match length {
        Unit::Millimetre => Ok(Number::whole(5)),
        _ => (exact(1) / 8).get("a step"),
    }
}
