use super::word_before::qualifier;
use super::{Finding, Sentence};

pub(super) fn read(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    let first = sentence.amount(index)?.first;
    let floor = sentence.floor(index);
    // Only the first amount of its stretch: later ones share or bring their own.
    let verb = (floor..first).rev().take(3).find(|at| sentence.is_any(*at, &["is", "are", "be", "equals"]))?;
    let start = (floor..verb).rev().find(|at| sentence.is_stop(*at) || sentence.is_sign(*at, '.')).map_or(floor, |at| at + 1);
    let opening = if sentence.is_any(start, &["the", "a", "an"]) { start + 1 } else { start };
    let relation = qualifier(sentence.word(opening))?;
    Some(Finding::sure(relation, opening))
}
