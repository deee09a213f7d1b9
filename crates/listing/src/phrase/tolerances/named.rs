//! Tolerances that are called so: `tol. +2/-0`, `with a tolerance of ± 3 mm`.

use super::super::lex::Token;
use super::super::values::{Value, value_at};
use super::deviations;

/// The token after ", tolerance" or "(tol.", where a tolerance follows.
pub(super) fn named_tolerance(tokens: &[Token<'_>], at: usize) -> Option<usize> {
    let parted = tokens
        .get(at)
        .is_some_and(|token| token.is_sign(',') || token.is_sign('(') || token.is_sign(';'));
    let word = at + usize::from(parted);
    // `; permitted deviation ± 0.5 mm`
    let permitted = [
        "permitted",
        "permissible",
        "allowed",
        "allowable",
        "admissible",
    ]
    .iter()
    .any(|name| tokens.get(word).is_some_and(|token| token.is_word(name)));
    let word = word + usize::from(permitted);
    // `15 mm with a tolerance of + 3 mm`, `51 mm deep, within a tolerance of 3 mm`
    let with = tokens
        .get(word)
        .is_some_and(|token| token.is_word("with") || token.is_word("within"))
        && tokens.get(word + 1).is_some_and(|token| token.is_word("a"));
    let word = if with { word + 2 } else { word };
    let named = ["tolerance", "tolerances", "tol", "deviation"]
        .iter()
        .any(|name| tokens.get(word).is_some_and(|token| token.is_word(name)));
    let after = word + 1;
    let of = tokens.get(after).is_some_and(|token| token.is_word("of"));
    let after = after + usize::from(of);
    (named && (deviations(tokens, after).is_some() || unsigned(tokens, after).is_some()))
        .then_some(after)
}

/// `tolerance 10 %`, `tolerance of 1/16 in. either way`: a named tolerance without a sign is allowed to both sides. It must end there:
/// "tolerance 2 mm in 3 m" is of something else.
pub(super) fn unsigned(tokens: &[Token<'_>], at: usize) -> Option<(Value, Value, usize)> {
    let named = at > 0
        && ["tolerance", "tol", "of"]
            .iter()
            .any(|name| tokens.get(at - 1).is_some_and(|token| token.is_word(name)));
    let value = value_at(tokens, at).filter(|value| named && value.unit.is_some())?;
    let word = |at: usize, words: &[&str]| {
        tokens
            .get(at)
            .is_some_and(|token| words.iter().any(|word| token.is_word(word)))
    };
    let either_way =
        word(value.next, &["either", "each", "both"]) && word(value.next + 1, &["way", "ways"]);
    let next = value.next + if either_way { 2 } else { 0 };
    let ends = tokens
        .get(next)
        .is_none_or(|token| [')', ',', ';', '.'].iter().any(|sign| token.is_sign(*sign)));
    (ends || either_way).then(|| (value.clone(), value, next))
}

/// The token after "percentage points".
pub(super) fn skip_points(tokens: &[Token<'_>], at: usize) -> usize {
    let word = |at: usize, words: &[&str]| {
        tokens
            .get(at)
            .is_some_and(|token| words.iter().any(|word| token.is_word(word)))
    };
    let percentage = at + usize::from(word(at, &["percentage", "percent"]));
    if word(percentage, &["point", "points"]) {
        percentage + 1
    } else {
        at
    }
}
