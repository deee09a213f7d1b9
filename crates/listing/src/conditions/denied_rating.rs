//! Ratings that are not asked for: "if a 2 hr rating *is not required*", "where *no* 2 hr rating is required". The rating alone would be the opposite, so the
//! whole stays words.

use core::ops::Range;

use super::Found;
use crate::model::Expr;
use crate::rules::Sentence;

/// What is asked of a rating, or not.
const ASKED: &[&str] = &[
    "required",
    "needed",
    "necessary",
    "sought",
    "specified",
    "requested",
    "wanted",
    "called",
    "claimed",
    "applicable",
];

/// Puts the denial into a condition that was read without it.
pub(super) fn keep_denial(sentence: &Sentence<'_>, condition: &mut Found) {
    let reads = match &condition.expr {
        Expr::Any(parts) => parts.iter().all(Expr::is_of_rating),
        Expr::Not(tested) => tested.is_of_rating(),
        expr => expr.is_of_rating(),
    };
    if !reads {
        return;
    }
    if let Some(words) = denied(sentence, condition.first, condition.last) {
        condition.first = words.start;
        condition.last = words.end;
        condition.expr = Expr::Words(sentence.words(words.start, words.end).to_owned());
        condition.parts.clear();
    }
}

/// The tokens of a rating at `[first, last)` with the words around it that deny it.
pub(super) fn denied(sentence: &Sentence<'_>, first: usize, last: usize) -> Option<Range<usize>> {
    after(sentence, last)
        .map(|end| first..end)
        .or_else(|| before(sentence, first).map(|start| start..asked(sentence, last)))
}

/// The end of "is not required" behind a rating.
fn after(sentence: &Sentence<'_>, last: usize) -> Option<usize> {
    let verb = usize::from(sentence.is_any(last, &["is", "are", "has", "need"]));
    let not = last + verb;
    let asked = (not + 1..not + 4).find(|at| sentence.is_any(*at, ASKED))?;
    sentence.is_any(not, &["not", "never"]).then_some(asked + 1)
}

/// Where "where no" begins before a rating.
fn before(sentence: &Sentence<'_>, first: usize) -> Option<usize> {
    let no = first
        .checked_sub(1)
        .filter(|at| sentence.is_any(*at, &["no", "without"]))?;
    no.checked_sub(1)
        .filter(|at| sentence.is_any(*at, &["where", "when", "if", "in", "for", "with"]))
}

/// The end of "is required" behind a rating, if it stands there.
fn asked(sentence: &Sentence<'_>, last: usize) -> usize {
    let asked = last + usize::from(sentence.is_any(last, &["is", "are"]));
    if sentence.is_any(asked, ASKED) {
        asked + 1
    } else {
        last
    }
}
