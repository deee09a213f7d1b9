//! What is known, and from where: single values and sets of readings.

use measure::{Dimension, Number, Quantity, Unit, print};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::error::Error;
use crate::exact::{count, exact};

/// A value with where it comes from.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Known {
    /// The value.
    pub quantity: Quantity,
    /// Where it comes from, in words: "drawing S-301", "listing, item 3A", "as given".
    pub provenance: String,
}

impl Known {
    /// A value and where it comes from.
    pub fn new(quantity: Quantity, provenance: impl Into<String>) -> Self {
        Self {
            quantity,
            provenance: provenance.into(),
        }
    }

    /// The number in a unit, which must be above zero.
    pub(crate) fn above_zero(&self, input: &str, unit: Unit) -> Result<Number, Error> {
        let number = number_in(input, self.quantity, unit)?;
        if number > Number::ZERO {
            Ok(number)
        } else {
            Err(Error::range(input, self.quantity, "above 0"))
        }
    }

    /// The number in a unit, which must not be below zero.
    pub(crate) fn not_negative(&self, input: &str, unit: Unit) -> Result<Number, Error> {
        let number = number_in(input, self.quantity, unit)?;
        if number.is_negative() {
            Err(Error::range(input, self.quantity, "0 or more"))
        } else {
            Ok(number)
        }
    }

    /// A percentage as a part of one, from 0 to below 100 %.
    pub(crate) fn part(&self, input: &str) -> Result<Number, Error> {
        let part = percent(input, self.quantity)?;
        if part.is_negative() || part >= Number::ONE {
            let valid = "0 % or more and below 100 %";
            return Err(Error::range(input, self.quantity, valid));
        }
        Ok(part)
    }
}

/// A percentage as a part of one, whatever its size.
pub(crate) fn percent(input: &str, quantity: Quantity) -> Result<Number, Error> {
    let percent = number_in(input, quantity, Unit::Percent)?;
    (exact(percent) / 100).get(input)
}

/// The number of a quantity in a unit.
pub(crate) fn number_in(input: &str, quantity: Quantity, unit: Unit) -> Result<Number, Error> {
    if quantity.dimension() != unit.dimension() {
        return Err(Error::WrongKind {
            input: input.to_owned(),
            value: print::trade(quantity),
            is: quantity.dimension(),
            expected: words(unit.dimension()),
        });
    }
    let converted = quantity.to(unit).ok_or_else(|| Error::Beyond {
        input: input.to_owned(),
    })?;
    Ok(converted.number)
}

/// A dimension as a person would ask for it.
const fn words(dimension: Dimension) -> &'static str {
    match dimension {
        Dimension::Length => "length, such as 2-1/2 in. or 64 mm",
        Dimension::Fraction => "percentage, such as 33 %",
        Dimension::Density => "density, such as 4 pcf or 64 kg/m3",
        Dimension::Pressure => "pressure or modulus, such as 29000 ksi or 200000 MPa",
        Dimension::SecondMoment => "second moment of area, such as 1330 in4",
        Dimension::Force => "force, such as 16 kip or 70 kN",
        Dimension::ForcePerLength => "force for each length, such as 2 kip/ft or 30 kN/m",
        Dimension::LeakagePerLength => {
            "leakage for each length of joint, such as 1 cfm/ft (joints are not rated by area)"
        }
        Dimension::LeakagePerArea => "leakage for each area of opening, such as 5 cfm/sq ft",
        Dimension::TemperatureDifference => "difference of temperature, such as 100 °F rise",
        Dimension::ThermalExpansion => "coefficient, such as 0.0000065 1/degF",
        Dimension::Volume => "volume, such as 1 gal or 18.3 cu in.",
        Dimension::Area => "area, such as 100 sq ft",
        Dimension::Angle => "angle, such as 45°",
        other => other.name(),
    }
}

/// The unit that lengths of this system are computed in: inches or millimetres.
pub(crate) const fn length_unit(like: Unit) -> Unit {
    match like.system() {
        measure::unit::System::Metric => Unit::Millimetre,
        _ => Unit::Inch,
    }
}

/// Readings of one thing, with what the instrument can tell apart.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Readings {
    /// The readings, in the order taken; at least one.
    pub values: Vec<Quantity>,
    /// The smallest division of the instrument: a reading may be off by half of it either way (JCGM 100:2008, F.2.2.1).
    /// None for a value that isn't measured.
    pub resolution: Option<Quantity>,
    /// Where they come from.
    pub provenance: String,
}

impl Readings {
    /// Readings of an instrument.
    pub fn new(
        values: Vec<Quantity>,
        resolution: Option<Quantity>,
        provenance: impl Into<String>,
    ) -> Self {
        Self {
            values,
            resolution,
            provenance: provenance.into(),
        }
    }

    /// One value that isn't measured, as drawn or given.
    pub fn drawn(value: Quantity, provenance: impl Into<String>) -> Self {
        Self::new(vec![value], None, provenance)
    }

    /// The unit of the first reading's system in which lengths are computed.
    pub(crate) fn length_unit(&self, input: &str) -> Result<Unit, Error> {
        let first = self.values.first();
        let first = first.ok_or_else(|| Error::missing(input, "give at least one reading"))?;
        number_in(input, *first, Unit::Inch)?;
        Ok(length_unit(first.unit))
    }

    /// The readings in a unit: least, mean, greatest, and half the resolution. None may be below zero.
    pub(crate) fn summary(&self, input: &str, unit: Unit) -> Result<Summary, Error> {
        let mut numbers = Vec::with_capacity(self.values.len());
        for value in &self.values {
            let number = Known::new(*value, "").not_negative(input, unit)?;
            numbers.push(number);
        }
        let (Some(least), Some(greatest)) = (numbers.iter().min(), numbers.iter().max()) else {
            return Err(Error::missing(input, "give at least one reading"));
        };
        let how_many = count(numbers.len() as u64)?;
        let sum = numbers.iter().fold(exact(0), |sum, number| sum + *number);
        let half = match self.resolution {
            None => Number::ZERO,
            Some(resolution) => {
                let name = format!("the resolution of {input}");
                let number = Known::new(resolution, "").above_zero(&name, unit)?;
                (exact(number) / 2).get(&name)?
            }
        };
        Ok(Summary {
            least: *least,
            mean: (sum / how_many).get(input)?,
            greatest: *greatest,
            half,
            numbers,
        })
    }

    /// The readings in words.
    pub(crate) fn words(&self) -> String {
        let values: Vec<String> = self.values.iter().map(|v| print::both(*v)).collect();
        let to = self.resolution.map_or_else(String::new, |resolution| {
            format!(", read to {}", print::trade(resolution))
        });
        values.join(", ") + &to
    }
}

/// Readings in one unit, summed up.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Summary {
    pub(crate) least: Number,
    pub(crate) mean: Number,
    pub(crate) greatest: Number,
    /// Half the instrument's resolution; zero for what isn't measured.
    pub(crate) half: Number,
    pub(crate) numbers: Vec<Number>,
}
