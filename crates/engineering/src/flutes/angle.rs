//! The sine of an angle between two exact numbers.
//!
//! The sine's alternating series, on numbers rounded to 12 decimals after every step. Fifteen steps, each off by at
//! most half of the last decimal and never magnified, and a remainder below it: the sine is within 10⁻¹⁰.

use measure::{Number, Quantity, Unit};

use crate::between::Between;
use crate::error::Error;
use crate::exact::{Exact, exact};
use crate::known::number_in;

/// What a sine given here may be off by: 10⁻¹⁰.
const DECIMALS: i128 = 1_000_000_000_000;

/// The sine of an angle above 0° and at most 90°, within bounds.
///
/// # Errors
/// An angle outside that range.
pub(crate) fn sine(input: &str, angle: Quantity) -> Result<Between, Error> {
    let degrees = number_in(input, angle, Unit::Degree)?;
    let ninety = Number::whole(90);
    if degrees <= Number::ZERO || degrees > ninety {
        return Err(Error::range(input, angle, "above 0° and at most 90°"));
    }
    if degrees == ninety {
        return Ok(Between::exactly(Number::ONE));
    }
    if degrees == 30 {
        return Ok(Between::exactly((exact(1) / 2).get(input)?));
    }
    let pi = Number::new(3_141_592_653_590, DECIMALS).unwrap_or(Number::ZERO);
    let radians = rounded(exact(degrees) * pi / 180, input)?;
    let square = rounded(exact(radians) * radians, input)?;
    let mut term = radians;
    let mut sum = exact(radians);
    for step in 1..=8 {
        let divisor = (2 * step) * (2 * step + 1);
        term = -rounded(exact(term) * square / divisor, input)?;
        sum = sum + term;
    }
    let sum = sum.get(input)?;
    let off = Number::new(1, 10_000_000_000).unwrap_or(Number::ZERO);
    Ok(Between {
        low: (exact(sum) - off).get(input)?,
        high: (exact(sum) + off).get(input)?.min(Number::ONE),
    })
}

fn rounded(number: Exact, input: &str) -> Result<Number, Error> {
    let step = Number::new(1, DECIMALS).unwrap_or(Number::ONE);
    let number = number.get(input)?;
    Ok(number.nearest(step).unwrap_or(number))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Against the standard library's sine, at every tenth of a degree.
    #[test]
    fn is_the_sine() {
        for tenths in 1..=900 {
            let angle = Quantity::new(Number::new(tenths, 10).unwrap(), Unit::Degree);
            let Between { low, high } = sine("the angle", angle).unwrap();
            let [low, high] = [low, high].map(|n| n.to_decimal(12).parse::<f64>().unwrap());
            #[expect(clippy::cast_precision_loss, reason = "no more than 900")]
            let reference = (tenths as f64 / 10.0).to_radians().sin();
            assert!(
                low <= reference + 1e-12 && reference <= high + 1e-12,
                "{tenths}: {low} {reference} {high}"
            );
            assert!(high - low < 3e-10);
        }
    }
}
