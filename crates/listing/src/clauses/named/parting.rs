//! Where one entry of a list of products ends and the next begins.

use super::entry::JOINTS;
use super::makers::capitals_tail;

/// The entries of a text, parted at semicolons and at stops that end no abbreviation of a firm.
pub(super) fn parts(words: &str) -> Vec<&str> {
    const SHORT: &[&str] = &[
        "inc",
        "co",
        "corp",
        "ltd",
        "s.a",
        "a.g",
        "bros",
        "mfg",
        "no",
        "st",
        "int",
        "intl",
        "prod",
        "mfr",
        "mfrs",
        "sp. z o.o",
        "ind",
        "ins",
        "o",
    ];
    let mut parts = Vec::new();
    let mut start = 0;
    let mut depth = 0_u32;
    let mut in_quotes = false;
    for (at, c) in words.char_indices() {
        match c {
            '"' => in_quotes = !in_quotes,
            '(' => depth += 1,
            ')' => depth = depth.saturating_sub(1),
            ';' | '•' if depth == 0 && !in_quotes => {
                parts.extend(words.get(start..at));
                start = at + c.len_utf8();
            }
            '.' if depth == 0 => {
                let before = words.get(start..at).unwrap_or_default();
                let last = before.rsplit(' ').next().unwrap_or_default().to_lowercase();
                let behind = words
                    .get(at + 1..)
                    .unwrap_or_default()
                    .trim_start_matches('"');
                let begins = behind
                    .strip_prefix(' ')
                    .is_some_and(|next| next.starts_with(|c: char| c.is_uppercase() || c == '"'));
                if begins && !SHORT.contains(&last.as_str()) {
                    let closes = words
                        .get(at + 1..)
                        .is_some_and(|rest| rest.starts_with('"'));
                    let end = at + 1 + usize::from(closes);
                    if closes || !in_quotes {
                        parts.extend(words.get(start..end));
                        start = end;
                        in_quotes = false;
                    }
                }
            }
            _ => {}
        }
    }
    parts.extend(words.get(start..));
    parts.retain(|part| !part.trim_matches(|c: char| !c.is_alphanumeric()).is_empty());
    parts
}

/// The entries of a text that are parted by commas behind brackets: `Product (Maker), Product (Maker)`.
pub(super) fn parts_behind_brackets(words: &str) -> Option<Vec<&str>> {
    let mut found = Vec::new();
    for part in parts(words) {
        let mut rest = part;
        while let Some(at) = rest.find("), ") {
            found.push(rest.get(..=at)?);
            rest = rest.get(at + 2..)?;
        }
        found.push(rest);
    }
    Some(found)
}

/// The entries of a text that begin with makers in capitals: `MAKER ONE -- Product MAKER TWO -- Product`.
pub(super) fn parts_at_makers(words: &str) -> Vec<&str> {
    let dash = JOINTS.iter().find(|joint| words.contains(**joint));
    let mut parts = Vec::new();
    let mut start = 0;
    for (at, _) in dash
        .into_iter()
        .flat_map(|dash| words.match_indices(dash))
        .skip(1)
    {
        let tail = words.get(start..at).and_then(capitals_tail);
        if let Some(tail) = tail.filter(|tail| *tail > 0) {
            parts.extend(words.get(start..start + tail));
            start += tail;
        }
    }
    parts.extend(words.get(start..));
    parts
}
