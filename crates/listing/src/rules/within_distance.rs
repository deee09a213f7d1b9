use super::comparison_before::negation;
use super::{Finding, Sentence};
use crate::model::Relation;

pub(super) fn read(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    let first = sentence.amount(index)?.first;
    let floor = sentence.floor(index);
    let at = first.checked_sub(1)?;
    if !sentence.is_word(at, "within") {
        return None;
    }
    let relation = if negation(sentence, at, floor).is_some() { Relation::AtLeast } else { Relation::AtMost };
    Some(Finding::sure(relation, at))
}
