//! A condition that would take all the rest of its sentence, with no comma in it: "when joint width exceeds 2 in. *space clips max 12 in. OC*". What it asks
//! for then begins at a command, at the subject of a second verb, or at the latest at its limit.
//!
//! The subject of a second verb is taken to be one word: of "where used in floors the top batts are recessed" only "batts" is left to the requirement. A
//! limit of what the condition speaks of, "where it is laid over packing min 4 in. deep" as a sentence of its own, would be misread as the requirement.

use super::{after_whole_number, skip_attribute};
use crate::rules::Sentence;

const COMMANDS: &[&str] = &[
    "use", "provide", "install", "apply", "fill", "reduce", "increase", "add", "place", "omit",
    "pack", "cut", "fasten", "fix", "space", "stagger", "lap", "recess", "extend", "secure",
    "attach", "screw", "spray", "coat", "compress", "hold", "keep", "leave", "set", "insert",
    "overlap", "embed", "limit",
];
const VERBS: &[&str] = &["is", "are", "shall", "must"];
/// Verbs that want something behind them.
const STATING: &[&str] = &[
    "is", "are", "has", "have", "exceeds", "exceed", "meets", "meet", "crosses",
];
/// Words that say all by themselves.
const STATED: &[&str] = &[
    "exists",
    "exist",
    "occurs",
    "occur",
    "used",
    "installed",
    "applied",
    "placed",
    "laid",
    "present",
];
const LEADS: &[&str] = &[
    "to", "shall", "must", "of", "in", "and", "or", "for", "the", "a", "is", "are", "by", "with",
    "be",
];

/// Where what is asked for begins, of a condition that opens its sentence.
pub(super) fn end(sentence: &Sentence<'_>, opener: usize) -> Option<usize> {
    let opens =
        opener == 0 || sentence.is_any(opener - 1, &["and", "but"]) || sentence.is_stop(opener - 1);
    // "and if over min 4 in."
    let elliptic = sentence.is_any(
        opener + 1,
        &["over", "under", "not", "so", "above", "below"],
    ) && begins_limit(sentence, opener, opener + 2);
    if elliptic && opens {
        return Some(opener + 2);
    }
    let limit = (opener + 3..sentence.tokens.len())
        .find(|at| begins_limit(sentence, opener, *at) && is_stated(sentence, opener, *at));
    if !opens {
        return None;
    }
    let Some(limit) = limit else {
        return second_statement(sentence, opener);
    };
    let command = (opener + 2..limit).rev().find(|at| {
        sentence.is_any(*at, COMMANDS)
            && !sentence.is_any(at - 1, LEADS)
            && is_stated(sentence, opener, *at)
    });
    let second_verb = (opener + 3..limit)
        .rev()
        .find(|at| sentence.is_any(*at, VERBS));
    let subject = second_verb.map(|verb| verb - 1).filter(|subject| {
        is_stated(sentence, opener, *subject)
            && !sentence.is_any(*subject, STATING)
            && !sentence.is_any(*subject, STATED)
            && sentence.has_word(*subject)
    });
    Some(command.or(subject).unwrap_or(limit))
}

/// The same where a comma or a semicolon comes later, "... *joints are lapped 200 mm*, stitches 50 mm apart", and nothing behind a comma is a statement of its own that the
/// words before could belong to.
pub(super) fn end_before(sentence: &Sentence<'_>, opener: usize, stop: usize) -> Option<usize> {
    let opens = opener == 0 || sentence.is_stop(opener - 1) || sentence.is_sign(opener - 1, '.');
    let end = sentence.tokens.len();
    let states = sentence.has_any(stop, end, VERBS)
        || sentence.has_any(stop, end, COMMANDS)
        || sentence.has_any(
            stop,
            end,
            &["may", "can", "min", "minimum", "max", "maximum"],
        );
    let parted = sentence.is_sign(stop, ';') || sentence.is_sign(stop, ',') && !states;
    second_statement(sentence, opener).filter(|subject| opens && *subject < stop && parted)
}

/// Where the subject of a second verb stands, behind a whole statement without a number, where a number follows that verb: "where the blanket changes direction *joints
/// are lapped 200 mm*". What "that" or "which" leads is said of a thing of the condition.
fn second_statement(sentence: &Sentence<'_>, opener: usize) -> Option<usize> {
    const FINITE: &[&str] = &[
        "is", "are", "meets", "meet", "crosses", "changes", "change", "turns", "turn", "passes",
        "pass", "runs", "run", "ends", "occurs", "occur", "abuts", "abut", "stops", "steps",
    ];
    const PLACING: &[&str] = &[
        "behind", "between", "over", "under", "above", "below", "at", "on", "onto", "into", "from",
        "through", "against", "around", "beside", "near", "along", "within", "than",
    ];
    const RELATIVE: &[&str] = &[
        "that", "which", "who", "whose", "it", "they", "there", "this",
    ];
    let plain = |at: usize| sentence.amount_at(at).is_none() && !sentence.is_any(at, RELATIVE);
    let verb = (opener + 5..sentence.tokens.len())
        .take_while(|at| plain(*at))
        .find(|at| sentence.is_any(*at, &["are", "shall", "must"]))?;
    let subject = verb - 1;
    let named = sentence.word(subject).ends_with('s')
        && sentence.has_word(subject)
        && !sentence.is_any(subject - 1, LEADS)
        && !sentence.is_any(subject - 1, PLACING)
        && !sentence.is_any(subject, STATING);
    // A whole statement: a verb, and something behind it that is not the subject.
    let stated = (opener + 2..subject - 1).any(|at| sentence.is_any(at, FINITE));
    let numbered = (verb + 1..sentence.tokens.len()).any(|at| sentence.amount_at(at).is_some());
    (named && stated && numbered && (opener + 1..verb).all(plain)).then_some(subject)
}

/// Whether a limit with its number begins at a token: `min 4 in.`, `at least two`.
fn begins_limit(sentence: &Sentence<'_>, opener: usize, at: usize) -> bool {
    const NEAR: usize = 5;
    let word = sentence.is_any(at, &["min", "minimum", "max", "maximum"]);
    let compared = sentence.is_any(at, &["not", "no", "at"])
        && sentence.is_any(at + 1, &["less", "more", "fewer", "least", "most"]);
    // `is max 2 in. wide` limits what the condition speaks of.
    let verb = at > 1 && sentence.is_any(at - 1, VERBS) && is_stated(sentence, opener, at - 2);
    let of_condition = !verb
        && at > 0
        && sentence.is_any(
            at - 1,
            &[
                "is", "are", "of", "a", "by", "with", "has", "have", "be", "the", "and", "or", "to",
            ],
        );
    (word || compared)
        && !of_condition
        && (at + 1..at + NEAR).any(|at| sentence.amount_at(at).is_some())
}

/// Whether the condition says a whole thing before a token: a verb and something behind it, or a number with what it measures.
fn is_stated(sentence: &Sentence<'_>, opener: usize, at: usize) -> bool {
    let verb = (opener + 1..at.saturating_sub(1)).any(|verb| sentence.is_any(verb, STATING))
        || (opener + 1..at).any(|verb| sentence.is_any(verb, STATED));
    let number = sentence.amounts.iter().any(|amount| {
        amount.first > opener
            && skip_attribute(sentence, sentence.skip_parentheses(amount.last)) <= at
    });
    verb || number || after_whole_number(sentence, at)
}
