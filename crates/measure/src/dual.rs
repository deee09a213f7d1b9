//! Whether two statements of one dimension in two units say the same: `2-1/2 in. (64 mm)`.
//!
//! A pair is judged by the precision each value is stated to:
//! - **consistent**: one value, converted, rounds to the other as stated. Inches are taken to be stated to 1/8 in.
//!   or finer (`4 in.` isn't meant to the nearest inch), everything else to its last digit.
//! - **loosely rounded**: within 3 % of each other, as `6 in. (150 mm)` is: the usual soft conversion.
//! - **in conflict**: further apart than that, as `1 in. (19 mm)` is.
//!
//! The 3 % is common practice: soft conversions of inches to round millimetres (25 for 1 in.) lie within 1.6 %.

use serde::{Deserialize, Serialize};

use crate::notation::Stated;
use crate::number::Number;
use crate::quantity::Quantity;
use crate::unit::Unit;

/// How far two statements of one value agree.
#[derive(
    Debug,
    Clone,
    Copy,
    PartialEq,
    Eq,
    PartialOrd,
    Ord,
    Hash,
    Serialize,
    Deserialize,
    schemars::JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum Agreement {
    /// One rounds to the other.
    Consistent,
    /// A soft conversion, within 3 %.
    LooselyRounded,
    /// Two different values.
    InConflict,
}

/// The share by which a soft conversion may differ.
const SOFT: Number = Number::fixed(3, 100);

/// The coarsest step an inch dimension is taken to be stated to.
const EIGHTH: Number = Number::fixed(1, 8);

/// How far two stated values agree; none when they measure different things.
///
/// ```
/// use measure::{Agreement, dual, notation::quantity};
/// let agree = |a, b| dual::agreement(&quantity(a).unwrap(), &quantity(b).unwrap()).unwrap();
/// assert_eq!(agree("2-1/2 in.", "64 mm"), Agreement::Consistent);
/// assert_eq!(agree("6 in.", "150 mm"), Agreement::LooselyRounded);
/// assert_eq!(agree("1 in.", "19 mm"), Agreement::InConflict);
/// ```
pub fn agreement(first: &Stated, second: &Stated) -> Option<Agreement> {
    let (a, b) = (first.quantity(), second.quantity());
    if a.dimension() != b.dimension() {
        return None;
    }
    if rounds_to(a, second)? || rounds_to(b, first)? {
        return Some(Agreement::Consistent);
    }
    let (a, b) = (a.number, b.to(a.unit)?.number);
    let apart = a.minus(b)?.abs();
    let within = apart <= a.abs().times(SOFT)?;
    Some(if within {
        Agreement::LooselyRounded
    } else {
        Agreement::InConflict
    })
}

/// Whether a value lies within half a step of the other as stated.
fn rounds_to(value: Quantity, stated: &Stated) -> Option<bool> {
    let converted = value.to(stated.unit)?.number;
    let step = match stated.unit {
        Unit::Inch => stated.step.min(EIGHTH),
        _ => stated.step,
    };
    let apart = converted.minus(stated.number)?.abs();
    Some(apart.times(Number::whole(2))? <= step)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::notation::quantity;

    #[track_caller]
    fn check(first: &str, second: &str, expected: Agreement) {
        let agreement = agreement(&quantity(first).unwrap(), &quantity(second).unwrap());
        assert_eq!(agreement, Some(expected), "{first} ({second})");
    }

    #[test]
    fn pairs_as_listings_write_them() {
        use Agreement::{Consistent, InConflict, LooselyRounded};
        check("2-1/2 in.", "64 mm", Consistent);
        check("1/16 in.", "1.6 mm", Consistent);
        check("1/8 in.", "3 mm", Consistent);
        check("9/16 in.", "14 mm", Consistent);
        check("12 in.", "305 mm", Consistent);
        check("40 mm", "1-5/8 in.", Consistent);
        check("1.6 mm", "63 mil", Consistent);
        check("4 pcf", "64 kg/m3", Consistent);
        check("0.4 cfm/lin ft", "0.62 L/s per lin m", Consistent);
        check("40°F", "4°C", Consistent);
        check("400 °F", "204 °C", Consistent);
        check("8 ft 3-1/2 in.", "2.53 m", Consistent);
        check("5 in.", "125 mm", LooselyRounded);
        check("24 in.", "600 mm", LooselyRounded);
        check("4-1/2 in.", "115 mm", Consistent);
        check("5/8 in.", "32 mm", InConflict);
        check("1 in.", "19 mm", InConflict);
        check("40 mm", "2-1/2 in.", InConflict);
        check("10 mm", "1/2 in.", InConflict);
        check("325 °F", "181 °C", InConflict);
    }

    #[test]
    fn a_temperature_and_a_rise_are_not_compared() {
        // 325 °F of rise is 181 K (ASTM E814, UL 2079); 163 °C is the point 325 °F.
        assert_eq!(
            agreement(&quantity("325 °F").unwrap(), &quantity("181 K").unwrap()),
            None
        );
        assert_eq!(
            agreement(
                &quantity("325 deg F rise").unwrap(),
                &quantity("181 K").unwrap()
            ),
            Some(Agreement::Consistent)
        );
        assert_eq!(
            agreement(&quantity("325 °F").unwrap(), &quantity("163 °C").unwrap()),
            Some(Agreement::Consistent)
        );
    }
}
