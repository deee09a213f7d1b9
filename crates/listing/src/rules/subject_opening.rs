use super::word_before::qualifier;
use super::{Finding, Sentence};
use crate::model::Relation;

pub(super) fn read(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    let first = sentence.amount(index)?.first;
    let floor = sentence.floor(index);
    // Only the first amount of its stretch: later ones share or bring their own.
    let verb = (floor..first)
        .rev()
        .take(3)
        .find(|at| sentence.is_any(*at, &["is", "are", "be", "equals"]))?;
    let start = (floor..verb)
        .rev()
        .find(|at| sentence.is_stop(*at) || sentence.is_sign(*at, '.'))
        .map_or(floor, |at| at + 1);
    let start = set_off_from(sentence, start, verb, floor).unwrap_or(start);
    if let Some(finding) = named_limit(sentence, start, verb) {
        return Some(finding);
    }
    let opening = if sentence.is_any(start, &["the", "a", "an"]) {
        start + 1
    } else {
        start
    };
    let relation = qualifier(sentence.word(opening))?;
    let closed = index > 0 && start == floor && goes_on_without_subject(sentence, opening, verb);
    (!closed).then(|| Finding::sure(relation, opening))
}

/// `50 mm minimum on to the slab and are pinned at 300 mm`: no subject begins behind a qualifier that a preposition or a conjunction follows, nor where the
/// verb has none of its own. The word closed the number before it.
fn goes_on_without_subject(sentence: &Sentence<'_>, qualifier: usize, verb: usize) -> bool {
    const GO_ON: &[&str] = &[
        "and", "or", "but", "on", "onto", "in", "into", "to", "at", "from", "over", "under",
        "past", "beyond", "above", "below", "with", "by", "along", "into", "each",
    ];
    let elided = verb > qualifier + 1 && sentence.is_any(verb - 1, &["and", "but", "or"]);
    elided || sentence.is_any(qualifier + 1, GO_ON)
}

/// `the upper limit is`, `The lower limit of the width is`: the limit by its name.
fn named_limit(sentence: &Sentence<'_>, start: usize, verb: usize) -> Option<Finding> {
    const REACH: usize = 5;
    let named = |at: &usize| {
        sentence.is_any(*at, &["limit", "bound"])
            && sentence.is_any(at.checked_sub(1).unwrap_or(*at), &["upper", "lower"])
    };
    let limit = (start..verb).rev().take(REACH).find(named)?;
    let relation = if sentence.is_word(limit - 1, "upper") {
        Relation::AtMost
    } else {
        Relation::AtLeast
    };
    let whole = limit + 1 == verb || sentence.is_any(limit + 1, &["of", "for", "on"]);
    whole.then(|| Finding::sure(relation, limit - 1))
}

/// `The least depth anywhere, measured at the middle of the joint, is`: where the subject begins, when how it is taken stands between two commas.
fn set_off_from(sentence: &Sentence<'_>, start: usize, verb: usize, floor: usize) -> Option<usize> {
    const TAKEN: &[&str] = &["measured", "taken", "read", "gauged", "counted"];
    // `at time of installation`
    let timed = |at: usize| {
        let the = usize::from(sentence.is_word(at + 1, "the"));
        sentence.is_word(at, "at")
            && sentence.is_word(at + the + 1, "time")
            && sentence.is_word(at + the + 2, "of")
    };
    let stop_before = |end: usize| {
        (floor..end)
            .rev()
            .find(|at| sentence.is_stop(*at) || sentence.is_sign(*at, '.'))
    };
    let closes = start == verb && sentence.is_sign(start.checked_sub(1)?, ',');
    let opens = stop_before(start.checked_sub(1)?).filter(|at| {
        closes && sentence.is_sign(*at, ',') && (sentence.is_any(at + 1, TAKEN) || timed(at + 1))
    })?;
    Some(stop_before(opens).map_or(floor, |at| at + 1))
}
