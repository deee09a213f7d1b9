use super::comparison_before::{is_refused, negation};
use super::turned_down::is_turned_down;
use super::{Finding, Sentence};
use crate::model::Relation;

pub(super) fn read(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    let first = sentence.amount(index)?.first;
    let at = first.checked_sub(1)?;
    let sign = |at: usize, sign: char| sentence.is_sign(at, sign);
    // A plus may be the number's own.
    let plus = if sign(first, '+') { first } else { at };
    if let Some(limit) = limit_of_a_sum(sentence, plus) {
        return Some(limit);
    }
    if sign(at, '=')
        && let Some(before) = at.checked_sub(1)
    {
        let relation = if sign(before, '>') {
            Relation::AtLeast
        } else if sign(before, '<') {
            Relation::AtMost
        } else {
            return None;
        };
        return Some(Finding::sure(relation, before));
    }
    // `never < 1/4 in.`, `no clips < 24 in. o.c.`
    let negated = negation(sentence, at, sentence.floor(index))
        .or_else(|| forbidden_list(sentence))
        .or_else(|| sentence.forbidding(at))
        .or_else(|| (is_refused(sentence, index) || is_turned_down(sentence, index)).then_some(at));
    let strict = [('>', Relation::MoreThan), ('<', Relation::LessThan)];
    if let Some((before, (_, relation))) =
        negated.zip(strict.into_iter().find(|(own, _)| sign(at, *own)))
    {
        return Some(Finding::sure(relation.negated()?, before));
    }
    let relation = if sign(at, '≥') || sign(at, '⩾') {
        Relation::AtLeast
    } else if sign(at, '≤') || sign(at, '⩽') {
        Relation::AtMost
    } else if sign(at, '>') {
        Relation::MoreThan
    } else if sign(at, '<') {
        Relation::LessThan
    } else if sign(at, '~') || sign(at, '≈') {
        Relation::About
    } else {
        return None;
    };
    Some(Finding::sure(relation, at))
}

/// `length ≥ wall thickness + 20 mm`: the limit of a sum, of which the number is the last part.
fn limit_of_a_sum(sentence: &Sentence<'_>, plus: usize) -> Option<Finding> {
    const LONGEST: usize = 4;
    if !(sentence.is_sign(plus, '+') || sentence.is_word(plus, "plus")) {
        return None;
    }
    let words = (plus.saturating_sub(LONGEST)..plus)
        .rev()
        .take_while(|at| sentence.has_word(*at) && sentence.amount_at(*at).is_none());
    let at = words.last()?.checked_sub(1)?;
    let limits = [
        ('≥', Relation::AtLeast),
        ('⩾', Relation::AtLeast),
        ('≤', Relation::AtMost),
        ('⩽', Relation::AtMost),
    ];
    limits
        .into_iter()
        .find(|(sign, _)| sentence.is_sign(at, *sign))
        .map(|(_, relation)| Finding::sure(relation, at))
}

/// Whether `<` or `>` stands right before a number, which its refusal has turned.
pub(super) fn compares_by_sign(sentence: &Sentence<'_>, index: usize) -> bool {
    let before = sentence
        .amount(index)
        .and_then(|amount| amount.first.checked_sub(1));
    before.is_some_and(|at| sentence.is_sign(at, '<') || sentence.is_sign(at, '>'))
}

/// `Not permitted: foam; pieces < 12 in. long`: everything after the heading is forbidden.
fn forbidden_list(sentence: &Sentence<'_>) -> Option<usize> {
    let denied = sentence.is_word(0, "not")
        && sentence.is_any(1, &["permitted", "allowed", "accepted", "acceptable"]);
    (denied && sentence.is_sign(2, ':')).then_some(0)
}
