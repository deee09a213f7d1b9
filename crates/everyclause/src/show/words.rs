//! Numbers and names as the terminal shows them.

use measure::unit::System;
use measure::{Number, Quantity, Unit, print};

pub(crate) use wording::joints::in_runs;
pub(crate) use wording::text::{counted, listed, on_one_line, printable, shortened};

/// A quantity to a hundredth, in both systems.
pub(crate) fn to_a_hundredth(quantity: Quantity) -> String {
    let near = Number::new(1, 100).and_then(|step| quantity.number.nearest(step));
    let shown = Quantity::new(near.unwrap_or(quantity.number), quantity.unit);
    let mark = if shown == quantity { "" } else { "≈ " };
    format!("{mark}{}", print::both(shown))
}

/// A length as a tape is read: `27 ft 6 in.`.
pub(crate) fn feet_and_inches(length: Quantity) -> String {
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
