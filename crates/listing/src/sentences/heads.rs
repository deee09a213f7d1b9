//! Words that begin a sentence whatever stands before them: the mark of a list, the name of a case.

use super::limits::is_number;

/// Whether words begin with the mark of a list and a capital: `(e) Covers may be omitted`.
pub(super) fn begins_listed(words: &str) -> bool {
    let listed = words
        .strip_prefix('(')
        .and_then(|rest| rest.split_once(") "))
        .filter(|(mark, _)| mark.len() == 1 && mark.chars().all(|c| c.is_ascii_lowercase()));
    listed.is_some_and(|(_, rest)| rest.starts_with(char::is_uppercase))
}

/// Whether words begin with the name of one of several, and say something of it: `CONFIGURATION B: 6 IN. DEEP`.
pub(super) fn heads_alternative(words: &str) -> bool {
    const ALTERNATIVES: &[&str] = &[
        "configuration",
        "config",
        "option",
        "alternate",
        "alternative",
        "variant",
    ];
    let mut parts = words.splitn(3, ' ');
    let (Some(name), Some(label)) = (parts.next(), parts.next()) else {
        return false;
    };
    let rest = parts.next().unwrap_or_default();
    let bare = label.strip_suffix(':').unwrap_or(label);
    let is_label = bare.len() == 1
        && bare
            .chars()
            .all(|c| c.is_ascii_uppercase() || c.is_ascii_digit());
    let parted = bare.len() < label.len() || rest.starts_with(['-', '–', '—', ':']);
    let is_name = ALTERNATIVES
        .iter()
        .any(|own| own.eq_ignore_ascii_case(name));
    is_name && name.starts_with(char::is_uppercase) && is_label && parted
}

/// Whether words begin with the name of a case, and its number: `DETAIL B, 5/8 IN. DEEP`.
pub(super) fn heads_case(words: &str) -> bool {
    const CASES: &[&str] = &[
        "DETAIL",
        "CONDITION",
        "CASE",
        "SCHEME",
        "CONFIGURATION",
        "CONFIG",
        "OPTION",
        "VARIANT",
        "ARRANGEMENT",
    ];
    let mut parts = words.split(' ');
    let name = parts.next().unwrap_or_default();
    let label = parts.next().unwrap_or_default();
    let label = label.strip_suffix([',', ':']).unwrap_or(label);
    let number = parts.next().is_some_and(is_number);
    let lettered = |label: &str| {
        label.len() == 1
            && label
                .chars()
                .all(|c| c.is_ascii_uppercase() || c.is_ascii_digit())
    };
    CASES.contains(&name.to_uppercase().as_str())
        && name.starts_with(char::is_uppercase)
        && lettered(label)
        && number
}
