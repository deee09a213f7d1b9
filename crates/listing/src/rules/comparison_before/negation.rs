//! Whether a comparison is turned round: its negation, `nor`, `neither more nor less than`.

use super::super::{Finding, Sentence};
use super::relation::than;
use super::words::{DOWN, NEGATIONS, UP};
use crate::model::Relation;

/// How far before a comparison its negation may stand.
pub(super) const REACH: usize = 14;

/// `neither more nor less than 2 in.`: that and nothing else.
pub(super) fn neither(sentence: &Sentence<'_>, at: usize) -> Option<usize> {
    // `no more, no less than 2 in.`
    let parted = usize::from(
        at >= 5 && sentence.is_sign(at - 3, ',') && sentence.is_any(at - 2, &["no", "nor"]),
    );
    let from = at.checked_sub(4 + parted)?;
    let pair = |one: usize, other: usize| {
        sentence.is_any(one, UP) && sentence.is_any(other, DOWN)
            || sentence.is_any(one, DOWN) && sentence.is_any(other, UP)
    };
    let words = sentence.is_word(at, "than")
        && sentence.is_any(from, &["neither", "no", "not"])
        && (parted == 1 || sentence.is_any(at - 2, &["nor", "or"]));
    (words && pair(from + 1, at - 1)).then_some(from)
}

/// `not to exceed 1/360 of the span, nor 12 mm`: what is denied of one number is denied of the next.
pub(super) fn after_nor(sentence: &Sentence<'_>, at: usize) -> Option<Finding> {
    if !sentence.is_word(at, "nor") {
        return None;
    }
    let lowest = at.saturating_sub(REACH);
    let comparison = (lowest..at)
        .rev()
        .take_while(|at| !sentence.is_sign(*at, ';'))
        .find(|at| {
            sentence.is_any(*at, &["exceed", "exceeds", "exceeding", "than"])
                || passes(sentence, *at)
        })?;
    let (relation, from) = if sentence.is_word(comparison, "than") {
        than(sentence, comparison, 0)?
    } else {
        (Relation::MoreThan, comparison)
    };
    negation(sentence, from, 0)?;
    Some(Finding::sure(relation.negated()?, at))
}

/// `not to pass span/360`: past a share of a length, which has no number of its own; what passes through or over something does another thing.
pub(super) fn passes(sentence: &Sentence<'_>, at: usize) -> bool {
    sentence.is_any(at, &["pass", "passes", "surpass"])
        && (sentence.word(at + 1).starts_with("span") || sentence.amount_at(at + 1).is_some())
}

/// The negation before words set between commas: `It shall not, except as paragraph 8 allows, be more than 6 in.`, `nor, where the sealant is used,
/// by more than 10 percent`.
fn denied_before_aside(sentence: &Sentence<'_>, comma: usize) -> Option<usize> {
    const REACH: usize = 14;
    if !sentence.is_sign(comma, ',') || !sentence.is_any(comma + 1, &["be", "by"]) {
        return None;
    }
    let opening = (comma.saturating_sub(REACH)..comma)
        .rev()
        .find(|at| sentence.is_sign(*at, ','))?;
    opening
        .checked_sub(1)
        .filter(|at| sentence.is_any(*at, NEGATIONS))
}

/// The negation that governs a comparison: before it in the same stretch of words, no number between.
pub(in crate::rules) fn negation(
    sentence: &Sentence<'_>,
    comparison: usize,
    floor: usize,
) -> Option<usize> {
    let lowest = floor.max(comparison.saturating_sub(REACH));
    // Where a statement with a verb of its own begins behind an "and".
    let mut another = None;
    for at in (lowest..comparison).rev() {
        // `not only over 1 in. wide` denies nothing.
        if sentence.is_any(at, NEGATIONS) && sentence.is_any(at + 1, &["only", "just", "merely"]) {
            return None;
        }
        if sentence.is_any(at, NEGATIONS) {
            return another
                .is_none_or(|and| denies_a_subject(sentence, at, and))
                .then_some(at);
        }
        // `edges free of spalls deeper than 3/8 in.`
        if sentence.is_word(at, "free") && sentence.is_any(at + 1, &["of", "from"]) {
            return another.is_none().then_some(at);
        }
        if sentence.is_word(at, "and") && begins_anew(sentence, at + 1, comparison) {
            another = Some(at);
        }
        // "shall not, however, vary by more than": the word only steps in.
        let aside = sentence.is_sign(at, ',')
            && (sentence.is_word(at + 1, "however")
                || at > 0 && sentence.is_word(at - 1, "however"));
        if aside {
            continue;
        }
        if let Some(at) = denied_before_aside(sentence, at) {
            return Some(at);
        }
        if sentence.is_stop(at)
            || sentence.is_any(
                at,
                &["but", "unless", "except", "where", "when", "if", "until"],
            )
        {
            return None;
        }
    }
    None
}

/// Verbs of a statement.
const MODALS: &[&str] = &["shall", "must", "should", "will", "may", "can", "is", "are"];

/// Whether a statement or an order of its own stands between an "and" and a comparison: `shall not be omitted and shall be within 2 in.`, `do not cut
/// studs and place clips within 2 in.`
fn begins_anew(sentence: &Sentence<'_>, start: usize, comparison: usize) -> bool {
    const ORDERS: &[&str] = &[
        "place", "space", "locate", "install", "set", "fasten", "attach", "keep", "use", "apply",
        "provide", "start", "screw", "secure", "position", "put", "fit", "fix", "hold", "fill",
        "extend", "lap", "pack", "finish", "complete", "cover", "seal", "inspect",
    ];
    sentence.has_any(start, comparison, MODALS) || sentence.is_any(start, ORDERS)
}

/// Whether a denial stands in the subject that an "and" is part of: `no screw and clip shall be within 2 in.`
fn denies_a_subject(sentence: &Sentence<'_>, denial: usize, and: usize) -> bool {
    let of_a_verb = denial > 0
        && (sentence.is_any(denial - 1, MODALS) || sentence.is_any(denial - 1, &["do", "does"]))
        || denial == 0 && sentence.is_word(denial, "never");
    !of_a_verb
        && sentence.is_any(denial, &["no", "neither", "nor"])
        && !sentence.has_any(denial, and, MODALS)
}
