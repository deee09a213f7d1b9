//! Parts of an item that a sentence tells apart by their numbers, each with a value of its own: "2-1/2 in. max for 3.2 and 3.3; 1-1/2 in. max for 3.1", "4 in. for Item 2A and
//! 6 in. for Item 2B".
//!
//! Only where the sentence cites others for another value: "depth 4 in. for 3.1" alone may say of what the depth is. Whether the joint has the part, a person says. What it
//! would misread: parts that every joint has side by side; the words then are of each, and whoever is asked says yes to both.

use super::Found;
use crate::model::Expr;
use crate::phrase::TokenKind;
use crate::rules::Sentence;

/// Words that announce the number of a part.
const ANNOUNCE: &[&str] = &[
    "item", "items", "part", "parts", "section", "sections", "wall", "walls",
];

/// Parts that are cited behind "for".
struct Cited {
    first: usize,
    last: usize,
    labels: Vec<String>,
}

/// The parts that a sentence sets against each other, each behind a value.
pub(super) fn cited_parts(sentence: &Sentence<'_>) -> Vec<Found> {
    let cited: Vec<Cited> = (0..sentence.tokens.len())
        .filter_map(|at| cited_at(sentence, at))
        .collect();
    let shares = |one: &Cited, other: &Cited| {
        one.first != other.first && one.labels.iter().any(|label| other.labels.contains(label))
    };
    let apart = cited
        .iter()
        .all(|one| !cited.iter().any(|other| shares(one, other)));
    if cited.len() < 2 || !apart {
        return Vec::new();
    }
    let own = cited
        .iter()
        .filter(|cited| is_behind_value(sentence, cited.first));
    own.map(|cited| Found {
        first: cited.first,
        last: cited.last,
        expr: Expr::Words(sentence.words(cited.first, cited.last).to_owned()),
        triggers: Vec::new(),
        parts: Vec::new(),
    })
    .collect()
}

/// The parts that "for" cites at a token, where they end what is said.
fn cited_at(sentence: &Sentence<'_>, at: usize) -> Option<Cited> {
    if !sentence.is_any(at, &["for", "with", "in"]) {
        return None;
    }
    let announced = sentence.is_any(at + 1, ANNOUNCE);
    let mut labels = Vec::new();
    let mut next = at + 1 + usize::from(announced);
    loop {
        let (label, end) = label_at(sentence, next, announced)?;
        labels.push(label);
        next = end;
        let joined = sentence.is_any(next, &["and", "or"])
            || sentence.is_sign(next, '&')
            || sentence.is_sign(next, ',') && label_at(sentence, next + 1, announced).is_some();
        if !joined || label_at(sentence, next + 1, announced).is_none() {
            break;
        }
        next += 1;
    }
    let ends = sentence.token(next).is_none()
        || sentence.is_stop(next)
        || sentence.is_any(next, &["and", "or", "but"])
        || ['.', '(', ')']
            .iter()
            .any(|sign| sentence.is_sign(next, *sign));
    ends.then_some(Cited {
        first: at,
        last: next,
        labels,
    })
}

/// The number of a part at a token, and where it ends: "3.2"; where it is announced also "2A" and "(b)". A number with a unit is none.
fn label_at(sentence: &Sentence<'_>, at: usize, announced: bool) -> Option<(String, usize)> {
    let token = sentence.token(at)?;
    let printed = token.span.of(sentence.text).trim_end_matches('.');
    if sentence.amount_at(at).is_some() {
        return None;
    }
    let parted = matches!(token.kind, TokenKind::Number(_))
        && printed.split('.').count() > 1
        && printed.split('.').all(|part| {
            (1..=2).contains(&part.len()) && part.bytes().all(|byte| byte.is_ascii_digit())
        });
    let lettered = announced
        && printed.len() <= 3
        && printed.starts_with(|c: char| c.is_ascii_digit())
        && printed.chars().all(|c| c.is_ascii_alphanumeric());
    (parted || lettered).then(|| (printed.to_lowercase(), at + 1))
}

/// Whether a value stands right before a token, with nothing but its limit and what it measures between.
fn is_behind_value(sentence: &Sentence<'_>, at: usize) -> bool {
    const BETWEEN: &[&str] = &[
        "min", "minimum", "max", "maximum", "thick", "deep", "wide", "long", "high", "oc", "o.c",
        "each", "side", "nominal", "nom",
    ];
    sentence.amounts.iter().any(|amount| {
        let behind = sentence.skip_parentheses(amount.last);
        behind <= at
            && (behind..at).all(|at| sentence.is_any(at, BETWEEN) || sentence.is_sign(at, '.'))
    })
}
