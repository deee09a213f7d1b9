//! Things that are named only to set what is meant against them: "packing depth, *not joint width*, min 4 in.", "wider than *the joint*, 4 in. deep", "sized
//! to fit *studs*, min 2 in. deep".
//!
//! What it would misread: a number behind the comma that is the other's after all, "wider than the stud, which is 4 in. deep".

use crate::rules::Sentence;

/// How many words may stand between what sets against and a word of the thing.
const REACH: usize = 5;

/// Words that go on with what is meant.
const VERBS: &[&str] = &[
    "shall", "must", "should", "may", "can", "will", "is", "are", "be", "has", "have",
];

/// Whether a token stands in words that only say what is not meant, what is smaller or larger, or what something fits.
pub(super) fn is_set_against(sentence: &Sentence<'_>, at: usize) -> bool {
    is_led(sentence, at, |at| sets_against(sentence, at))
}

/// Whether a token stands in words that only say what is not meant.
pub(super) fn is_denied(sentence: &Sentence<'_>, at: usize) -> bool {
    is_led(sentence, at, |at| denies(sentence, at))
}

/// Whether words without a number or a verb lead to a token, and on to no number.
fn is_led(sentence: &Sentence<'_>, at: usize, leads: impl Fn(usize) -> bool) -> bool {
    let goes_on = |at: &usize| {
        let plain = sentence.has_word(*at);
        plain && sentence.amount_at(*at).is_none() && !sentence.is_any(*at, VERBS)
    };
    let led = (at.saturating_sub(REACH)..at)
        .rev()
        .take_while(goes_on)
        .any(leads);
    // "deeper than a slab 4 in. thick": the number is of what stands right before it.
    led && (at..sentence.tokens.len())
        .find(|at| !goes_on(at))
        .is_none_or(|end| sentence.amount_at(end).is_none())
}

/// Whether words set what follows against what is meant.
fn sets_against(sentence: &Sentence<'_>, at: usize) -> bool {
    const FITS: &[&str] = &["fit", "suit", "receive", "accommodate", "engage"];
    let unlike = sentence.is_word(at, "unlike");
    let Some(before) = at.checked_sub(1) else {
        return unlike;
    };
    let compares = sentence.is_word(at, "than");
    let instead = sentence.is_word(at, "of") && sentence.is_any(before, &["instead", "exclusive"]);
    let fits = sentence.is_any(at, FITS) && sentence.is_word(before, "to");
    unlike || compares || instead || fits || denies(sentence, at)
}

/// ", not joint width": a denial that no verb or comparison goes with.
fn denies(sentence: &Sentence<'_>, at: usize) -> bool {
    const BOUNDING: &[&str] = &[
        "less",
        "more",
        "over",
        "under",
        "above",
        "below",
        "exceeding",
        "to",
        "only",
        "in",
        "at",
        "within",
        "required",
        "permitted",
        "allowed",
        "closer",
        "farther",
        "further",
    ];
    let Some(before) = at.checked_sub(1) else {
        return false;
    };
    let parted = sentence.is_sign(before, ',')
        || sentence.is_sign(before, '(')
        || sentence.is_any(before, &["and", "but"]);
    sentence.is_word(at, "not") && parted && !sentence.is_any(at + 1, BOUNDING)
}
