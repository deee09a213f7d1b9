//! Numbers that hold on one side of a width that no condition was read from: "min 6 in. above 2 in. joint width, min 4 in. below", "3 mm up to a joint
//! width of 30 mm, above that 5 mm". Read as if they held always they would be wrong; a person reads them.
//!
//! What it declines wrongly: a second place that is only said by its side, "6 in. above 2 in. deep channel, 4 in. below".

use crate::rules::Sentence;

const SIDES: &[(&str, &str)] = &[("above", "below"), ("over", "under")];

/// Whether a number holds only on one side of another that is no condition.
pub(super) fn is_of_one_side(sentence: &Sentence<'_>, index: usize) -> bool {
    is_beyond_that(sentence, index)
        || is_before_a_width(sentence, index)
        || (0..index).any(|before| {
            is_before_a_width(sentence, before) && is_on_the_other_side(sentence, before, index)
        })
}

/// `above that 5 mm`
fn is_beyond_that(sentence: &Sentence<'_>, index: usize) -> bool {
    let first = sentence.amount(index).map_or(0, |amount| amount.first);
    let sided = |at: usize| {
        let named = SIDES
            .iter()
            .any(|(one, other)| sentence.is_any(at, &[one, other]));
        named || sentence.is_word(at, "beyond")
    };
    first > 1
        && index > 0
        && sentence.is_any(first - 1, &["that", "this"])
        && sided(first - 2)
        && !sentence.in_condition(first - 2)
}

/// `6 in. above 2 in. joint width`
fn is_before_a_width(sentence: &Sentence<'_>, index: usize) -> bool {
    const JOINTS: &[&str] = &[
        "joint", "joints", "width", "gap", "gaps", "opening", "openings",
    ];
    let Some((own, width)) = sentence.amount(index).zip(sentence.amount(index + 1)) else {
        return false;
    };
    let side = sentence.skip_parentheses(own.last);
    side_of(sentence, side).is_some()
        && width.first == side + 1
        && sentence.is_any(sentence.skip_parentheses(width.last), JOINTS)
        && sentence.is_bound(index + 1)
}

/// `min 4 in. below` behind `6 in. above 2 in. joint width`
fn is_on_the_other_side(sentence: &Sentence<'_>, before: usize, index: usize) -> bool {
    let behind = |index: usize| {
        sentence
            .amount(index)
            .map_or(0, |amount| sentence.skip_parentheses(amount.last))
    };
    let other = side_of(sentence, behind(before));
    other.is_some_and(|other| sentence.is_word(behind(index), other))
        && !sentence.has_word(behind(index) + 1)
}

/// The side that is opposite to the one a word names.
fn side_of(sentence: &Sentence<'_>, at: usize) -> Option<&'static str> {
    SIDES.iter().find_map(|(one, other)| {
        let opposite = sentence.is_word(at, one).then_some(*other);
        opposite.or_else(|| sentence.is_word(at, other).then_some(*one))
    })
}
