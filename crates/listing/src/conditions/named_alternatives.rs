//! Materials that the text before offers as alternatives and a sentence takes one by one: "Ceramic or rock fibre strip. Rock fibre 100 kg/m3; ceramic fibre 96 kg/m3 or more."
//!
//! Only where the text says "one or the other" of the words by which the parts of the sentence begin, and each part has a number that measures what the others' do; other numbers
//! of a part, "ceramic fibre 96 kg/m3, depth 75 mm", are always asked for. Which material there is, a person says.

use super::Found;
use crate::model::Expr;
use crate::rules::Sentence;

/// A part of a sentence that begins with a material.
struct Part {
    /// The tokens of the material.
    first: usize,
    last: usize,
    /// Where the part ends.
    end: usize,
}

pub(super) fn named_alternatives(sentence: &Sentence<'_>) -> Vec<Found> {
    let parts = alternatives(sentence);
    let found = parts.iter().map(|part| Found {
        first: part.first,
        last: part.last,
        expr: Expr::Words(sentence.words(part.first, part.last).to_owned()),
        triggers: Vec::new(),
        parts: Vec::new(),
    });
    found.collect()
}

/// The amounts that a material governs; none where the condition isn't one.
pub(super) fn governed(sentence: &Sentence<'_>, condition: &Found) -> Option<Vec<usize>> {
    let parts = alternatives(sentence);
    let own = parts
        .iter()
        .find(|part| part.first == condition.first && part.last == condition.last)?;
    let dimension = first_amount(sentence, own)?;
    let within = |index: &usize| {
        sentence.amount(*index).is_some_and(|amount| {
            own.last <= amount.first
                && amount.last <= own.end
                && amount.unit.dimension() == dimension
        })
    };
    Some((0..sentence.amounts.len()).filter(within).collect())
}

/// The parts of a sentence that begin with materials of which the text before offers one; none where any doesn't.
fn alternatives(sentence: &Sentence<'_>) -> Vec<Part> {
    let parts = parts(sentence);
    let offered = parts.len() == 2
        && matches!(parts.as_slice(), [one, other] if is_offered(sentence, one, other));
    let dimension = |part: &Part| first_amount(sentence, part);
    let alike = parts
        .windows(2)
        .all(|pair| matches!(pair, [one, other] if dimension(one) == dimension(other)));
    if offered && alike { parts } else { Vec::new() }
}

/// The parts between semicolons, where every one begins with a few words and then a number.
fn parts(sentence: &Sentence<'_>) -> Vec<Part> {
    const LONGEST: usize = 3;
    const LIMITS: &[&str] = &[
        "min", "minimum", "at", "least", "not", "less", "than", "max", "maximum", "nominal", "nom",
    ];
    let mut parts = Vec::new();
    let mut first = 0;
    for at in 0..=sentence.tokens.len() {
        let ends = at == sentence.tokens.len() || sentence.is_sign(at, ';');
        if !ends {
            continue;
        }
        let number = (first..at).find(|at| sentence.amount_at(*at).is_some());
        let Some(number) = number else {
            return Vec::new();
        };
        let limits = (first..number)
            .rev()
            .take_while(|at| sentence.is_any(*at, LIMITS) || sentence.is_sign(*at, ','))
            .count();
        let last = number - limits;
        let plain = (first..last)
            .all(|at| sentence.has_word(at) && !sentence.is_any(at, &["and", "or", "the"]));
        if last == first || last - first > LONGEST || !plain {
            return Vec::new();
        }
        parts.push(Part {
            first,
            last,
            end: at,
        });
        first = at + 1;
    }
    parts
}

/// Whether the text before the sentence offers one of two materials: `ceramic or rock fibre`, `sprayed fibre or cementitious`.
fn is_offered(sentence: &Sentence<'_>, one: &Part, other: &Part) -> bool {
    let before = sentence
        .running_text()
        .get(..sentence.in_flow(0))
        .unwrap_or_default();
    let words = |part: &Part| {
        let words = sentence.words(part.first, part.last).to_lowercase();
        let first = words.split(' ').next().unwrap_or_default().to_owned();
        [words, first]
    };
    let said = |from: &str, to: &str| {
        let offer = format!("{from} or {to}");
        before.find(&offer).is_some_and(|at| {
            let ends = |c: Option<char>| c.is_none_or(|c| !c.is_alphanumeric());
            let behind = before.get(at + offer.len()..).unwrap_or_default();
            let ahead = before.get(..at).unwrap_or_default();
            ends(behind.chars().next()) && ends(ahead.chars().next_back())
        })
    };
    let (one, other) = (words(one), words(other));
    let differ = one.iter().all(|word| !other.contains(word));
    differ
        && one.iter().any(|one| {
            other
                .iter()
                .any(|other| said(one, other) || said(other, one))
        })
}

/// What the first number of a part measures.
fn first_amount(sentence: &Sentence<'_>, part: &Part) -> Option<measure::Dimension> {
    let own =
        |amount: &&crate::phrase::Amount| part.last <= amount.first && amount.last <= part.end;
    let amount = sentence.amounts.iter().find(own)?;
    let dimension = amount.unit.dimension();
    matches!(
        dimension,
        measure::Dimension::Density | measure::Dimension::Length
    )
    .then_some(dimension)
}
