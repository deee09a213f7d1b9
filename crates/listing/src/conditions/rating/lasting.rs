//! Hours that are a time that passes, and no rating.

use measure::Unit;

use super::{after_hours, is_rating_time};
use crate::phrase::Amount;
use crate::rules::Sentence;

/// Words near hours that make them a duration.
pub(in crate::conditions) const LASTS: &[&str] = &[
    "cure",
    "cured",
    "curing",
    "cures",
    "dry",
    "dried",
    "drying",
    "dries",
    "after",
    "before",
    "within",
    "wait",
    "waiting",
    "interval",
    "intervals",
    "pause",
    "delay",
    "longer",
    "tack",
    "recoat",
    "old",
    "age",
    "life",
    "minutes",
    "sooner",
    "later",
    "apart",
    "exposed",
    "interrupted",
    "passes",
    "left",
    "leave",
    "following",
    "until",
    "elapse",
    "elapsed",
    "elapses",
    "stand",
    "shift",
    "rain",
    "mixing",
    "mixed",
    "set",
    "setting",
    "temperature",
    "°f",
    "overnight",
    "every",
    "per",
    "between",
];

/// Whether hours are a time that passes: by the words near them, or because no rating is longer than four hours.
pub(super) fn lasts(sentence: &Sentence<'_>, first: &Amount, last: &Amount) -> bool {
    const BEFORE: usize = 7;
    const BEHIND: usize = 4;
    // "one layer per side for 1 hr": no time goes by for a side.
    let shares = |at: usize| {
        sentence.is_word(at, "per") && sentence.is_any(at + 1, &["side", "face", "wall", "runner"])
    };
    let told = |at: usize| sentence.is_any(at, LASTS) && !shares(at);
    let near = (first.first.saturating_sub(BEFORE)..first.first).any(told)
        || (last.last..last.last + BEHIND)
            .take_while(|at| !sentence.is_sign(*at, ';'))
            .any(told);
    let short = measure::Quantity::new(last.lo, last.unit)
        .to(Unit::Hour)
        .is_some_and(|hours| hours.number <= 4);
    near || !short || is_borne(sentence, first.first)
}

/// Whether hours are how long something is borne or done, by the words of its stretch before them: "withstand 180 C for 30 min", "tested for 1 hr", "a load
/// is placed 2 ft from the edge for 30 minutes".
fn is_borne(sentence: &Sentence<'_>, hours: usize) -> bool {
    const BORNE: &[&str] = &[
        "withstand",
        "withstands",
        "withstood",
        "resist",
        "resists",
        "resisted",
        "endure",
        "endures",
        "tested",
        "load",
        "loads",
        "loaded",
        "heated",
        "heat",
        "immersed",
        "soaked",
        "submerged",
        "subjected",
        "conditioned",
        "kept",
        "held",
        "burned",
    ];
    let start = (0..hours)
        .rev()
        .find(|at| sentence.is_stop(*at) || sentence.is_sign(*at, '('))
        .map_or(0, |at| at + 1);
    hours > 0 && sentence.is_word(hours - 1, "for") && sentence.has_any(start, hours, BORNE)
}

/// Whether a sentence says what is done after a while, so that its hours are no ratings: "first coat 1/16 in. wet, 2 hr; second coat".
pub(in crate::conditions) fn speaks_of_time(sentence: &Sentence<'_>) -> bool {
    const TIMED: &[&str] = &[
        "first", "second", "recoat", "prime", "primed", "primer", "cure", "cures", "curing", "dry",
        "dries", "drying", "skin", "skins", "tack", "wait", "set", "sets", "cured", "then",
    ];
    sentence.has_any(0, sentence.tokens.len(), TIMED)
}

/// Whether hours stand alone behind a comma and end their stretch: `4 in. min, 1 hr;`.
pub(super) fn ends_stretch(sentence: &Sentence<'_>, start: usize, end: usize) -> bool {
    // `1 layer each side 1 hr; 2 layers each side 2 hr`
    let behind = start > 0
        && (sentence.is_sign(start - 1, ',')
            || sentence.is_any(start - 1, &["side", "face", "thick", "deep"]));
    let ends = sentence.token(end).is_none()
        || sentence.is_sign(end, ';')
        || sentence.is_sign(end, '.') && sentence.token(end + 1).is_none();
    behind && ends
}

/// Whether several hours of a sentence each end a stretch: one alone may say how long something takes.
pub(super) fn ends_several(sentence: &Sentence<'_>) -> bool {
    let ending = |amount: &&Amount| {
        is_rating_time(amount)
            && ends_stretch(sentence, amount.first, after_hours(sentence, amount.last).0)
    };
    sentence.amounts.iter().filter(ending).count() > 1
}
