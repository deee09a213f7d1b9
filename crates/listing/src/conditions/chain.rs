//! Conditions that stand side by side and are one: "for joints over 2 in. or for the 3 hr rating", "for the 3 hr rating, where the joint is over 2 in. wide".
//!
//! Joined by "or" each is enough. With nothing between them both must hold. "For the 3 hr rating and for joints over 2 in." may be said of what is either, or
//! of what is both: which, a person must say. Where the second leads to a number of its own and the first ends what stands before it, they are
//! no chain: "4 in. for the 2 hr rating and for the 3 hr rating 5 in."

use super::contrast::is_contrast;
use super::exception::is_case_of_exception;
use super::led::leads_to_own;
use super::{Found, kinds, parallel};
use crate::model::{Expr, Relation, Test};
use crate::rules::Sentence;

/// How two conditions are joined.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Joint {
    Or,
    And,
    Comma,
    Nothing,
}

/// Makes one of the conditions that stand side by side.
pub(super) fn join(sentence: &Sentence<'_>, found: &mut Vec<Found>) {
    let mut joined: Vec<Found> = Vec::new();
    for condition in found.drain(..) {
        let one = joined
            .last()
            .and_then(|before| both(sentence, before, &condition));
        match (one, joined.last_mut()) {
            (Some(one), Some(last)) => *last = one,
            _ => joined.push(condition),
        }
    }
    *found = joined;
}

/// The condition that two make, where they are one.
fn both(sentence: &Sentence<'_>, one: &Found, other: &Found) -> Option<Found> {
    let joint = joint(sentence, one.last, other.first)?;
    let apart = [one, other].iter().any(|own| {
        is_contrast(sentence, own)
            || sentence.is_word(own.first, "whether")
            || is_case_of_exception(sentence, own)
            || parallel::governed(sentence, own).is_some()
            || kinds::governed(sentence, own).is_some()
    });
    let leads = !opens(sentence, one) && leads_to_own(sentence, other);
    let listed = joint == Joint::Comma && !(opens(sentence, one) && sentence.is_stop(other.last));
    if apart || leads || listed && !in_brackets(sentence, one, other) {
        return None;
    }
    let words = || Expr::Words(sentence.words(one.first, other.last).to_owned());
    let ratings = is_one_rating(&one.expr) && is_one_rating(&other.expr);
    let expr = match joint {
        _ if matches!(one.expr, Expr::Not(_)) => words(),
        Joint::Or => Expr::Any(alternatives(&one.expr, &other.expr)),
        Joint::And if ratings => Expr::Any(alternatives(&one.expr, &other.expr)),
        Joint::And => words(),
        _ if listed => words(),
        _ => one.expr.clone().and(other.expr.clone()),
    };
    let parts = match &expr {
        Expr::Any(parts) if ratings => parts.clone(),
        _ => Vec::new(),
    };
    Some(Found {
        first: one.first,
        last: other.last,
        expr,
        triggers: [one.triggers.as_slice(), &other.triggers].concat(),
        parts,
    })
}

fn alternatives(one: &Expr, other: &Expr) -> Vec<Expr> {
    let parts = |expr: &Expr| match expr {
        Expr::Any(parts) => parts.clone(),
        single => vec![single.clone()],
    };
    [parts(one), parts(other)].concat()
}

/// Whether it asks for one rating or for one of several, of which a joint has but one.
fn is_one_rating(expr: &Expr) -> bool {
    match expr {
        Expr::Any(parts) => parts.iter().all(is_one_rating),
        Expr::Test(Test {
            property, relation, ..
        }) => property == "joint.rating" && *relation == Relation::Exactly,
        _ => false,
    }
}

/// What joins two conditions with nothing else between them.
fn joint(sentence: &Sentence<'_>, from: usize, to: usize) -> Option<Joint> {
    let comma = usize::from(from < to && sentence.is_sign(from, ','));
    let at = from + comma;
    if at == to {
        return Some(if comma > 0 {
            Joint::Comma
        } else {
            Joint::Nothing
        });
    }
    let alone = at + 1 == to;
    if alone && sentence.is_word(at, "or") {
        Some(Joint::Or)
    } else if alone && sentence.is_word(at, "and") {
        Some(Joint::And)
    } else {
        None
    }
}

/// Whether nothing stands before a condition in its stretch that it could end.
fn opens(sentence: &Sentence<'_>, condition: &Found) -> bool {
    let start = (0..condition.first)
        .rev()
        .find(|at| {
            sentence.is_stop(*at) || sentence.is_sign(*at, '(') || sentence.is_sign(*at, '.')
        })
        .map_or(0, |at| at + 1);
    (start..condition.first)
        .all(|at| sentence.is_any(at, &["either", "both", "and", "but", "or", "only"]))
}

/// Whether two conditions fill brackets of their own.
fn in_brackets(sentence: &Sentence<'_>, one: &Found, other: &Found) -> bool {
    one.first > 0 && sentence.is_sign(one.first - 1, '(') && sentence.is_sign(other.last, ')')
}
