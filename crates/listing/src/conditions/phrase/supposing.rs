//! Openings of several words: "provided that the joint does not exceed 2 in.", "as long as the joint is not over 2 in.", "were the joint to exceed 2 in."
//!
//! What follows them may as well be asked for, "provided that they lap 6 in.", so that they open a condition only where it is one of the joint that can be
//! tested.

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
    OPENINGS
        .iter()
        .find(reads)
        .map(|words| at + words.len() - 1)
        .or_else(|| inverted(sentence, at))
        .or_else(|| and_only_if(sentence, at))
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
