//! Which conditions open a stretch of a sentence, so that they govern what stands after them, and which govern nothing.

use super::Found;
use super::aside::{Said, said};
use super::exception::is_case_of_exception;
use super::labels::{begins_statement, goes_on, labels};
use crate::model::Expr;
use crate::rules::Sentence;

/// Verbs that say something of the subject before them.
const SUBJECT_VERBS: &[&str] = &[
    "shall", "must", "may", "can", "will", "should", "is", "are", "require", "requires", "need",
    "needs", "take", "takes", "call", "calls", "have", "has", "receive", "receives", "get", "gets",
    "want", "wants",
];

/// Whether a condition only says that something holds then, too: "even when the joint is narrow", "no matter if". Nothing is left out for it.
pub(super) fn holds_anyway(sentence: &Sentence<'_>, condition: &Found) -> bool {
    const EVEN: &[&str] = &[
        "even",
        "including",
        "especially",
        "particularly",
        "regardless",
    ];
    // "whether or not the joint is over 2 in. wide"
    if sentence.is_word(condition.first, "whether") || said(sentence, condition) == Said::Nothing {
        return true;
    }
    let set_off =
        sentence.is_sign(condition.last, ',') && sentence.is_word(condition.last + 1, "too");
    let also_behind = set_off
        || sentence.is_any(condition.last, &["too", "also"])
        || sentence.is_word(condition.last, "as")
            && sentence.is_any(condition.last + 1, &["well", "in", "for"]);
    if also_behind {
        return true;
    }
    let Some(before) = condition.first.checked_sub(1) else {
        return false;
    };
    let pair = |first: &str, second: &[&str]| {
        before > 0 && sentence.is_word(before - 1, first) && sentence.is_any(before, second)
    };
    says_another_value(sentence, before)
        || sentence.is_any(before, EVEN)
        || pair("in", &["particular"])
        || pair("no", &["matter"])
        || pair("well", &["as"])
        || sentence.is_word(before, "also")
        || pair("also", &["required", "needed", "used"])
        || pair("not", &["just", "only", "merely"])
}

/// Whether a bracket says that the value is another then: "3/4 in. (less where the joint is narrower)". The value before it holds all the same.
fn says_another_value(sentence: &Sentence<'_>, before: usize) -> bool {
    const OTHER: &[&str] = &[
        "less",
        "more",
        "smaller",
        "larger",
        "greater",
        "reduced",
        "increased",
        "thinner",
        "thicker",
        "shorter",
        "longer",
        "deeper",
        "shallower",
        "wider",
        "narrower",
        "closer",
    ];
    before > 0 && sentence.is_sign(before - 1, '(') && sentence.is_any(before, OTHER)
}

/// Whether words behind a condition speak of every case, or of those that it leaves: "and in every wall", "and all wool", "in other floors", "and for higher
/// ratings". "And compress all layers" is an order under the condition; "in all layers" of what it speaks of would be misread as of every case.
pub(super) fn lifts(sentence: &Sentence<'_>, at: usize) -> bool {
    const EVERY: &[&str] = &["every", "all", "any"];
    const OTHER: &[&str] = &[
        "other",
        "others",
        "higher",
        "lower",
        "wider",
        "narrower",
        "larger",
        "smaller",
        "thicker",
        "thinner",
        "remaining",
        "greater",
        "longer",
        "shorter",
        "taller",
    ];
    let begins = at > 0 && (sentence.is_any(at - 1, &["and", "but"]) || sentence.is_stop(at - 1));
    if !begins {
        return false;
    }
    let article = |at: usize| usize::from(sentence.is_any(at, &["the", "all", "any"]));
    let placed = sentence.is_any(at, &["in", "for", "at", "on", "with"]);
    let every = sentence.is_any(at + usize::from(placed), EVERY);
    let of_rest = placed && sentence.is_any(at + 1 + article(at + 1), OTHER);
    every || of_rest
}

/// Whether a condition opens its stretch of the sentence: nothing but a conjunction before it there.
pub(super) fn opens_stretch(sentence: &Sentence<'_>, condition: &Found) -> bool {
    let Some(before) = condition.first.checked_sub(1) else {
        return true;
    };
    // "for 3 h it shall be 125 mm" after a semicolon or a bullet: nothing stands before it that it could end. `2 hr: 6 in.` labels what follows.
    let labels = labels(sentence, condition);
    if (begins_statement(sentence, before) || labels) && goes_on(sentence, condition) {
        return true;
    }
    let stop = sentence.is_stop(before) || sentence.is_sign(before, '.');
    let joined = sentence.is_any(
        before,
        &[
            "that", "and", "but", "or", "except", "though", "although", "while", "whereas", "which",
        ],
    ) && (before == 0
        || sentence.is_stop(before - 1)
        || sentence.is_any(before - 1, &["except", "exception", "save", "provided"]));
    // What a semicolon follows has nothing after it in its stretch.
    let comma_after = sentence.is_stop(condition.last) && !sentence.is_sign(condition.last, ';');
    let verb_after = sentence.is_any(
        condition.last,
        &[
            "shall", "must", "is", "are", "may", "to", "require", "requires", "use", "a", "the",
            "an", "each", "add", "provide", "fit", "install", "it", "they",
        ],
    );
    // "for joints up to 2 in. use 24 in. and for joints over 2 in. use 12 in."
    let second = sentence.is_any(before, &["and", "but"])
        && (sentence.is_any(condition.last, &["use", "provide", "add", "install"])
            || is_elliptic(sentence, condition) && leads_to_bound(sentence, condition));
    if ends_a_statement(sentence, condition) {
        return false;
    }
    (stop || joined) && (comma_after || verb_after || leads_to_bound(sentence, condition))
        || (stop || joined || sentence.ends_in_stop(before) || sentence.is_sign(before, '('))
            && leads_to_another_case(sentence, condition)
        || second
        || leads_as_configuration(sentence, condition)
        || is_subject(sentence, condition)
        || sentence.is_word(condition.first, "from")
        || is_case_of_exception(sentence, condition)
}

/// Whether a condition closes a statement with a verb of its own before another begins: "blocks shall be grouted, *unless they are solid*, and joints shall be 3/8 in.
/// thick".
fn ends_a_statement(sentence: &Sentence<'_>, condition: &Found) -> bool {
    let Some(comma) = condition.first.checked_sub(1) else {
        return false;
    };
    let from = (0..comma)
        .rev()
        .find(|at| sentence.is_sign(*at, ';') || sentence.is_sign(*at, ':'))
        .map_or(0, |at| at + 1);
    let told = (from..comma).any(|at| sentence.is_any(at, SUBJECT_VERBS));
    let another = sentence.is_sign(condition.last, ',')
        && sentence.is_any(condition.last + 1, &["and", "but"]);
    let conjunction = sentence.is_any(condition.first, &["unless", "where", "when", "if"]);
    sentence.is_sign(comma, ',')
        && conjunction
        && told
        && another
        && !(from..comma).any(|at| sentence.is_any(at, &["where", "when", "if", "for", "unless"]))
}

/// `and if over min 4 in.`
fn is_elliptic(sentence: &Sentence<'_>, condition: &Found) -> bool {
    condition.last == condition.first + 2
        && sentence.is_any(
            condition.first + 1,
            &["over", "under", "not", "so", "above", "below"],
        )
}

/// `packing is 4 in. deep but joints over 3 in. require 6 in.`: things that a verb follows are what it says something of, and nothing before them is.
fn is_subject(sentence: &Sentence<'_>, condition: &Found) -> bool {
    const THINGS: &[&str] = &[
        "joint", "joints", "gap", "gaps", "opening", "openings", "widths",
    ];
    let article = usize::from(sentence.is_any(condition.first, &["a", "an", "any", "all", "each"]));
    sentence.is_any(condition.first + article, THINGS)
        && sentence.is_any(condition.last, SUBJECT_VERBS)
}

/// `minimum 20 %, for widths over 60 mm minimum 30 %`, `≥ 80 mm, for widths over 50 mm ≥ 100 mm`: what a qualified number follows at once opens its stretch.
fn leads_to_bound(sentence: &Sentence<'_>, condition: &Found) -> bool {
    const QUALIFIERS: &[&str] = &[
        "min", "minimum", "max", "maximum", "not", "no", "less", "more", "than", "at", "least",
        "most", "nom", "nominal", "however",
    ];
    const SIGNS: &[char] = &['≥', '≤', '>', '<', '='];
    let qualifies = |at: &usize| {
        let sign = SIGNS.iter().any(|sign| sentence.is_sign(*at, *sign));
        (sign || sentence.is_any(*at, QUALIFIERS)) && sentence.amount_at(*at).is_none()
    };
    let words = (condition.last..sentence.tokens.len())
        .take_while(qualifies)
        .count();
    words > 0 && sentence.amount_at(condition.last + words).is_some()
}

/// `12.5 mm, but in joints over 50 mm wide 20 mm`, `25 % minimum (in joints narrower than 50 mm, 33 %)`: where a number that measures what
/// the one before does follows at once, the condition is its own, and excuses nothing of the one before.
pub(super) fn leads_to_another_case(sentence: &Sentence<'_>, condition: &Found) -> bool {
    let bracketed = condition
        .first
        .checked_sub(1)
        .is_some_and(|before| sentence.is_sign(before, '('));
    let at = condition.last + usize::from(bracketed && sentence.is_sign(condition.last, ','));
    let at = at + usize::from(sentence.is_any(at, &["only", "just"]));
    let following = sentence.amounts.iter().find(|amount| amount.first == at);
    let before = sentence
        .amounts
        .iter()
        .rfind(|amount| amount.last <= condition.first);
    following
        .zip(before)
        .is_some_and(|(own, other)| own.unit.dimension() == other.unit.dimension())
}

/// `Configuration A uses one layer, Configuration B two layers`, `in Configuration A lap 1 in. and in Configuration B 2 in.`: a configuration
/// that opens its stretch governs the number after it, and not the one before.
fn leads_as_configuration(sentence: &Sentence<'_>, condition: &Found) -> bool {
    if subject(&condition.expr) != Some("configuration") {
        return false;
    }
    let Some(before) = condition.first.checked_sub(1) else {
        return true;
    };
    let opens = sentence.is_stop(before) || sentence.is_any(before, &["and", "or", "but"]);
    let follows = (condition.last..sentence.tokens.len())
        .take_while(|at| {
            !sentence.is_stop(*at) && !sentence.is_any(*at, &["configuration", "config"])
        })
        .any(|at| sentence.amount_at(at).is_some());
    (opens || is_of_the_subject(sentence, condition)) && follows
}

/// `The system of Configuration A is made for 25 percent, and that of Configuration B a max 12.5 percent`: what tells the subject of a statement apart
/// governs what is said of it, and nothing before it.
fn is_of_the_subject(sentence: &Sentence<'_>, condition: &Found) -> bool {
    const LONGEST: usize = 6;
    const LIMITS: &[&str] = &[
        "a", "an", "the", "min", "minimum", "max", "maximum", "not", "no", "at", "by", "for", "to",
    ];
    const PARTS: &[&str] = &["and", "or", "but", "while", "whereas", "except"];
    const VERBS: &[&str] = &[
        "is",
        "are",
        "shall",
        "must",
        "has",
        "have",
        "may",
        "installed",
        "used",
    ];
    let begins = |at: &usize| {
        at.checked_sub(1)
            .is_none_or(|before| sentence.is_stop(before) || sentence.is_any(before, PARTS))
    };
    let is_name = |at: &usize| {
        sentence.has_word(*at)
            && sentence.amount_at(*at).is_none()
            && !sentence.is_any(*at, VERBS)
            && !sentence.is_any(*at, PARTS)
    };
    let subject = (0..condition.first).rev().take(LONGEST).take_while(is_name);
    let Some(first) = subject.last().filter(begins) else {
        return false;
    };
    let is_that = first + 1 == condition.first && sentence.is_any(first, &["that", "those"]);
    let limited =
        sentence.is_any(condition.last, LIMITS) || sentence.amount_at(condition.last).is_some();
    sentence.is_any(condition.last, SUBJECT_VERBS) || is_that && limited
}

/// What a condition is about, for telling whether two are parallel; none for mere words.
pub(super) fn subject(expr: &Expr) -> Option<&str> {
    match expr {
        Expr::All(parts) | Expr::Any(parts) => parts.first().and_then(subject),
        Expr::Not(part) => subject(part),
        Expr::Test(test) => Some(&test.property),
        Expr::Words(words) => words
            .starts_with("Configuration")
            .then_some("configuration"),
    }
}
