use super::bare_value::is_changed_from;
use super::{Finding, Sentence};
use crate::model::Relation;
use crate::phrase::Shape;

pub(super) fn read(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    let amount = sentence.amount(index)?;
    (amount.shape != Shape::Single
        && amount.hi.is_some()
        && !is_changed_from(sentence, amount.first))
    .then(|| Finding::sure(Relation::Between, amount.first))
}
