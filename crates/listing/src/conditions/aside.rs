//! What brackets say of the case in them: "(except joints under 1 in.)", "(joints under 2 in. excluded)", "(see Note 3 for joints under 1 in.)".
//!
//! A case that brackets take out is turned round, where nothing else stands in them than what takes it out. "(not in joints over 2 in.)" may take a case out
//! or forbid the joint, so that its words stay, with the "not". Whatever else denies there may be said of another thing, "(joints under 2 in.: no clips)",
//! and a case that is only pointed at, tested or included leaves nothing out: for neither does a requirement fall away.

use core::ops::Range;

use super::bracket;
use super::{Found, exception::NEEDED};
use crate::rules::Sentence;

/// What brackets say of the case in them.
#[derive(Debug, PartialEq, Eq)]
pub(super) enum Said {
    /// The case is where a requirement holds.
    Holds,
    /// The case is taken out, by words that begin at this token.
    TakenOut(usize),
    /// Whether it is taken out or forbidden, a person must say: the tokens of the words.
    Asked(Range<usize>),
    /// Nothing holds only there, or only elsewhere.
    Nothing,
}

/// Words that take a case out by themselves.
const TAKES_OUT: &[&str] = &[
    "except",
    "excepted",
    "excepting",
    "exclude",
    "excluded",
    "excludes",
    "excluding",
    "exempt",
    "exempted",
    "omit",
    "omitted",
    "delete",
    "deleted",
    "waived",
    "unneeded",
    "unnecessary",
    "inapplicable",
    "n/a",
    "na",
    "n.a",
];

/// Words that deny, of whatever they are said.
const DENIES: &[&str] = &[
    "not", "no", "none", "never", "nor", "neither", "without", "nothing", "cannot",
];

/// Words that point at a case, or say that it is no other than the rest.
const POINTS: &[&str] = &[
    "see",
    "e.g",
    "eg",
    "example",
    "tested",
    "included",
    "includes",
    "including",
];

/// Words that stand around what takes a case out, and say nothing more.
const PLAIN: &[&str] = &[
    "but", "is", "are", "may", "can", "be", "being", "it", "they", "this", "these", "does", "do",
    "to", "for", "in", "at", "on", "with", "where", "when", "if", "the", "a", "an", "any", "all",
];

/// What the brackets around a condition say of it; a condition in none, or in such as give it a number of its own, holds.
pub(super) fn said(sentence: &Sentence<'_>, condition: &Found) -> Said {
    let Some(range) = bracket::around(sentence, condition) else {
        return Said::Holds;
    };
    let points = |at: usize| {
        sentence.is_any(at, POINTS) && !is_up_to_and_including(sentence, at)
            || is_for_example(sentence, at)
    };
    if range.clone().any(points) {
        return Said::Nothing;
    }
    let denials: Vec<usize> = range.clone().filter(|at| denies(sentence, *at)).collect();
    match denials.as_slice() {
        [] => Said::Holds,
        [one] => of_one(sentence, condition, &range, *one),
        _ => Said::Nothing,
    }
}

/// What a single denial in brackets says of the case in them.
fn of_one(sentence: &Sentence<'_>, condition: &Found, range: &Range<usize>, denial: usize) -> Said {
    let own_number = sentence.amounts.iter().any(|amount| {
        range.contains(&amount.first)
            && !(condition.first <= amount.first && amount.last <= condition.last)
    });
    if own_number {
        return Said::Holds;
    }
    let end = end_of_denial(sentence, denial);
    let before = (range.start..denial).all(|at| {
        sentence.is_any(at, PLAIN) || within(condition, at) || names_the_same(sentence, range, at)
    });
    let trigger = first_number(sentence, condition);
    let leads = (end..trigger).all(|at| says_nothing_more(sentence, at) || told(sentence, at));
    let follows = denial >= condition.last
        && (condition.last..denial).all(|at| says_nothing_more(sentence, at))
        && (end..range.end).all(|at| says_nothing_more(sentence, at));
    if end == denial {
        let bare = denial == range.start || sentence.is_word(denial - 1, "but");
        let placed = sentence.is_any(denial + 1, &["in", "for", "at", "with", "on"]);
        return if bare && placed && sentence.is_any(denial, &["not", "never"]) {
            Said::Asked(range.start..condition.last)
        } else {
            Said::Nothing
        };
    }
    if before && (denial < trigger && leads || follows) {
        Said::TakenOut(denial)
    } else {
        Said::Nothing
    }
}

/// The token after the words that take a case out: "except", "not required", "does not apply"; the denial itself where it may deny anything.
fn end_of_denial(sentence: &Sentence<'_>, denial: usize) -> usize {
    if sentence.is_any(denial, TAKES_OUT) {
        return denial + 1;
    }
    let needed = (denial + 1..denial + 3).find(|at| sentence.is_any(*at, NEEDED));
    needed
        .filter(|_| sentence.is_word(denial, "not"))
        .filter(|at| !sentence.is_any(*at, &["permitted", "allowed", "used"]))
        .map_or(denial, |at| at + 1)
}

/// Whether a word denies, and doesn't only turn a comparison: "not over", "no wider than".
fn denies(sentence: &Sentence<'_>, at: usize) -> bool {
    const COMPARING: &[&str] = &[
        "over",
        "under",
        "above",
        "below",
        "more",
        "less",
        "exceed",
        "exceeding",
        "wider",
        "narrower",
        "greater",
        "smaller",
        "larger",
        "taller",
        "higher",
        "lower",
        "longer",
        "shorter",
        "deeper",
        "thicker",
        "thinner",
        "fewer",
    ];
    sentence.is_any(at, TAKES_OUT)
        || sentence.is_any(at, DENIES) && !sentence.is_any(at + 1, COMPARING)
        || is_not_applicable(sentence, at)
}

/// `N/A`, in tokens of its own.
fn is_not_applicable(sentence: &Sentence<'_>, at: usize) -> bool {
    sentence.is_word(at, "n") && sentence.is_sign(at + 1, '/') && sentence.is_word(at + 2, "a")
}

/// `e.g.`, in tokens of its own.
fn is_for_example(sentence: &Sentence<'_>, at: usize) -> bool {
    sentence.is_word(at, "e") && sentence.is_word(at + 2, "g")
}

/// `up to and including 4 in.`
fn is_up_to_and_including(sentence: &Sentence<'_>, at: usize) -> bool {
    sentence.is_word(at, "including")
        && sentence.amount_at(at + 1).is_some()
        && sentence.has_any(at.saturating_sub(3), at, &["to"])
}

fn within(condition: &Found, at: usize) -> bool {
    condition.first <= at && at < condition.last
}

/// The token of the first number that a condition is made of; its end where it has none.
fn first_number(sentence: &Sentence<'_>, condition: &Found) -> usize {
    let numbers = condition
        .triggers
        .iter()
        .filter_map(|index| sentence.amount(*index));
    numbers
        .map(|amount| amount.first)
        .min()
        .unwrap_or(condition.last)
}

fn says_nothing_more(sentence: &Sentence<'_>, at: usize) -> bool {
    let word = sentence.has_word(at);
    !word || sentence.is_any(at, PLAIN)
}

/// Whether a word tells which joints are meant: "joints under".
fn told(sentence: &Sentence<'_>, at: usize) -> bool {
    super::width::is_joint_noun(sentence, at)
        || super::width::is_comparing(sentence, at)
        || sentence.is_any(at, &["exceeds", "exceed", "rating", "ratings", "rated"])
}

/// Whether a word before the brackets is the same: "Clips 24 in. OC max (clips not needed ...)".
fn names_the_same(sentence: &Sentence<'_>, range: &Range<usize>, at: usize) -> bool {
    let word = sentence.word(at);
    !word.is_empty() && (0..range.start).any(|before| sentence.is_word(before, word))
}
