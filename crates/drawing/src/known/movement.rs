//! How far a joint closes and opens, and what that makes of its packing: simple proportion, exact.
//!
//! The one place where the drawing computes; a fuller treatment of movement can take its place.

use listing::MovementDirection::{self, Compression, CompressionOrExtension, Extension};
use measure::{Dimension, Number, Quantity, Unit};

use super::evidence::Known;
use super::value::{Origin, percent};

/// A share of the joint's installed width.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Share {
    /// The percentage, above zero and, for closing, under a hundred.
    pub percent: Quantity,
    /// Whence it is known.
    pub from: Origin,
}

/// How far a joint closes and opens.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Motion {
    /// Closing, if it does.
    pub closing: Option<Share>,
    /// Opening, if it does.
    pub opening: Option<Share>,
    /// Whether it is known not to be meant to move.
    pub is_static: bool,
}

impl Motion {
    /// What the joint is known to do, the greater of a length and a percentage; where that isn't known, what its listing was tested to. A static joint doesn't move.
    pub(super) fn of(known: &Known<'_>) -> Self {
        if known.text("joint.static_or_dynamic") == Some("static") {
            return Self {
                is_static: true,
                ..Self::default()
            };
        }
        Self {
            closing: share(
                known,
                "joint.movement_compression",
                "joint.closing_displacement",
                &[Compression, CompressionOrExtension],
            ),
            opening: share(
                known,
                "joint.movement_extension",
                "joint.opening_displacement",
                &[Extension, CompressionOrExtension],
            ),
            is_static: false,
        }
    }
}

fn share(
    known: &Known<'_>,
    property: &str,
    length: &str,
    covers: &[MovementDirection],
) -> Option<Share> {
    match (
        of_length(known, length),
        of_percentage(known, property, covers),
    ) {
        (Some(one), Some(other)) if known.fact(property, None).is_some() => {
            Some(if other.ratio() > one.ratio() {
                other
            } else {
                one
            })
        }
        (one, other) => one.or(other),
    }
}

/// A movement stated as a length, as a share of the width that is drawn.
fn of_length(known: &Known<'_>, property: &str) -> Option<Share> {
    let fact = known.fact(property, None)?;
    let length = known.quantity(property, Dimension::Length)?;
    let width = known.quantity("joint.width", Dimension::Length)?;
    let part = length.to(width.unit)?.number.over(width.number)?;
    let percent = Quantity::new(part.times(Number::whole(100))?, Unit::Percent);
    Share::new(percent, Origin::Fact(fact.provenance.kind.to_string()))
}

fn of_percentage(known: &Known<'_>, property: &str, covers: &[MovementDirection]) -> Option<Share> {
    if let Some(fact) = known.fact(property, None) {
        let percent = known.quantity(property, Dimension::Fraction)?;
        return Share::new(percent, Origin::Fact(fact.provenance.kind.to_string()));
    }
    let applying = known.asked(property);
    let of_header = || {
        let (reading, _) = known.listing?;
        let stated = reading.header.movement.iter();
        let least = stated
            .filter(|one| covers.contains(&one.direction) && one.option.is_none())
            .map(|one| one.percent)
            .min()?;
        Some(Quantity::new(least, Unit::Percent))
    };
    let percent = applying.map(|(percent, _)| percent).or_else(of_header)?;
    Share::new(percent, Origin::Listing("as tested".to_owned()))
}

impl Share {
    fn new(percent: Quantity, from: Origin) -> Option<Self> {
        let hundred = Number::whole(100);
        let fits = percent.dimension() == Dimension::Fraction
            && percent.number > Number::ZERO
            && percent.number < hundred;
        fits.then_some(Self { percent, from })
    }

    /// As a number between nothing and one.
    pub fn ratio(&self) -> Number {
        percent(self.percent).unwrap_or(Number::ZERO)
    }
}

/// A width that has closed by a share (or opened, by one below zero): `W (1 - c)`.
pub(crate) fn closed_by(width: Quantity, ratio: Number) -> Option<Quantity> {
    width.times(Number::whole(1).minus(ratio)?)
}

/// The compression of packing of thickness `T` in a joint of width `W`: `(T - W) / T`, below zero where it is too thin to fill it.
pub(crate) fn compression(thickness: Quantity, width: Quantity) -> Option<Number> {
    let thickness_mm = thickness.to(Unit::Millimetre)?;
    let width_mm = width.to(Unit::Millimetre)?;
    thickness_mm
        .minus(width_mm)?
        .number
        .over(thickness_mm.number)
}

/// The thickness before compression, from the width that it was compressed to and by how much: `W / (1 - c)`.
pub(crate) fn uncompressed(width: Quantity, compression: Number) -> Option<Quantity> {
    let left = Number::whole(1).minus(compression)?;
    width.times(Number::whole(1).over(left)?)
}

/// The density in place: the same mass in less space, `d T / W`; none when the joint is closed up.
pub(crate) fn density_in_place(
    density: Quantity,
    thickness: Quantity,
    width: Quantity,
) -> Option<Quantity> {
    let (thickness, width) = (thickness.to(Unit::Millimetre)?, width.to(Unit::Millimetre)?);
    density.times(thickness.number.over(width.number)?)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn quantity(text: &str) -> Quantity {
        Quantity::parse(text).unwrap()
    }

    /// The definition: a batt of 4 in. in a joint of 2 in. has given half its thickness; one of 3 in., a third (worked by hand).
    #[test]
    fn fifty_percent_compression_is_not_half_as_much_again() {
        let two = quantity("2 in.");
        assert_eq!(compression(quantity("4 in."), two), Number::new(1, 2));
        assert_eq!(compression(quantity("3 in."), two), Number::new(1, 3));
        assert_eq!(
            uncompressed(two, Number::new(1, 2).unwrap()),
            Some(quantity("4 in."))
        );
        assert_eq!(
            density_in_place(quantity("4 pcf"), quantity("4 in."), two),
            Some(quantity("8 pcf"))
        );
    }

    #[test]
    fn packing_that_is_too_thin_has_compression_below_zero() {
        assert!(
            compression(quantity("25 mm"), quantity("30 mm"))
                .unwrap()
                .is_negative()
        );
    }

    #[test]
    fn a_joint_closes_by_its_share() {
        let closed = closed_by(quantity("2 in."), Number::new(1, 4).unwrap());
        assert_eq!(closed, Some(quantity("1-1/2 in.")));
    }
}
