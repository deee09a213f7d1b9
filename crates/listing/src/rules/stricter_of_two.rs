//! A measure that something has or another, whichever is greater: "the depth shall be *4 in.* or the thickness of the slab less 1/2 in., *whichever is greater*".
//!
//! What is as great as the greater of two has each of them at least. "Whichever is less" would leave only a most, under which nothing at all would do, so
//! that the number stays what it is; so do a movement, a share, a time, and one that is added to another measure or taken from it.

use measure::{Dimension, Unit};

use super::shared_qualifier::is_spaced;
use super::{Finding, Sentence};
use crate::model::Relation;
use crate::phrase::Shape;

const GREATER: &[&str] = &[
    "greater", "greatest", "larger", "largest", "more", "longer", "longest", "deeper", "thicker",
    "wider", "higher",
];

/// What is the worse for being more.
const APART: &[&str] = &[
    "movement",
    "shear",
    "deflection",
    "spacing",
    "spaced",
    "gap",
    "opening",
    "apart",
    "centres",
    "centers",
    "tolerance",
    "deviation",
];

/// A bare number's finding, as the words behind it have it.
pub(super) fn greater_of_two(
    sentence: &Sentence<'_>,
    index: usize,
    finding: Finding,
    rule: &str,
) -> Finding {
    if rule != "bare value" || !is_one_of_two(sentence, index) {
        return finding;
    }
    Finding {
        relation: Relation::AtLeast,
        // The other of the two may be the greater, and no rule may have read it.
        doubtful: true,
        ..finding
    }
}

/// `4 in. or the thickness of the slab, whichever is greater`: whether a number stands right before the "or" of such a pair, or right behind it.
fn is_one_of_two(sentence: &Sentence<'_>, index: usize) -> bool {
    const REACH: usize = 16;
    const LONGEST: usize = 4;
    let Some(amount) = sentence.amount(index) else {
        return false;
    };
    let after = sentence.skip_parentheses(amount.last);
    let parted = |at: &usize| sentence.is_sign(*at, ';') || sentence.is_sign(*at, ':');
    let said = (after..after + REACH)
        .take_while(|at| !parted(at))
        .find(|at| sentence.is_word(*at, "whichever"));
    let greater = said.is_some_and(|at| sentence.has_any(at + 1, at + 1 + LONGEST, GREATER));
    let before = sentence.is_word(after, "or")
        || sentence.is_sign(after, ',') && sentence.is_word(after + 1, "or");
    let behind = amount.first > 0
        && sentence.is_word(amount.first - 1, "or")
        && sentence.is_sign(after, ',')
        && sentence.is_word(after + 1, "whichever");
    // Of a movement it may be how far one may go.
    let moves = |index: usize| {
        sentence
            .amount(index)
            .is_some_and(|amount| amount.unit == Unit::Percent)
    };
    let near = [index.checked_sub(1), Some(index), Some(index + 1)];
    let movement =
        near.into_iter().flatten().any(moves) || sentence.has_any(0, amount.first, APART);
    greater
        && !movement
        && amount.unit.dimension() != Dimension::Time
        && amount.shape == Shape::Single
        && (before || behind)
        && !is_spaced(sentence, amount.last)
}
