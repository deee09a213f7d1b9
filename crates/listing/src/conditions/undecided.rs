//! Conditions between two numbers in a text all in capitals of which nobody can say to which of them they belong: "STUDS MAX 24 IN. OC. FOR 2 HR WALLS, BOARD
//! MIN 2 LAYERS." The number before holds always, so that nothing excuses it; the one behind where a person finds that the words hold; and both with a doubt.

use super::Found;
use crate::capitals::{Case, case_behind};
use crate::model::Expr;
use crate::rules::Sentence;

/// Whether a condition may belong to what stands before it as well as to what stands behind.
pub(super) fn is_undecided(sentence: &Sentence<'_>, condition: &Found) -> bool {
    let at = sentence
        .tokens_span(condition.first, condition.last)
        .start();
    let before = sentence.text.get(..at).unwrap_or_default().trim_end();
    let next = sentence.text.get(at..).unwrap_or_default();
    before
        .strip_suffix('.')
        .is_some_and(|before| case_behind(before, next) == Some(Case::Undecided))
}

/// Leaves such a condition for a person.
pub(super) fn leave_for_a_person(sentence: &Sentence<'_>, condition: &mut Found) {
    if is_undecided(sentence, condition) {
        condition.expr = Expr::Words(sentence.words(condition.first, condition.last).to_owned());
        condition.parts.clear();
    }
}

/// The numbers behind it, to the next condition or semicolon.
pub(super) fn behind(
    sentence: &Sentence<'_>,
    found: &[Found],
    number: usize,
    bounds: &[usize],
) -> Vec<usize> {
    let Some(condition) = found.get(number) else {
        return Vec::new();
    };
    let next = found.iter().map(|other| other.first);
    let next = next.filter(|first| *first >= condition.last).min();
    let end = (condition.last..next.unwrap_or(sentence.tokens.len()))
        .find(|at| sentence.is_sign(*at, ';'))
        .or(next)
        .unwrap_or(sentence.tokens.len());
    let within = |index: &usize| {
        let amount = sentence.amount(*index);
        amount.is_some_and(|amount| amount.first >= condition.last && amount.last <= end)
    };
    bounds.iter().copied().filter(within).collect()
}
