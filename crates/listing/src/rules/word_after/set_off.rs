//! A qualifier set off from its number by a comma or a few words: `3-1/4 in. above flutes, min`.

use super::super::Sentence;
use super::super::denied::is_denied_both_ways;
use super::super::word_before::qualifier;
use super::REACH;
use super::closing::{ends_stretch, or_more};
use super::label::may_open_a_label;
use super::whose::closes_itself;
use crate::model::Relation;

/// `3 mm wet or 1.5 mm dry as a minimum`: two statements of one thing, closed together.
pub(super) fn alternatives_closed(
    sentence: &Sentence<'_>,
    index: usize,
    at: usize,
) -> Option<Relation> {
    let (own, next) = (sentence.amount(index)?, sentence.amount(index + 1)?);
    let alternatives = sentence.is_word(at, "or")
        && next.first == at + 1
        && next.unit.dimension() == own.unit.dimension();
    let closing = alternatives.then(|| {
        (next.last..next.last + REACH)
            .find(|at| sentence.is_word(*at, "as") && sentence.is_word(at + 1, "a"))
    })??;
    qualifier(sentence.word(closing + 2))
}

/// `1/8 in. thick when wet, as a minimum`, `3-1/4 in. above flutes, min`, `3 in., not deeper`: a qualifier that a comma sets off behind a number and a
/// few words about it. Another number between, or a verb, and it may be said of something else.
pub(super) fn set_off(sentence: &Sentence<'_>, last: usize) -> Option<Relation> {
    const MOST_WORDS: usize = 7;
    const VERBS: &[&str] = &[
        "shall", "must", "is", "are", "may", "with", "and", "or", "but",
    ];
    let start = sentence.skip_parentheses(last);
    let measured = (start..start + MOST_WORDS).find(|at| {
        sentence.is_word(*at, "measured")
            && sentence.is_any(at + 1, &["from", "above", "over", "at", "along"])
    });
    let comma = (start..=measured.map_or(start, |at| at + 1) + MOST_WORDS)
        .find(|at| sentence.is_sign(*at, ','))?;
    let plain = (start..comma).all(|at| {
        sentence.has_word(at) && sentence.amount_at(at).is_none() && !sentence.is_any(at, VERBS)
    });
    let (relation, end) = set_off_qualifier(sentence, comma + 1)?;
    (plain
        && (ends_stretch(sentence, end)
            || stops_short(sentence, end)
            || sentence.is_any(end, &["and", "over", "on", "onto"])
                && sentence.amount_at(end + 1).is_none()))
    .then_some(relation)
}

/// What begins an order, and is no name of what has a limit: `A 3/8 IN. BEAD, MIN. TOOL WITHIN 10 MIN.`
const ORDERS: &[&str] = &[
    "tool", "apply", "install", "fasten", "attach", "secure", "remove", "clean", "smooth",
    "trowel", "wipe", "insert",
];

/// `1-1/2" ONTO DECK, MIN. MASK ADJACENT FINISHES`: whether the stop of a shortened qualifier ends the stretch, with no number near behind.
fn stops_short(sentence: &Sentence<'_>, end: usize) -> bool {
    let stopped = end > 0 && sentence.ends_in_stop(end - 1);
    // A noun of measure behind it is what it limits: `LAP 1-1/2" ONTO DECK, MAX. JOINT IN ANY WALL IS 2"`.
    let placed = sentence.is_any(end, &["at", "on", "in", "for"]);
    let mut later = (end..sentence.tokens.len())
        .take_while(|at| !sentence.is_sign(*at, ';'))
        .filter_map(|at| sentence.amount_at(at))
        .peekable();
    stopped
        && (sentence.is_any(end, ORDERS)
            || later
                .peek()
                .is_none_or(|next| placed && closes_itself(sentence, *next)))
}

/// The relation of a qualifier that stands for itself, and the token after it: `min`, `as a minimum`, `at the least`, `not deeper`.
pub(super) fn set_off_qualifier(sentence: &Sentence<'_>, at: usize) -> Option<(Relation, usize)> {
    let lead = if sentence.is_word(at, "as") && sentence.is_any(at + 1, &["a", "the"]) {
        2
    } else if sentence.is_word(at, "at") {
        1 + usize::from(sentence.is_word(at + 1, "the"))
    } else {
        0
    };
    let word = sentence.word(at + lead);
    // `48 hours, not before`
    if lead == 0 && sentence.is_word(at, "not") && sentence.is_word(at + 1, "before") {
        return Some((Relation::AtLeast, at + 2));
    }
    if lead == 0
        && sentence.is_any(at, &["not", "no", "never"])
        && !is_denied_both_ways(sentence, at)
    {
        let opposite = match or_more(sentence.word(at + 1))? {
            Relation::AtLeast => Relation::AtMost,
            _ => Relation::AtLeast,
        };
        return Some((opposite, at + 2));
    }
    let relation = match word {
        "least" => Relation::AtLeast,
        "most" => Relation::AtMost,
        "tops" if lead == 0 => Relation::AtMost,
        _ => qualifier(word).filter(|relation| {
            matches!(
                relation,
                Relation::AtLeast | Relation::AtMost | Relation::Nominal
            )
        })?,
    };
    Some((relation, at + lead + 1))
}

/// `2 in. from ends, max.`: a distance from a place, closed by its qualifier.
pub(super) fn place_closed(sentence: &Sentence<'_>, last: usize) -> Option<Relation> {
    const MOST_WORDS: usize = 4;
    let from = sentence.skip_parentheses(last);
    if !sentence.is_word(from, "from") {
        return None;
    }
    // `2 in. from ends max.`
    let closing = (from + 2..from + 2 + MOST_WORDS)
        .find(|at| sentence.is_any(*at, &["max", "maximum", "min", "minimum"]));
    let near = closing.filter(|at| {
        (from + 1..*at).all(|at| sentence.has_word(at) && sentence.amount_at(at).is_none())
    });
    if let Some(at) = near.filter(|at| ends_stretch(sentence, at + 1)) {
        return qualifier(sentence.word(at));
    }
    let comma = (from + 2..from + 2 + MOST_WORDS).find(|at| sentence.is_sign(*at, ','))?;
    let plain = (from + 1..comma).all(|at| sentence.has_word(at));
    let closes = sentence.is_any(comma + 2, &["and"]) || ends_stretch(sentence, comma + 2);
    qualifier(sentence.word(comma + 1)).filter(|_| plain && closes)
}

/// `1/2" LAP ON BD. MIN.`: a qualifier that ends a stretch of one number and a few words about it.
pub(super) fn closes_stretch(
    sentence: &Sentence<'_>,
    index: usize,
    last: usize,
) -> Option<Relation> {
    const MOST_WORDS: usize = 5;
    const VERBS: &[&str] = &[
        "shall",
        "must",
        "is",
        "are",
        "may",
        "with",
        "and",
        "or",
        "but",
        "of",
        "than",
        "as",
        "at",
        "in",
        "joint",
        "width",
        "opening",
        "extension",
        "gap",
    ];
    let start = sentence.skip_parentheses(last);
    let closing = (start..=start + MOST_WORDS)
        .find(|at| sentence.is_any(*at, &["min", "minimum", "max", "maximum"]))?;
    let plain = (start..closing).all(|at| {
        sentence.has_word(at) && sentence.amount_at(at).is_none() && !sentence.is_any(at, VERBS)
    });
    let opens = index == 0
        || sentence.amount(index - 1).is_none_or(|before| {
            (before.last..sentence.amounts.get(index).map_or(0, |own| own.first))
                .any(|at| sentence.is_stop(at) || sentence.is_sign(at, '.'))
        });
    (plain && opens && ends_stretch(sentence, closing + 1) && !may_open_a_label(sentence, closing))
        .then(|| qualifier(sentence.word(closing)))?
}
