//! A limit that is closed behind its number and denied: "density of 4 pcf *or less shall not be used*", "*no* depth of 3 in. *or less is permitted*", "*do
//! not* use a width of 4 in. *or more*". The words around mean the contrary of the limit, or speak of a case: "widths of 4 in. or more require approval".
//! Such a number is left unread.
//!
//! What it would misread, as a number nobody read: a limit with an unlike refusal in its stretch, "studs 3 in. or wider that are not bent".

use super::Sentence;
use super::comparison_before::{NEGATIONS, compares_down, compares_up};
use crate::phrase::Amount;

/// How far before a number its denial may stand, and how far behind its refusal.
const REACH: usize = 10;

/// Words that a limit closes with, and what it measures.
const CLOSING: &[&str] = &[
    "less", "more", "greater", "lower", "higher", "over", "under", "above", "below", "deep",
    "thick", "wide", "long", "high", "apart", "equal", "to", "in", "any", "at",
];

/// Whether a number's closing limit is denied, or is a case of which something else is said.
pub(super) fn is_denied_or_case(sentence: &Sentence<'_>, index: usize, rule: &str) -> bool {
    let Some(amount) = sentence.amount(index) else {
        return false;
    };
    let end = closing_end(sentence, amount);
    match rule {
        "word after" | "closing qualifier" | "either or more" => {
            let or_so = (amount.last..end).any(|at| sentence.is_any(at, &["or", "and"]));
            or_so
                && (is_denied(sentence, amount, sentence.floor(index)) || is_refused(sentence, end))
        }
        // "less than or equal to 3 in. is not permitted"
        "comparison before" => {
            let or_equal = amount.first >= 2
                && sentence.is_word(amount.first - 1, "to")
                && sentence.is_word(amount.first - 2, "equal");
            or_equal && is_refused(sentence, end)
        }
        _ => false,
    }
}

/// The token behind the words that close a limit.
fn closing_end(sentence: &Sentence<'_>, amount: &Amount) -> usize {
    let mut at = sentence.skip_parentheses(amount.last);
    let closes = |at: usize| {
        sentence.is_any(at, CLOSING)
            || compares_up(sentence.word(at))
            || compares_down(sentence.word(at))
    };
    while closes(at) || sentence.is_any(at, &["or", "and"]) && closes(at + 1) {
        at = sentence.skip_parentheses(at + 1);
    }
    at
}

/// `do not use a width of 4 in. or more`, `no density of 3 pcf or less`
fn is_denied(sentence: &Sentence<'_>, amount: &Amount, floor: usize) -> bool {
    let lowest = floor.max(amount.first.saturating_sub(REACH));
    let mut before = (lowest..amount.first).rev().take_while(|at| {
        !sentence.is_stop(*at) && !sentence.is_any(*at, &["but", "and", "unless", "except"])
    });
    before.any(|at| {
        sentence.is_any(at, NEGATIONS) && !sentence.is_any(at + 1, &["only", "just", "merely"])
    })
}

/// `... shall not be used`, `... are prohibited`, `... requires approval`
fn is_refused(sentence: &Sentence<'_>, end: usize) -> bool {
    const REFUSED: &[&str] = &[
        "prohibited",
        "forbidden",
        "rejected",
        "unacceptable",
        "excluded",
        "inadmissible",
        "disallowed",
        "refused",
        "discarded",
    ];
    const NEEDS: &[&str] = &["require", "requires", "need", "needs", "calls", "call"];
    let stretch = (end..end + REACH).take_while(|at| {
        sentence.token(*at).is_some()
            && !sentence.is_stop(*at)
            && !sentence.is_any(*at, &["but", "and", "that", "which"])
    });
    let verbs = [
        "shall", "must", "may", "can", "should", "is", "are", "was", "were", "do", "does", "to",
    ];
    let mut stretch = stretch.take_while(|at| sentence.amount_at(*at).is_none());
    sentence.is_any(end, NEEDS)
        || stretch.any(|at| {
            let denied = sentence.is_word(at, "not")
                && (at == end || at > 0 && sentence.is_any(at - 1, &verbs));
            let of_another = compares_up(sentence.word(at + 1))
                || compares_down(sentence.word(at + 1))
                || sentence.is_any(at + 1, &["over", "under"]);
            denied && !of_another || sentence.is_any(at, REFUSED) || sentence.is_word(at, "cannot")
        })
}
