//! Several measures named before several numbers: "spacing and width max 12 in. and min 1 in.", "min thickness and density of 4 in. and 4 pcf".
//!
//! Which number is of which measure only their order says, and which the limits reach nothing does; so each is left unread. What it would misread: two
//! numbers that bound both measures alike, "width and depth 1 in. or 2 in."

use super::Sentence;
use super::respective::{names_two_films, share};
use crate::phrase::Amount;

/// How many words may stand between the measures and their first number.
const REACH: usize = 7;
/// How many words may stand between two numbers, or two measures, of one list.
const JOINED: usize = 4;

const MEASURES: &[&str] = &[
    "width",
    "widths",
    "depth",
    "depths",
    "thickness",
    "thicknesses",
    "length",
    "lengths",
    "height",
    "heights",
    "spacing",
    "spacings",
    "distance",
    "distances",
    "density",
    "densities",
    "diameter",
    "diameters",
    "embedment",
    "penetration",
    "overlap",
    "overlaps",
    "lap",
    "laps",
    "recess",
    "gap",
    "gauge",
    "weight",
    "leg",
    "legs",
    "flange",
    "flanges",
];

/// Whether a number is one of several that stand behind as many measures.
pub(super) fn is_given_out(sentence: &Sentence<'_>, index: usize) -> bool {
    let mut first = index;
    while first > 0 && are_joined(sentence, first - 1) {
        first -= 1;
    }
    let several = first < index || are_joined(sentence, index);
    let named = sentence.amount(first).is_some_and(|amount| {
        several && names_several(sentence, sentence.floor(first), amount)
            || names_two_films(sentence, amount)
    });
    named && share(sentence, index).is_none()
}

/// Whether the words before a number name two measures together: `spacing and edge distance not to exceed`.
fn names_several(sentence: &Sentence<'_>, floor: usize, amount: &Amount) -> bool {
    let ends = |at: &usize| sentence.is_sign(*at, ';') || sentence.is_sign(*at, '.');
    let lowest = floor.max(amount.first.saturating_sub(REACH + 1));
    let stretch = (lowest..amount.first).rev().take_while(|at| !ends(at));
    let Some(last) = stretch
        .into_iter()
        .find(|at| sentence.is_any(*at, MEASURES))
    else {
        return false;
    };
    let mut before = (floor.max(last.saturating_sub(JOINED))..last)
        .rev()
        .take_while(|at| !ends(at));
    let Some(first) = before.find(|at| sentence.is_any(*at, MEASURES)) else {
        return false;
    };
    // `deep leg, legs 2-1/2 in.` names one.
    let stem = |at: usize| sentence.word(at).trim_end_matches('s');
    if stem(first) == stem(last) {
        return false;
    }
    // `min width and max spacing` limits each by itself, and is joined as much.
    let joint = |at: usize| {
        sentence.is_any(at, &["and", "or"])
            || [',', '&', '/']
                .iter()
                .any(|sign| sentence.is_sign(at, *sign))
    };
    (first + 1..last).any(joint)
}

/// Whether the next number is joined to this one by an "and" and at most its limit: `12 in. and min 1 in.`
fn are_joined(sentence: &Sentence<'_>, index: usize) -> bool {
    const LIMITING: &[&str] = &[
        "min", "minimum", "max", "maximum", "not", "less", "more", "than", "at", "least", "most",
        "nom", "nominal", "no",
    ];
    let Some((own, next)) = sentence.amount(index).zip(sentence.amount(index + 1)) else {
        return false;
    };
    let closes = |at: &usize| sentence.is_any(*at, &["min", "minimum", "max", "maximum"]);
    let behind = sentence.skip_parentheses(own.last);
    let joint = behind + usize::from(closes(&behind));
    let listed = sentence.is_any(joint, &["and", "or"])
        || ['&', '/', ',']
            .iter()
            .any(|sign| sentence.is_sign(joint, *sign));
    let near = next.first > joint && next.first - joint <= JOINED;
    listed && near && (joint + 1..next.first).all(|at| sentence.is_any(at, LIMITING))
}
