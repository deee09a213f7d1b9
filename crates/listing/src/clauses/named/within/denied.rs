//! What a sentence says of the names in it: that they are not to be used, explain a word, or hold for a case.

use super::super::limits::{REFUSING, restricts};

/// Whether a sentence says of the names in it that they are not to be used, or are no names of products.
pub(in crate::clauses::named) fn denies(words: &str) -> bool {
    const SAYING: &[&str] = &[
        "other",
        "not",
        "no",
        "never",
        "none",
        "except",
        "discontinued",
        "equal",
        "equivalent",
        "similar",
        "withdrawn",
        "marked",
        "marking",
        "label",
        "labelled",
        "labeled",
        "legend",
        "stamped",
        "reads",
        "drawing",
        "drawings",
        "titled",
        "word",
        "words",
        "without",
        "instead",
        "unlike",
        "than",
        "report",
        "sponsor",
        "client",
        "trademark",
        "formerly",
        "such",
        "example",
        "examples",
        "include",
        "includes",
        "including",
        "consent",
    ];
    words
        .split(|c: char| !c.is_alphanumeric())
        .map(str::to_lowercase)
        .any(|word| SAYING.contains(&word.as_str()) || REFUSING.contains(&word.as_str()))
}

/// A sentence without the words that bound its numbers: "not less than" denies nothing.
pub(in crate::clauses::named) fn without_bounds(words: &str) -> String {
    const BOUNDING: [&str; 12] = [
        "not less than",
        "not more than",
        "no less than",
        "no more than",
        "not exceeding",
        "not exceed",
        "not under",
        "not over",
        "no fewer than",
        "less than",
        "more than",
        "wider than",
    ];
    BOUNDING
        .iter()
        .fold(words.to_lowercase(), |words, own| words.replace(own, " "))
}

/// Whether words behind a name explain it, or say of what parts it is a whole: `"Cut" is the thickness`, `"Seal 900", consisting of strips`.
pub(in crate::clauses::named) fn explains(behind: &str) -> bool {
    const EXPLAINING: [&str; 5] = [
        " is the ",
        " means ",
        " stands for ",
        ", consisting of ",
        " consisting of ",
    ];
    EXPLAINING.iter().any(|own| behind.starts_with(own))
}

/// Whether a sentence says for what its names are, in words that only a person can judge.
pub(in crate::clauses::named) fn is_conditional(words: &str) -> bool {
    const SAYING: &[&str] = &[
        "where",
        "when",
        "if",
        "option",
        "options",
        "configuration",
        "configurations",
        "alternate",
        "alternative",
        "alternatively",
        "lieu",
        "place",
        "unless",
        "above",
        "below",
        "over",
        "may",
        "substituted",
        "optional",
        "only",
        "case",
    ];
    restricts(words)
        || words
            .split(|c: char| !c.is_alphanumeric())
            .any(|word| SAYING.contains(&word.to_lowercase().as_str()))
}
