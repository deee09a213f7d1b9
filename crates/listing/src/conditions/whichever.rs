//! Two limits of which one counts: "20 percent or 3/8 in., whichever is greater", "48 hr or until firm, whichever is longer".
//!
//! Which of them it is depends on the joint, so that each stands under the words, for a person. Where both hold whichever it is, the greater of two leasts or the
//! less of two mosts, each is asked for as it stands.

use super::Found;
use crate::model::{Expr, Relation};
use crate::rules::{Sentence, bounded};

const GREATER: &[&str] = &[
    "greater", "greatest", "larger", "largest", "more", "longer", "longest", "deeper", "thicker",
    "wider", "later", "higher",
];
const LESS: &[&str] = &[
    "less", "lesser", "least", "smaller", "smallest", "lower", "shorter", "shortest", "earlier",
];

/// How far before the words the two may begin.
const REACH: usize = 24;

pub(super) fn whichever(sentence: &Sentence<'_>) -> Vec<Found> {
    let at = (0..sentence.tokens.len()).filter(|at| sentence.is_word(*at, "whichever"));
    at.filter_map(|at| {
        let last = end(sentence, at)?;
        let told = !of_two(sentence, at).is_empty();
        told.then(|| Found {
            first: at,
            last,
            expr: Expr::Words(sentence.words(at, last).to_owned()),
            triggers: Vec::new(),
            parts: Vec::new(),
        })
    })
    .collect()
}

/// The amounts that stand under such words; none where the condition isn't one.
pub(super) fn governed(sentence: &Sentence<'_>, condition: &Found) -> Option<Vec<usize>> {
    (sentence.is_word(condition.first, "whichever")).then(|| of_two(sentence, condition.first))
}

/// The token behind `whichever is the greater`.
fn end(sentence: &Sentence<'_>, at: usize) -> Option<usize> {
    const LONGEST: usize = 4;
    let compares = |at: &usize| sentence.is_any(*at, GREATER) || sentence.is_any(*at, LESS);
    (at + 1..=at + LONGEST).find(compares).map(|at| at + 1)
}

/// The numbers on both sides of the "or", without those that hold whichever it is.
fn of_two(sentence: &Sentence<'_>, at: usize) -> Vec<usize> {
    let Some(last) = end(sentence, at) else {
        return Vec::new();
    };
    let greater = sentence.has_any(at, last, GREATER);
    let start = (at.saturating_sub(REACH)..at)
        .rev()
        .find(|at| sentence.is_sign(*at, ';') || sentence.is_sign(*at, ':'))
        .map_or(at.saturating_sub(REACH), |at| at + 1);
    let Some(or) = (start..at).rev().find(|at| sentence.is_word(*at, "or")) else {
        return Vec::new();
    };
    let within = |index: &usize, from: usize, to: usize| {
        sentence
            .amount(*index)
            .is_some_and(|amount| from <= amount.first && amount.last <= to)
    };
    let indices = || 0..sentence.amounts.len();
    let before = indices().rfind(|index| within(index, start, or));
    let behind = indices().find(|index| within(index, or, at));
    let hold_both = |index: &usize| {
        let relation = bounded(sentence, *index).map(|(finding, _)| finding.relation);
        match relation {
            Some(Relation::AtLeast) => greater,
            Some(Relation::AtMost) => !greater,
            _ => false,
        }
    };
    before
        .into_iter()
        .chain(behind)
        .filter(|index| !hold_both(index))
        .collect()
}
