//! Fire-resistance classes that name the seals meant: "for EI 180 not less than 175 mm", "120 mm (EI 90, EI 120)", "for the classes EI 180 and EI 240".
//!
//! A band of them is told by the words before it: "for classifications up to EI 120". Letters and minutes alone are meant, and only behind "for" or "in", in brackets of their own, or before a colon. "EI 120 - V - M 20" is a class
//! itself, and so is what a seal is classified for.

use measure::{Number, Quantity, Unit};

use super::Found;
use crate::model::{Expr, Relation, Test};
use crate::phrase::{Amount, TokenKind};
use crate::rules::Sentence;

/// What may stand between what introduces a class and the class.
const NAMES: &[&str] = &[
    "the",
    "class",
    "classes",
    "classification",
    "classifications",
    "rating",
    "ratings",
    "only",
];

const MINUTES: [i32; 9] = [15, 20, 30, 45, 60, 90, 120, 180, 240];

pub(super) fn classes(sentence: &Sentence<'_>) -> Vec<Found> {
    let mut found: Vec<Found> = Vec::new();
    let mut at = 0;
    while at < sentence.tokens.len() {
        let Some((last, parts)) = list(sentence, at) else {
            at += 1;
            continue;
        };
        found.extend(condition(sentence, at, last, parts));
        at = last;
    }
    found
}

/// The classes that are listed from a token on, and the token after them.
fn list(sentence: &Sentence<'_>, first: usize) -> Option<(usize, Vec<Expr>)> {
    let mut parts = vec![class(sentence, first)?];
    let mut last = first + 2;
    loop {
        let mut next = last;
        while sentence.is_sign(next, ',') || sentence.is_any(next, &["and", "or"]) {
            next += 1;
        }
        match class(sentence, next).filter(|_| next > last) {
            Some(part) => {
                parts.push(part);
                last = next + 2;
            }
            None => return Some((last, parts)),
        }
    }
}

fn is_bracketed(sentence: &Sentence<'_>, first: usize, last: usize) -> bool {
    first > 0 && sentence.is_sign(first - 1, '(') && sentence.is_sign(last, ')')
}

/// `EI 120`, and no more of a code after it.
fn class(sentence: &Sentence<'_>, at: usize) -> Option<Expr> {
    let letters = matches!(sentence.token(at)?.word(), Some("EI" | "REI" | "E"));
    let minutes = match &sentence.token(at + 1)?.kind {
        TokenKind::Number(numeral) => numeral.value,
        _ => return None,
    };
    let known = MINUTES.iter().any(|own| minutes == Number::whole(*own));
    let coded = ['-', '–', '/']
        .iter()
        .any(|sign| sentence.is_sign(at + 2, *sign));
    // Integrity alone, or with load-bearing capacity, is not the joint's rating as facts have it.
    let whole = sentence.token(at)?.word() == Some("EI");
    (letters && known && !coded).then(|| {
        if !whole {
            return Expr::Words(sentence.words(at, at + 2).to_owned());
        }
        Expr::Test(Test {
            property: "joint.rating".to_owned(),
            relation: Relation::Exactly,
            lo: Some(Quantity::new(minutes, Unit::Minute)),
            hi: None,
            lo_excluded: false,
        })
    })
}

/// How words before a class take in those on one side of it, and the first of the words: "up to and including EI 120", "above EI 60".
fn band(sentence: &Sentence<'_>, at: usize) -> (Option<Relation>, usize) {
    let before = |back: usize| at.checked_sub(back);
    let is = |back: usize, word: &str| before(back).is_some_and(|at| sentence.is_word(at, word));
    let including = is(1, "including") && is(2, "and");
    let to = if including { 3 } else { 1 };
    let above =
        before(1).is_some_and(|at| sentence.is_any(at, &["above", "over", "beyond", "exceeding"]));
    if is(to, "to") && is(to + 1, "up") {
        (Some(Relation::AtMost), at - to - 1)
    } else if above {
        (Some(Relation::MoreThan), at - 1)
    } else {
        (None, at)
    }
}

/// How words behind a class take in those on one side of it: "EI 60 or higher", "EI 90 and below".
pub(super) fn or_beyond(sentence: &Sentence<'_>, last: usize) -> Option<Relation> {
    const UP: &[&str] = &[
        "higher", "better", "more", "above", "greater", "longer", "up",
    ];
    const DOWN: &[&str] = &["lower", "less", "below", "under", "shorter"];
    // "for EI 60 or less than 50 mm" compares another number.
    if !sentence.is_any(last, &["or", "and"]) || sentence.is_word(last + 2, "than") {
        return None;
    }
    if sentence.is_any(last + 1, UP) {
        Some(Relation::AtLeast)
    } else if sentence.is_any(last + 1, DOWN) {
        Some(Relation::AtMost)
    } else {
        None
    }
}

/// The test of a band of classes, of one class; letters that aren't the joint's rating stay words.
fn banded(
    sentence: &Sentence<'_>,
    first: usize,
    last: usize,
    relation: Relation,
    parts: &[Expr],
) -> Option<Expr> {
    let [one] = parts else { return None };
    let Expr::Test(test) = one else {
        return Some(Expr::Words(sentence.words(first, last).to_owned()));
    };
    let (lo, hi) = match relation {
        Relation::AtMost => (None, test.lo),
        _ => (test.lo, None),
    };
    Some(Expr::Test(Test {
        relation,
        lo,
        hi,
        ..test.clone()
    }))
}

/// Whether what stands at a token speaks of something else than the class behind it: of "joints *up to 25 mm:* 10 mm for EI 60" the end of a number, or a colon.
fn begins_another(sentence: &Sentence<'_>, at: usize) -> bool {
    let closes = |amount: &Amount| amount.last == at + 1;
    sentence.is_sign(at, ':') || sentence.amounts.iter().any(closes)
}

fn condition(sentence: &Sentence<'_>, at: usize, last: usize, parts: Vec<Expr>) -> Option<Found> {
    const REACH: usize = 5;
    const SPOILING: &[&str] = &[
        "classified",
        "class",
        "suitable",
        "tested",
        "valid",
        "rated",
        "approved",
        "achieved",
        "up",
        "no",
        "not",
        "as",
        "to",
        "is",
        "are",
        "least",
    ];
    let (mut side, mut first) = band(sentence, at);
    let mut last = last;
    if let Some(upwards) = or_beyond(sentence, last).filter(|_| side.is_none()) {
        side = Some(upwards);
        last += 2;
    }
    let band = side;
    let parts = match band {
        Some(relation) => vec![banded(sentence, first, last, relation, &parts)?],
        None => parts,
    };
    while first > 0 && sentence.is_any(first - 1, NAMES) {
        first -= 1;
    }
    let introduced = first > 0 && sentence.is_any(first - 1, &["for", "in", "at", "under"]);
    // One class alone in brackets is a wall's or a floor's own: "walls at least 150 mm thick (EI 120)".
    let bracketed = is_bracketed(sentence, at, last)
        && (0..sentence.tokens.len())
            .filter(|other| {
                list(sentence, *other).is_some_and(|(end, _)| {
                    let beyond = or_beyond(sentence, end).map_or(0, |_| 2);
                    is_bracketed(sentence, *other, end + beyond)
                })
            })
            .count()
            > 1;
    // "80 kg/m3 (EI 120: 100 kg/m3)"
    let opens = first == 0
        || sentence.is_sign(first - 1, ';')
        || sentence.is_sign(first - 1, '(') && sentence.is_sign(last, ':');
    let labelled = opens && sentence.is_sign(last, ':');
    // "Above EI 120, 150 mm"
    let labelled = labelled || opens && band.is_some() && sentence.is_sign(last, ',');
    let from = if introduced { first - 1 } else { first };
    let near = (from.saturating_sub(REACH)..from)
        .rev()
        .take_while(|at| !begins_another(sentence, *at));
    let said = near
        .last()
        .is_some_and(|near| sentence.has_any(near, from, SPOILING))
        && introduced;
    let bounded = sentence
        .amounts
        .iter()
        .any(|amount| amount.last <= first || amount.first >= last);
    if !(introduced && !said || bracketed || labelled) || !bounded {
        return None;
    }
    let minutes = at + 1..last;
    let triggers = (0..sentence.amounts.len())
        .filter(|index| {
            sentence
                .amount(*index)
                .is_some_and(|amount| minutes.contains(&amount.first))
        })
        .collect();
    let expr = match parts.as_slice() {
        [one] => one.clone(),
        _ => Expr::Any(parts.clone()),
    };
    Some(Found {
        first: from,
        last,
        expr,
        triggers,
        parts,
    })
}
