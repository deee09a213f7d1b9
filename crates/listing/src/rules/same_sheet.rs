use measure::Dimension;

use super::{Finding, Sentence, bounded};

pub(super) fn read(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    let before = sentence.bound_before(index)?;
    let (own, previous) = (sentence.amount(index)?, sentence.amount(before)?);
    let beside = own.first == previous.last + 1 && (sentence.is_sign(previous.last, '(') || sentence.is_sign(previous.last, '[') || sentence.is_sign(previous.last, ','));
    let pair = (previous.unit.dimension(), own.unit.dimension());
    let one_sheet = matches!(pair, (Dimension::Gauge, Dimension::Length) | (Dimension::Length, Dimension::Gauge));
    if !(beside && one_sheet) {
        return None;
    }
    let (finding, rule) = bounded(sentence, before)?;
    (rule != "bare value").then_some(finding)
}
