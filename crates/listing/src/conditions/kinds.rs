//! Kinds of concrete that a sentence sets against each other, each with its own numbers: "lightweight, 107 to 116 pcf, or normal weight, 147 pcf", "145
//! pcf (NORMAL WT.) or 110 pcf (LT. WT.)". A number of one kind says nothing of the other.
//!
//! Only where both kinds are named, parted by "or", a stroke, a stop or a semicolon, and each part has a number that measures what the other's does.
//! Which concrete there is, only a person can say. It would misread a slab that is cast of both, one over the other.

use measure::Dimension;

use super::Found;
use crate::model::Expr;
use crate::rules::Sentence;

/// A kind of concrete that a sentence names.
struct Kind {
    first: usize,
    last: usize,
    light: bool,
}

/// The two kinds, as conditions.
pub(crate) fn kinds(sentence: &Sentence<'_>) -> Vec<Found> {
    let named = named(sentence);
    let [one, other] = named.as_slice() else {
        return Vec::new();
    };
    let parted = part(sentence, one, other);
    // "made with either lightweight or normal weight aggregate" is said of both.
    let in_one_breath = (one.last..other.first).all(|at| sentence.is_word(at, "or"));
    let either = one.first > 0 && sentence.is_word(one.first - 1, "either");
    if one.light == other.light || parted.is_none() || (either && in_one_breath) {
        return Vec::new();
    }
    let found = |kind: &Kind| Found {
        first: kind.first,
        last: kind.last,
        expr: Expr::Words(sentence.words(kind.first, kind.last).to_owned()),
        triggers: Vec::new(),
        parts: Vec::new(),
    };
    let found = vec![found(one), found(other)];
    let each = found
        .iter()
        .all(|kind| governed(sentence, kind).is_some_and(|own| !own.is_empty()));
    if each { found } else { Vec::new() }
}

/// The amounts that a kind of concrete governs; none where the condition isn't one.
pub(super) fn governed(sentence: &Sentence<'_>, condition: &Found) -> Option<Vec<usize>> {
    kind_at(sentence, condition.first)?;
    let named = named(sentence);
    let [one, other] = named.as_slice() else {
        return None;
    };
    let is_own = |kind: &Kind| kind.first == condition.first && kind.last == condition.last;
    if !condition.triggers.is_empty() || !(is_own(one) || is_own(other)) {
        return None;
    }
    let cut = part(sentence, one, other)?;
    let dimension = |index: &usize| Some(sentence.amount(*index)?.unit.dimension());
    let side = |before: bool| -> Vec<usize> {
        (0..sentence.amounts.len())
            .filter(|index| {
                sentence.amount(*index).is_some_and(|amount| {
                    (amount.first < cut) == before && near(sentence, amount.first, cut)
                })
            })
            .collect()
    };
    let (own, against) = if is_own(one) {
        (side(true), side(false))
    } else {
        (side(false), side(true))
    };
    let measured = |index: &usize| {
        let own = dimension(index);
        matches!(own, Some(Dimension::Density | Dimension::Length))
            && against.iter().any(|other| dimension(other) == own)
    };
    Some(own.into_iter().filter(measured).collect())
}

/// Whether nothing parts a number from the place where the kinds part: no semicolon, and no sentence's end.
fn near(sentence: &Sentence<'_>, at: usize, cut: usize) -> bool {
    let (from, to) = (at.min(cut), at.max(cut));
    (from + 1..to).all(|at| !sentence.is_sign(at, ';'))
}

/// The token that parts two kinds.
fn part(sentence: &Sentence<'_>, one: &Kind, other: &Kind) -> Option<usize> {
    (one.last..other.first).find(|at| {
        sentence.is_word(*at, "or")
            || ['/', ';', '.']
                .iter()
                .any(|sign| sentence.is_sign(*at, *sign))
    })
}

fn named(sentence: &Sentence<'_>) -> Vec<Kind> {
    let mut found: Vec<Kind> = Vec::new();
    for at in 0..sentence.tokens.len() {
        if found.last().is_none_or(|kind| kind.last <= at) {
            found.extend(kind_at(sentence, at));
        }
    }
    found
}

/// The kind that is named at a token.
fn kind_at(sentence: &Sentence<'_>, at: usize) -> Option<Kind> {
    const LIGHT: &[&str] = &["lightweight", "light-weight", "ltwt", "ltwt.", "lw", "lwc"];
    const NORMAL: &[&str] = &["nwc", "nw", "normal-weight", "normalweight"];
    let whole = |light| Kind {
        first: at,
        last: at + 1,
        light,
    };
    if sentence.is_any(at, LIGHT) {
        return Some(whole(true));
    }
    if sentence.is_any(at, NORMAL) {
        return Some(whole(false));
    }
    let weight = sentence.is_any(at, &["normal", "light", "lt", "lt."])
        && sentence.is_any(at + 1, &["weight", "wt", "wt.", "density"]);
    weight.then(|| Kind {
        first: at,
        last: at + 2,
        light: !sentence.is_word(at, "normal"),
    })
}
