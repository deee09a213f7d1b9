//! Captions of tables: `TABLE A`, `Table 2 - Packing by joint width`. A captioned table is an item of its own, under the item that alone
//! cites it: what it requires must not fall away with the option in whose text it happens to be printed.

use super::title::holds_quantity;

/// A caption's label and what it says of the table; none for a sentence that only begins with the word.
pub(super) fn caption(words: &str) -> Option<(String, &str)> {
    const LONGEST: usize = 14;
    let (word, rest) = words.trim().split_once(char::is_whitespace)?;
    if !word.eq_ignore_ascii_case("table") || words.split_whitespace().count() > LONGEST {
        return None;
    }
    let rest = rest.trim_start();
    let len = rest
        .find(|c: char| !(c.is_ascii_alphanumeric() || matches!(c, '.' | '-')))
        .unwrap_or(rest.len());
    let label = rest.get(..len)?.trim_end_matches(['.', '-']);
    let short = !label.is_empty()
        && label.len() <= 4
        && label
            .chars()
            .all(|c| c.is_ascii_digit() || c.is_ascii_uppercase() || matches!(c, '.' | '-'));
    let after = rest.get(label.len()..)?;
    let title = after.trim_start_matches([' ', '.', ':', '-', '–', '—']);
    // `Table 2 gives the depth` goes on; a caption stops, or begins anew.
    let apart = title.is_empty()
        || after.trim_start().len() != title.len()
        || after.starts_with("  ")
        || title.starts_with(char::is_uppercase)
        || title.starts_with('(');
    let sentence = title.ends_with('.') && title.split_whitespace().count() > 8;
    (short && apart && !sentence).then(|| (format!("Table {label}"), title))
}

/// Where the parenthesis of a caption begins that limits what the table is of: `(Wexwool; density 4 pcf min)`. What limits the joint or the
/// rating says for which the table is, and stays in the caption.
pub(super) fn demand_at(words: &str) -> Option<usize> {
    const LIMITS: &[&str] = &["min", "minimum", "max", "maximum", "least", "most", "than"];
    const CASES: &[&str] = &[
        "joint", "joints", "gap", "gaps", "opening", "openings", "width", "widths", "rating",
        "ratings", "hr", "hour", "hours", "h",
    ];
    let at = words.find('(')?;
    let inner = words.get(at..)?;
    let has = |any: &[&str]| {
        inner
            .split(|c: char| !c.is_alphabetic())
            .any(|word| any.iter().any(|one| one.eq_ignore_ascii_case(word)))
    };
    (has(LIMITS) && !has(CASES) && holds_quantity(inner)).then_some(at)
}

/// Whether words cite a table, both in small letters: `per table a`.
pub(super) fn cites(words: &str, path: &str) -> bool {
    words.match_indices(path).any(|(at, _)| {
        !words
            .get(at + path.len()..)
            .is_some_and(|rest| rest.starts_with(char::is_alphanumeric))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn captions_and_sentences() {
        for (words, expected) in [
            ("TABLE A", Some(("Table A", ""))),
            (
                "Table 2 - Packing by joint width",
                Some(("Table 2", "Packing by joint width")),
            ),
            (
                "Table 3.1: Sealant depth.",
                Some(("Table 3.1", "Sealant depth.")),
            ),
            ("Table 2 gives the depth of packing", None),
            ("Tables 1 and 2", None),
            ("Table", None),
        ] {
            let found = caption(words);
            assert_eq!(
                found.as_ref().map(|(path, title)| (path.as_str(), *title)),
                expected,
                "{words}"
            );
        }
        assert!(cites("depth per table a.", "table a"));
        assert!(!cites("depth per table 12", "table 1"));
    }
}
