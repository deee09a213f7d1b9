//! Two numbers that "respectively" gives out to two measures named together: "width and depth of sealant 2 in. and 4 in., respectively", "wet and dry
//! thickness 1/8 and 1/16 in. respectively".
//!
//! Only where nothing stands between the two names but "and", and the numbers are two as well: else which is whose can't be told.

use measure::Dimension;

use super::Sentence;
use crate::model::Relation;
use crate::phrase::Amount;

/// How many words may stand before the two numbers, from the first name on.
const REACH: usize = 12;

/// What tells one of two measures from the other.
const MEASURES: &[&str] = &[
    "width",
    "depth",
    "thickness",
    "length",
    "height",
    "diameter",
    "spacing",
    "overlap",
    "recess",
    "embedment",
];

/// Words that stand before the thickness that they tell from the other.
const FILMS: &[&str] = &["wet", "dry"];

/// Words that only say how a number is bounded, before the names or behind them.
const BOUNDING: &[&str] = &[
    "the", "a", "an", "min", "minimum", "max", "maximum", "nom", "nominal", "shall", "must", "be",
    "is", "are", "not", "less", "more", "than", "no", "at", "least", "most", "to", "have", "has",
    "with", "of",
];

/// Whether two films are named together before a number, as "wet and dry thickness": which of them it is must be told.
pub(super) fn names_two_films(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    joined(sentence, amount, FILMS).is_some()
}

/// What one of two such numbers is of.
pub(crate) struct Share {
    /// The words for it: "width of sealant", "dry film thickness".
    pub(crate) words: String,
    /// The attribute that they name: `width`, `dry_thickness`.
    pub(crate) attribute: String,
    /// The other number.
    twin: usize,
    /// From the words before the names to the end.
    stretch: (usize, usize),
}

/// What one of two such numbers is of; none where it can't be told.
pub(crate) fn share(sentence: &Sentence<'_>, index: usize) -> Option<Share> {
    let (first, second) = if is_pair(sentence, index) {
        (index, index + 1)
    } else {
        let before = index.checked_sub(1)?;
        (is_pair(sentence, before)).then_some((before, index))?
    };
    let (one, other) = (sentence.amount(first)?, sentence.amount(second)?);
    let third = first > 0 && are_joined(sentence, first - 1) || are_joined(sentence, second);
    let closed =
        (other.last..other.last + REACH).find(|at| sentence.is_word(*at, "respectively"))?;
    let told = (sentence.skip_parentheses(other.last)..closed).all(|at| !sentence.has_word(at));
    let films = joined(sentence, one, FILMS);
    let and = films.or_else(|| joined(sentence, one, MEASURES))?;
    let rest = behind_names(sentence, and + 2, one.first)?;
    // "Wet and dry 1/8 in. and 1/16 in." names no measure.
    let measured = films.is_none() || rest.contains("thickness");
    if third || !told || !measured {
        return None;
    }
    let name = sentence.word(if index == first { and - 1 } else { and + 1 });
    let words = format!("{} {name} {rest}", before(sentence, and - 1));
    Some(Share {
        words: words.split_whitespace().collect::<Vec<_>>().join(" "),
        attribute: if films.is_some() {
            format!("{name}_thickness")
        } else {
            name.to_owned()
        },
        twin: if index == first { second } else { first },
        stretch: (and.saturating_sub(REACH), closed),
    })
}

/// Whether both numbers are bounded alike; where a limit stands by them that neither takes, nobody knows whether they are.
pub(super) fn are_bounded_alike(
    sentence: &Sentence<'_>,
    share: &Share,
    own: Relation,
    bounded: impl Fn(usize) -> Option<Relation>,
) -> bool {
    const LIMITS: &[&str] = &[
        "min", "minimum", "max", "maximum", "least", "most", "less", "more", "exceed",
    ];
    let (from, to) = share.stretch;
    let limited = sentence.has_any(from, to, LIMITS);
    bounded(share.twin) == Some(own) && (own != Relation::Nominal || !limited)
}

/// The "and" between two words of a list before a number, no other number between.
fn joined(sentence: &Sentence<'_>, amount: &Amount, list: &[&str]) -> Option<usize> {
    let floor = amount.first.saturating_sub(REACH);
    (floor..amount.first)
        .rev()
        .take_while(|at| !sentence.is_sign(*at, ';') && sentence.amount_at(*at).is_none())
        .find(|and| {
            let names = |at: usize| sentence.is_any(at, list);
            sentence.is_word(*and, "and")
                && *and > 0
                && names(and - 1)
                && names(and + 1)
                && sentence.word(and - 1) != sentence.word(and + 1)
        })
}

/// Whether a number and the next are one of each measure: `2 in. and 4 in.`, both of one dimension.
fn is_pair(sentence: &Sentence<'_>, index: usize) -> bool {
    let units = sentence.amount(index).zip(sentence.amount(index + 1));
    units.is_some_and(|(one, other)| {
        one.unit.dimension() == Dimension::Length
            && other.unit.dimension() == Dimension::Length
            && one.hi.is_none()
            && other.hi.is_none()
    }) && are_joined(sentence, index)
}

fn are_joined(sentence: &Sentence<'_>, index: usize) -> bool {
    let Some((own, next)) = sentence.amount(index).zip(sentence.amount(index + 1)) else {
        return false;
    };
    let joint = sentence.skip_parentheses(own.last);
    let listed = sentence.is_any(joint, &["and", "or"])
        || ['&', '/', ',']
            .iter()
            .any(|sign| sentence.is_sign(joint, *sign));
    listed && next.first == joint + 1
}

/// The words right before the first name, for what it is of: "clip" of "clip width and length".
fn before(sentence: &Sentence<'_>, name: usize) -> String {
    const MOST_WORDS: usize = 3;
    let plain = |at: &usize| sentence.has_word(*at) && !sentence.is_any(*at, BOUNDING);
    let start = (name.saturating_sub(MOST_WORDS)..name)
        .rev()
        .take_while(plain)
        .last()
        .unwrap_or(name);
    sentence.words(start, name).to_lowercase()
}

/// The words behind the second name that go with both, "film thickness", "of sealant"; none where another measure or another thing is named in them.
fn behind_names(sentence: &Sentence<'_>, from: usize, to: usize) -> Option<String> {
    const OWN: &[&str] = &[
        "film",
        "thickness",
        "thicknesses",
        "of",
        "the",
        "coating",
        "coat",
    ];
    let mut kept = Vec::new();
    for at in from..to {
        let word = sentence.word(at);
        if sentence.is_sign(at, ':') || sentence.is_sign(at, '=') {
            continue;
        }
        let of = at > from && sentence.is_any(at - 1, &["of", "the"]);
        if OWN.contains(&word) || of && !word.is_empty() {
            kept.push(if word == "thicknesses" {
                "thickness"
            } else {
                word
            });
        } else if !BOUNDING.contains(&word) {
            return None;
        }
    }
    Some(kept.join(" "))
}
