//! Second moments of area of plain sections about their level axis.

use measure::{Quantity, Unit};

use crate::error::Error;
use crate::exact::exact;
use crate::known::{Known, length_unit};
use crate::worked::{Computed, Worked, both};

/// A section.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Shape {
    /// A rectangle, as a strip of slab.
    Rectangle {
        /// Its width.
        width: Known,
        /// Its depth.
        depth: Known,
    },
    /// Two equal flanges and a web, without fillets.
    WideFlange {
        /// Depth over all.
        depth: Known,
        /// Width of the flanges.
        flange_width: Known,
        /// Thickness of the flanges.
        flange_thickness: Known,
        /// Thickness of the web.
        web_thickness: Known,
    },
}

/// The second moment of area of a section.
///
/// # Errors
/// A length that isn't above zero, flanges or a web that don't fit the section.
pub fn second_moment(shape: &Shape) -> Result<Computed<Quantity>, Error> {
    let what = "the second moment of area";
    let mut worked = Worked::of("Second moment of area");
    let (unit, number) = match shape {
        Shape::Rectangle { width, depth } => {
            let unit = length_unit(width.quantity.unit);
            let (b, d) = (
                width.above_zero("the width", unit)?,
                depth.above_zero("the depth", unit)?,
            );
            worked.given("width, b", width);
            worked.given("depth, d", depth);
            worked.formula("I = b d³ / 12", "mechanics of materials");
            (unit, exact(b) * exact(d).power(3) / 12)
        }
        Shape::WideFlange {
            depth,
            flange_width,
            flange_thickness,
            web_thickness,
        } => {
            let unit = length_unit(depth.quantity.unit);
            let d = depth.above_zero("the depth", unit)?;
            let b = flange_width.above_zero("the width of the flanges", unit)?;
            let tf = flange_thickness.above_zero("the thickness of the flanges", unit)?;
            let tw = web_thickness.above_zero("the thickness of the web", unit)?;
            let between = (exact(d) - (exact(tf) * 2).get(what)?).get(what)?;
            if between <= measure::Number::ZERO {
                return Err(Error::range(
                    "the thickness of the flanges",
                    flange_thickness.quantity,
                    "less than half of the depth",
                ));
            }
            if tw > b {
                return Err(Error::range(
                    "the thickness of the web",
                    web_thickness.quantity,
                    "less than the width of the flanges",
                ));
            }
            worked.given("depth, d", depth);
            worked.given("width of the flanges, b", flange_width);
            worked.given("thickness of the flanges, tf", flange_thickness);
            worked.given("thickness of the web, tw", web_thickness);
            worked.formula(
                "I = (b d³ - (b - tw)(d - 2 tf)³) / 12",
                "mechanics of materials; fillets left out, so a little less than handbook values",
            );
            let hollow = (exact(b) - tw) * exact(between).power(3);
            (
                unit,
                (exact(b) * exact(d).power(3) - hollow.get(what)?) / 12,
            )
        }
    };
    let number = number.get(what)?;
    let of = if unit == Unit::Millimetre {
        Unit::MillimetreFourth
    } else {
        Unit::InchFourth
    };
    worked.step(format!("I = {}", both(number, of)));
    worked.result("second moment of area, I", number, of);
    Ok(worked.with(Quantity::new(number, of)))
}
