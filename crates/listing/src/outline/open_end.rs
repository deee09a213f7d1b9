//! Words after which a cell must go on in the next line.

/// Whether words end in one that must go on: `Faces plumb within`, `may be lower by not`.
pub(super) fn ends_open(words: &str) -> bool {
    const OPEN: &[&str] = &[
        "within",
        "over",
        "of",
        "and",
        "or",
        "to",
        "in",
        "by",
        "min",
        "max",
        "at",
        "from",
        "than",
        "least",
        "most",
        "exceeding",
        "under",
        "above",
        "below",
        "a",
        "the",
        "with",
        "for",
        "on",
        "per",
        "every",
        "up",
        "not",
        "no",
    ];
    let last = words
        .split_whitespace()
        .last()
        .unwrap_or_default()
        .to_lowercase();
    OPEN.contains(&last.as_str()) || last.ends_with('+')
}

#[cfg(test)]
mod tests {
    use super::ends_open;

    #[test]
    fn a_preposition_or_a_comparison_goes_on() {
        for open in [
            "Faces plumb within",
            "may be lower by not",
            "cut 1/4 in. less than",
            "W +",
        ] {
            assert!(ends_open(open), "{open}");
        }
        for whole in ["max. 48 h", "20 % to 35 %", "stone wool", ""] {
            assert!(!ends_open(whole), "{whole}");
        }
    }
}
