//! The relation that comparing words say of the number behind them: `less than`, `equal to or greater than`, `over`.

use measure::Dimension;

use super::super::Sentence;
use super::words::{DOWN, DOWN_ALONE, UP, UP_ALONE};
use crate::model::Relation;

/// `less than`, `closer to the edge than`, `greater than or equal to`, `equal to or greater than`.
pub(super) fn than(sentence: &Sentence<'_>, at: usize, floor: usize) -> Option<(Relation, usize)> {
    // `not inferior to 60 kg/m³`
    if sentence.is_word(at, "to") && at > floor {
        match sentence.word(at - 1) {
            "inferior" => return Some((Relation::LessThan, at - 1)),
            "superior" => return Some((Relation::MoreThan, at - 1)),
            _ => {}
        }
    }
    let (than, or_equal) = if sentence.is_word(at, "to")
        && sentence.is_word(at.checked_sub(1)?, "equal")
        && sentence.is_word(at.checked_sub(2)?, "or")
    {
        (at.checked_sub(3)?, true)
    } else {
        (at, false)
    };
    // `thinner mastic, slab thickness other than 60 mm`: what is other compares with nothing.
    let other = than > floor && sentence.is_any(than - 1, &["other", "rather", "different"]);
    // `no nearer to each other than`
    let each = than > 1 && sentence.is_word(than - 2, "each");
    if !sentence.is_word(than, "than") || other && !each {
        return None;
    }
    let lowest = floor.max(than.saturating_sub(7));
    let comparative = (lowest..than)
        .rev()
        .find(|at| sentence.is_any(*at, UP) || sentence.is_any(*at, DOWN))?;
    let strict = if sentence.is_any(comparative, UP) {
        Relation::MoreThan
    } else {
        Relation::LessThan
    };
    let equal_before = comparative >= 3
        && sentence.is_word(comparative - 1, "or")
        && sentence.is_any(comparative - 2, &["to", "equal"]);
    let relation = match (or_equal || equal_before, strict) {
        (true, Relation::MoreThan) => Relation::AtLeast,
        (true, _) => Relation::AtMost,
        (false, strict) => strict,
    };
    Some((relation, comparative))
}

/// Whether what is "under" a share is compressed by it: `inserted under 25 percent compression`.
pub(in crate::rules) fn is_held_under(sentence: &Sentence<'_>, under: usize) -> bool {
    let amount = sentence
        .amount_at(under + 1)
        .and_then(|index| sentence.amount(index));
    amount.is_some_and(|amount| {
        amount.unit == measure::Unit::Percent
            && sentence.is_any(
                amount.last,
                &["compression", "tension", "pressure", "precompression"],
            )
    })
}

/// `at or above 40 F`, `at or below 95 F`.
pub(super) fn at_or(sentence: &Sentence<'_>, at: usize) -> Option<(Relation, usize)> {
    let or = at.checked_sub(1).filter(|or| sentence.is_word(*or, "or"))?;
    let from = or
        .checked_sub(1)
        .filter(|from| sentence.is_any(*from, &["at", "to", "equal"]))?;
    if sentence.is_any(at, &["above", "over"]) {
        Some((Relation::AtLeast, from))
    } else if sentence.is_any(at, &["below", "under"]) {
        Some((Relation::AtMost, from))
    } else {
        None
    }
}

/// `shorter than the width of the joint plus 1/2 in.`: what is added to the thing compared with.
pub(super) fn than_plus(
    sentence: &Sentence<'_>,
    at: usize,
    floor: usize,
) -> Option<(Relation, usize)> {
    let plus = sentence.is_word(at, "plus") || sentence.is_sign(at, '+');
    // `at least as long as the wall is thick plus 1 in.`
    let as_at = plus
        .then(|| {
            (floor..at)
                .rev()
                .take(14)
                .find(|at| sentence.is_word(*at, "as") && sentence.is_word(at + 2, "as"))
        })
        .flatten();
    if let Some(least) = as_at
        .and_then(|at| at.checked_sub(2))
        .filter(|least| sentence.is_word(*least, "at") && sentence.is_word(least + 1, "least"))
    {
        return Some((Relation::AtLeast, least));
    }
    let than_at = plus.then(|| {
        (floor..at)
            .rev()
            .take(14)
            .find(|at| sentence.is_word(*at, "than"))
    })??;
    than(sentence, than_at, floor)
}

/// `over`, `under`, `exceeding` directly before the number.
pub(super) fn alone(sentence: &Sentence<'_>, at: usize, first: usize) -> Option<(Relation, usize)> {
    if at + 1 != first
        && !sentence.is_any(at + 1, &["a", "the", "of"])
        && !sentence.is_sign(at + 1, '+')
    {
        return None;
    }
    let time = sentence
        .amounts
        .iter()
        .any(|amount| amount.first == first && amount.unit.dimension() == Dimension::Time);
    // `an excess of about 10 mm` is an amount; `in excess of 10 mm` compares.
    if sentence.is_word(at, "excess") && !(at > 0 && sentence.is_word(at - 1, "in")) {
        return None;
    }
    if sentence.is_any(at, UP_ALONE) || (time && sentence.is_word(at, "after")) {
        Some((Relation::MoreThan, at))
    } else if sentence.is_any(at, DOWN_ALONE) && !is_held_under(sentence, at)
        || (time && sentence.is_word(at, "before"))
    {
        Some((Relation::LessThan, at))
    } else {
        None
    }
}
