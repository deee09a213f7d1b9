//! What stands between a number and a condition behind it: "4 in. deep, *minimum,* for 2 hr", "4 in. deep, *glued* for joints over 2 in."
//!
//! A condition narrows a number down only where it stands right behind it or behind the words that measure it. Another phrase behind the comma takes the
//! condition for itself, and a word that lets off, changes or only gives an example says something else than that the number holds there: which of all the
//! words that do so was written matters little, so that any other than those known to go on with the number part it. The number then holds always, and the
//! words are left for a person.

use crate::phrase::Token;
use crate::rules::Sentence;

/// Words behind a comma that go on with the number before it, and ask for no more than it.
const GOES_ON: &[&str] = &[
    "min",
    "minimum",
    "max",
    "maximum",
    "nom",
    "nominal",
    "at",
    "least",
    "most",
    "deep",
    "thick",
    "thk",
    "wide",
    "long",
    "high",
    "oc",
    "o.c",
    "on",
    "centre",
    "center",
    "centers",
    "centres",
    "apart",
    "each",
    "ea",
    "per",
    "side",
    "both",
    "sides",
    "face",
    "faces",
    "way",
    "only",
    "just",
    "and",
    "then",
    "but",
    "however",
    "required",
    "reqd",
    "req'd",
    "needed",
    "necessary",
    "as",
    "measured",
    "of",
    "the",
    "a",
    "wall",
    "floor",
    "joint",
];

/// Verbs by which a sentence goes on behind words set off in commas: "Packing, 4 in. deep, *is* required for 2 hr".
const FINITE: &[&str] = &[
    "is", "are", "shall", "must", "may", "hold", "holds", "carry", "carries", "support",
    "supports", "retain", "retains", "has", "have",
];

/// Words that begin what only says where the number is, between two commas: "1/2 in. of caulk, *flush with each face*, for 2 hr".
const PLACED: &[&str] = &[
    "flush", "on", "at", "in", "from", "over", "under", "to", "each",
];

/// What is said of a number that is asked for or will do: "4 in. is *enough* for 1 hr".
const ASKED: &[&str] = &[
    "required",
    "needed",
    "necessary",
    "mandatory",
    "obligatory",
    "compulsory",
    "used",
    "employed",
    "wanted",
    "called",
    "asked",
    "permitted",
    "allowed",
    "permissible",
    "acceptable",
    "accepted",
    "sufficient",
    "enough",
    "adequate",
    "satisfactory",
    "suitable",
    "tolerated",
    "fine",
    "due",
    "added",
    "run",
    "applied",
    "provided",
    "placed",
    "installed",
    "laid",
    "left",
    "fitted",
    "fixed",
    "set",
    "given",
    "made",
    "held",
    "kept",
    "taken",
    "built",
    "fastened",
    "spaced",
    "measured",
    "specified",
    "in",
    "on",
    "at",
    "of",
    "to",
    "a",
    "an",
    "the",
    "only",
    "also",
    "wide",
    "deep",
    "long",
    "thick",
    "high",
];

/// Words that let off, change a number, or say that a case is one of others.
const TELLS_OTHERWISE: &[&str] = &[
    "none",
    "no",
    "not",
    "never",
    "nor",
    "nothing",
    "without",
    "exempt",
    "exempted",
    "excused",
    "relaxed",
    "suspended",
    "removed",
    "skipped",
    "dropped",
    "ignored",
    "absent",
    "unnecessary",
    "unneeded",
    "superfluous",
    "immaterial",
    "irrelevant",
    "inapplicable",
    "voluntary",
    "discretionary",
    "unrequired",
    "halved",
    "half",
    "doubled",
    "double",
    "twice",
    "e.g",
    "eg",
    "notably",
    "namely",
    "such",
    "example",
    "instance",
    "mainly",
    "mostly",
    "usually",
    "typically",
    "generally",
    "preferably",
    "recommended",
    "advisable",
    "advised",
    "with",
    "having",
    "which",
];

/// Whether words between a number and the condition behind it, tokens `[from, to)`, part the two.
pub(super) fn parts(sentence: &Sentence<'_>, from: usize, to: usize) -> bool {
    // "min 4 in. deep, with the *exception of joints over 2 in.*"
    let with = to.saturating_sub(2);
    let to = if sentence.is_word(to, "exception") && with >= from && sentence.is_word(with, "with")
    {
        with
    } else {
        to
    };
    let closed = to > from && sentence.is_sign(to - 1, ',');
    let to = to - usize::from(closed);
    let comma = (from..to)
        .rev()
        .find(|at| sentence.is_sign(*at, ',') && (*at + 1..to).any(|at| is_said(sentence, at)));
    let set_off = comma.is_some_and(|comma| {
        let placed = closed && sentence.is_any(comma + 1, PLACED);
        let plain =
            (comma + 1..to).all(|at| !is_said(sentence, at) || sentence.is_any(at, GOES_ON));
        !placed && !plain && !sentence.is_any(comma + 1, FINITE)
    });
    // "3-1/4 in. is acceptable where the concrete is lightweight and the rating does not exceed 1 hr": what another case says isn't said of the number.
    let case = (from..to)
        .find(|at| sentence.is_any(*at, &["where", "when", "if"]))
        .unwrap_or(to);
    set_off
        || is_said_of_a_name(sentence, from, to)
        || (from..to).any(|at| joins_another(sentence, at, to))
        || (from..case).any(|at| tells_otherwise(sentence, at) || says_unknown(sentence, at, case))
}

/// Whether a condition stands in brackets behind a name in capitals that begins something else: "2 in. D. *CLIPS (USE WHEN TRACK IS SET FIRST)*".
fn is_said_of_a_name(sentence: &Sentence<'_>, from: usize, to: usize) -> bool {
    let Some(open) = (from..=to).rev().find(|at| sentence.is_sign(*at, '(')) else {
        return false;
    };
    let in_capitals = |at: &usize| {
        let printed = sentence.words(*at, at + 1);
        printed.len() > 1
            && printed
                .chars()
                .all(|c| c.is_uppercase() || "-*".contains(c))
    };
    let named = (from..open).rev().take_while(in_capitals).count();
    let before = (open - named).checked_sub(1).filter(|at| *at >= from);
    named > 0
        && before.is_some_and(|at| {
            sentence.is_sign(at, '.') || {
                let printed = sentence.words(at, at + 1);
                printed.len() == 2 && printed.ends_with('.')
            }
        })
}

/// Whether a number is one that a sentence begins by not asking for: "*no requirement of* min 4 in. for joints under 1 in."
pub(super) fn is_not_asked(sentence: &Sentence<'_>, number: usize) -> bool {
    const ASKING: &[&str] = &[
        "requirement",
        "requirements",
        "need",
        "demand",
        "obligation",
        "necessity",
        "rule",
        "call",
    ];
    let stretch = (0..number)
        .rev()
        .find(|at| sentence.is_stop(*at))
        .map_or(0, |at| at + 1);
    (stretch..number).any(|at| sentence.is_word(at, "no") && sentence.is_any(at + 1, ASKING))
}

/// Whether words behind a number say that it isn't asked for: "for 1 hr the min 4 in. depth *is unnecessary*".
pub(super) fn is_let_off(sentence: &Sentence<'_>, number: usize) -> bool {
    const LET_OFF: &[&str] = &[
        "unnecessary",
        "unneeded",
        "superfluous",
        "immaterial",
        "irrelevant",
        "inapplicable",
        "exempt",
        "exempted",
        "excused",
        "relaxed",
        "suspended",
        "discretionary",
        "voluntary",
    ];
    (number..sentence.tokens.len())
        .take_while(|at| !sentence.is_stop(*at))
        .any(|at| sentence.is_any(at, &["is", "are", "be"]) && sentence.is_any(at + 1, LET_OFF))
}

/// Whether a token is a word or a number, and no sign.
fn is_said(sentence: &Sentence<'_>, at: usize) -> bool {
    sentence.has_word(at) || sentence.token(at).is_some_and(Token::is_numeric)
}

fn tells_otherwise(sentence: &Sentence<'_>, at: usize) -> bool {
    const COMPARING: &[&str] = &["less", "more", "fewer", "over", "under", "only"];
    // "flush with each face"
    let flush = at > 0
        && sentence.is_word(at, "with")
        && sentence.is_any(at - 1, &["flush", "level", "contact"]);
    sentence.is_any(at, TELLS_OTHERWISE) && !flush && !sentence.is_any(at + 1, COMPARING)
}

/// Whether "and" joins something else that is done: "4 in. deep *and covered* where the joint exceeds 2 in."
fn joins_another(sentence: &Sentence<'_>, at: usize, to: usize) -> bool {
    sentence.is_any(at, &["and", "but", "plus"])
        && (at + 1..to).any(|at| {
            is_participle(sentence.word(at))
                && !sentence.is_any(at, &["required", "needed", "used", "provided"])
                || sentence.is_any(at, &["is", "are", "shall", "must"])
        })
}

fn is_participle(word: &str) -> bool {
    word.ends_with("ed") && !matches!(word, "exceed" | "need" | "speed")
}

/// Whether something is said of a number that isn't known to ask for it: "4 in. deep *is discretionary* for joints under 1 in."
fn says_unknown(sentence: &Sentence<'_>, at: usize, to: usize) -> bool {
    let be = sentence.is_any(at, &["is", "are", "be", "being", "remain", "remains"]);
    be && at + 1 < to && !sentence.is_any(at + 1, &["be"]) && !sentence.is_any(at + 1, ASKED)
}
