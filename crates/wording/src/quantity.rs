//! Quantities as they are read on site.

use measure::unit::System;
use measure::{Number, Quantity, Unit, print};

/// A quantity to a hundredth, in both systems; marked where that isn't exact.
pub fn to_a_hundredth(quantity: Quantity) -> String {
    let near = Number::new(1, 100).and_then(|step| quantity.number.nearest(step));
    let shown = Quantity::new(near.unwrap_or(quantity.number), quantity.unit);
    let mark = if shown == quantity { "" } else { "≈ " };
    format!("{mark}{}", print::both(shown))
}

/// A length as a tape is read: `27 ft 6 in.`; in both systems where it isn't customary.
pub fn feet_and_inches(length: Quantity) -> String {
    let foot = Number::whole(12);
    let Some(inches) = length
        .to(Unit::Inch)
        .filter(|_| length.unit.system() == System::Customary)
    else {
        return print::both(length);
    };
    let feet = inches.number.numerator() / (inches.number.denominator() * 12);
    let rest = i32::try_from(feet)
        .ok()
        .and_then(|feet| inches.number.minus(Number::whole(feet).times(foot)?));
    match rest {
        Some(rest) if feet > 0 && rest.is_zero() => format!("{feet} ft"),
        Some(rest) if feet > 0 => {
            format!(
                "{feet} ft {}",
                print::trade(Quantity::new(rest, Unit::Inch))
            )
        }
        _ => print::trade(length),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_as_a_tape_is_read() {
        let inches = |number: Number| feet_and_inches(Quantity::new(number, Unit::Inch));
        assert_eq!(inches(Number::whole(330)), "27 ft 6 in.");
        assert_eq!(inches(Number::whole(24)), "2 ft");
        assert_eq!(inches(Number::new(19, 2).unwrap()), "9-1/2 in.");
        let metric = Quantity::new(Number::whole(900), Unit::Millimetre);
        assert_eq!(feet_and_inches(metric), print::both(metric));
    }

    #[test]
    fn what_isn_t_exact_is_marked() {
        let gallons = |number: Number| to_a_hundredth(Quantity::new(number, Unit::Gallon));
        assert!(gallons(Number::new(1, 3).unwrap()).starts_with("≈ 0.33 gal"));
        assert!(gallons(Number::new(1, 4).unwrap()).starts_with("0.25 gal"));
    }
}
