//! How far a value lies from its limit, in words.

use core::cmp::Ordering;

use measure::{Quantity, Unit, print};

use crate::assessment::{Assessment, Detail};
use crate::comparison::{Compared, Side};
use crate::explanation::Margin;

/// The margin of a verdict, where it has one.
pub(crate) fn of(found: &Assessment<'_>) -> Option<Margin> {
    match &found.detail {
        Detail::Bound(compared, _) => of_comparison(compared),
        Detail::Said(said) => {
            let quantity = said.margin?;
            let words = if quantity.number.is_negative() {
                "short"
            } else {
                "to spare"
            };
            Some(Margin {
                quantity,
                words: format!("{} {words}", amount(quantity)),
            })
        }
        _ => None,
    }
}

fn of_comparison(compared: &Compared) -> Option<Margin> {
    let quantity = compared.margin()?;
    let (value, limit) = (compared.value, compared.limit?);
    if compared.side == Side::Neither {
        let heavier = limit.dimension().lower_is_heavier();
        let direction = match (quantity.number.is_zero(), quantity.number.is_negative()) {
            (true, _) => return None,
            (false, true) if heavier => "lighter than that",
            (false, false) if heavier => "heavier than that",
            (false, true) => "less than that",
            (false, false) => "more than that",
        };
        return Some(Margin {
            quantity,
            words: format!("{} {direction}", amount(quantity)),
        });
    }
    let heavier = limit.dimension().lower_is_heavier();
    let words = match (quantity.number.is_negative(), value.compare(limit)?) {
        (false, _) => "to spare",
        (true, Ordering::Less) if heavier => "too light",
        (true, _) if heavier => "too heavy",
        (true, Ordering::Less) => "short",
        (true, _) => "over",
    };
    Some(Margin {
        quantity,
        words: format!("{} {words}", amount(quantity)),
    })
}

/// A difference without its sign, in both systems.
pub(crate) fn amount(difference: Quantity) -> String {
    let absolute = Quantity::new(difference.number.abs(), difference.unit);
    match absolute.unit {
        Unit::Gauge | Unit::Swg | Unit::Awg => {
            format!(
                "{} gauge numbers",
                print::trade(Quantity::new(absolute.number, Unit::Count))
            )
        }
        _ => print::both(absolute),
    }
}
