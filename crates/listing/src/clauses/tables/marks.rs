//! Cells that state no value: blanks, "none", references to notes, bare numbers.

use super::columns::Row;
use super::heading::Heading;
use super::labels;
use crate::phrase::count_word;

/// Whether an amount stands in parentheses behind another: `min 20 ga (0.033 in.)`. A note's mark is none.
pub(super) fn says_more_in_parentheses(words: &str) -> bool {
    words
        .match_indices('(')
        .any(|(at, _)| measure::notation::quantity_at(words, at + 1).is_some())
}

/// Whether words hold a number, in digits or as a count: `two or more`.
pub(super) fn says_number(words: &str) -> bool {
    words.contains(|c: char| c.is_ascii_digit())
        || words
            .split(|c: char| !(c.is_alphanumeric() || c == '-'))
            .any(|word| count_word(word).is_some())
}

/// Whether a cell names the row's part and says no more of it: "Board, 5/8 in. thick" does.
pub(super) fn names_part_alone(heading: &Heading, row: &Row) -> bool {
    labels::names_parts(heading) && !row.part.is_empty() && !says_number(&row.part)
}

/// Whether words are a number and nothing besides: `100`, `4-1/2`.
pub(super) fn is_bare_number(words: &str) -> bool {
    words.starts_with(|c: char| c.is_ascii_digit())
        && words
            .chars()
            .all(|c| c.is_ascii_digit() || matches!(c, '.' | ',' | '/' | '-' | ' '))
}

/// Whether a cell only refers to notes: `a, b`, `[ii]`, `3`.
pub(super) fn is_reference(words: &str) -> bool {
    let is_mark = |mark: &str| {
        let roman = mark.chars().all(|c| matches!(c, 'i' | 'v' | 'x'));
        let number = mark.len() <= 2 && mark.chars().all(|c| c.is_ascii_digit());
        number || roman || mark.len() == 1 && mark.starts_with(char::is_lowercase)
    };
    words
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .all(is_mark)
        && !words.contains(['/', '.', '%', '°'])
}

/// A dash, `n/a` or the like that leaves a cell empty.
pub(super) fn is_blank_mark(words: &str) -> bool {
    const NOT_APPLICABLE: &[&str] = &["n/a", "n.a.", "na", "not applicable"];
    if NOT_APPLICABLE.contains(&words.trim().to_lowercase().as_str()) {
        return true;
    }
    words.chars().all(|c| {
        matches!(c, '-' | '–' | '—' | '−' | '.' | '*' | '†' | '‡' | '/') || c.is_whitespace()
    })
}

/// "none" where a limit may stand: there is no such limit.
pub(super) fn is_no_limit(words: &str) -> bool {
    const WORDS: &[&str] = &["none", "no limit", "not limited", "unlimited", "nil"];
    WORDS.contains(&words.trim().to_lowercase().as_str())
}
