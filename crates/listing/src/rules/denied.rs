//! What a denial says of a number besides its own words.

use super::bounded_alone;
use super::comparison_before::{NEGATIONS, negation};
use super::sentence::Sentence;
use super::word_after::or_more;
use crate::model::Relation;

/// `no more, no less`, `no more and no less`, `not less nor more`: whether what is denied at a token is denied the other way round behind it, so that
/// the number is neither the least nor the most.
pub(super) fn is_denied_both_ways(sentence: &Sentence<'_>, denied: usize) -> bool {
    let Some(relation) = or_more(sentence.word(denied + 1)) else {
        return false;
    };
    let mut at = denied + 2;
    while sentence.is_sign(at, ',') || sentence.is_any(at, &["and", "but", "or"]) {
        at += 1;
    }
    let other = at + usize::from(sentence.is_any(at, NEGATIONS));
    let joined = other > at || sentence.is_any(at - 1, &["and", "or"]);
    joined && or_more(sentence.word(other)).is_some_and(|other| other != relation)
}

/// `shall not vary from 4 in. by more than 1/8 in.`: the negation of a deviation, which the number between would hide.
pub(super) fn denied_deviation(sentence: &Sentence<'_>, comparison: usize) -> Option<usize> {
    const VARY: &[&str] = &["vary", "differ", "deviate", "depart", "stray", "change"];
    const REACH: usize = 9;
    let by = comparison
        .checked_sub(1)
        .filter(|at| sentence.is_word(*at, "by"))?;
    let verb = (by.saturating_sub(REACH)..by)
        .rev()
        .take_while(|at| !sentence.is_stop(*at))
        .find(|at| sentence.is_any(*at, VARY))?;
    sentence.is_word(verb + 1, "from").then_some(())?;
    negation(sentence, verb, 0)
}

/// `not less than 1/8 in. or more than 3/8 in.`: the negation of the amount before reaches over an "or".
pub(super) fn carried_negation(
    sentence: &Sentence<'_>,
    index: usize,
    from: usize,
    floor: usize,
) -> Option<usize> {
    let before = sentence.bound_before(index)?;
    let joined = floor < from && (floor..from).all(|at| sentence.is_any(at, &["or", "nor"]));
    let (finding, rule) = joined.then(|| bounded_alone(sentence, before))??;
    (rule == "comparison before"
        && matches!(finding.relation, Relation::AtLeast | Relation::AtMost))
    .then_some(from)
}

/// `may not close by more than 0.5 in. or open by more than 0.75 in.`: one denied verb after another, under one negation.
pub(super) fn second_verb_denied(
    sentence: &Sentence<'_>,
    index: usize,
    from: usize,
) -> Option<usize> {
    let before = sentence.amount(sentence.bound_before(index)?)?;
    let start = sentence.skip_parentheses(before.last);
    let joined = sentence.is_any(start, &["or", "nor"])
        && from == start + 3
        && sentence.is_any(start + 2, &["by", "to"]);
    let earlier = (0..before.first)
        .rev()
        .find(|at| sentence.is_any(*at, &["by", "to"]))?;
    // The verb of the first: `not close by more than`.
    let denied = earlier
        .checked_sub(2)
        .filter(|not| sentence.is_any(*not, NEGATIONS))?;
    (joined && sentence.token(start + 1)?.word().is_some()).then_some(denied)
}
