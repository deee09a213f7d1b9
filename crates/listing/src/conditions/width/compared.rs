//! Words that set some joints apart from others, and those that name joints.

use crate::rules::Sentence;

/// Comparatives that set some things apart from others.
pub(super) const APART: &[&str] = &[
    "wider",
    "narrower",
    "deeper",
    "longer",
    "shorter",
    "thicker",
    "thinner",
    "larger",
    "smaller",
    "greater",
    "less",
    "more",
    "over",
    "above",
    "under",
    "below",
    "exceeding",
    "up",
    "through",
    "thru",
    "higher",
    "taller",
    "heavier",
    "beyond",
    "between",
    "older",
];

/// Whether a token may stand between the things meant and the number that sets them apart: "joints *not wider than* 4 in."
pub(in crate::conditions) fn is_comparing(sentence: &Sentence<'_>, at: usize) -> bool {
    // `up to and including 100 mm`
    let included = sentence.is_word(at, "including")
        || sentence.is_word(at, "and") && sentence.is_word(at + 1, "including");
    included
        || sentence.is_any(at, APART)
        || sentence.is_any(
            at,
            &[
                "of", "in", "from", "than", "to", "or", "equal", "not", "no", "width", "widths",
                "wide", "the", "a",
            ],
        )
        || ['>', '<', '≥', '≤', '=', '(']
            .iter()
            .any(|sign| sentence.is_sign(at, *sign))
}

pub(in crate::conditions) fn is_joint_noun(sentence: &Sentence<'_>, at: usize) -> bool {
    sentence.is_any(
        at,
        &[
            "joint", "joints", "width", "widths", "opening", "openings", "gap", "gaps",
        ],
    )
}

pub(super) fn is_plural(sentence: &Sentence<'_>, at: usize) -> bool {
    // "The concrete, which weighs between 110 and 150 pcf, is reinforced."
    const VERBS_OF_ONE: &[&str] = &[
        "weighs", "measures", "stands", "lies", "reaches", "extends", "spans", "bears", "runs",
        "exceeds", "falls", "rises", "comes", "goes", "keeps", "holds", "this", "thus", "always",
    ];
    let word = sentence.word(at);
    word.ends_with('s') && !word.ends_with("ss") && !VERBS_OF_ONE.contains(&word)
}

pub(in crate::conditions) fn compares(sentence: &Sentence<'_>, first: usize, last: usize) -> bool {
    (first..last).any(|at| {
        sentence.is_any(at, APART)
            || ['>', '<', '≥', '≤']
                .iter()
                .any(|sign| sentence.is_sign(at, *sign))
    })
}

pub(in crate::conditions) fn joint_property(
    sentence: &Sentence<'_>,
    noun: usize,
) -> Option<&'static str> {
    sentence
        .is_any(noun, &["joint", "joints", "width", "widths"])
        .then_some("joint.width")
}

/// Whether nothing of a statement goes on at a token.
pub(in crate::conditions) fn is_statement_end(sentence: &Sentence<'_>, at: usize) -> bool {
    sentence.token(at).is_none()
        || sentence.is_stop(at)
        || sentence.is_sign(at, '.')
        || sentence.is_any(at, &["and", "or", "but"])
}
