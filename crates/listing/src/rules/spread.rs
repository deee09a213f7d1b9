use super::{Finding, Sentence};
use crate::model::Relation;
use crate::phrase::Shape;

pub(super) fn read(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    let amount = sentence.amount(index)?;
    (amount.shape != Shape::Single && amount.hi.is_some()).then(|| Finding::sure(Relation::Between, amount.first))
}
