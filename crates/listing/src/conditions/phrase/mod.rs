//! Phrases that open with "where", "when", "if", "unless": whatever number stands in them is a trigger.

mod end;
mod requires;
mod supposing;

use measure::{Dimension, Unit};

use self::end::{end, second_half};
use self::requires::{excepted_case, is_state, states};
use super::confined::offers_alternate;
use super::{Found, test};
use crate::model::Expr;
use crate::naming::mentions;
use crate::rules::Sentence;

/// Words that open such a phrase.
const OPENERS: &[&str] = &[
    "where", "when", "whenever", "if", "unless", "wherever", "should", "whether",
];

pub(super) fn phrases(sentence: &Sentence<'_>) -> Vec<Found> {
    let mut found: Vec<Found> = Vec::new();
    let mut spoken_of = None;
    let mut at = 0;
    while at < sentence.tokens.len() {
        if let Some(condition) = supposed(sentence, at) {
            at = condition.last;
            found.push(condition);
            continue;
        }
        let end = if opens(sentence, at) {
            second_half(sentence, end(sentence, at))
        } else {
            at
        };
        if end > at + 1
            && let Some(start) = excepted_case(sentence, at)
        {
            found.push(case_of_exception(sentence, start, at + 2, found.last()));
            at += 2;
        } else if end > at + 1 && !states(sentence, at, end) && !is_state(sentence, at, end) {
            let (condition, property) = phrase(sentence, at, end, spoken_of);
            spoken_of = property.or(spoken_of);
            found.push(condition);
            at = end;
        } else {
            at += 1;
        }
    }
    found
}

/// What an opening of several words supposes of the joint, where it can be tested.
fn supposed(sentence: &Sentence<'_>, first: usize) -> Option<Found> {
    let lead = supposing::opening(sentence, first)?;
    let (condition, property) = phrase(sentence, lead, end(sentence, lead), None);
    let tested = matches!(condition.expr, Expr::Test(_));
    let of_joint = matches!(property, Some("joint.width" | "joint.rating"));
    // "The system may be used provided that the joint does not exceed 2 in." asks for that.
    let demands = sentence.is_any(first, &["provided", "providing", "so", "as", "on"]);
    let of_another = sentence
        .amounts
        .iter()
        .any(|amount| amount.last <= first || amount.first >= condition.last);
    let demands = demands && (!of_another || is_alternate(sentence));
    (tested && of_joint && !demands).then_some(Found { first, ..condition })
}

/// Whether a sentence offers an alternate, whose provisos whoever builds it must keep to.
fn is_alternate(sentence: &Sentence<'_>) -> bool {
    offers_alternate(sentence) || sentence.has_any(0, sentence.tokens.len(), &["alternatively"])
}

/// The case that an exception makes, for what the words after it say: of "unless the wall exceeds 15 ft, when they" a wall over 15 ft.
fn case_of_exception(
    sentence: &Sentence<'_>,
    start: usize,
    last: usize,
    before: Option<&Found>,
) -> Found {
    let first = start + 1;
    let tested = before
        .filter(|before| before.first == start)
        .and_then(|before| match &before.expr {
            Expr::Not(test) => Some((**test).clone()),
            _ => None,
        });
    Found {
        first,
        last,
        expr: tested.unwrap_or_else(|| Expr::Words(sentence.words(start, last).to_owned())),
        triggers: Vec::new(),
        parts: Vec::new(),
    }
}

fn opens(sentence: &Sentence<'_>, at: usize) -> bool {
    let where_meaning_place =
        sentence.is_word(at, "where") && at > 0 && sentence.is_any(at - 1, &["except"]);
    // "should" opens only at the start: "should the joint exceed ...".
    // "within 4 ft of corners, where max 12 in. o.c." says what holds there.
    // "where max joint width is 2 in." is a case.
    let limit = if sentence.is_any(at + 1, &["max", "maximum", "min", "minimum"]) {
        Some(at + 2)
    } else {
        let least = sentence.is_word(at + 1, "at") && sentence.is_any(at + 2, &["least", "most"]);
        least.then_some(at + 3)
    };
    let says = sentence.is_word(at, "where")
        && limit.is_some_and(|number| sentence.amount_at(number).is_some());
    let plain = !says
        && sentence.is_any(at, OPENERS)
        && (!sentence.is_word(at, "should") || at == 0 && supposes(sentence));
    (plain || where_meaning_place) && !is_proviso(sentence, at)
}

/// "Unless otherwise specified", "unless noted otherwise": what somebody may say elsewhere excuses nobody before it is said.
fn is_proviso(sentence: &Sentence<'_>, at: usize) -> bool {
    const SAID: &[&str] = &[
        "specified",
        "noted",
        "stated",
        "shown",
        "indicated",
        "directed",
        "approved",
        "agreed",
        "permitted",
        "required",
        "given",
        "mentioned",
    ];
    let otherwise = |at: usize| sentence.is_any(at, &["otherwise", "so"]);
    sentence.is_word(at, "unless")
        && (otherwise(at + 1) && sentence.is_any(at + 2, SAID)
            || sentence.is_any(at + 1, SAID)
                && (otherwise(at + 2) || sentence.is_stop(at + 2) || sentence.is_sign(at + 2, '.')))
}

/// Whether "should" at the head of a sentence supposes something, "should the joint exceed ...", and doesn't ask for it: "should have ...".
fn supposes(sentence: &Sentence<'_>) -> bool {
    const ASKING: &[&str] = &[
        "be",
        "have",
        "not",
        "exceed",
        "extend",
        "also",
        "only",
        "fill",
        "cover",
        "match",
        "fit",
        "reach",
        "contain",
        "consist",
        "comply",
        "conform",
        "lap",
        "overlap",
        "meet",
        "always",
        "never",
        "bear",
        "penetrate",
        "measure",
    ];
    !sentence.is_any(1, ASKING)
}

fn phrase(
    sentence: &Sentence<'_>,
    first: usize,
    last: usize,
    spoken_of: Option<&'static str>,
) -> (Found, Option<&'static str>) {
    let within = |index: &usize| {
        sentence
            .amount(*index)
            .is_some_and(|amount| amount.first >= first && amount.last <= last)
    };
    let triggers: Vec<usize> = (0..sentence.amounts.len()).filter(within).collect();
    // "... where it is over 2 in.": it is what the phrase before tested.
    // "4 in., 6 in. where 3 in.": what the phrase before tested is what is meant.
    let bare = sentence
        .amount_at(first + 1)
        .and_then(|index| sentence.amount(index))
        .is_some_and(|amount| amount.last == last && amount.unit.dimension() == Dimension::Length);
    let again = spoken_of.filter(|property| {
        sentence.is_any(first + 1, &["it", "they"]) || bare && *property == "joint.width"
    });
    let named: Vec<&'static str> = triggers
        .iter()
        .filter_map(|index| property(sentence, *index, first).or(again))
        .collect();
    let tested: Vec<Expr> = triggers
        .iter()
        .zip(&named)
        .filter_map(|(index, property)| test(sentence, *index, property))
        .collect();
    // A phrase is tested only when every number in it is, and no word in it turns or splits what it says.
    let turned = (first..last).any(|at| {
        sentence.is_any(at, &["and", "or", "but"])
            || (sentence.is_word(at, "not") && !compares(sentence, at + 1))
    });
    let plain = tested.len() == triggers.len() && !triggers.is_empty() && !turned;
    let expr = match tested.as_slice() {
        [one] if plain && sentence.is_word(first, "unless") => Expr::Not(Box::new(one.clone())),
        [one] if plain => one.clone(),
        _ => Expr::Words(sentence.words(first, last).to_owned()),
    };
    let found = Found {
        first,
        last,
        expr,
        triggers,
        parts: Vec::new(),
    };
    (found, named.last().copied().filter(|_| plain))
}

/// Whether a word compares, so that a "not" before it belongs to the comparison.
fn compares(sentence: &Sentence<'_>, at: usize) -> bool {
    const COMPARING: &[&str] = &[
        "over",
        "above",
        "under",
        "below",
        "more",
        "less",
        "greater",
        "exceeding",
        "exceed",
        "wider",
        "narrower",
        "smaller",
        "larger",
    ];
    sentence.is_any(at, COMPARING)
}

/// The property that a number in a condition tests, where its words leave no doubt: nothing may stand between the opener and the number but
/// the thing, its attribute and a comparison. "Where the joint is at a beam deeper than 12 in." tests no width.
fn property(sentence: &Sentence<'_>, index: usize, first: usize) -> Option<&'static str> {
    const COMMON: &[&str] = &[
        "the",
        "a",
        "an",
        "is",
        "are",
        "be",
        "of",
        "not",
        "no",
        "than",
        "more",
        "less",
        "greater",
        "over",
        "above",
        "under",
        "below",
        "exceeds",
        "exceed",
        "exceeding",
        "up",
        "to",
        "or",
        "equal",
        "at",
        "least",
        "most",
        "does",
        "do",
        "nominal",
        "has",
        "have",
        "installed",
        "it",
        "they",
        "by",
        "one",
        "within",
        "between",
    ];
    let amount = sentence.amount(index)?;
    let only = |own: &[&str]| {
        (first + 1..amount.first).all(|at| {
            let sign = sentence
                .token(at)
                .is_some_and(|token| token.word().is_none() && !token.is_numeric());
            sign || sentence.is_any(at, COMMON) || sentence.is_any(at, own)
        })
    };
    let says = |words: &[&str]| sentence.has_any(first, amount.first, words);
    let after = |words: &[&str]| sentence.has_any(amount.last, amount.last + 3, words);
    match amount.unit {
        Unit::Hour
            if only(&[
                "rating", "ratings", "rated", "joint", "assembly", "fire", "hourly", "required",
                "sought", "wall", "system",
            ]) && (says(&["rating", "rated"]) || after(&["rating", "rated"])) =>
        {
            Some("joint.rating")
        }
        Unit::Percent
            if only(&[
                "compressed",
                "compression",
                "packing",
                "batt",
                "wool",
                "nominally",
            ]) && says(&["compressed", "compression"]) =>
        {
            Some("packing.compression")
        }
        Unit::Count if after(&["layer", "layers"]) && names(sentence, "board") => {
            Some("board.layers")
        }
        unit if unit.dimension() == Dimension::Length => {
            let joint = says(&["joint", "joints"])
                || (says(&["width", "widths"]) && !says(&["wall", "board"]));
            let width = only(&[
                "joint", "joints", "width", "widths", "wide", "wider", "narrower", "opening", "gap",
            ]);
            let wall = says(&["wall"])
                && (says(&["height", "higher", "taller"]) || after(&["high", "height"]));
            let height = only(&[
                "wall", "walls", "height", "high", "higher", "taller", "clear",
            ]);
            if joint && width && !after(&["deep", "long", "thick", "high"]) {
                Some("joint.width")
            } else if wall && height {
                Some("wall.height")
            } else {
                None
            }
        }
        _ => None,
    }
}

fn names(sentence: &Sentence<'_>, component: &str) -> bool {
    mentions(sentence)
        .iter()
        .any(|mention| mention.component.name == component)
}
