//! Cases that are given out to numbers one by one: "5 in. or 6 in. thick for 1 and 2 hr, respectively".
//!
//! The numbers must stand in one list, of one kind and as many as there are cases: of "5 or 6 in. thick concrete (100 to 150 pcf) for 1 and 2 hr, respectively" the density
//! is for both. Where no one list is as long, or several are, nobody knows which is meant, and every number is asked for, with doubt.

use super::Found;
use crate::rules::Sentence;

/// How the parts of a condition are given out.
pub(super) enum GivenOut {
    /// To these amounts, in this order.
    To(Vec<usize>),
    /// To some of these amounts.
    Unknown(Vec<usize>),
    /// Not at all: the condition is one.
    Nothing,
}

/// How the parts of a condition are given out to the amounts of its sentence.
pub(super) fn given_out(sentence: &Sentence<'_>, condition: &Found, bounds: &[usize]) -> GivenOut {
    const REACH: usize = 6;
    let parts = condition.parts.len();
    if parts < 2 {
        return GivenOut::Nothing;
    }
    if let Some(behind) = behind_cases(sentence, condition, bounds) {
        return GivenOut::To(behind);
    }
    let said = sentence.has_any(condition.last, condition.last + REACH, &["respectively"]);
    let before: Vec<usize> = bounds
        .iter()
        .copied()
        .filter(|index| {
            sentence
                .amount(*index)
                .is_some_and(|amount| amount.last <= condition.first)
        })
        .collect();
    let lists: Vec<Vec<usize>> = lists(sentence, &before)
        .into_iter()
        .filter(|list| list.len() == parts)
        .collect();
    match lists.as_slice() {
        [list] if said || are_counts(sentence, list) => GivenOut::To(list.clone()),
        [] if said && before.len() == parts => GivenOut::To(before),
        _ if said => GivenOut::Unknown(before),
        _ => GivenOut::Nothing,
    }
}

/// The stretches of amounts that stand in a list, "4, 5 and 6 in.", each as long as it goes.
fn lists(sentence: &Sentence<'_>, amounts: &[usize]) -> Vec<Vec<usize>> {
    let mut lists: Vec<Vec<usize>> = Vec::new();
    for index in amounts {
        match lists.last_mut() {
            Some(list)
                if list
                    .last()
                    .is_some_and(|last| are_listed(sentence, *last, *index)) =>
            {
                list.push(*index);
            }
            _ => lists.push(vec![*index]),
        }
    }
    lists
}

/// Whether an amount is the next of a list: nothing but a comma, "and" or what is counted between them, and both of one dimension.
fn are_listed(sentence: &Sentence<'_>, one: usize, next: usize) -> bool {
    let (Some(one), Some(next)) = (sentence.amount(one), sentence.amount(next)) else {
        return false;
    };
    let from = sentence.skip_parentheses(one.last);
    one.unit.dimension() == next.unit.dimension()
        && from < next.first
        && !(one.last..from).any(|at| sentence.in_condition(at))
        && (from..next.first).all(|at| {
            [',', '&', '/']
                .iter()
                .any(|sign| sentence.is_sign(at, *sign))
                || sentence.is_any(at, &["or", "and", "layer", "layers", "coat", "coats"])
        })
}

/// Whether all are counts: "one, two or three layers ... for 1, 2 and 3 Hr ratings" gives them out, though it doesn't say "respectively".
fn are_counts(sentence: &Sentence<'_>, list: &[usize]) -> bool {
    list.iter().all(|index| {
        sentence
            .amount(*index)
            .is_some_and(|amount| amount.unit == measure::Unit::Count)
    })
}

/// The amounts behind a list of cases that a sentence opens with, where it says that they belong to them one by one: "For 1, 2 and 3 hr: 1/4, 1/2 and 3/4 in.
/// respectively".
fn behind_cases(
    sentence: &Sentence<'_>,
    condition: &Found,
    bounds: &[usize],
) -> Option<Vec<usize>> {
    let said = sentence.has_any(condition.last, sentence.tokens.len(), &["respectively"]);
    let behind: Vec<usize> = bounds
        .iter()
        .copied()
        .filter(|index| {
            sentence
                .amount(*index)
                .is_some_and(|amount| amount.first >= condition.last)
        })
        .collect();
    let all = behind.len() == bounds.len() && behind.len() == condition.parts.len();
    (said && all && condition.first == 0).then_some(behind)
}
