use super::{Finding, Sentence};
use crate::model::Relation;

/// The most words between the two signs of a chain.
const MOST_WORDS: usize = 4;

pub(super) fn read(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    let (own, next) = (sentence.amount(index)?, sentence.amount(index + 1)?);
    let sign = |at: usize| {
        [
            ('≤', Relation::AtLeast),
            ('⩽', Relation::AtLeast),
            ('<', Relation::MoreThan),
            ('≥', Relation::AtMost),
            ('⩾', Relation::AtMost),
            ('>', Relation::LessThan),
        ]
        .into_iter()
        .find(|(sign, _)| sentence.is_sign(at, *sign))
        .map(|(_, relation)| relation)
    };
    let relation = sign(own.last)?;
    let second = next.first.checked_sub(1)?;
    let named = (own.last + 1..second).all(|at| sentence.has_word(at));
    let chained = named
        && second > own.last + 1
        && second <= own.last + 1 + MOST_WORDS
        && own.unit == next.unit;
    let alike = sign(second).is_some_and(|other| rises(other) == rises(relation));
    (chained && alike).then(|| Finding::sure(relation, own.first))
}

/// Whether what stands behind the sign is the larger.
const fn rises(relation: Relation) -> bool {
    matches!(relation, Relation::AtLeast | Relation::MoreThan)
}
