//! Exceptions: "except for the 3 Hr rating", "other than in Configuration B", "not required for the 1 Hr rating", "optional for 1 hr".
//!
//! What is excepted is where a clause does *not* apply, so the condition is turned round. "Except that for the 3 Hr rating the depth is
//! 5 in." is no such exception: it says what holds there, and so does "save in joints over 4 in., where 35 percent is required".

use super::Found;
use super::aside::{Said, said};
use crate::model::Expr;
use crate::rules::Sentence;

/// Turns round the conditions that are exceptions.
pub(super) fn turn_exceptions(sentence: &Sentence<'_>, found: &mut [Found]) {
    for condition in found {
        if is_case_of_unless(sentence, condition) {
            condition.expr = match &condition.expr {
                Expr::Not(tested) => (**tested).clone(),
                _ => Expr::Words(
                    sentence
                        .words(condition.first + 1, condition.last)
                        .to_owned(),
                ),
            };
            continue;
        }
        match said(sentence, condition) {
            Said::Holds => {}
            Said::Nothing => continue,
            Said::Asked(words) => {
                condition.first = condition.first.min(words.start);
                condition.parts.clear();
                condition.expr = Expr::Words(sentence.words(words.start, words.end).to_owned());
                continue;
            }
            Said::TakenOut(first) => {
                condition.first = condition.first.min(first);
                condition.parts.clear();
                condition.expr = match &condition.expr {
                    Expr::Not(tested) => (**tested).clone(),
                    tested => Expr::Not(Box::new(tested.clone())),
                };
                continue;
            }
        }
        let excepted = exceptive(sentence, condition.first);
        if let Some(first) = excepted.map_or_else(|| excepted_place(sentence, condition), |_| None)
        {
            condition.first = first;
            condition.parts.clear();
            condition.expr = Expr::Words(sentence.words(first, condition.last).to_owned());
            continue;
        }
        let Some(first) = excepted.or_else(|| left_out(sentence, condition)) else {
            continue;
        };
        if states_what_holds(sentence, condition.last)
            || is_case_of_exception(sentence, condition)
            || is_prohibition(sentence, condition)
            || leads_to_number(sentence, condition.last)
        {
            continue;
        }
        let case = sentence.words(condition.first, condition.last).to_owned();
        condition.first = first;
        condition.parts.clear();
        condition.expr = match &condition.expr {
            // "not needed where the mullions are 30 in. or less apart"
            Expr::Words(_) if sentence.is_any(first, &["not", "may"]) => {
                Expr::Not(Box::new(Expr::Words(case)))
            }
            Expr::Words(_) => Expr::Words(sentence.words(first, condition.last).to_owned()),
            tested => Expr::Not(Box::new(tested.clone())),
        };
    }
}

/// Where the words begin that except a place or joints which a condition tells more of: "*except in joints* where the width is less than 1 in.". Whether that is so, a
/// person must say.
fn excepted_place(sentence: &Sentence<'_>, condition: &Found) -> Option<usize> {
    const LONGEST: usize = 7;
    const EXCEPT: &[&str] = &["except", "excepting", "excluding", "save"];
    let led = sentence.is_any(condition.first, &["where", "when", "if", "which", "that"]);
    let named = |at: &usize| {
        sentence.has_word(*at)
            && sentence.amount_at(*at).is_none()
            && !sentence.is_any(*at, &["that", "shall", "must", "is", "are", "may"])
    };
    let before = condition.first.saturating_sub(LONGEST)..condition.first;
    let first = before
        .rev()
        .take_while(named)
        .find(|at| sentence.is_any(*at, EXCEPT))?;
    (led && !states_limit(sentence, condition)).then_some(first)
}

/// Whether a condition behind an exception only says in its own words what holds there: "except for 2 hr walls *when 1/2 in. is the minimum*". Its number is a
/// requirement, and no case.
pub(super) fn states_limit(sentence: &Sentence<'_>, condition: &Found) -> bool {
    const LONGEST: usize = 9;
    const EXCEPT: &[&str] = &["except", "excepting", "excluding", "save"];
    const SAID: &[&str] = &[
        "minimum",
        "maximum",
        "min",
        "max",
        "least",
        "most",
        "limit",
        "required",
        "permitted",
        "allowed",
        "acceptable",
        "sufficient",
    ];
    const HOLDING: &[&str] = &["is", "are", "be", "shall", "may"];
    let end = condition.last.max(
        condition
            .triggers
            .iter()
            .filter_map(|index| sentence.amount(*index))
            .map(|amount| amount.last)
            .max()
            .unwrap_or_default(),
    );
    let behind = end..(end + LONGEST).min(sentence.tokens.len());
    let statement = condition.first..behind.end;
    let stop = statement
        .clone()
        .skip(1)
        .find(|at| sentence.is_stop(*at))
        .unwrap_or(statement.end);
    let holds = sentence.has_any(condition.first, stop, HOLDING)
        && sentence.has_any(condition.first, stop, SAID);
    let numbered = (condition.first..stop).any(|at| sentence.amount_at(at).is_some());
    let before = condition.first.saturating_sub(LONGEST)..condition.first;
    let excepted = before
        .rev()
        .take_while(|at| !sentence.is_sign(*at, ';'))
        .any(|at| sentence.is_any(at, EXCEPT));
    sentence.is_any(condition.first, &["where", "when"]) && excepted && numbered && holds
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
    // "except as noted for joints over 2 in."
    let noted = sentence.is_any(at, &["noted", "specified", "stated", "shown"]);
    if noted && at > 1 && sentence.is_word(at - 1, "as") {
        at -= 2;
    }
    let before = |back: usize, word: &str| {
        at.checked_sub(back)
            .is_some_and(|at| sentence.is_word(at, word))
    };
    let excepts = sentence.is_any(
        at,
        &[
            "except",
            "excepting",
            "excluding",
            "exception",
            "save",
            "unless",
        ],
    );
    let than = (sentence.is_word(at, "than") && before(1, "other"))
        || (sentence.is_word(at, "but") && before(1, "all"));
    if than {
        return Some(at - 1);
    }
    let denied = (1..=2)
        .find(|back| sentence.is_any(at, NEEDED) && before(*back, "not"))
        .and_then(|back| at.checked_sub(back));
    // What is optional in a case is asked for in all others.
    let optional = sentence.is_word(at, "optional") && !before(1, "not");
    denied.or_else(|| (excepts || optional || sentence.is_word(at, "not")).then_some(at))
}

/// The end of words behind a case that take it out: "excepted", "is excluded", "does not apply".
pub(crate) fn end_of_exclusion(sentence: &Sentence<'_>, from: usize) -> Option<usize> {
    const OUT: &[&str] = &[
        "excepted", "excluded", "exempt", "exempted", "omitted", "deleted",
    ];
    const NOT: &[&str] = &[
        "apply",
        "applicable",
        "used",
        "included",
        "permitted",
        "allowed",
        "considered",
    ];
    let verb =
        usize::from(sentence.is_any(from, &["is", "are", "does", "do", "being", "may", "shall"]));
    let at = from + verb;
    if sentence.is_any(at, OUT) {
        return Some(at + 1);
    }
    let not = sentence.is_any(at, &["not", "never"]);
    let denied = (at + 1..at + 3).find(|at| sentence.is_any(*at, NOT));
    denied.filter(|_| not).map(|at| at + 1)
}

/// `unless the wall is thicker than 10 in., in which event two strips are used`: the case itself, since what follows says what holds in it.
fn is_case_of_unless(sentence: &Sentence<'_>, condition: &Found) -> bool {
    let at = condition.last + usize::from(sentence.is_stop(condition.last));
    let said = sentence.is_word(at, "then")
        || sentence.is_word(at, "in") && sentence.is_word(at + 1, "which");
    said && condition.first > 0
        && sentence.is_word(condition.first, "unless")
        && sentence.amounts.iter().any(|amount| amount.first > at)
}

/// Where the words begin that leave a measured thing out in a case: "packing min 4 in. deep *may be omitted* where the joint is under 1 in.", "is optional in".
fn left_out(sentence: &Sentence<'_>, condition: &Found) -> Option<usize> {
    const LEFT_OUT: &[&str] = &["omitted", "waived", "deleted", "optional"];
    let before = condition.first.checked_sub(1)?;
    let of_two = before > 0
        && (sentence.is_word(before - 1, "left") && sentence.is_word(before, "out")
            || sentence.is_word(before - 1, "dispensed") && sentence.is_word(before, "with"));
    let at = before - usize::from(of_two);
    if !of_two && !sentence.is_any(at, LEFT_OUT) {
        return None;
    }
    let verb = (at.saturating_sub(2)..at)
        .find(|at| sentence.is_any(*at, &["may", "can", "is", "are", "be"]))
        .unwrap_or(at);
    // What no rule could test reaches over no comma: "depth 3 in., may be omitted when ..." stays asked for.
    let parted =
        verb > 0 && sentence.is_sign(verb - 1, ',') && matches!(condition.expr, Expr::Words(_));
    let denied = parted || sentence.has_any(verb.saturating_sub(2), at, &["not", "never", "no"]);
    let measured = sentence.amounts.iter().any(|amount| {
        amount.last <= verb && !(amount.last..verb).any(|at| sentence.is_sign(at, ';'))
    });
    (measured && !denied).then_some(verb)
}

/// Whether a condition tells where something must not be: "4 in. deep and shall not be used where the floor may lift". Nothing that was said before holds only
/// there, or only elsewhere.
pub(super) fn is_prohibition(sentence: &Sentence<'_>, condition: &Found) -> bool {
    let Some(at) = condition.first.checked_sub(1) else {
        return false;
    };
    let permitted = sentence.is_any(at, &["permitted", "allowed"]);
    let used = sentence.is_any(at, &["used", "employed", "installed"]);
    let not = (at.saturating_sub(2)..at).find(|at| sentence.is_word(*at, "not"));
    not.is_some_and(|not| {
        let commands = not > 0 && sentence.is_any(not - 1, &["shall", "must", "may", "can"]);
        permitted || used && commands
    })
}

/// What is not asked for in an excepted case: "not required in".
pub(super) const NEEDED: &[&str] = &[
    "required",
    "needed",
    "necessary",
    "permitted",
    "allowed",
    "used",
    "applicable",
    "apply",
    "mandatory",
    "obligatory",
    "compulsory",
    "imperative",
];

/// Whether a condition is excepted from what stands before it, and what follows says what holds in it: "save in joints over 4 in., where 35 percent is
/// required".
pub(super) fn says_what_holds(sentence: &Sentence<'_>, condition: &Found) -> bool {
    is_case_of_unless(sentence, condition)
        || exceptive(sentence, condition.first).is_some()
            && (states_what_holds(sentence, condition.last)
                || leads_to_number(sentence, condition.last))
}

/// Whether what follows a condition says what holds in it: ", where 35 percent is required", ", then min 5 in."
fn states_what_holds(sentence: &Sentence<'_>, last: usize) -> bool {
    let stopped = usize::from(sentence.is_stop(last));
    let at = last + stopped;
    let says = sentence.is_any(at, &["where", "when", "which", "then"])
        || stopped > 0 && sentence.is_any(at, &["for", "in"]);
    says && sentence.amounts.iter().any(|amount| amount.first > last)
}

/// Whether a number follows an excepted case at once: "except for the 3 hr rating *min 5 in.*"
fn leads_to_number(sentence: &Sentence<'_>, last: usize) -> bool {
    const QUALIFIERS: &[&str] = &[
        "min", "minimum", "max", "maximum", "not", "no", "less", "more", "than", "at", "least",
        "most", "nom", "nominal",
    ];
    let at = (last..sentence.tokens.len())
        .find(|at| sentence.amount_at(*at).is_some() || !sentence.is_any(*at, QUALIFIERS));
    at.is_some_and(|at| sentence.amount_at(at).is_some())
}

/// Of the numbers behind a condition those that are said of it where it only tells more of an excepted place: of "tight on every side except at the sill, where
/// a gap is left, and held by pins 3 in. from each edge" none behind the comma.
pub(super) fn within_excepted_place(
    sentence: &Sentence<'_>,
    condition: &Found,
    mut governed: Vec<usize>,
) -> Vec<usize> {
    let comma = |at: &usize| sentence.is_sign(*at, ',');
    let Some(before) = condition.first.checked_sub(1).filter(comma) else {
        return governed;
    };
    let from = (0..before)
        .rev()
        .find(|at| sentence.is_stop(*at))
        .map_or(0, |at| at + 1);
    let end = (condition.last..sentence.tokens.len()).find(comma);
    let tells_more = sentence.is_any(condition.first, &["where", "when"])
        && !sentence.is_word(before.saturating_sub(1), "that")
        && sentence.has_any(from, before, &["except", "excepting", "save"])
        && sentence
            .amounts
            .iter()
            .all(|amount| amount.last <= from || before < amount.first);
    if let Some(end) = end.filter(|_| tells_more) {
        governed.retain(|index| {
            let amount = sentence.amount(*index);
            amount.is_some_and(|amount| amount.first < end)
        });
    }
    governed
}
