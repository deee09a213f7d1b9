use super::word_before::{is_of_a_place, qualifier};
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
    if let Some(finding) = allowed_extreme(sentence, start, verb) {
        return Some(finding);
    }
    if let Some(finding) = other_limit(sentence, index, start, verb) {
        return Some(finding);
    }
    let opening = if sentence.is_any(start, &["the", "a", "an"]) {
        start + 1
    } else {
        start
    };
    let relation = qualifier(sentence.word(opening))?;
    let closed = index > 0 && start == floor && goes_on_without_subject(sentence, opening, verb);
    // `The minimum depth at the max width is`: of which of the two the number is, a person sees.
    let doubtful = (opening + 1..verb).any(|at| {
        qualifier(sentence.word(at)).is_some() && is_of_a_place(sentence, at, first, floor)
    });
    (!closed).then_some(Finding {
        relation,
        from: opening,
        doubtful,
    })
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

/// `with clips the widest permitted opening is`: the extreme that is allowed, wherever the subject begins.
fn allowed_extreme(sentence: &Sentence<'_>, start: usize, verb: usize) -> Option<Finding> {
    const ALLOWED: &[&str] = &[
        "permitted",
        "permissible",
        "allowed",
        "allowable",
        "admissible",
        "acceptable",
    ];
    const VERBS: &[&str] = &["shall", "must", "may", "has", "have", "not", "no", "than"];
    let extreme = (start..verb).find(|at| {
        sentence.is_word(*at, "the")
            && qualifier(sentence.word(at + 1)).is_some()
            && sentence.is_any(at + 2, ALLOWED)
    })?;
    let relation = qualifier(sentence.word(extreme + 1))?;
    let limits = matches!(relation, Relation::AtMost | Relation::AtLeast);
    let plain = !(extreme..verb).any(|at| sentence.is_any(at, VERBS));
    (limits && plain).then(|| Finding::sure(relation, extreme + 1))
}

/// `up to 45° from the vertical, except walls, for which the limit is 10°`: the limit of what was limited before, in a case.
fn other_limit(
    sentence: &Sentence<'_>,
    index: usize,
    start: usize,
    verb: usize,
) -> Option<Finding> {
    let limit = verb.checked_sub(1)?;
    let article = limit.checked_sub(1)?;
    let named = sentence.is_word(limit, "limit") && sentence.is_word(article, "the");
    // "the depth, the limit": of another measure.
    let plain = (start..article).all(|at| {
        sentence.has_word(at)
            && vocabulary::vocabulary()
                .attribute(sentence.word(at))
                .is_none()
    });
    if !named || !plain {
        return None;
    }
    let dimension = sentence.amount(index)?.unit.dimension();
    let before = (0..index).rev().find(|before| {
        let amount = sentence.amount(*before);
        amount.is_some_and(|amount| amount.unit.dimension() == dimension)
    })?;
    let (finding, _) = super::bounded_by_its_words(sentence, before)?;
    let limited = matches!(finding.relation, Relation::AtMost | Relation::AtLeast);
    limited.then(|| Finding::sure(finding.relation, limit))
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
        // `movement included`
        let included =
            sentence.is_any(start - 2, &["included", "inclusive"]) && at + 3 == start - 1;
        let taken = sentence.is_any(at + 1, TAKEN) || timed(at + 1) || included;
        closes && sentence.is_sign(*at, ',') && taken
    })?;
    Some(stop_before(opens).map_or(floor, |at| at + 1))
}
