//! Numbers that go on with what a label names: the 150 mm of "Wall thickness: at least 100 mm for EI 60, at least 150 mm for EI 120", whatever the item is
//! about.
//!
//! What it would misread: a number of the item's own behind the label's, with no word that says so, "Wall thickness: 100 mm, at least 20 mm".

use vocabulary::Property;

use super::Mention;
use crate::phrase::Amount;
use crate::rules::Sentence;

/// Words that say which measure of a thing a number is.
const MEASURES: &[&str] = &[
    "depth",
    "thickness",
    "width",
    "height",
    "length",
    "deep",
    "thick",
    "thk",
    "wide",
    "high",
    "long",
];

/// Whether the label of a sentence names a measure of another thing than a property's, and nothing behind it names another measure or thing.
pub(super) fn goes_on(
    sentence: &Sentence<'_>,
    amount: &Amount,
    property: &Property,
    mentions: &[Mention],
) -> bool {
    const MOST_WORDS: usize = 5;
    let is_word = |at: &usize| sentence.has_word(*at);
    let colon = (0..amount.first).find(|at| !is_word(at));
    let Some(colon) =
        colon.filter(|colon| sentence.is_sign(*colon, ':') && (1..=MOST_WORDS).contains(colon))
    else {
        return false;
    };
    let plain = (colon..amount.first)
        .all(|at| !sentence.is_sign(at, ';') && !sentence.is_any(at, MEASURES))
        && !sentence.is_any(sentence.skip_parentheses(amount.last), MEASURES)
        && mentions
            .iter()
            .all(|mention| mention.first < colon || mention.first >= amount.first);
    // "Thickness on the beam:" is of what lies there.
    let labels = |mention: &Mention| {
        mention.last <= colon
            && !mention.is_weak()
            && mention.first <= 1
            && sentence.has_any(mention.first, colon, MEASURES)
    };
    let other = |mention: &Mention| {
        let inner = mention.inner().iter().copied();
        inner
            .chain([mention.component])
            .all(|own| own.name != property.component)
    };
    let labelled =
        mentions.iter().any(labels) && mentions.iter().filter(|mention| labels(mention)).all(other);
    plain && labelled
}
