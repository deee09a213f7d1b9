//! Conditions that a conjunction leads: "4 in. deep and for joints over 2 in. compressed 40 percent", "24 in. apart but where the joint is wider than 2 in. max
//! 12 in." What stands before the conjunction is said of every joint, so that the condition governs what follows it, and nothing where nothing does.
//!
//! "Min 4 in. for 1 hr and for 2 hr" ends what stands before it twice: right behind another condition it leads only to a number of its own.

use super::Found;
use crate::phrase::Token;
use crate::rules::Sentence;

/// Words that lead a condition to what follows it.
const CONJUNCTIONS: &[&str] = &[
    "and", "but", "or", "however", "while", "whereas", "though", "although",
];

/// Whether a conjunction right before a condition parts it from what stands before.
pub(super) fn is_led(sentence: &Sentence<'_>, found: &[Found], condition: &Found) -> bool {
    let Some(conjunction) = condition.first.checked_sub(1) else {
        return false;
    };
    let follows_another = found.iter().any(|other| other.last == conjunction);
    // "for the 2- and 3-hour ratings"
    let listed = sentence
        .token(condition.first)
        .is_some_and(Token::is_numeric);
    let numbered = sentence
        .amounts
        .iter()
        .any(|amount| amount.last <= conjunction);
    sentence.is_any(conjunction, CONJUNCTIONS)
        && numbered
        && !listed
        && (!follows_another || leads_to_own(sentence, condition))
}

/// Whether a number that is said of a condition's case follows it: "for the 3 hr rating *5 in.*", "for joints over 2 in. *compressed 40 percent*". What a
/// preposition begins may be said of what stands before: "20 ga for 1 hr and for 2 hr *with 16 in. spacing*".
pub(super) fn leads_to_own(sentence: &Sentence<'_>, condition: &Found) -> bool {
    const NOT_ITS_OWN: &[&str] = &[
        "with", "of", "by", "in", "on", "for", "and", "or", "where", "when", "if", "unless",
        "only", "as", "to",
    ];
    let bound = (condition.last..sentence.tokens.len())
        .take_while(|at| {
            !sentence.is_stop(*at) && !sentence.is_sign(*at, ')') && !sentence.is_sign(*at, '(')
        })
        .take_while(|at| !sentence.is_any(*at, &["where", "when", "if", "unless"]))
        .any(|at| sentence.amount_at(at).is_some());
    let limit = sentence.is_word(condition.last, "at")
        && !sentence.is_any(condition.last + 1, &["least", "most"]);
    bound && !limit && !sentence.is_any(condition.last, NOT_ITS_OWN)
}

/// Where what a led condition governs ends at the latest: at the comma behind its first number. What follows may be said of all.
pub(super) fn end_of_led(sentence: &Sentence<'_>, condition: &Found) -> usize {
    let first = sentence
        .amounts
        .iter()
        .find(|amount| amount.first >= condition.last);
    let from = first.map_or(condition.last, |amount| amount.last);
    (from..sentence.tokens.len())
        .find(|at| sentence.is_sign(*at, ',') || sentence.is_sign(*at, ';'))
        .unwrap_or(sentence.tokens.len())
}
