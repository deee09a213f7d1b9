//! How far a joint moves, where the words beside a number name its width as well: "joint width tolerates 1 in. *in compression*", "1/2 in., *in either
//! direction*". Such a number is no width, and of several movements that are told one after the other none has the name of the first.

use measure::Unit;
use vocabulary::{Property, vocabulary};

use crate::phrase::Amount;
use crate::rules::Sentence;

const MOVEMENTS: &[&str] = &[
    "compression",
    "extension",
    "shear",
    "closing",
    "opening",
    "contraction",
    "expansion",
    "movement",
];

/// Whether a number is said to be a movement, and the property is the width of what moves.
pub(super) fn is_movement(sentence: &Sentence<'_>, amount: &Amount, property: &Property) -> bool {
    property.name == "joint.width" && {
        let behind = sentence.skip_parentheses(amount.last);
        let at = behind + usize::from(sentence.is_sign(behind, ','));
        let direction = sentence.is_any(at + 1, &["each", "either"])
            && sentence.is_any(at + 2, &["direction", "sense"]);
        sentence.is_any(at, &["in", "of"])
            && (sentence.is_any(at + 1, MOVEMENTS) && !sentence.is_any(at + 2, &["joints"])
                || direction)
    }
}

/// `25, 20 and 10 percent in compression, extension and shear respectively`: whether several movements are told behind several numbers, each of one.
pub(super) fn is_one_of_several(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    const REACH: usize = 10;
    let told = (amount.last..amount.last + REACH)
        .filter(|at| sentence.is_any(*at, MOVEMENTS))
        .count();
    let numbers = sentence.amounts.iter();
    let alike = numbers
        .filter(|other| other.unit == amount.unit && other.last <= amount.last)
        .count();
    let respective = (amount.last..amount.last + REACH + 2)
        .any(|at| sentence.is_any(at, &["respectively", "resp", "resp."]));
    told > 1 && alike > 1 && respective
}

/// The movement of a number that says its direction right behind it: `20 percent in compression and 10 percent in extension`. What joins two directions to
/// one number, "25 percent compression or extension", is both; and a packing's compression is no movement, so that the sentence must speak of one, or of
/// the other direction behind another number.
pub(super) fn of_a_direction(
    sentence: &Sentence<'_>,
    amount: &Amount,
) -> Option<&'static Property> {
    let own = direction_behind(sentence, amount)?;
    let speaks = (0..sentence.tokens.len())
        .any(|at| sentence.is_any(at, &["movement", "movements", "move", "moves", "cycled"]));
    let other = || {
        let mut directions = sentence
            .amounts
            .iter()
            .filter_map(|other| direction_behind(sentence, other));
        directions.any(|direction| direction != own)
    };
    let share = amount.unit == Unit::Percent;
    (share && (speaks || other()))
        .then(|| vocabulary().property(&format!("joint.movement_{own}")))?
}

/// The direction right behind a number, where it is its only one.
fn direction_behind(sentence: &Sentence<'_>, amount: &Amount) -> Option<&'static str> {
    let behind = sentence.skip_parentheses(amount.last);
    let at = behind + usize::from(sentence.is_any(behind, &["in", "under"]));
    let own = ["compression", "extension"]
        .into_iter()
        .find(|word| sentence.is_word(at, word))?;
    let joined = sentence.is_any(at + 1, &["or", "and", "&"]) && sentence.is_any(at + 2, MOVEMENTS);
    let stroke = sentence.is_sign(at + 1, '/');
    (!joined && !stroke).then_some(own)
}
