//! Which components a number may be about, and how near each is.

use measure::Dimension;
use vocabulary::Component;

use super::misheard::is_only_matched;
use super::whereabouts::only_says_where;
use super::{Mention, Subject};
use crate::phrase::Amount;
use crate::rules::Sentence;

/// The weight of the mention that the words before a number are about.
const SUBJECT: i32 = 9;
/// The weight of what a number is said to be the measure of, right behind it.
const MEASURED: i32 = 11;
/// The weight of a place whose size is told right behind it.
const PLACE_WITH_SIZE: i32 = 12;

/// The components that a number may be about, each with how near it is.
pub(super) fn component_weights(
    sentence: &Sentence<'_>,
    amount: &Amount,
    subject: &Subject,
    mentions: &[Mention],
) -> Vec<(&'static Component, i32)> {
    let (first, last) = (amount.first, amount.last);
    let mut weights: Vec<(&'static Component, i32)> = Vec::new();
    let mut give = |component: &'static Component, weight: i32| match weights
        .iter_mut()
        .find(|(own, _)| own.name == component.name)
    {
        Some((_, held)) => *held = (*held).max(weight),
        None => weights.push((component, weight)),
    };
    let amount_between = |from: usize, to: usize| {
        sentence
            .amounts
            .iter()
            .any(|amount| amount.first >= from && amount.last <= to)
    };
    let said_of = |mention: &&Mention| {
        subject.is_about(&mention.component.name) || !only_says_where(sentence, amount, mention)
    };
    let before = mention_before(sentence, first, mentions).filter(said_of);
    if let Some(mention) = before {
        // "concrete floor" speaks of concrete, too; "wall of concrete" speaks of the wall first.
        for component in mention.inner() {
            give(component, 6);
        }
        let head = mentions
            .iter()
            .rev()
            .find(|head| head.last + 1 == mention.first && sentence.is_word(head.last, "of"));
        // "a wall of concrete with a density of" speaks of the material.
        if let Some(head) = head.filter(|_| amount.unit.dimension() != Dimension::Density) {
            give(head.component, 10 - head.penalty());
        }
        give(
            mention.component,
            subject_weight(sentence, mention, mentions, amount.unit.dimension())
                - mention.penalty(),
        );
    }
    if let Some(mention) = before.filter(|mention| is_sized_place(sentence, amount, mention)) {
        give(mention.component, PLACE_WITH_SIZE);
    }
    // "4-1/2 in. of concrete"
    let material = mentions
        .iter()
        .find(|mention| mention.first == last + 1 && sentence.is_word(last, "of"));
    if let Some(mention) = material {
        give(mention.component, 9 - mention.penalty());
    }
    let measured = mentions
        .iter()
        .find(|mention| is_measured_behind(sentence, amount, mention));
    if let Some(mention) = measured.filter(|mention| !mention.is_weak()) {
        give(mention.component, MEASURED);
    }
    let index = sentence
        .amounts
        .iter()
        .position(|other| other.first == amount.first);
    let limit = index.and_then(|index| crate::rules::ends_at_limit(sentence, index));
    let after = mentions
        .iter()
        .find(|mention| mention.first >= last)
        .filter(said_of)
        .filter(|mention| limit.is_none_or(|limit| mention.first < limit))
        .filter(|mention| !labels_the_next(sentence, mention));
    if let Some(mention) = after
        && mention.first - last <= 6
        && !(last..mention.first).any(|at| begins_another_phrase(sentence, at))
        && !amount_between(last, mention.first)
    {
        give(mention.component, 10 - mention.penalty());
    }
    let spoken = mentions
        .iter()
        .filter(said_of)
        .find(|mention| !replaced(sentence, mention.first));
    if let Some(mention) = spoken.filter(|mention| mention.last <= first) {
        // What is only a place is spoken of no more for standing first: "applied over backer rod, min 12 mm deep".
        let weight = subject_weight(sentence, mention, mentions, amount.unit.dimension());
        let titled = subject
            .titles
            .iter()
            .any(|(own, _)| own.name != mention.component.name);
        let weight = if titled { weight.min(8) } else { 8 };
        give(mention.component, weight - mention.penalty());
    }
    for (component, depth) in &subject.titles {
        give(component, 7 - 2 * i32::try_from(*depth).unwrap_or(3).min(3));
    }
    if mentions.is_empty()
        && let Some(component) = subject.before
    {
        give(component, 6);
    }
    weights
}

/// Whether a token ends what a number is said to be: past it other things are named.
fn begins_another_phrase(sentence: &Sentence<'_>, at: usize) -> bool {
    const WORDS: &[&str] = &[
        "of",
        "from",
        "onto",
        "on",
        "to",
        "below",
        "above",
        "into",
        "than",
        "in",
        "by",
        "beyond",
        "between",
        "over",
        "for",
        "and",
        "or",
        "with",
        "is",
        "are",
        "fr",
        "frm",
        "blw",
        "abv",
        "btwn",
        "shall",
        "provided",
        "providing",
        "unless",
    ];
    sentence.is_stop(at) || sentence.is_any(at, WORDS) || is_times(sentence, at)
}

/// Whether a token multiplies sizes, "4 in. *x* joint width", and is no letter: "Type X board".
fn is_times(sentence: &Sentence<'_>, at: usize) -> bool {
    let lettered = at > 0 && sentence.is_any(at - 1, &["type", "class"]);
    sentence.is_sign(at, '×') || sentence.is_word(at, "x") && !lettered
}

/// Whether the words right behind a number say of what it is the measure: "recessed to allow 1/2 in. *depth of sealant*".
fn is_measured_behind(sentence: &Sentence<'_>, amount: &Amount, mention: &Mention) -> bool {
    const MEASURES: &[&str] = &["depth", "thickness", "width", "height", "length"];
    let mut at = sentence.skip_parentheses(amount.last);
    at += usize::from(sentence.is_any(at, &["min", "minimum", "max", "maximum"]));
    let article = usize::from(sentence.is_any(at + 2, &["the", "a", "each"]));
    // "equal to the full 1 in. thickness of the board": another is as thick. A joint is measured across, and what is long of it is a stretch of it.
    let full = amount.first > 0 && sentence.is_word(amount.first - 1, "full");
    let stretch = mention.component.name == "joint" && !sentence.is_word(at, "width");
    sentence.is_any(at, MEASURES)
        && sentence.is_word(at + 1, "of")
        && mention.first == at + 2 + article
        && !full
        && !stretch
}

/// `MAX WIDTH 2 IN. PACKING DEPTH 4 IN.`: whether what is mentioned is the label of the number right behind it.
pub(super) fn labels_the_next(sentence: &Sentence<'_>, mention: &Mention) -> bool {
    const MEASURES: &[&str] = &[
        "depth",
        "width",
        "thickness",
        "height",
        "length",
        "density",
        "compression",
        "recess",
        "spacing",
    ];
    let bounds = |at: &usize| super::cues::is_bounding(sentence.word(*at));
    let next = (mention.last + 1..sentence.tokens.len()).find(|at| !bounds(at));
    sentence.is_any(mention.last, MEASURES)
        && next.is_some_and(|at| sentence.amounts.iter().any(|amount| amount.first == at))
}

/// Whether a number is the size of the place named right before it: "wool 4 in. deep in *walls* min 5 in. thick", "cover
/// *wool* (min 4 in. deep)".
fn is_sized_place(sentence: &Sentence<'_>, amount: &Amount, mention: &Mention) -> bool {
    const SIZES: &[&str] = &["thick", "thk", "wide", "high", "deep", "tall"];
    const PLACES: &[&str] = &["wall", "floor", "concrete"];
    let bracketed = sentence.is_sign(mention.last, '(');
    let near = (mention.last + usize::from(bracketed)..amount.first)
        .all(|at| super::cues::is_bounding(sentence.word(at)));
    let within = mention.first > 0
        && sentence.is_any(mention.first - 1, &["in", "through", "within", "into"]);
    let sized = sentence.is_any(sentence.skip_parentheses(amount.last), SIZES);
    // "over wool min 4 in. deep, sealant ...": nothing else has been spoken of.
    let opens = mention.first > 0
        && sentence.is_any(mention.first - 1, &["over", "above", "behind"])
        && (mention.first == 1 || sentence.is_stop(mention.first - 2));
    let place = within && PLACES.contains(&mention.component.name.as_str());
    near && sized && (place || opens || bracketed)
}

/// Whether what is mentioned gives way to something else: "in place of sealant a coating may be sprayed".
fn replaced(sentence: &Sentence<'_>, mention: usize) -> bool {
    const ARTICLES: &[&str] = &["the", "a", "an", "this", "that", "item"];
    let before = (0..mention)
        .rev()
        .find(|at| !sentence.is_any(*at, ARTICLES));
    before.is_some_and(|of| {
        of >= 1
            && sentence.is_word(of, "of")
            && sentence.is_any(of - 1, &["place", "lieu", "instead"])
    })
}

/// What the words just before a number are about, where they don't only say a place.
pub(super) fn subject<'m>(
    sentence: &Sentence<'_>,
    first: usize,
    mentions: &'m [Mention],
) -> Option<&'m Mention> {
    let amount = sentence
        .amounts
        .iter()
        .find(|amount| amount.first == first)?;
    let mention = mention_before(sentence, first, mentions)?;
    let near = subject_weight(sentence, mention, mentions, amount.unit.dimension()) >= SUBJECT;
    near.then_some(mention)
}

/// What something is carried on, as the words before a number name it with a size of its own between: "on clips of 20 ga steel, 1 in. wide".
pub(super) fn carrier<'m>(
    sentence: &Sentence<'_>,
    first: usize,
    mentions: &'m [Mention],
) -> Option<&'m Mention> {
    let mention = mention_before(sentence, first, mentions)?;
    let sized = sentence
        .amounts
        .iter()
        .any(|amount| amount.first >= mention.last && amount.last <= first);
    (sized && !sentence.in_condition(mention.first)).then_some(mention)
}

/// The mention nearest before a number in its stretch.
fn mention_before<'m>(
    sentence: &Sentence<'_>,
    first: usize,
    mentions: &'m [Mention],
) -> Option<&'m Mention> {
    mentions.iter().rev().find(|mention| {
        mention.last <= first
            && !(mention.last..first)
                .any(|at| sentence.is_sign(at, ';') || sentence.is_sign(at, ':'))
    })
}

/// The weight of the mention nearest before a number: less where it is only what something is fastened to or lies on, or what
/// another mention is a part of ("the runner at the head of the wall").
fn subject_weight(
    sentence: &Sentence<'_>,
    mention: &Mention,
    mentions: &[Mention],
    dimension: Dimension,
) -> i32 {
    const ARTICLES: &[&str] = &[
        "the",
        "a",
        "an",
        "every",
        "each",
        "both",
        "either",
        "all",
        "any",
        "individual",
    ];
    const PLACES: &[&str] = &[
        "to", "onto", "from", "below", "above", "over", "under", "through", "into", "against",
        "on", "at", "beyond", "between", "across", "along", "beside", "in", "within", "inside",
        "per", "fr", "frm", "blw", "abv", "btwn",
    ];
    let before = (0..mention.first)
        .rev()
        .find(|at| !sentence.is_any(*at, ARTICLES));
    let Some(before) = before else { return SUBJECT };
    let earlier = mentions
        .iter()
        .any(|other| other.last <= before && other.component.name != mention.component.name);
    // "fastened to every valley of the deck"
    let part_of_place = sentence.is_word(before, "of")
        && (before.saturating_sub(3)..before).any(|at| sentence.is_any(at, PLACES));
    // "between the board and the deck"
    let second_place = sentence.is_any(before, &["and", "or"])
        && mentions.iter().any(|other| {
            other.last == before
                && (0..other.first)
                    .rev()
                    .find(|at| !sentence.is_any(*at, ARTICLES))
                    .is_some_and(|at| sentence.is_any(at, PLACES))
        });
    // "as required by the floor design"
    let cited = sentence.is_any(mention.last, &["design", "designs"]);
    if replaced(sentence, mention.first) {
        return 0;
    }
    let matched = (mention.last..mention.last + 2)
        .chain(mention.first.checked_sub(2))
        .any(|at| is_only_matched(sentence, at));
    if sentence.is_any(before, PLACES) || part_of_place || second_place || cited || matched {
        6
    } else if sentence.is_word(before, "of") && earlier && dimension != Dimension::Density {
        7
    } else {
        SUBJECT
    }
}
