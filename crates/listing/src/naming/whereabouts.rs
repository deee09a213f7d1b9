//! Things that only say where a measure holds: "packing 4 in. deep at columns", "except that at beams the depth shall be 5 in.". The depth of a beam
//! is another, and whoever measured that would answer with it.
//!
//! What it would misread: a measure that is the place's own behind a noun of its own, "at the beam, whose depth shall be 8 in."

use measure::Dimension;
use vocabulary::Property;

use super::{Mention, Subject};
use crate::phrase::Amount;
use crate::rules::Sentence;

/// Words that lead to where something is.
const LEADS: &[&str] = &[
    "at",
    "over",
    "along",
    "alongside",
    "near",
    "around",
    "behind",
    "above",
    "below",
    "beneath",
    "under",
    "against",
    "beside",
    "across",
    "opposite",
    "past",
    "beyond",
];

/// What is done with what is laid on a thing.
const LAID: &[&str] = &[
    "applied",
    "sprayed",
    "troweled",
    "trowelled",
    "brushed",
    "gunned",
    "spread",
];

/// Words that say which measure of a thing a number is.
const MEASURES: &[&str] = &[
    "depth",
    "depths",
    "thickness",
    "thicknesses",
    "width",
    "widths",
    "height",
    "heights",
    "length",
    "lengths",
];

const ADJECTIVES: &[&str] = &["deep", "thick", "thk", "wide", "high", "tall", "long"];

/// Whether a thing only says where a measure is taken.
pub(super) fn only_says_where(sentence: &Sentence<'_>, amount: &Amount, mention: &Mention) -> bool {
    let Some(lead) = lead(sentence, mention) else {
        return false;
    };
    // "over min 4 in. thick wool": the number is the place's own.
    let is_its_size = lead < amount.first && amount.last <= mention.first;
    if amount.unit.dimension() != Dimension::Length || is_its_size {
        return false;
    }
    if mention.first >= amount.last {
        return is_told_behind(sentence, amount) || named_before(sentence, 0, amount);
    }
    // "at a wall height of 9 ft"
    if sentence.is_any(mention.last, MEASURES) {
        return false;
    }
    // "near the beam, 3 in. thick", "patched around each clip to 1/2 in. thickness"
    let parted = (sentence.is_sign(mention.last, ',')
        || sentence.is_any(mention.last, &["to", "at"]))
        && (mention.last + 1..amount.first).all(|at| is_bounding(sentence, at));
    named_before(sentence, mention.last, amount) || parted && is_told_behind(sentence, amount)
}

/// Whether a thing is named with its own size as what something lies on, and a number behind it is of that: "over min 1 in. dia *backer rod*, to a depth of
/// 1/2 in."
pub(super) fn lies_under(sentence: &Sentence<'_>, amount: &Amount, mention: &Mention) -> bool {
    mention.last <= amount.first
        && behind_its_size(sentence, mention).is_some()
        && only_says_where(sentence, amount, mention)
}

/// Whether a number may as soon be the size of the place right before it as of the thing that is there: "at columns 4 in. deep", "at walls 6 in.
/// thick the depth is 1 in."
pub(super) fn may_be_the_places(
    sentence: &Sentence<'_>,
    amount: &Amount,
    property: &Property,
    subject: &Subject,
    mentions: &[Mention],
) -> bool {
    let Some(place) = mentions
        .iter()
        .rev()
        .find(|mention| mention.last <= amount.first)
    else {
        return false;
    };
    let near = (place.last..amount.first)
        .all(|at| is_bounding(sentence, at) && !sentence.is_any(at, &["in", "by", "of", "to"]));
    let Some(lead) = lead(sentence, place).filter(|_| near) else {
        return false;
    };
    // "over a strip 8 in. wide" tells the strip's own, and "the slab over the wall 5 in. thick" the slab's.
    let told = sentence.is_any(lead + 1, &["a", "an"])
        || mentions.iter().any(|mention| mention.last == lead);
    // "Over packing 4 in. deep, sealant 1/2 in. deep" goes on with what lies over it.
    let lies_below = property.component == place.component.name
        && sentence.is_any(lead, &["over", "above", "behind"])
        && (amount.last..sentence.tokens.len())
            .find(|at| sentence.is_stop(*at))
            .is_some_and(|stop| mentions.iter().any(|mention| mention.first == stop + 1));
    // "sealant 1/2 in. deep, at the deck 1 in. deep" goes on.
    let goes_on = sentence
        .amounts
        .iter()
        .any(|other| other.last <= lead && is_told_behind(sentence, other));
    !told
        && !lies_below
        && !goes_on
        && is_told_behind(sentence, amount)
        && !subject.is_about(&place.component.name)
}

/// Whether a thing is named as where something is: "at beams", "over the packing".
pub(crate) fn is_place(sentence: &Sentence<'_>, mention: &Mention) -> bool {
    lead(sentence, mention).is_some()
}

/// The word that leads to a place, where it is named so.
fn lead(sentence: &Sentence<'_>, mention: &Mention) -> Option<usize> {
    const ARTICLES: &[&str] = &[
        "the", "a", "an", "each", "every", "all", "any", "both", "either",
    ];
    let plain = (0..mention.first)
        .rev()
        .find(|at| !sentence.is_any(*at, ARTICLES) && !sentence.is_any(*at, &["steel", "metal"]))?;
    if sentence.is_any(plain, LEADS) {
        return Some(plain);
    }
    // "applied to mineral wool"
    if sentence.is_any(plain, &["to", "on", "onto"]) {
        return (plain > 0 && sentence.is_any(plain - 1, LAID)).then_some(plain);
    }
    behind_its_size(sentence, mention)
}

/// The word that leads to a place whose size stands before it: "over min 1 in. dia backer rod".
fn behind_its_size(sentence: &Sentence<'_>, mention: &Mention) -> Option<usize> {
    const OVER: &[&str] = &["over", "behind"];
    let mut sizes = sentence.amounts.iter().rev();
    let size = sizes.find(|size| size.last <= mention.first)?;
    let told = (sentence.skip_parentheses(size.last)..mention.first).all(|at| {
        sentence.is_any(at, ADJECTIVES) || sentence.is_any(at, &["dia", "diam", "diameter"])
    });
    (0..size.first)
        .rev()
        .find(|at| sentence.is_any(*at, OVER) || !is_bounding(sentence, *at))
        .filter(|at| told && sentence.is_any(*at, OVER))
}

/// Whether a measure is named between a place in a sentence and a number, and not as that of something: "at beams the depth shall be 5 in."
fn named_before(sentence: &Sentence<'_>, from: usize, amount: &Amount) -> bool {
    (from..amount.first)
        .rev()
        .take_while(|at| !sentence.is_stop(*at) && sentence.amount_at(*at).is_none())
        .any(|at| sentence.is_any(at, MEASURES))
}

/// Whether the words behind a number say which measure it is: "4 in. deep", "4 in. in depth".
fn is_told_behind(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    let mut at = sentence.skip_parentheses(amount.last);
    at += usize::from(sentence.is_any(at, &["min", "minimum", "max", "maximum", "in"]));
    sentence.is_any(at, ADJECTIVES) || sentence.is_any(at, MEASURES)
}

fn is_bounding(sentence: &Sentence<'_>, at: usize) -> bool {
    super::cues::is_bounding(sentence.word(at)) || super::cues::is_comparing(sentence, at)
}
