//! Values as they are written on the command line.

use engineering::{Known, Readings};
use measure::{Number, ParseQuantityError, Quantity, Unit};

/// Where a value on the command line comes from.
const GIVEN: &str = "as given";

/// A quantity in the trade's notation; else a number and a unit's symbol, as `2 kip/ft`.
pub(in crate::commands) fn quantity(text: &str) -> Result<Quantity, String> {
    Quantity::parse(text).or_else(|error| {
        by_symbol(text).ok_or_else(|| match error {
            ParseQuantityError::NoUnit(..) => format!(
                "`{text}` has a number but no known unit; write it as the example of `--help` does, with a unit such as in., ft, mm, m, %, pcf, kg/m3, mil, gal, kip/ft, kN/m, ksi, GPa, in4 or cm4"
            ),
            other => other.to_string(),
        })
    })
}

fn by_symbol(text: &str) -> Option<Quantity> {
    let (number, symbol) = text.trim().split_once(' ')?;
    let number = plain(number)?;
    // Moduli of elasticity are tabulated in GPa as often as in MPa.
    if symbol.trim() == "GPa" {
        return Some(Quantity::new(
            number.times(Number::from(1000))?,
            Unit::Megapascal,
        ));
    }
    Some(Quantity::new(number, symbol.trim().parse().ok()?))
}

/// A plain number, thousands grouped or not.
fn plain(text: &str) -> Option<Number> {
    let is_grouped = text.split(',').skip(1).all(|group| group.len() == 3);
    let text = if is_grouped {
        text.replace(',', "")
    } else {
        text.to_owned()
    };
    text.parse().ok()
}

/// A plain number.
pub(super) fn number(text: &str) -> Result<Number, String> {
    plain(text.trim()).ok_or_else(|| format!("`{text}` is not a number; write `5.5` or `11/2`"))
}

/// Two values with a word between: `16 kip at 12 ft`, `12 of 4 in.`.
pub(super) fn pair<'a>(
    text: &'a str,
    word: &str,
    example: &str,
) -> Result<(&'a str, &'a str), String> {
    text.split_once(&format!(" {word} "))
        .ok_or_else(|| format!("write it as `{example}`"))
}

/// A value with its provenance.
pub(super) fn known(quantity: Quantity) -> Known {
    Known::new(quantity, GIVEN)
}

/// A value that may be missing.
pub(super) fn known_if(quantity: Option<Quantity>) -> Option<Known> {
    quantity.map(known)
}

/// Readings of an instrument, or what is drawn where no resolution is given.
pub(super) fn readings(values: &[Quantity], resolution: Option<Quantity>) -> Readings {
    Readings::new(values.to_vec(), resolution, GIVEN)
}
