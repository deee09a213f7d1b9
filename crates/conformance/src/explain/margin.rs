//! How far a value lies from its limit, in words.

use core::cmp::Ordering;

use measure::{Quantity, Unit, print};

use crate::assessment::{Assessment, Detail};
use crate::comparison::{Compared, Side};
use crate::explanation::Margin;
use crate::verdict::Verdict;

/// The margin of a verdict, where it has one.
pub(crate) fn of(found: &Assessment<'_>) -> Option<Margin> {
    let (verdict, _) = found.before.unwrap_or((found.verdict, found.reason));
    match &found.detail {
        Detail::Bound(compared, _) => of_comparison(compared, verdict),
        Detail::Said(said) => Some(in_words(said.margin?, "short", verdict)),
        _ => None,
    }
}

fn of_comparison(compared: &Compared, verdict: Verdict) -> Option<Margin> {
    let quantity = compared.margin()?;
    let (value, limit) = (compared.value, compared.limit?);
    let heavier = limit.dimension().lower_is_heavier();
    if compared.side == Side::Neither {
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
    let beyond = match value.compare(limit)? {
        Ordering::Less if heavier => "too light",
        _ if heavier => "too heavy",
        Ordering::Less => "short",
        _ => "over",
    };
    Some(in_words(quantity, beyond, verdict))
}

/// A distance from a limit, with the word for one on its wrong side. Only what is met has something to spare.
fn in_words(quantity: Quantity, beyond: &str, verdict: Verdict) -> Margin {
    let number = quantity.number;
    let words = match (number.is_zero(), number.is_negative(), verdict) {
        (true, _, _) => "exactly at the limit".to_owned(),
        (false, true, _) => format!("{} {beyond}", amount(quantity)),
        (false, false, Verdict::Met) => format!("{} to spare", amount(quantity)),
        (false, false, _) => format!("{} within the limit", amount(quantity)),
    };
    Margin { quantity, words }
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
