//! Verbs and words that limit: `limit movement to 19 percent`, `only two splices are permitted`.

use super::super::comparison_before::negation;
use super::super::{Finding, Sentence};
use crate::model::Relation;

/// `limited to a hollow of 2 mm`
pub(super) fn limited_to_a(sentence: &Sentence<'_>, first: usize) -> Option<usize> {
    let verb = first.checked_sub(5)?;
    let limited = sentence.is_any(verb, &["limited", "restricted"])
        && sentence.is_word(verb + 1, "to")
        && sentence.is_any(verb + 2, &["a", "an"])
        && sentence.is_word(verb + 4, "of");
    limited.then_some(verb)
}

/// Whether what is held to a size is a space or a movement, and no thing that may be held to its place.
pub(super) fn is_of_an_opening(sentence: &Sentence<'_>, to: usize, floor: usize) -> bool {
    const REACH: usize = 6;
    const OPENINGS: &[&str] = &[
        "joint",
        "joints",
        "width",
        "gap",
        "gaps",
        "opening",
        "movement",
        "spacing",
        "deflection",
    ];
    sentence.has_any(floor.max(to.saturating_sub(REACH)), to, OPENINGS)
}

/// `limited to 1 in. and the rating to 2 hr`: the second goes on from the first, which its verb limits.
pub(super) fn goes_on_from_a_limit(sentence: &Sentence<'_>, index: usize, to: usize) -> bool {
    const LONGEST: usize = 4;
    const LIMITED: &[&str] = &["limited", "restricted", "confined", "held", "kept"];
    let Some(before) = index
        .checked_sub(1)
        .and_then(|before| sentence.amount(before))
    else {
        return false;
    };
    let from = sentence.skip_parentheses(before.last);
    let from = from + usize::from(sentence.is_sign(from, ',') && sentence.is_word(from + 1, "and"));
    let named = (from + 1..to).all(|at| sentence.has_word(at));
    let joined =
        sentence.is_word(from, "and") && (from + 2..=from + 1 + LONGEST).contains(&to) && named;
    joined
        && before.first >= 2
        && sentence.is_word(before.first - 1, "to")
        && sentence.is_any(before.first - 2, LIMITED)
}

/// `we would limit movement to 19 percent`: the verb, where it isn't the noun of "the limit".
pub(super) fn limiting_verb(sentence: &Sentence<'_>, to: usize, floor: usize) -> Option<usize> {
    const REACH: usize = 6;
    const MODALS: &[&str] = &["would", "should", "shall", "must", "to", "will", "we"];
    let verb = (floor.max(to.saturating_sub(REACH))..to)
        .rev()
        .take_while(|at| !sentence.is_stop(*at))
        .find(|at| {
            sentence.is_any(
                *at,
                &[
                    "limit",
                    "restrict",
                    "confine",
                    "limited",
                    "restricted",
                    "confined",
                ],
            )
        })?;
    let limited = sentence.is_any(verb, &["limited", "restricted", "confined"]);
    if limited {
        return (verb > 0 && sentence.is_any(verb - 1, &["have", "has", "had"])).then_some(verb);
    }
    let opens = verb == 0 || sentence.is_stop(verb - 1) || sentence.is_sign(verb - 1, '.');
    (opens || sentence.is_any(verb - 1, MODALS)).then_some(verb)
}

/// `only one of the two walls may be of board`, `only two splices are permitted in a bay`: no more than so many.
pub(super) fn only_allowed(sentence: &Sentence<'_>, index: usize) -> Option<usize> {
    const REACH: usize = 8;
    let amount = sentence
        .amount(index)
        .filter(|amount| amount.unit == measure::Unit::Count)?;
    let only = amount
        .first
        .checked_sub(1)
        .filter(|at| sentence.is_word(*at, "only"))?;
    let mut stretch = (amount.last..amount.last + REACH).take_while(|at| !sentence.is_stop(*at));
    let allowed = stretch.any(|at| {
        sentence.is_any(at, &["may", "can"])
            || sentence.is_any(at, &["is", "are"])
                && sentence.is_any(at + 1, &["allowed", "permitted", "accepted", "admissible"])
    });
    allowed.then_some(only)
}

/// Whether what something has lasted by a time ends it: "expires after 24 months". What ends may end only by the stricter of two, and is denied by no "not".
pub(super) fn ends_by_then(
    sentence: &Sentence<'_>,
    index: usize,
    after: usize,
    floor: usize,
) -> bool {
    const ENDS: &[&str] = &["lapses", "lapse", "expires", "expire"];
    const REACH: usize = 6;
    let calendar = sentence
        .amount(index)
        .is_some_and(|amount| amount.unit.dimension() == measure::Dimension::CalendarTime);
    let verb = (floor.max(after.saturating_sub(REACH))..after)
        .rev()
        .find(|at| sentence.is_any(*at, ENDS));
    calendar && verb.is_some_and(|verb| negation(sentence, verb + 1, floor).is_none())
}

/// `shall not exceed the box by more than` is read elsewhere; here `not exceed ... by 2 in.`
pub(super) fn exceed_by(sentence: &Sentence<'_>, at: usize, floor: usize) -> Option<Finding> {
    if !sentence.is_word(at, "by") {
        return None;
    }
    let exceed = (floor..at)
        .rev()
        .take(8)
        .find(|at| sentence.is_any(*at, &["exceed", "exceeding"]))?;
    negation(sentence, exceed, floor).map(|from| Finding::sure(Relation::AtMost, from))
}
