//! Whether a property may have a number: by its measure, and by what is built.

use measure::{Dimension, Number, Quantity, Unit};
use vocabulary::Property;

use crate::phrase::Amount;
use crate::rules::Sentence;

/// Whether a number is one that a property has in some building: a wall of 1/16 in. and wool of 110 pcf are something else's.
pub(crate) fn is_plausible(
    lo: Number,
    hi: Option<Number>,
    unit: Unit,
    property: &Property,
) -> bool {
    is_of_its_dimension(unit, property)
        && property.is_plausible(Quantity::new(hi.unwrap_or(lo), unit))
}

/// Whether a property may be said in a unit: hours are no joint's width. A length may be said as a share of the joint's.
fn is_of_its_dimension(unit: Unit, property: &Property) -> bool {
    let (own, said) = (property.dimension(), unit.dimension());
    own.is_none_or(|own| own == said || own == Dimension::Length && said == Dimension::JointWidths)
}

/// Whether a property is a size that a thing has by itself, wherever it stands.
pub(in crate::naming) fn is_size(property: &Property) -> bool {
    const SIZES: &[&str] = &[
        "width",
        "thickness",
        "steel_thickness",
        "length",
        "leg_length",
        "gauge",
        "height",
        "diameter",
    ];
    SIZES.contains(&property.attribute.as_str())
}

/// Whether a property is of what things stand in or are made of, and not of a thing that is carried.
pub(in crate::naming) fn is_of_place(property: &Property) -> bool {
    ["joint", "floor", "wall", "concrete"].contains(&property.component.as_str())
}

/// Whether a number is of a film, wet or dry, and the property of nothing that is laid on wet: "over the forming material to 1/8 in. wet".
pub(super) fn is_film(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    const LAID_WET: &[&str] = &["coating", "sealant", "fireproofing", "primer", "barrier"];
    let after = sentence.skip_parentheses(amount.last);
    let wet = |at: usize| sentence.is_any(at, &["wet", "dry"]);
    let film = amount.first + 1 < amount.last && wet(amount.first + 1)
        || wet(amount.last)
        || wet(after)
        || sentence.is_any(after, &["in", "when", "of"]) && wet(after + 1);
    film && amount.unit.dimension() == Dimension::Length
        && !LAID_WET.contains(&property.component.as_str())
}

/// Whether a thickness is more than any sheet's: an inch and over.
pub(super) fn is_no_sheet(amount: &Amount, property: &Property) -> bool {
    property.attribute == "steel_thickness"
        && Quantity::new(amount.lo, amount.unit)
            .to(Unit::Inch)
            .is_none_or(|thickness| thickness.number >= 1)
}

/// Whether a thickness is less than any wall's or slab's: that of a mullion's or a pipe's wall.
pub(super) fn is_no_wall(amount: &Amount, property: &Property) -> bool {
    const PARTS: &[&str] = &["wall", "floor", "concrete"];
    property.attribute == "thickness"
        && PARTS.contains(&property.component.as_str())
        && amount.hi.is_none()
        && Quantity::new(amount.lo, amount.unit)
            .to(Unit::Inch)
            .is_some_and(|thickness| thickness.number < 1)
}

/// Whether mils are taken for a width or the like: `3-5/8 in. x 18 mil studs`.
pub(super) fn is_in_mils(amount: &Amount, property: &Property) -> bool {
    const LARGE: &[&str] = &[
        "width",
        "depth",
        "height",
        "length",
        "leg_length",
        "spacing",
    ];
    amount.unit == Unit::Mil && LARGE.contains(&property.attribute.as_str())
}
