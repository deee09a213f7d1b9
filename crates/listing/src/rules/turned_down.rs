//! Whether what stands behind or before a number turns it down: "under 4 in. *not permitted*", "3 pcf wool *is too light*", "*not* 4 pcf".
//!
//! What compares and is turned down limits the other way; a value that is turned down limits nothing, and is left unread. "Not permitted" behind words that
//! compare with the number, "4 in., a lesser depth is not allowed", is said of those, and stops here; a thing named between without a comma ("24 in. OC butt
//! joints not permitted") would be misread, as the number's own refusal.

use super::Sentence;
use super::comparison_before::NEGATIONS;
use crate::phrase::Amount;

/// How many words behind a number its refusal may stand.
const REACH: usize = 11;

const ADMITTED: &[&str] = &[
    "permitted",
    "allowed",
    "acceptable",
    "accepted",
    "admissible",
    "permissible",
    "adequate",
    "sufficient",
    "enough",
    "tolerated",
    "approved",
    "suitable",
    "compliant",
];
const REFUSED: &[&str] = &[
    "unacceptable",
    "prohibited",
    "forbidden",
    "disallowed",
    "inadequate",
    "insufficient",
    "unsuitable",
    "unsatisfactory",
    "nonconforming",
    "non-conforming",
    "noncompliant",
    "non-compliant",
    "refused",
    "rejected",
    "excluded",
];
/// What is done about a fault, so that it is one no longer.
const REMEDIED: &[&str] = &[
    "supplemented",
    "recoated",
    "redone",
    "reinstalled",
    "corrected",
    "respaced",
    "relocated",
    "resprayed",
    "thickened",
    "discarded",
    "omitted",
    "avoided",
    "reinforced",
];
/// What a fault does to a listing.
const SPOILS: &[&str] = &[
    "voids",
    "void",
    "invalidates",
    "invalidate",
    "nullifies",
    "nullify",
    "disqualifies",
    "disqualify",
];
const USED: &[&str] = &["use", "substitute", "install", "employ"];
/// Words of something else than the number before them.
const OTHERS: &[&str] = &[
    "less",
    "lesser",
    "more",
    "greater",
    "fewer",
    "thinner",
    "thicker",
    "wider",
    "narrower",
    "deeper",
    "shallower",
    "longer",
    "shorter",
    "lighter",
    "heavier",
    "smaller",
    "larger",
    "closer",
    "other",
    "others",
    "any",
    "no",
    "min",
    "minimum",
    "max",
    "maximum",
    "but",
    "where",
    "when",
    "if",
    "unless",
    "except",
    "which",
    "that",
];

/// Whether the words behind an amount turn it down.
pub(super) fn is_turned_down(sentence: &Sentence<'_>, index: usize) -> bool {
    sentence
        .amount(index)
        .is_some_and(|amount| is_turned_down_amount(sentence, amount))
}

/// The same of an amount.
pub(super) fn is_turned_down_amount(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    !is_counted_on(sentence, amount)
        && behind(sentence, amount).any(|at| refuses(sentence, at) || is_put_right(sentence, at))
}

/// Whether what compares so is taken away, for whatever reason: "fireproofing over 1 in. thick shall be removed". What it limits is left to a person.
pub(super) fn is_taken_away(sentence: &Sentence<'_>, index: usize) -> bool {
    const AWAY: &[&str] = &["removed", "replaced", "trimmed", "repaired", "patched"];
    let amount = sentence.amount(index);
    amount.is_some_and(|amount| behind(sentence, amount).any(|at| is_done(sentence, at, AWAY)))
}

/// Whether a value that compares with nothing is turned down: by the words behind it, or by a "not" or "do not use" right before it.
pub(super) fn is_rejected(sentence: &Sentence<'_>, index: usize) -> bool {
    let Some(amount) = sentence.amount(index) else {
        return false;
    };
    let refused = !is_counted_on(sentence, amount)
        && behind(sentence, amount).any(|at| refuses(sentence, at));
    refused || denied_before(sentence, amount.first) || is_kept_clear(sentence, amount)
}

/// Whether an amount is what a count is taken on: "more than one butt per 1.5 m".
fn is_counted_on(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    amount.first > 0 && sentence.is_any(amount.first - 1, &["per", "every", "each"])
}

/// The tokens behind an amount up to where something else begins; the amounts that an "or" joins to it are passed over.
fn behind<'s>(sentence: &'s Sentence<'_>, amount: &Amount) -> impl Iterator<Item = usize> + 's {
    let mut at = sentence.skip_parentheses(amount.last);
    let last = at + REACH;
    core::iter::from_fn(move || {
        if let Some(next) = sentence
            .amount_at(at)
            .and_then(|index| sentence.amount(index))
        {
            let joined = at > 0 && sentence.is_any(at - 1, &["or", "by", "x", "per", "every"]);
            at = if joined {
                sentence.skip_parentheses(next.last)
            } else {
                return None;
            };
        }
        let comma = sentence.is_sign(at, ',') && !refuses(sentence, at + 1);
        let ends = at > last
            || sentence.token(at).is_none()
            || [';', ':', '.']
                .iter()
                .any(|sign| sentence.is_sign(at, *sign))
            || sentence.is_any(at, OTHERS)
            || comma;
        let ends = ends || sentence.is_word(at, "and") && !refuses(sentence, at + 1);
        at += 1;
        (!ends).then_some(at - 1)
    })
}

/// Whether a refusal begins at a token.
fn refuses(sentence: &Sentence<'_>, at: usize) -> bool {
    if sentence.is_word(at, "not") {
        let article = usize::from(sentence.is_any(at + 1, &["be", "a", "an"]));
        let to_be = sentence.is_word(at + 1, "to")
            && sentence.is_word(at + 2, "be")
            && sentence.is_any(at + 3, &["used", "installed", "accepted", "substituted"]);
        return to_be || sentence.is_any(at + 1 + article, ADMITTED);
    }
    if sentence.is_any(at, &["is", "are"]) {
        return sentence.is_word(at + 1, "too")
            || sentence.is_word(at + 1, "far") && sentence.is_word(at + 2, "too");
    }
    let spoils = sentence.is_any(at, SPOILS)
        && sentence.is_any(at + 1, &["the", "this", "any", "your", "its"]);
    spoils || sentence.is_any(at, REFUSED)
}

/// Whether what is said at a token puts a fault right: "shall be supplemented", "are omitted".
fn is_put_right(sentence: &Sentence<'_>, at: usize) -> bool {
    is_done(sentence, at, REMEDIED)
}

/// Whether one of some things must be done, and doesn't just may.
fn is_done(sentence: &Sentence<'_>, at: usize, done: &[&str]) -> bool {
    let be = sentence.is_word(at, "be")
        && at > 0
        && sentence.is_any(at - 1, &["shall", "must", "should", "to"]);
    (be || sentence.is_any(at, &["is", "are"])) && sentence.is_any(at + 1, done)
}

/// `not 4 pcf`, `do not substitute 4 pcf wool`: a value that a negation stands right before.
fn denied_before(sentence: &Sentence<'_>, first: usize) -> bool {
    let article = usize::from(first > 0 && sentence.is_any(first - 1, &["a", "an", "any", "the"]));
    let Some(at) = first.checked_sub(1 + article) else {
        return false;
    };
    let denied = |at: usize| at > 0 && sentence.is_any(at - 1, NEGATIONS);
    let used = sentence.is_any(at, USED) && denied(at);
    let be = sentence.is_word(at, "be") && denied(at);
    sentence.is_any(at, &["not", "never"]) || used || be
}

/// `no fasteners in the top 2 in.`, `screws in the top 2 in. are omitted`: a stretch that is kept clear.
fn is_kept_clear(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    const ENDS: &[&str] = &[
        "top",
        "bottom",
        "upper",
        "lower",
        "last",
        "first",
        "outer",
        "uppermost",
    ];
    let stretch = amount.unit.dimension() == measure::Dimension::Length
        && amount.first > 0
        && sentence.is_any(amount.first - 1, ENDS);
    let start = (0..amount.first)
        .rev()
        .find(|at| sentence.is_stop(*at))
        .unwrap_or(0);
    let left_out = |first: usize, last: usize| {
        (first..last).any(|at| leaves_out(sentence, at) || sentence.is_any(at, NEGATIONS))
    };
    stretch
        && (left_out(start, amount.first)
            || behind(sentence, amount).any(|at| leaves_out(sentence, at)))
}

/// Whether a word says that something is left out: `omitted`, `left out`, `avoid`.
pub(super) fn leaves_out(sentence: &Sentence<'_>, at: usize) -> bool {
    const LEAVING: &[&str] = &[
        "omit",
        "omits",
        "omitted",
        "omitting",
        "avoid",
        "avoided",
        "avoiding",
        "prohibited",
        "forbidden",
        "excluded",
        "exclude",
        "skip",
        "skipped",
    ];
    sentence.is_any(at, LEAVING)
        || sentence.is_any(at, &["left", "leave", "kept", "keep"])
            && sentence.has_any(at + 1, at + 4, &["out", "clear", "off", "away", "free"])
}
