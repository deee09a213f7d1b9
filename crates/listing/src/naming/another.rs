//! Numbers of something else than the property that fits their words best.

use measure::Unit;
use vocabulary::Property;

use super::mentions::Mention;
use super::subject::Subject;
use super::{
    Name, apart, behind, covering, cues, labelled, laid_on, misheard, movements, neighbouring,
    parts, weights, whereabouts,
};
use crate::phrase::Amount;
use crate::rules::Sentence;

/// Whether a number is of something else than the property that fits its words best.
pub(super) fn is_anothers(
    sentence: &Sentence<'_>,
    amount: &Amount,
    property: &Property,
    subject: &Subject,
    mentions: &[Mention],
) -> bool {
    of_another_thing(sentence, amount.first, property, mentions)
        || labelled_as_another(sentence, amount.first, property, mentions)
        || labelled::goes_on(sentence, amount, property, mentions)
        || apart::is_no_size_of(sentence, amount, property)
        || behind::is_before_another(sentence, amount, property, mentions)
        || misheard::is_misheard(sentence, amount, property, subject, mentions)
        || neighbouring::is_neighbours(sentence, amount, property, subject, mentions)
        || movements::is_movement(sentence, amount, property)
        || covering::is_of_a_cover(sentence, amount, property, subject)
        || laid_on::is_laid_on(sentence, amount, property)
        || parts::is_another_parts(sentence, amount, property, subject, mentions)
        || whereabouts::may_be_the_places(sentence, amount, property, subject, mentions)
}

/// Whether a number is the size of what a preposition leads to right before it, "4 in. in floors min 5 in. thick", or a distance from something else, and
/// not what was named before.
pub(crate) fn is_of_what_is_behind(
    sentence: &Sentence<'_>,
    index: usize,
    held: &Name,
    subject: &Subject,
) -> bool {
    let held = held.property.zip(sentence.amount(index));
    held.is_some_and(|(taken, amount)| {
        behind::sized(sentence, amount, taken, subject).is_some()
            || neighbouring::is_from_the_other(sentence, amount, taken)
    })
}

/// The label that a count stands right behind: "Layers" of `Layers: 2 each side`, whose sides it doesn't count.
pub(super) fn counting_label<'a>(sentence: &Sentence<'a>, amount: &Amount) -> Option<&'a str> {
    const MOST_WORDS: usize = 5;
    let colon = amount.first.checked_sub(1)?;
    let labelled = amount.unit == Unit::Count
        && (1..=MOST_WORDS).contains(&colon)
        && sentence.is_sign(colon, ':')
        && (0..colon).all(|at| sentence.has_word(at));
    labelled.then(|| sentence.words(0, colon))
}

/// Whether the sentence speaks of another thing just before a number, and of what the property is about not at all: an item's title says what
/// the item is about, not what each thing in it is.
fn of_another_thing(
    sentence: &Sentence<'_>,
    first: usize,
    property: &Property,
    mentions: &[Mention],
) -> bool {
    let carried = (apart::is_size(property) && !apart::is_of_place(property))
        .then(|| weights::carrier(sentence, first, mentions))
        .flatten();
    let other = carried
        .or_else(|| weights::subject(sentence, first, mentions))
        .filter(|mention| !mention.is_weak() || mention.is_fill_of(property));
    // A size is that of the thing named last, "safing on clips 1 in. wide"; how deep or far something reaches is said past other things.
    let from = other
        .filter(|_| apart::is_size(property))
        .map_or(0, |other| other.first);
    let named = mentions
        .iter()
        .filter(|mention| mention.first >= from)
        .any(|mention| {
            let inner = mention.inner().iter().copied();
            inner
                .chain([mention.component])
                .any(|component| component.name == property.component)
        });
    // The distance of the top screw is the board's, and is said of screws.
    let said_of = |mention: &Mention| {
        property
            .attribute
            .split('_')
            .any(|part| part.len() > 3 && mention.words.contains(part))
    };
    other.is_some_and(|mention| (!named || mention.component.is_other()) && !said_of(mention))
}

/// The colon of a label that a number stands right behind, but for what bounds it.
pub(super) fn label_end(sentence: &Sentence<'_>, first: usize) -> Option<usize> {
    let bounds =
        |at: &usize| cues::is_bounding(sentence.word(*at)) || cues::is_comparing(sentence, *at);
    let before = (0..first).rev().find(|at| !bounds(at))?;
    sentence.is_sign(before, ':').then_some(before)
}

/// Whether the label that a number stands behind names another thing than the property's, which is only spoken of further on: "Height of joint: max 5 m
/// without support (clips, see below)".
fn labelled_as_another(
    sentence: &Sentence<'_>,
    first: usize,
    property: &Property,
    mentions: &[Mention],
) -> bool {
    let Some(colon) = label_end(sentence, first) else {
        return false;
    };
    let is_own = |mention: &Mention| mention.component.name == property.component;
    let own_is_behind = mentions
        .iter()
        .all(|mention| !is_own(mention) || mention.first >= first)
        && mentions.iter().any(is_own);
    own_is_behind
        && mentions
            .iter()
            .any(|mention| mention.last <= colon && !mention.is_weak())
}

/// Whether a label stands between a stop and a number, "overlap ≥ 12 mm; *voids*: ≤ 3 mm": a word or two and then a colon or a sign.
pub(super) fn has_label(sentence: &Sentence<'_>, floor: usize, first: usize) -> bool {
    const MOST_WORDS: usize = 3;
    let Some(stop) = (floor..first).find(|at| sentence.is_stop(*at)) else {
        return false;
    };
    let plain = |at: &usize| sentence.has_word(*at) && !cues::is_bounding(sentence.word(*at));
    let end = (stop + 1..first).find(|at| !plain(at)).unwrap_or(first);
    let led = sentence.is_sign(end, ':') || cues::is_comparing(sentence, end);
    (1..=MOST_WORDS).contains(&(end - stop - 1)) && end < first && led
}
