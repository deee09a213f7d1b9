//! What a permission is tied to by "but only with": "it may be raised to 18 in. but only with a 1/4 in. angle".
//!
//! The number that is permitted holds only there, and the words say where, for a person. Without them the looser number would hold for everybody.

use super::Found;
use crate::model::Expr;
use crate::rules::Sentence;

pub(super) fn only_with(sentence: &Sentence<'_>) -> Vec<Found> {
    (0..sentence.tokens.len())
        .filter_map(|but| tied_at(sentence, but))
        .collect()
}

/// "But only with ..." at a token, behind a number that is permitted.
fn tied_at(sentence: &Sentence<'_>, but: usize) -> Option<Found> {
    let reads = sentence.is_any(but, &["but", "though"])
        && sentence.is_word(but + 1, "only")
        && sentence.is_any(but + 2, &["with", "beside", "over", "on", "under"]);
    let start = (0..but)
        .rev()
        .find(|at| sentence.is_sign(*at, ';'))
        .map_or(0, |at| at + 1);
    let permitted = sentence.has_any(start, but, &["may", "can", "permitted", "allowed"])
        && (start..but).any(|at| sentence.amount_at(at).is_some());
    let end = (but + 3..sentence.tokens.len())
        .find(|at| sentence.is_stop(*at) || sentence.is_sign(*at, '.'))
        .unwrap_or(sentence.tokens.len());
    let within = |index: &usize| {
        sentence
            .amount(*index)
            .is_some_and(|amount| but < amount.first && amount.last <= end)
    };
    (reads && permitted && end > but + 3).then(|| Found {
        first: but,
        last: end,
        expr: Expr::Words(sentence.words(but, end).to_owned()),
        triggers: (0..sentence.amounts.len()).filter(within).collect(),
        parts: Vec::new(),
    })
}
