//! Lists of counts: "one or two layers" allows from one to two.

use measure::Unit;

use super::Reading;
use crate::model::{Bound, Relation};
use crate::rules::Sentence;

/// "one or two layers" allows from one to two; of a list that leaves a number out, "two or four", a person must choose.
pub(super) fn join_counts(sentence: &Sentence<'_>, last: &Reading, index: usize) -> Option<Bound> {
    let amount = sentence.amount(index)?;
    let first = sentence.amount(*last.amounts.last()?)?;
    let bare = last.rule == "bare value" || last.bound.relation == Relation::Between;
    let next_in_list = bare
        && last.bound.unit == Unit::Count
        && amount.unit == Unit::Count
        && list_end(sentence, *last.amounts.last()?) >= index
        && list_joint(sentence, index) == Some("or");
    let follows = first.lo.plus(measure::Number::ONE)? == amount.lo;
    (next_in_list && follows).then(|| Bound {
        relation: Relation::Between,
        hi: Some(amount.lo),
        at: last.bound.at.join(sentence.source(amount.at)),
        bare: true,
        ..last.bound.clone()
    })
}

/// The last amount of the list that an amount stands in: `one, two or three layers`.
pub(in crate::clauses) fn list_end(sentence: &Sentence<'_>, index: usize) -> usize {
    let joined = |one: usize| {
        let (Some(own), Some(next)) = (sentence.amount(one), sentence.amount(one + 1)) else {
            return false;
        };
        own.unit == Unit::Count
            && next.unit == Unit::Count
            && own.last < next.first
            && (own.last..next.first)
                .all(|at| sentence.is_sign(at, ',') || sentence.is_any(at, &["or", "and"]))
    };
    (index..sentence.amounts.len())
        .find(|one| !joined(*one))
        .unwrap_or(index)
}

/// The word that joins the list an amount stands in: before its last amount.
fn list_joint(sentence: &Sentence<'_>, index: usize) -> Option<&'static str> {
    let last = sentence.amount(list_end(sentence, index))?;
    let before = last.first.checked_sub(1)?;
    ["or", "and"]
        .into_iter()
        .find(|word| sentence.is_word(before, word))
}
