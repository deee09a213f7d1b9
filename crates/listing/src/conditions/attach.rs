//! Which amounts a condition governs, by its place in the sentence.
//!
//! - At the opening of a stretch, before a comma, colon or verb: every amount after it, to the next semicolon or to the next
//!   such opening.
//! - After an amount: that amount, and one that is part of the same phrase ("two layers of 5/8 in. board"). Where the sentence has
//!   several such endings, each takes the amounts back to the one before.
//! - With "respectively": the first part to the first amount of a list, the second to the second.

use super::bracket::{Bracketed, behind_its_bracket, in_its_bracket};
use super::contrast::is_contrast;
use super::ending::{before_ending, but_what_is_shared, within_its_exception};
use super::exception::{
    is_case_of_exception, is_prohibition, says_what_holds, within_excepted_place,
};
use super::following::{after_opening, opens};
use super::opening::{holds_anyway, subject};
use super::parted::{is_let_off, is_not_asked};
use super::respectively::{self, GivenOut};
use super::undecided::{self, is_undecided};
use super::{Found, built_of, kinds, offers, parallel, where_there_is, whichever};
use crate::model::Expr;
use crate::rules::Sentence;

/// What governs an amount: conditions by their index, and of one its part, for "respectively".
#[derive(Debug, Clone, Default)]
pub(crate) struct Attached {
    pub(crate) conditions: Vec<usize>,
    pub(crate) part: Option<(usize, Expr)>,
    /// Whether nobody can say if one of the conditions is its own.
    pub(crate) doubtful: bool,
}

/// For each amount, what governs it.
pub(crate) fn attach(
    sentence: &Sentence<'_>,
    found: &[Found],
    is_bound: impl Fn(usize) -> bool,
) -> Vec<Attached> {
    let mut attached = vec![Attached::default(); sentence.amounts.len()];
    let bounds: Vec<usize> = (0..sentence.amounts.len())
        .filter(|index| is_bound(*index))
        .collect();
    for (number, condition) in found.iter().enumerate() {
        if holds_anyway(sentence, condition) || is_prohibition(sentence, condition) {
            continue;
        }
        if is_undecided(sentence, condition) {
            doubt_both(sentence, found, number, &bounds, &mut attached);
            continue;
        }
        let excepted = found.get(number + 1).is_some_and(|next| {
            is_case_of_exception(sentence, next) && next.first == condition.first + 1
        });
        let of_kind = kinds::governed(sentence, condition)
            .or_else(|| offers::governed(sentence, condition))
            .or_else(|| parallel::governed(sentence, condition))
            .or_else(|| built_of::governed(sentence, condition))
            .or_else(|| whichever::governed(sentence, condition))
            .or_else(|| where_there_is::governed(sentence, found, number, &bounds));
        let bracketed = in_its_bracket(sentence, found, number, &bounds);
        let led = behind_its_bracket(sentence, found, number, &bounds);
        let governed = if let Some(own) = led {
            own
        } else if let Some(Bracketed::Own(own)) = bracketed {
            own
        } else if let Some(Bracketed::Before) = bracketed {
            before_ending(sentence, found, number, &bounds, false)
        } else if let Some(own) = of_kind {
            own.into_iter().filter(|index| is_bound(*index)).collect()
        } else if excepted {
            before_ending(sentence, found, number, &bounds, false)
        } else if says_what_holds(sentence, condition) {
            // "except in joints over 4 in., where 20 percent is allowed, depth 4 in.": the depth is said of all.
            let mut after = after_opening(sentence, found, number, &bounds);
            after.truncate(1);
            after
        } else if opens(sentence, found, condition) {
            let mut after = after_opening(sentence, found, number, &bounds);
            after.retain(|index| {
                sentence.amount(*index).is_none_or(|amount| {
                    !is_not_asked(sentence, amount.first) && !is_let_off(sentence, amount.last)
                })
            });
            within_excepted_place(sentence, condition, after)
        } else {
            let parallel = found.iter().enumerate().any(|(other, rival)| {
                other != number
                    && !opens(sentence, found, rival)
                    && subject(&rival.expr).is_some()
                    && subject(&rival.expr) == subject(&condition.expr)
            });
            let governed = before_ending(sentence, found, number, &bounds, parallel);
            let governed = within_its_exception(sentence, condition, governed);
            if parallel {
                but_what_is_shared(sentence, found, number, &bounds, governed)
            } else {
                governed
            }
        };
        if give_out(sentence, condition, number, &bounds, &mut attached) {
            continue;
        }
        // No condition holds for the number that it is made of.
        let own = |index: &usize| {
            sentence.amount(*index).is_some_and(|amount| {
                condition.first <= amount.first && amount.last <= condition.last
            })
        };
        for index in governed.into_iter().filter(|index| !own(index)) {
            if let Some(slot) = attached.get_mut(index) {
                slot.conditions.push(number);
                if let Some(case) = case_left_out(sentence, condition, index) {
                    slot.part = Some((number, case));
                }
            }
        }
    }
    // What is said of the rest isn't said of what the rest is told from.
    for slot in &mut attached {
        let of_the_rest = |number: &usize| {
            found
                .get(*number)
                .is_some_and(|other| is_contrast(sentence, other))
        };
        if slot.conditions.iter().any(of_the_rest) {
            slot.conditions.retain(of_the_rest);
        }
    }
    for (index, slot) in attached.iter_mut().enumerate() {
        part_what_excludes_each_other(sentence, found, index, slot);
    }
    attached
}

/// Gives the parts of a condition out to numbers one by one, where the sentence says so; says whether it does. Where nobody can say which number is for which
/// case, all of them are asked for.
fn give_out(
    sentence: &Sentence<'_>,
    condition: &Found,
    number: usize,
    bounds: &[usize],
    attached: &mut [Attached],
) -> bool {
    match respectively::given_out(sentence, condition, bounds) {
        GivenOut::To(paired) => {
            for (index, part) in paired.into_iter().zip(&condition.parts) {
                if let Some(slot) = attached.get_mut(index) {
                    slot.conditions.push(number);
                    slot.part = Some((number, part.clone()));
                }
            }
            true
        }
        GivenOut::Unknown(before) => {
            for index in before {
                if let Some(slot) = attached.get_mut(index) {
                    slot.doubtful = true;
                }
            }
            true
        }
        GivenOut::Nothing => false,
    }
}

/// Leaves the numbers on both sides of an undecided condition in doubt; those behind it stand under it.
fn doubt_both(
    sentence: &Sentence<'_>,
    found: &[Found],
    number: usize,
    bounds: &[usize],
    attached: &mut [Attached],
) {
    for index in before_ending(sentence, found, number, bounds, false) {
        if let Some(slot) = attached.get_mut(index) {
            slot.doubtful = true;
        }
    }
    for index in undecided::behind(sentence, found, number, bounds) {
        if let Some(slot) = attached.get_mut(index) {
            slot.conditions.push(number);
            slot.doubtful = true;
        }
    }
}

/// The case that an exception leaves out, where a number is said of that case: "other than for 1 hr *(2 in.)*, min 4 in.", "except in 1 hr walls min 4 in., *there*
/// min 2 in."
fn case_left_out(sentence: &Sentence<'_>, condition: &Found, index: usize) -> Option<Expr> {
    let Expr::Not(case) = &condition.expr else {
        return None;
    };
    let amount = sentence.amount(index)?;
    let bracketed = sentence
        .closing(condition.last)
        .is_some_and(|close| condition.last < amount.first && amount.last <= close);
    let there = (condition.last..amount.first).any(|at| {
        sentence.is_any(at, &["there", "here"])
            && at > 0
            && (sentence.is_stop(at - 1) || sentence.is_any(at - 1, &["and", "but"]))
    });
    let excepts = sentence.is_any(
        condition.first,
        &["except", "other", "save", "excepting", "unless"],
    );
    (excepts && (bracketed || there)).then(|| (**case).clone())
}

/// Keeps of conditions that no joint meets together the one behind the number, "where the joint is 2 in., 4 in., *6 in. where 3 in.*", and where none is, none:
/// a number that is never asked for would excuse every joint.
fn part_what_excludes_each_other(
    sentence: &Sentence<'_>,
    found: &[Found],
    index: usize,
    slot: &mut Attached,
) {
    let value = |number: &usize| found.get(*number).and_then(exact_value);
    let excluded = |number: &usize| {
        let own = value(number);
        let mut others = slot.conditions.iter().filter_map(value);
        own.is_some_and(|own| others.any(|other| other.0 == own.0 && other.1 != own.1))
    };
    let excluding: Vec<usize> = slot.conditions.iter().copied().filter(excluded).collect();
    let behind = |number: &usize| {
        let condition = found.get(*number);
        let amount = sentence.amount(index);
        condition
            .zip(amount)
            .is_some_and(|(condition, amount)| condition.first >= amount.last)
    };
    let behind: Vec<usize> = excluding.iter().copied().filter(behind).collect();
    let kept = match behind.as_slice() {
        [one] if value(one).is_some_and(|(property, _)| property == "joint.width") => Some(*one),
        _ => None,
    };
    slot.conditions
        .retain(|number| !excluding.contains(number) || Some(*number) == kept);
}

/// The property that a condition asks to have one value, and the value.
fn exact_value(condition: &Found) -> Option<(&str, Option<measure::Quantity>)> {
    match &condition.expr {
        Expr::Test(test) if test.relation == crate::model::Relation::Exactly => {
            Some((&test.property, test.lo))
        }
        _ => None,
    }
}
