//! Conditions that are only half of what is said: "for joints over 2 in. *or walls over 12 ft high*", "(joints over 2 in.; *walls over 12 ft high*)", "in 2 hr walls *in
//! which the joint is over 2 in.*"
//!
//! The half that was read would excuse what the other half asks for, or let off what it doesn't; so the whole is kept in words, for a person to say.

use super::{Found, compared};
use crate::model::Expr;
use crate::rules::Sentence;

/// Makes one condition in words of a half that was read and the half that no rule took.
pub(super) fn take_the_other_half(sentence: &Sentence<'_>, found: &mut [Found]) {
    for at in 0..found.len() {
        let next = found
            .get(at + 1)
            .map_or(sentence.tokens.len(), |other| other.first);
        if let Some(condition) = found.get_mut(at) {
            let end = joined_half(sentence, condition)
                .or_else(|| bracketed_half(sentence, condition))
                .or_else(|| narrowing_half(sentence, condition));
            if let Some(end) = end.filter(|end| *end <= next) {
                keep_words(sentence, condition, end);
            }
        }
    }
}

fn keep_words(sentence: &Sentence<'_>, condition: &mut Found, end: usize) {
    condition
        .triggers
        .extend(within(sentence, condition.last, end));
    condition.last = end;
    condition.expr = Expr::Words(sentence.words(condition.first, end).to_owned());
    condition.parts.clear();
}

/// The amounts of tokens `[first, last)`.
fn within(sentence: &Sentence<'_>, first: usize, last: usize) -> Vec<usize> {
    (0..sentence.amounts.len())
        .filter(|index| {
            let amount = sentence.amount(*index);
            amount.is_some_and(|amount| first <= amount.first && amount.last <= last)
        })
        .collect()
}

/// The end of what "or" joins to a condition: "for joints over 2 in. *or walls over 12 ft high*", "for 2 hr *or where the wall is curved*".
fn joined_half(sentence: &Sentence<'_>, condition: &Found) -> Option<usize> {
    const LEADS: &[&str] = &["where", "when", "if", "in", "for", "at", "on", "with"];
    const VERBS: &[&str] = &[
        "shall", "must", "is", "are", "may", "use", "provide", "min", "max",
    ];
    let joint = condition.last;
    let or = sentence.is_word(joint, "or");
    if condition.triggers.is_empty() || !(or || sentence.is_word(joint, "and")) {
        return None;
    }
    let asks = sentence.is_any(joint + 1, &["where", "when", "if"]);
    let ends = |at: &usize| {
        sentence.is_stop(*at)
            || [')', '(', '.']
                .iter()
                .any(|sign| sentence.is_sign(*at, *sign))
            || !asks && sentence.is_any(*at, VERBS)
    };
    let end = (joint + 1..sentence.tokens.len())
        .find(ends)
        .unwrap_or(sentence.tokens.len());
    let within = within(sentence, joint + 1, end);
    let compared = !within.is_empty() && within.iter().all(|index| compared(sentence, *index));
    let words = within.is_empty() && or && end > joint + 1 && sentence.is_any(joint + 1, LEADS);
    (compared || words).then_some(end)
}

/// The end of a bracket that a condition opens and that goes on with what compares: "(joints over 2 in.; *walls over 12 ft high*)".
fn bracketed_half(sentence: &Sentence<'_>, condition: &Found) -> Option<usize> {
    // A condition may begin with the bracket itself.
    let own = usize::from(!sentence.is_sign(condition.first, '('));
    let opens = condition.first.checked_sub(own)?;
    let close = sentence
        .closing(opens)
        .filter(|_| sentence.is_sign(opens, '('))?;
    let parted = sentence.is_sign(condition.last, ';') || sentence.is_sign(condition.last, ',');
    let within = within(sentence, condition.last, close);
    let compared = within.iter().all(|index| compared(sentence, *index));
    let asks = sentence.has_any(
        condition.last,
        close,
        &["use", "provide", "shall", "must", "min", "max"],
    );
    (parted && !condition.triggers.is_empty() && !within.is_empty() && compared && !asks)
        .then_some(close)
}

/// The end of what narrows the walls or joints of a condition down: "in 2 hr walls *in which the joint is over 2 in.*"
fn narrowing_half(sentence: &Sentence<'_>, condition: &Found) -> Option<usize> {
    const REACH: usize = 9;
    let at = condition.last;
    let narrows = sentence.is_any(at, &["in", "of", "at"]) && sentence.is_word(at + 1, "which")
        || sentence.is_word(at, "whose");
    let end = within(sentence, at, at + REACH)
        .into_iter()
        .find(|index| compared(sentence, *index))
        .and_then(|index| sentence.amount(index))
        .map(|amount| {
            super::width::skip_attribute(sentence, sentence.skip_parentheses(amount.last))
        })?;
    (narrows && !(at..end).any(|at| sentence.is_stop(at))).then_some(end)
}
