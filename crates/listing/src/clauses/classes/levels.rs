//! Fire resistance levels: `FRL -/90/90` (AS 1530.4).

use measure::{Number, Unit};

use super::{ClassNumber, MINUTES};
use crate::phrase::Token;
use crate::rules::Sentence;

/// `FRL -/90/90`, `fire resistance level shall be 120/120/90`: minutes of structural adequacy, integrity and insulation (AS 1530.4).
pub(super) fn fire_resistance_levels(sentence: &Sentence<'_>) -> Vec<ClassNumber> {
    let named = (0..sentence.tokens.len()).any(|at| {
        sentence.is_any(at, &["frl", "frls"])
            || sentence.is_word(at, "resistance") && sentence.is_any(at + 1, &["level", "levels"])
    });
    if !named {
        return Vec::new();
    }
    // `90/90` reads as a fraction, so the words are looked at, not the tokens.
    let mut levels = sentence
        .text
        .split_whitespace()
        .map(|word| word.trim_matches(|c: char| matches!(c, '.' | ',' | ';' | '(' | ')')))
        .filter_map(|word| Some((word, level_parts(word)?)));
    // Of several levels, which holds for what is for a person to say.
    let (Some((word, minutes)), None) = (levels.next(), levels.next()) else {
        return Vec::new();
    };
    let start = sentence.text.find(word).unwrap_or_default();
    let within =
        |token: &Token<'_>| start <= token.span.start() && token.span.end() <= start + word.len();
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
                at_most: false,
                first,
                last,
            })
        })
        .collect()
}

/// The three parts of a fire resistance level, a dash where it has none.
fn level_parts(word: &str) -> Option<[Option<i32>; 3]> {
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
