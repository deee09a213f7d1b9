//! Thickness, compression and density from each other.

use measure::{Number, Quantity, Unit};

use super::{COMPRESSION_SOURCE, DENSITY_SOURCE};
use crate::between::Between;
use crate::error::Error;
use crate::exact::exact;
use crate::known::{Known, Readings};
use crate::worked::{Computed, Standing, Worked, both, percent_words};

/// What a listing asks of the compression, each a percentage of the uncompressed thickness.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Rule {
    /// The least.
    pub least: Option<Known>,
    /// The most.
    pub most: Option<Known>,
    /// The nominal one. A nominal value is no minimum: what comes near it is for a person to judge.
    pub nominal: Option<Known>,
}

/// A rule with its numbers as parts of one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Parts {
    pub(crate) least: Option<Number>,
    pub(crate) most: Option<Number>,
    pub(crate) nominal: Option<Number>,
}

impl Rule {
    /// At least so much.
    pub fn at_least(least: Known) -> Self {
        Self {
            least: Some(least),
            ..Self::default()
        }
    }

    /// The rule in parts of one.
    pub(crate) fn parts(&self) -> Result<Parts, Error> {
        let part = |name, known: &Option<Known>| known.as_ref().map(|k| k.part(name)).transpose();
        let parts = Parts {
            least: part("the least compression", &self.least)?,
            most: part("the greatest compression", &self.most)?,
            nominal: part("the nominal compression", &self.nominal)?,
        };
        if parts
            == (Parts {
                least: None,
                most: None,
                nominal: None,
            })
        {
            let help =
                "give the least, the greatest or the nominal compression that the listing asks for";
            return Err(Error::missing("the compression", help));
        }
        if let (Some(least), Some(most), Some(known)) = (parts.least, parts.most, &self.most)
            && most < least
        {
            let valid = "no less than the least compression";
            return Err(Error::range(
                "the greatest compression",
                known.quantity,
                valid,
            ));
        }
        Ok(parts)
    }
}

impl Parts {
    /// What is found of a compression that lies between two values.
    pub(crate) fn standing(self, reached: Between) -> Standing {
        let mut standing = Standing::Note;
        if let Some(least) = self.least {
            standing = standing.and(reached.at_least(least));
        }
        if let Some(most) = self.most {
            standing = standing.and(reached.at_most(most));
        }
        if let Some(nominal) = self.nominal {
            let same = reached == Between::exactly(nominal);
            standing = standing.and(if same { Standing::Met } else { Standing::Open });
        }
        standing
    }

    /// The compression to aim at: the nominal one, else the least, else the greatest.
    pub(crate) fn aim(self) -> Number {
        self.nominal
            .or(self.least)
            .or(self.most)
            .unwrap_or(Number::ZERO)
    }
}

/// The compression `(T - W) / T` of a thickness in a width; below zero when the packing is loose.
pub(crate) fn of(thickness: Number, width: Number) -> Result<Number, Error> {
    ((exact(thickness) - width) / thickness).get("the compression")
}

/// The compression when thickness and width are known within bounds: a wider joint compresses less, a thicker strip more.
pub(crate) fn within(thickness: Between, width: Between) -> Result<Between, Error> {
    Ok(Between {
        low: of(thickness.low, width.high)?,
        high: of(thickness.high, width.low)?,
    })
}

/// The uncompressed thickness `W / (1 - c)` for a compression in a width.
pub(crate) fn needed(width: Number, compression: Number) -> Result<Number, Error> {
    (exact(width) / (exact(1) - compression)).get("the uncompressed thickness")
}

/// The uncompressed thickness for a compression in a width, and what that thickness comes to at the other readings.
///
/// # Errors
/// A width that isn't a length above zero, a compression outside 0 to below 100 %.
pub fn thickness(
    width: &Readings,
    compression: &Known,
    density: Option<&Known>,
) -> Result<Computed<Quantity>, Error> {
    let unit = width.length_unit("the width")?;
    let widths = width.summary("the width", unit)?;
    if widths.least.is_zero() {
        return Err(Error::range(
            "the width",
            both(widths.least, unit),
            "above 0",
        ));
    }
    let c = compression.part("the compression")?;
    let t = needed(widths.mean, c)?;
    let mut worked = Worked::of("Uncompressed thickness of the packing");
    worked.read("width of the joint, W", width);
    worked.given("compression, c", compression);
    worked.given_if("density as delivered, ρ", density);
    worked.formula("T = W / (1 - c)", COMPRESSION_SOURCE);
    worked.step(format!(
        "T = {} / (1 - {}) = {}",
        both(widths.mean, unit),
        crate::error::plain(c),
        both(t, unit)
    ));
    worked.result("uncompressed thickness, T", t, unit);
    // What the same words are taken for: a strip cut wider than the joint by the percentage.
    let oversize = (exact(widths.mean) * (exact(1) + c)).get("the width")?;
    worked.note(format!(
        "not the same as cut {} wider than the joint: that would be {}, compressed only {}",
        percent_words(c),
        both(oversize, unit),
        percent_words(of(oversize, widths.mean)?)
    ));
    if widths.least != widths.greatest {
        for (name, at) in [("narrowest", widths.least), ("widest", widths.greatest)] {
            let reached = of(t, at)?;
            worked.step(format!(
                "at the {name}, {}: c = {}",
                both(at, unit),
                percent_words(reached)
            ));
        }
    }
    if let Some(density) = density {
        let number = density.above_zero("the density", density.quantity.unit)?;
        let compressed = (exact(number) * t / widths.mean).get("the density")?;
        worked.formula("ρ in the joint = ρ T / W", DENSITY_SOURCE);
        worked.result("density in the joint", compressed, density.quantity.unit);
    }
    Ok(worked.with(Quantity::new(t, unit)))
}

/// What a density as delivered comes to when a thickness is pressed into a width.
pub(crate) fn density(
    delivered: &Known,
    thickness: Number,
    width: Number,
) -> Result<(Number, Unit), Error> {
    let unit = delivered.quantity.unit;
    let dense = delivered.above_zero("the density", Unit::PoundPerCubicFoot)?;
    if width.is_zero() {
        return Err(Error::range("the width", "0", "above 0"));
    }
    let compressed = (exact(dense) * thickness / width).get("the density")?;
    let compressed = Quantity::new(compressed, Unit::PoundPerCubicFoot).to(unit);
    Ok((compressed.map_or(dense, |q| q.number), unit))
}
