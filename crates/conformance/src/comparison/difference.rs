//! The exact difference of two quantities, as a quantity that may be shown.

use measure::{Number, Quantity, Unit};

/// The unit of a difference: two temperatures differ by a rise, which has no offset. A rise of 325 °F is 181 K, and
/// not the 163 °C that a temperature of 325 °F would be (ASTM E814, UL 1479).
pub(crate) const fn unit_of_difference(unit: Unit) -> Unit {
    match unit {
        Unit::Celsius => Unit::KelvinRise,
        Unit::Fahrenheit => Unit::FahrenheitRise,
        other => other,
    }
}

/// How far a value lies above a limit, in the limit's unit; for gauges, how much heavier it is in gauge numbers.
/// None when they can't be compared.
pub(crate) fn above(value: Quantity, limit: Quantity) -> Option<Quantity> {
    let in_unit = value.to(limit.unit)?.number;
    let mut number = in_unit.minus(limit.number)?;
    if limit.dimension().lower_is_heavier() {
        number = -number;
    }
    Some(Quantity::new(number, unit_of_difference(limit.unit)))
}

/// A difference as a number of another unit's differences; none when they measure different things.
pub(crate) fn in_unit(difference: Quantity, unit: Unit) -> Option<Number> {
    // A resolution written as "1 °F" is a difference, however it is written.
    let difference = Quantity::new(difference.number, unit_of_difference(difference.unit));
    Some(difference.to(unit_of_difference(unit))?.number)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn temperatures_differ_by_a_rise() {
        let quantity = |text| Quantity::parse(text).unwrap();
        let difference = above(quantity("58 °F"), quantity("40 °F")).unwrap();
        assert_eq!(difference.to(Unit::KelvinRise).unwrap().number, 10);
        assert_eq!(
            above(quantity("5 °C"), quantity("40 °F")).unwrap().number,
            1
        );
    }

    #[test]
    fn a_heavier_gauge_lies_above() {
        let quantity = |text| Quantity::parse(text).unwrap();
        assert_eq!(
            above(quantity("20 gauge"), quantity("25 gauge"))
                .unwrap()
                .number,
            5
        );
        assert_eq!(above(quantity("20 gauge"), quantity("1 in.")), None);
    }
}
