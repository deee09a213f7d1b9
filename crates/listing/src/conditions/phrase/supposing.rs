//! Openings of several words: "provided that the joint does not exceed 2 in.", "as long as the joint is not over 2 in.", "were the joint to exceed 2 in."
//!
//! What follows them may as well be asked for, "provided that they lap 6 in.", so that they open a condition only where it is one of the joint that can be
//! tested. A proviso opens one only of what may be otherwise than it is, "may be 3 in. provided that ...": of what is asked for or used at all, "shall be 4
//! in. deep provided that the joint does not exceed 2 in.", it limits the joint, and as a condition it would excuse a wider one.

use crate::rules::Sentence;

/// The last token of such an opening that begins at a token.
pub(super) fn opening(sentence: &Sentence<'_>, at: usize) -> Option<usize> {
    const OPENINGS: &[&[&str]] = &[
        &["provided", "that"],
        &["providing", "that"],
        &["provided"],
        &["providing"],
        &["so", "long", "as"],
        &["as", "long", "as"],
        &["on", "condition", "that"],
        &["on", "the", "condition", "that"],
        &["in", "the", "event", "that"],
        &["in", "the", "event"],
        &["in", "case"],
        &["assuming", "that"],
        &["assuming"],
        &["supposing", "that"],
        &["supposing"],
    ];
    let reads = |words: &&&[&str]| {
        words
            .iter()
            .enumerate()
            .all(|(further, word)| sentence.is_word(at + further, word))
    };
    let may_open = |words: &&&[&str]| !is_proviso(words) || gives_leave(sentence);
    OPENINGS
        .iter()
        .find(reads)
        .filter(may_open)
        .map(|words| at + words.len() - 1)
        .or_else(|| inverted(sentence, at))
        .or_else(|| and_only_if(sentence, at))
}

/// Whether an opening says under what proviso something holds: "provided that", "as long as".
fn is_proviso(words: &[&str]) -> bool {
    words
        .first()
        .is_some_and(|first| matches!(*first, "provided" | "providing" | "so" | "as" | "on"))
}

/// Whether a sentence says that something may be otherwise: "may be 3 in.", and not that it may be used.
fn gives_leave(sentence: &Sentence<'_>) -> bool {
    const USED: &[&str] = &[
        "used",
        "installed",
        "employed",
        "substituted",
        "provided",
        "applied",
        "built",
        "placed",
    ];
    let leave = |at: usize| {
        let used = sentence.is_word(at + 1, "be") && sentence.is_any(at + 2, USED);
        sentence.is_any(at, &["may", "can"]) && !used && !sentence.is_word(at + 1, "not")
    };
    (0..sentence.tokens.len()).any(leave)
}

/// `Were the joint to exceed 2 in.`
fn inverted(sentence: &Sentence<'_>, at: usize) -> Option<usize> {
    let opens = at == 0 || sentence.is_stop(at - 1);
    (opens && sentence.is_word(at, "were")).then_some(at)
}

/// `If, and only if, the joint`
fn and_only_if(sentence: &Sentence<'_>, at: usize) -> Option<usize> {
    let first = at + 1 + usize::from(sentence.is_sign(at + 1, ','));
    let reads = sentence.is_any(at, &["if", "when", "where"])
        && sentence.is_word(first, "and")
        && sentence.is_word(first + 1, "only")
        && sentence.is_word(first + 2, sentence.word(at));
    reads.then(|| first + 2 + usize::from(sentence.is_sign(first + 3, ',')))
}
