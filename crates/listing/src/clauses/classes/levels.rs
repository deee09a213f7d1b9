//! Fire resistance levels: `FRL -/90/90` (AS 1530.4).

use measure::{Number, Unit};

use super::{ClassNumber, MINUTES};
use crate::model::Relation;
use crate::phrase::Token;
use crate::rules::{NEGATIONS, Sentence};

/// `FRL -/90/90`, `fire resistance level shall be 120/120/90`: minutes of structural adequacy, integrity and insulation (AS 1530.4).
pub(super) fn fire_resistance_levels(sentence: &Sentence<'_>) -> Vec<ClassNumber> {
    let named = (0..sentence.tokens.len()).any(|at| {
        sentence.is_any(at, &["frl", "frls", "frr"])
            || sentence.is_word(at, "resistance") && sentence.is_any(at + 1, &["level", "levels"])
    });
    if !named {
        return Vec::new();
    }
    one_level_among(sentence)
        .map(|(start, len, minutes)| numbers(sentence, start, len, minutes))
        .filter(|numbers| !is_denied(sentence, numbers))
        .map(|numbers| limited(sentence, numbers))
        .unwrap_or_default()
}

/// Whether a sentence says for which level something is *not*: "Not for FRL -/120/120". A denial that only turns a limit, "not less than -/120/120", is none.
fn is_denied(sentence: &Sentence<'_>, numbers: &[ClassNumber]) -> bool {
    const REACH: usize = 6;
    const COMPARING: &[&str] = &[
        "less", "more", "under", "over", "below", "above", "higher", "lower", "greater", "better",
    ];
    let first = numbers.first().map_or(0, |number| number.first);
    let last = numbers.last().map_or(0, |number| number.last);
    let comparing = |at: usize| sentence.is_any(at, COMPARING);
    let exceeds = |at: usize| {
        let to = usize::from(sentence.is_word(at, "to"));
        sentence.is_any(at + to, &["exceed", "exceeding"])
    };
    let denies =
        |at: usize| sentence.is_any(at, NEGATIONS) && !comparing(at + 1) && !exceeds(at + 1);
    (first.saturating_sub(REACH)..first)
        .chain(last..last + 3)
        .any(denies)
}

/// The numbers of a text that is a level and nothing else.
pub(super) fn one_level(sentence: &Sentence<'_>) -> Option<Vec<ClassNumber>> {
    let (start, len, minutes) = one_level_among(sentence)?;
    (len == sentence.text.trim().len()).then(|| numbers(sentence, start, len, minutes))
}

/// Where the only level of a text begins, how long it is, and its minutes.
fn one_level_among(sentence: &Sentence<'_>) -> Option<(usize, usize, [Option<i32>; 3])> {
    // `90/90` reads as a fraction, so the words are looked at, not the tokens.
    let mut levels = sentence
        .text
        .split_whitespace()
        .map(|word| word.trim_matches(|c: char| matches!(c, '.' | ',' | ';' | '(' | ')')))
        .filter_map(|word| Some((word, level_parts(word)?)));
    // Of several levels, which holds for what is for a person to say.
    let (Some((word, minutes)), None) = (levels.next(), levels.next()) else {
        return None;
    };
    let start = sentence.text.find(word).unwrap_or_default();
    Some((start, word.len(), minutes))
}

/// A level of a wall or a floor, which isn't the joint's, and one under a qualifier: `a wall with an FRL of at least -/120/120`.
fn limited(sentence: &Sentence<'_>, numbers: Vec<ClassNumber>) -> Vec<ClassNumber> {
    const OTHERS: &[&str] = &[
        "wall",
        "walls",
        "floor",
        "floors",
        "slab",
        "slabs",
        "partition",
        "partitions",
        "element",
        "elements",
        "construction",
        "panel",
        "panels",
    ];
    let first = numbers.first().map_or(0, |number| number.first);
    let of_another = sentence.has_any(0, first, OTHERS);
    let says = |words: &[&str]| {
        first >= words.len()
            && (words.iter().enumerate())
                .all(|(at, word)| sentence.is_word(first - words.len() + at, word))
    };
    let at_least = [
        &["at", "least"][..],
        &["not", "less", "than"],
        &["no", "less", "than"],
        &["not", "below"],
        &["not", "under"],
        &["no", "lower", "than"],
        &["not", "lower", "than"],
        &["minimum"],
        &["minimum", "of"],
    ];
    let at_most = [
        &["at", "most"][..],
        &["not", "more", "than"],
        &["no", "more", "than"],
        &["not", "above"],
        &["not", "over"],
        &["no", "higher", "than"],
        &["not", "higher", "than"],
        &["no", "greater", "than"],
        &["not", "greater", "than"],
        &["no", "better", "than"],
        &["not", "exceed"],
        &["not", "to", "exceed"],
        &["not", "exceeding"],
        &["capped", "at"],
        &["limited", "to"],
        &["up", "to"],
        &["maximum"],
    ];
    let limit = if at_least.iter().any(|words| says(words)) {
        Some(Relation::AtLeast)
    } else if at_most.iter().any(|words| says(words)) {
        Some(Relation::AtMost)
    } else {
        None
    };
    let numbers = numbers.into_iter();
    numbers
        .map(|number| ClassNumber {
            limit: limit.or(number.limit),
            property: number.property.filter(|_| !of_another),
            ..number
        })
        .collect()
}

/// The numbers of a level.
fn numbers(
    sentence: &Sentence<'_>,
    start: usize,
    len: usize,
    minutes: [Option<i32>; 3],
) -> Vec<ClassNumber> {
    let within = |token: &Token<'_>| start <= token.span.start() && token.span.end() <= start + len;
    let first = sentence.tokens.iter().position(within).unwrap_or_default();
    let last = first + sentence.tokens.iter().filter(|token| within(token)).count();
    let parts = [
        ("structural adequacy", None),
        ("integrity", Some("joint.integrity")),
        ("insulation", Some("joint.rating")),
    ];
    parts
        .into_iter()
        .zip(minutes)
        .filter_map(|((attribute, property), minutes)| {
            Some(ClassNumber {
                attribute,
                property,
                lo: Number::whole(minutes?),
                hi: None,
                unit: Unit::Minute,
                limit: None,
                first,
                last,
            })
        })
        .collect()
}

/// The three parts of a fire resistance level in minutes (structural adequacy, integrity, insulation; AS 1530.4), none where it has a dash.
pub(crate) fn level_parts(word: &str) -> Option<[Option<i32>; 3]> {
    let part = |part: &str| match part {
        "-" | "–" | "—" => Some(None),
        digits => digits
            .parse::<i32>()
            .ok()
            .filter(|minutes| MINUTES.contains(minutes))
            .map(Some),
    };
    let mut parts = word.split('/');
    let level = [
        part(parts.next()?)?,
        part(parts.next()?)?,
        part(parts.next()?)?,
    ];
    (parts.next().is_none() && level.iter().any(Option::is_some)).then_some(level)
}
