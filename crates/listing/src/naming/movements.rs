//! How far a joint moves, where the words beside a number name its width as well: "joint width tolerates 1 in. *in compression*", "1/2 in., *in either
//! direction*". Such a number is no width, and of several movements that are told one after the other none has the name of the first.

use vocabulary::Property;

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
