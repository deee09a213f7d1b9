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
    const MEASURED: &[&str] = &[
        "mm", "m", "in", "ft", "ga", "mil", "pcf", "kg/m3", "kg/m³", "thick", "wide", "deep",
        "long", "high", "apart",
    ];
    let mut back = words.split_whitespace().rev();
    let last = back.next().unwrap_or_default();
    // `Table A` is whole, and so is `4 in`.
    let letter = last == "A";
    let unit = last == "in"
        && back
            .next()
            .is_some_and(|before| before.ends_with(|c: char| c.is_ascii_digit()));
    let last = last.to_lowercase();
    // `115 mm thick, min` limits what it closes.
    let closes = ["min", "max"].contains(&last.as_str())
        && words.contains(|c: char| c.is_ascii_digit())
        && words.split_whitespace().rev().nth(1).is_some_and(|before| {
            before.ends_with([',', '.', ')', '%']) || MEASURED.contains(&before)
        });
    !letter && !closes && !unit && OPEN.contains(&last.as_str()) || last.ends_with('+')
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
        for whole in [
            "max. 48 h",
            "20 % to 35 %",
            "stone wool",
            "see Table A",
            "115 mm thick, min",
            "4-1/2 in",
            "",
        ] {
            assert!(!ends_open(whole), "{whole}");
        }
    }
}
