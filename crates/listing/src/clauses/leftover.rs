//! The words of a sentence that no bound, condition or product accounts for: they become prose, for a person.

use crate::rules::Sentence;

/// A stretch of tokens `[first, last)` between commas, semicolons, colons and conjunctions.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Segment {
    pub(super) first: usize,
    pub(super) last: usize,
}

/// Splits a sentence into segments; parentheses and amounts stay whole.
pub(super) fn segments(sentence: &Sentence<'_>) -> Vec<Segment> {
    let mut segments = Vec::new();
    let mut first = 0;
    let mut at = 0;
    while at < sentence.tokens.len() {
        if let Some(amount) = sentence
            .amount_at(at)
            .and_then(|index| sentence.amount(index))
        {
            at = amount.last.max(at + 1);
            continue;
        }
        if let Some(close) = sentence.closing(at) {
            // A parenthesis with several words stands for itself; a short one belongs to what it follows.
            at = close + 1;
            continue;
        }
        if sentence.in_condition(at) {
            at += 1;
            continue;
        }
        if sentence.is_stop(at) {
            push(&mut segments, first, at);
            first = at + 1;
        } else if sentence.is_any(at, &["and", "but", "except"]) && at > first {
            push(&mut segments, first, at);
            first = at;
        }
        at += 1;
    }
    push(&mut segments, first, sentence.tokens.len());
    segments
}

fn push(segments: &mut Vec<Segment>, first: usize, last: usize) {
    if first < last {
        segments.push(Segment { first, last });
    }
}

/// Words that carry no requirement of their own.
const EMPTY: &[&str] = &[
    "a",
    "an",
    "the",
    "of",
    "and",
    "or",
    "but",
    "to",
    "in",
    "on",
    "at",
    "for",
    "with",
    "by",
    "as",
    "is",
    "are",
    "be",
    "shall",
    "that",
    "which",
    "each",
    "this",
    "from",
    "respectively",
    "it",
    "its",
    "also",
    "only",
    "when",
    "where",
    "if",
    "than",
    "both",
    "either",
    "extension",
    "compression",
    "o.c",
    "oc",
    "width",
    "thick",
    "wide",
    "deep",
    "long",
    "depth",
    "thickness",
    "max",
    "min",
    "nom",
    "maximum",
    "minimum",
    "nominal",
    "except",
];

/// Whether a stretch says enough to be a requirement: two words or more that carry meaning.
pub(super) fn says_something(
    sentence: &Sentence<'_>,
    segment: Segment,
    skip: impl Fn(usize) -> bool,
) -> bool {
    let meaning = (segment.first..segment.last).filter(|at| {
        let word = sentence.word(*at);
        !skip(*at) && word.len() > 1 && !EMPTY.contains(&word.as_ref())
    });
    meaning.count() >= 2
}
