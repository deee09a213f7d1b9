//! What one of two walls or floors is built of, where each has a number of its own: "concrete of 5 in. or brick of 7-5/8 in.", "min 5 in. thick concrete or 8 in.
//! thick block". A number of the one says nothing of the other.
//!
//! Only where "or" alone parts the two, and both numbers measure the same. Which of them is built, only a person can say. "Concrete or block, 8 in. thick" is
//! said of both, and so is a number that one of them has alone.

use super::Found;
use crate::model::Expr;
use crate::rules::Sentence;

const MATERIALS: &[&str] = &[
    "concrete",
    "brick",
    "brickwork",
    "block",
    "blocks",
    "blockwork",
    "masonry",
    "cmu",
    "aac",
    "stone",
    "timber",
    "plasterboard",
];

/// Words that tell sorts of these apart.
const SORTS: &[&str] = &[
    "concrete",
    "hollow",
    "hollow-core",
    "solid",
    "core-filled",
    "grouted",
    "clay",
    "lightweight",
    "aerated",
    "reinforced",
    "precast",
    "a",
    "of",
];

/// A number with the word for what it is a thickness of.
struct Built {
    amount: usize,
    material: usize,
    first: usize,
    last: usize,
}

/// Both of two materials, as conditions.
pub(super) fn built_of(sentence: &Sentence<'_>) -> Vec<Found> {
    let pairs = (1..sentence.amounts.len()).filter_map(|index| pair(sentence, index));
    pairs
        .flatten()
        .map(|built| found(sentence, &built))
        .collect()
}

/// The number that a material governs; none where the condition isn't one.
pub(super) fn governed(sentence: &Sentence<'_>, condition: &Found) -> Option<Vec<usize>> {
    if !sentence.is_any(condition.first, MATERIALS) || condition.last != condition.first + 1 {
        return None;
    }
    let pairs = (1..sentence.amounts.len()).filter_map(|index| pair(sentence, index));
    pairs
        .flatten()
        .find(|built| built.material == condition.first)
        .map(|built| vec![built.amount])
}

fn found(sentence: &Sentence<'_>, built: &Built) -> Found {
    Found {
        first: built.material,
        last: built.material + 1,
        expr: Expr::Words(
            sentence
                .words(built.material, built.material + 1)
                .to_owned(),
        ),
        triggers: Vec::new(),
        parts: Vec::new(),
    }
}

/// The number and the one before it, each of a material.
fn pair(sentence: &Sentence<'_>, index: usize) -> Option<[Built; 2]> {
    let other = index.checked_sub(1)?;
    let (one, next) = (built(sentence, other)?, built(sentence, index)?);
    let unit = |built: &Built| {
        sentence
            .amount(built.amount)
            .map(|amount| amount.unit.dimension())
    };
    let or = one.last + usize::from(sentence.is_sign(one.last, ','));
    let sorts = (or + 1..next.first).all(|at| sentence.is_any(at, SORTS));
    let parted = sentence.is_word(or, "or") && or < next.first && sorts;
    let apart = sentence.word(one.material) != sentence.word(next.material);
    let lengths = unit(&one) == Some(measure::Dimension::Length) && unit(&one) == unit(&next);
    (parted && apart && lengths && !measure_apart(sentence, &one, &next)).then_some([one, next])
}

/// Whether two numbers say that they measure different things: "8 in. *thick*", "4 in. *wide*".
fn measure_apart(sentence: &Sentence<'_>, one: &Built, next: &Built) -> bool {
    const MEASURES: &[&str] = &["thick", "deep", "wide", "long", "high"];
    let measure = |built: &Built| {
        let amount = sentence.amount(built.amount)?;
        let word = sentence.word(sentence.skip_parentheses(amount.last));
        MEASURES.contains(&word).then_some(word)
    };
    let pair = measure(one).zip(measure(next));
    pair.is_some_and(|(one, next)| one != next)
}

/// A number with its material right before it, "concrete of 5 in.", or right behind, "5 in. thick concrete".
fn built(sentence: &Sentence<'_>, index: usize) -> Option<Built> {
    const LIMITS: &[&str] = &[
        "min", "minimum", "nom", "nominal", "at", "least", "not", "no", "less", "than",
    ];
    let amount = sentence.amount(index)?;
    let end = sentence.skip_parentheses(amount.last);
    let thick = usize::from(sentence.is_any(end, &["thick", "deep"]));
    let end = end + thick;
    let limits = (0..amount.first).rev();
    let limits = limits.take_while(|at| sentence.is_any(*at, LIMITS));
    let first = limits.last().unwrap_or(amount.first);
    let of = first
        .checked_sub(1)
        .filter(|at| sentence.is_word(*at, "of"));
    let before = of.unwrap_or(first).checked_sub(1);
    let closing = usize::from(sentence.is_any(end, LIMITS));
    // "5 in. of concrete"
    let behind = end + closing + usize::from(sentence.is_word(end, "of"));
    let built = |material: usize, first: usize, last: usize| Built {
        amount: index,
        material,
        first,
        last,
    };
    // "concrete block (solid units), min 190 mm"
    let before = before.map(|at| {
        let set_off = at > 0 && sentence.is_sign(at, ',');
        opening_of(sentence, if set_off { at - 1 } else { at })
    });
    if let Some(before) = before.filter(|at| sentence.is_any(*at, MATERIALS)) {
        return Some(built(before, before, end + closing));
    }
    sentence
        .is_any(behind, MATERIALS)
        .then(|| built(behind, first, behind + 1))
}

/// The token before the brackets that close at a token; the token itself where none do.
fn opening_of(sentence: &Sentence<'_>, close: usize) -> usize {
    let open = (1..close).find(|at| sentence.closing(*at) == Some(close));
    open.map_or(close, |open| open - 1)
}
