//! Exceptions: "except for the 3 Hr rating", "other than in Configuration B", "not required for the 1 Hr rating", "optional for 1 hr".
//!
//! What is excepted is where a clause does *not* apply, so the condition is turned round. "Except that for the 3 Hr rating the depth is
//! 5 in." is no such exception: it says what holds there, and so does "save in joints over 4 in., where 35 percent is required".

use super::Found;
use crate::model::Expr;
use crate::rules::Sentence;

/// Turns round the conditions that are exceptions.
pub(super) fn turn_exceptions(sentence: &Sentence<'_>, found: &mut [Found]) {
    for condition in found {
        let Some(first) = exceptive(sentence, condition.first) else {
            continue;
        };
        if states_what_holds(sentence, condition.last) || is_case_of_exception(sentence, condition)
        {
            continue;
        }
        condition.first = first;
        condition.parts.clear();
        condition.expr = match &condition.expr {
            Expr::Words(_) => Expr::Words(sentence.words(first, condition.last).to_owned()),
            tested => Expr::Not(Box::new(tested.clone())),
        };
    }
}

/// Whether a condition is the case that an exception makes for the words after it: "unless the wall exceeds 15 ft, *when they* stand 12 in. apart".
pub(super) fn is_case_of_exception(sentence: &Sentence<'_>, condition: &Found) -> bool {
    let Some(opener) = condition.last.checked_sub(2) else {
        return false;
    };
    condition.first < opener
        && sentence.is_any(opener, &["where", "when"])
        && sentence.is_any(opener + 1, &["it", "they", "this", "these"])
        && sentence.is_sign(opener - 1, ',')
}

/// Where the words that make an exception of a condition begin, when they stand right before it.
pub(crate) fn exceptive(sentence: &Sentence<'_>, condition: usize) -> Option<usize> {
    let mut at = condition.checked_sub(1)?;
    while at > 0
        && sentence.is_any(
            at,
            &[
                "for", "in", "at", "with", "on", "the", "where", "when", "of", "to", "as",
            ],
        )
    {
        at -= 1;
    }
    let before = |back: usize, word: &str| {
        at.checked_sub(back)
            .is_some_and(|at| sentence.is_word(at, word))
    };
    let excepts = sentence.is_any(at, &["except", "excepting", "excluding", "save", "unless"]);
    let than = (sentence.is_word(at, "than") && before(1, "other"))
        || (sentence.is_word(at, "but") && before(1, "all"));
    let denied = sentence.is_any(at, NEEDED) && (before(1, "not") || before(2, "not"));
    if than {
        Some(at - 1)
    } else {
        // What is optional in a case is asked for in all others.
        let optional = sentence.is_word(at, "optional") && !before(1, "not");
        (excepts || denied || optional || sentence.is_word(at, "not")).then_some(at)
    }
}

/// What is not asked for in an excepted case: "not required in".
const NEEDED: &[&str] = &[
    "required",
    "needed",
    "necessary",
    "permitted",
    "allowed",
    "used",
    "applicable",
    "apply",
];

/// Whether a condition is excepted from what stands before it, and what follows says what holds in it: "save in joints over 4 in., where 35 percent is
/// required".
pub(super) fn says_what_holds(sentence: &Sentence<'_>, condition: &Found) -> bool {
    exceptive(sentence, condition.first).is_some() && states_what_holds(sentence, condition.last)
}

/// Whether what follows a condition says what holds in it: ", where 35 percent is required".
fn states_what_holds(sentence: &Sentence<'_>, last: usize) -> bool {
    sentence.is_stop(last)
        && sentence.is_any(last + 1, &["where", "when", "which", "for", "in"])
        && sentence.amounts.iter().any(|amount| amount.first > last)
}
