//! A list that is opened by a denial: "Do not:", "Clips shall not be:", "The following are prohibited:".
//!
//! What compares in such a list says what must not be. It is left to a person, since an entry may as well go on with what must.

use crate::sentences::sentences;

/// Words that deny what follows them, or what is listed below them.
const DENYING: &[&str] = &[
    "not",
    "never",
    "none",
    "neither",
    "nothing",
    "cannot",
    "don't",
    "don’t",
    "avoid",
    "prohibited",
    "forbidden",
    "unacceptable",
    "prohibit",
    "disallowed",
    "rejected",
    "reject",
];

/// Words behind which a case is told rather than a list forbidden.
const CASES: &[&str] = &["where", "when", "if"];

/// Whether the last sentence of words opens a list of what must not be.
pub(crate) fn denies_below(words: &str) -> bool {
    let words = words.trim();
    if !words.ends_with(':') {
        return false;
    }
    let last = sentences(words).pop().and_then(|range| words.get(range));
    let last = last.unwrap_or(words).to_lowercase();
    let opening = last.rsplit([',', ';']).next().unwrap_or(&last);
    // `Steel studs (Option B, not for 3 hours):` names its case.
    if opening.contains(|c: char| c.is_ascii_digit() || c == ')') {
        return false;
    }
    // `not less than:` opens a list of what must be.
    if opening.trim_end_matches([':', ' ']).ends_with(" than") {
        return false;
    }
    let mut parts = opening
        .split(|c: char| !(c.is_alphanumeric() || matches!(c, '\'' | '’')))
        .filter(|word| !word.is_empty())
        .peekable();
    let case = parts.peek().is_some_and(|first| CASES.contains(first));
    !case && parts.any(|word| DENYING.contains(&word))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn openings_that_deny() {
        for words in [
            "Do not:",
            "Clips are of steel. Clips shall not be:",
            "The following are prohibited:",
            "Cut clips as shown, but never:",
        ] {
            assert!(denies_below(words), "{words}");
        }
        for words in [
            "Do not cut clips. Clips shall be:",
            "Where clips are not used:",
            "Clips shall not be cut.",
            "No. of clips:",
            "Apply the spray at a thickness of not less than:",
            "Steel studs (Option B, not for 3 hours):",
        ] {
            assert!(!denies_below(words), "{words}");
        }
    }
}
