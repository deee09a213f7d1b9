//! At which temperature air leaks: "at ambient 1 CFM/ft, *at 400 F 2 CFM/ft* and 4 CFM/ft in wider joints".
//!
//! What it would misread: a number between two temperatures that is the second's, "ambient 1, 400 F: 2 CFM/ft", where a unit stands once.

use measure::{Dimension, Unit};
use vocabulary::{Property, vocabulary};

use crate::phrase::Amount;
use crate::rules::Sentence;

/// The leakage of a hot joint, where the temperature stands before the number, or before one that it goes on from.
pub(super) fn at_heat(sentence: &Sentence<'_>, index: usize) -> Option<&'static Property> {
    let amount = sentence.amount(index).filter(|amount| is_leakage(amount))?;
    let told_behind = |amount: &Amount| {
        sentence.is_any(
            sentence.skip_parentheses(amount.last),
            &["at", "ambient", "when"],
        )
    };
    if told_behind(amount) {
        return None;
    }
    for at in (0..amount.first).rev() {
        if sentence.is_any(at, &["ambient", "room", "cold"]) {
            return None;
        }
        match sentence.amount_at(at).and_then(|at| sentence.amount(at)) {
            Some(other) if is_hot(other) => {
                // "2 CFM/ft at 400 F, 1 CFM/ft ...": the temperature is that of the number before it.
                let behind_another = other.first >= 2
                    && sentence.is_word(other.first - 1, "at")
                    && sentence.amounts.iter().any(|own| {
                        is_leakage(own) && sentence.skip_parentheses(own.last) == other.first - 1
                    });
                return (!behind_another)
                    .then(|| vocabulary().property("joint.leakage_elevated"))?;
            }
            Some(other) if is_leakage(other) && told_behind(other) => return None,
            _ => {}
        }
    }
    None
}

fn is_leakage(amount: &Amount) -> bool {
    amount.unit.dimension() == Dimension::LeakagePerLength
}

/// Whether a number is a temperature that no room has.
fn is_hot(amount: &Amount) -> bool {
    match amount.unit {
        Unit::Fahrenheit => amount.lo > 200,
        Unit::Celsius => amount.lo > 90,
        _ => false,
    }
}
