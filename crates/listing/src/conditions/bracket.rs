//! Conditions in brackets with numbers of their own: "min 4 in. deep (in joints over 4 in., 6 in. deep)", "(4 in. for 1 hr, 5 in. for 2 hr)". Several cases in one
//! bracket are alternatives: each governs its own number.

use core::ops::Range;

use super::Found;
use crate::rules::Sentence;

/// What a condition governs by its place in brackets.
#[derive(Debug)]
pub(super) enum Bracketed {
    /// These amounts of the brackets.
    Own(Vec<usize>),
    /// What stands before the brackets: "4 in. (for 1 hr; 5 in. for 2 hr)".
    Before,
}

/// What a condition in brackets with numbers governs; none where it stands in no such brackets.
pub(super) fn in_its_bracket(
    sentence: &Sentence<'_>,
    found: &[Found],
    number: usize,
    bounds: &[usize],
) -> Option<Bracketed> {
    let condition = found.get(number)?;
    let (open, close) = brackets(sentence, condition)?;
    let within = |range: &Range<usize>| -> Vec<usize> {
        let own = |index: &usize| {
            sentence.amount(*index).is_some_and(|amount| {
                range.start <= amount.first
                    && amount.last <= range.end
                    && found
                        .iter()
                        .all(|other| amount.last <= other.first || other.last <= amount.first)
            })
        };
        bounds.iter().copied().filter(own).collect()
    };
    if within(&(open + 1..close)).is_empty() {
        return None;
    }
    let stretch = stretch(sentence, open, close, condition);
    // A condition may begin with the bracket itself.
    let from = |other: &Found| other.first + usize::from(other.first == open);
    let beside = |other: &&Found| stretch.start <= from(other) && other.last <= stretch.end;
    let (mut before, mut after) = (stretch.start, stretch.end);
    for other in found.iter().filter(beside) {
        if other.last <= condition.first {
            before = before.max(other.last);
        } else if other.first >= condition.last {
            after = after.min(other.first);
        }
    }
    let first = found.iter().find(beside);
    let last = found.iter().rfind(beside);
    let leads = first.is_some_and(|first| within(&(stretch.start..first.first)).is_empty());
    let told_last = last.is_some_and(|last| !within(&(last.last..stretch.end)).is_empty());
    let own = if leads && told_last {
        within(&(condition.last..after))
    } else {
        within(&(before..condition.first))
    };
    Some(if own.is_empty() {
        Bracketed::Before
    } else {
        Bracketed::Own(own)
    })
}

/// The numbers behind a condition in brackets of its own, to the next such condition, where the sentence begins with one: "*(1 hr)* min depth 3 in. *(2 hr)* min depth 4
/// in."
pub(super) fn behind_its_bracket(
    sentence: &Sentence<'_>,
    found: &[Found],
    number: usize,
    bounds: &[usize],
) -> Option<Vec<usize>> {
    // A condition may begin with the bracket itself.
    let alone = |condition: &Found| {
        let open = condition.first + usize::from(sentence.is_sign(condition.first, '('));
        let (open, close) = (open.checked_sub(1)?, condition.last);
        let closed = sentence
            .closing(open)
            .is_some_and(|own| own == close || own + 1 == close);
        closed.then_some(open)
    };
    let brackets: Vec<usize> = found.iter().filter_map(alone).collect();
    let own = alone(found.get(number)?)?;
    let leads = brackets.iter().min() == Some(&0) && brackets.len() > 1;
    let end = brackets.iter().copied().filter(|open| *open > own).min();
    let end = end.unwrap_or(sentence.tokens.len());
    let within = |index: &usize| {
        sentence
            .amount(*index)
            .is_some_and(|amount| own < amount.first && amount.last <= end)
    };
    leads.then(|| bounds.iter().copied().filter(within).collect())
}

/// The tokens between the brackets in which a condition stands, or between the semicolons there.
pub(super) fn around(sentence: &Sentence<'_>, condition: &Found) -> Option<Range<usize>> {
    let (open, close) = brackets(sentence, condition)?;
    Some(stretch(sentence, open, close, condition))
}

/// The brackets right around a condition.
fn brackets(sentence: &Sentence<'_>, condition: &Found) -> Option<(usize, usize)> {
    let open = (0..=condition.first).rev().find(|at| {
        sentence
            .closing(*at)
            .is_some_and(|close| close >= condition.last && sentence.is_sign(*at, '('))
    })?;
    Some((open, sentence.closing(open)?))
}

/// The part of brackets between two semicolons in which a condition stands.
fn stretch(sentence: &Sentence<'_>, open: usize, close: usize, condition: &Found) -> Range<usize> {
    let semicolon = |at: &usize| sentence.is_sign(*at, ';');
    let start = (open + 1..condition.first).rev().find(semicolon);
    let end = (condition.last..close).find(semicolon);
    start.map_or(open + 1, |at| at + 1)..end.unwrap_or(close)
}
