//! Words beside a number that seem to say what it measures, and are about something else: the "wide" of "12 in. in wide walls", the "wider" of "spacing
//! wider than 12 in.", the clip of "splices 24 in. apart, between clips".
//!
//! What it would misread: an adjective behind a preposition that is the number's own, "4 in. for deep packing".

use vocabulary::Property;

use super::{Mention, Subject, apart};
use crate::phrase::Amount;
use crate::rules::{Sentence, is_spaced};

/// Whether a word that seems to name a measure is said of another thing than a number.
pub(super) fn is_of_another_thing(sentence: &Sentence<'_>, at: usize) -> bool {
    is_attributive(sentence, at) || compares_a_spacing(sentence, at) || is_a_rate(sentence, at)
}

/// `in wide walls`, `for thick floors`, `along the long edge`, `wide joints: max 12 in. OC`: an adjective before its noun, with no number before it.
fn is_attributive(sentence: &Sentence<'_>, at: usize) -> bool {
    const ADJECTIVES: &[&str] = &["wide", "thick", "deep", "long", "high", "tall"];
    const NOUNS: &[&str] = &[
        "wall", "walls", "floor", "floors", "joint", "joints", "slab", "slabs", "edge", "edges",
        "side", "sides", "gap", "gaps", "opening", "openings", "deck", "decks", "flute", "flutes",
        "section", "sections", "run", "runs", "span", "spans",
    ];
    const LEADING: &[&str] = &[
        "in", "for", "along", "at", "of", "over", "on", "to", "through", "with", "the", "a", "an",
        "each", "per", "very", "where", "both",
    ];
    let leads = at == 0
        || sentence.is_stop(at - 1)
        || sentence.is_sign(at - 1, '.')
        || sentence.is_any(at - 1, LEADING);
    let numbered = sentence
        .amounts
        .iter()
        .any(|amount| sentence.skip_parentheses(amount.last) == at);
    leads && !numbered && sentence.is_any(at, ADJECTIVES) && sentence.is_any(at + 1, NOUNS)
}

/// `spacing wider than 12 in.`, `spaced wider`: how far things stand apart, and no width.
fn compares_a_spacing(sentence: &Sentence<'_>, at: usize) -> bool {
    sentence.is_any(at, &["wider", "narrower", "longer", "shorter", "deeper"])
        && at > 0
        && sentence.is_any(
            at - 1,
            &[
                "spacing", "spacings", "spaced", "apart", "centers", "centres",
            ],
        )
}

/// `three per length, max 16 in. OC`: what something is counted on.
fn is_a_rate(sentence: &Sentence<'_>, at: usize) -> bool {
    sentence.is_any(at, &["length", "width", "height", "depth"])
        && at > 0
        && sentence.is_any(at - 1, &["per", "each", "every"])
        && sentence
            .token(at + 1)
            .is_none_or(|token| token.word().is_none())
}

/// Whether a property is none of the number's: a size of what is a spacing, the joint of what only reaches past it, the place of what is between things
/// of its kind, a board of what are layers of wool.
pub(super) fn is_misheard(
    sentence: &Sentence<'_>,
    amount: &Amount,
    property: &Property,
    subject: &Subject,
    mentions: &[Mention],
) -> bool {
    apart::is_size(property) && is_spaced(sentence, amount.last)
        || property.name == "joint.width" && reaches_past_the_joint(sentence, amount)
        || property.name == "joint.spacing"
            && (0..amount.first).any(|at| is_attributive(sentence, at))
        || is_between_others(sentence, amount, property, subject, mentions)
        || is_layer_of_wool(property, subject, mentions)
}

/// `width 1/2 in. past joint`, `extend past joint width min 1 in.`
fn reaches_past_the_joint(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    const REACH: usize = 5;
    let past = |at: usize| {
        let the = usize::from(sentence.is_any(at + 1, &["the", "each", "either"]));
        sentence.is_any(at, &["past", "beyond"])
            && sentence.is_any(at + 1 + the, &["joint", "joints", "opening", "gap"])
    };
    let ends = |at: &usize| sentence.is_stop(*at) || sentence.amount_at(*at).is_some();
    let before = (amount.first.saturating_sub(REACH)..amount.first)
        .rev()
        .take_while(|at| !ends(at));
    let behind = amount.last..amount.last + REACH;
    before.chain(behind.take_while(|at| !ends(at))).any(past)
}

/// `one splice between clips, min 24 in. apart`, `splices not within 6 in. of clip`: things that only say where, in an item about none of them.
fn is_between_others(
    sentence: &Sentence<'_>,
    amount: &Amount,
    property: &Property,
    subject: &Subject,
    mentions: &[Mention],
) -> bool {
    let placing =
        property.attribute.ends_with("spacing") || property.attribute.ends_with("distance");
    let titled = subject
        .titles
        .iter()
        .map(|(component, _)| *component)
        .chain(subject.before)
        .any(|component| component.name == property.component);
    let mut own = mentions
        .iter()
        .filter(|mention| mention.component.name == property.component)
        .peekable();
    let only_places = |mention: &Mention| {
        let article = (0..mention.first)
            .rev()
            .find(|at| !sentence.is_any(*at, &["the", "a", "an", "any", "each", "two"]));
        article.is_some_and(|at| {
            sentence.is_any(at, &["between", "from"])
                || at >= amount.last && at <= amount.last + 1 && sentence.is_word(at, "of")
        })
    };
    // Another thing is spoken of first: `splices`, `joints`.
    let spoken = (0..amount.first).any(|at| {
        sentence.is_any(
            at,
            &[
                "splice", "splices", "butt", "butts", "seam", "seams", "lap", "laps",
            ],
        )
    });
    placing && spoken && !titled && own.peek().is_some() && own.all(only_places)
}

/// `batts in two layers, for a total of 4 in.`: layers of wool in an item about no board.
fn is_layer_of_wool(property: &Property, subject: &Subject, mentions: &[Mention]) -> bool {
    let sized = property.component == "board" && property.attribute.ends_with("thickness");
    let titled = subject
        .titles
        .iter()
        .any(|(component, _)| component.name == "board");
    let packed = subject
        .titles
        .iter()
        .any(|(component, _)| component.name == "packing")
        || mentions
            .iter()
            .any(|mention| mention.component.name == "packing");
    let mut boards = mentions
        .iter()
        .filter(|mention| mention.component.name == "board");
    sized
        && packed
        && !titled
        && boards.all(|mention| matches!(mention.words.as_str(), "layer" | "layers"))
}
