//! Limits at the seam of two sentences: whether "min" closes the number before it or leads to the one behind.

use super::words::{ABBREVIATIONS, GO_ON, MAY_END};
use crate::phrase::count_word;

/// Whether nothing but a qualifier is left, which closes what stands before: `SHELF LIFE 12 MO. MAX.`
pub(super) fn is_qualifier_alone(rest: &str) -> bool {
    ["min", "max", "minimum", "maximum"]
        .iter()
        .any(|qualifier| {
            rest.trim_end()
                .trim_end_matches('.')
                .eq_ignore_ascii_case(qualifier)
        })
}

/// Whether words begin with a limit that no number follows: behind `2-1/2 In.` the `Min embedment` says how that is meant. What a comma, a colon or a stop
/// parts from the words behind it stays with the number, too: `2 In. Max, Depth: 4 In.`, `1 in. Max. wide`.
pub(super) fn limits_nothing_behind(rest: &str) -> bool {
    let word = rest
        .split(|c: char| !c.is_alphabetic())
        .next()
        .unwrap_or_default();
    if !is_limit(word) {
        return false;
    }
    let behind = rest.get(word.len()..).unwrap_or_default();
    if behind.starts_with([',', ';', ':', ')']) || closes_throughout(rest) {
        return true;
    }
    if let Some(behind) = behind.strip_prefix('.') {
        let next = behind.trim_start();
        let word = next.split([' ', '.']).next().unwrap_or_default();
        return next.starts_with(|c: char| c.is_lowercase())
            || GO_ON.contains(&word)
            || begins_a_label(next)
            || names_a_number(next);
    }
    // `Max Class II Movement Capabilities - 20 Percent`: a label ends at its dash, too.
    let dash = [" - ", " – ", " -- "]
        .iter()
        .filter_map(|dash| behind.find(dash))
        .min();
    let end = behind
        .find(['.', ';', ',', ':', '('])
        .unwrap_or(behind.len());
    let end = dash.map_or(end, |dash| dash.min(end));
    let mut words = behind.get(..end).unwrap_or_default().split_whitespace();
    let small = words.clone().next().is_some_and(goes_on_measuring);
    let named = words.clone().next().is_some();
    small || named && !words.any(is_number)
}

/// Whether words begin with a capital that a limit in front of them would have taken: `Edge distance` of `12 in. Max. Edge distance 2 in.` In a title every
/// word has one, so that the first small word tells, if it is none of those that titles leave small.
pub(super) fn begins_a_label(words: &str) -> bool {
    const LEFT_SMALL: &[&str] = &[
        "of", "and", "or", "the", "a", "an", "in", "on", "for", "to", "at", "between", "per", "by",
        "from", "with",
    ];
    const MOST_WORDS: usize = 5;
    let mut each = words.split_whitespace();
    let Some(first) = each
        .next()
        .filter(|first| first.starts_with(char::is_uppercase))
    else {
        return false;
    };
    let cites = ["Item", "Items", "Option", "Table", "Note", "See", "Fig"].contains(&first);
    if cites || goes_on_measuring(&first.to_lowercase()) {
        return true;
    }
    each.take(MOST_WORDS)
        .take_while(|word| word.chars().all(|c| c.is_alphabetic() || c == '-'))
        .find(|word| !LEFT_SMALL.contains(word))
        .is_some_and(|word| word.starts_with(char::is_lowercase))
}

/// Whether words are a name that begins with a capital, and its number: `Recess 1/2 in.`
pub(super) fn names_a_number(words: &str) -> bool {
    const MOST_WORDS: usize = 4;
    let is_name = |word: &&str| word.chars().all(|c| c.is_alphabetic() || c == '-');
    let named = words.split_whitespace().take_while(is_name).count();
    let number = words.split_whitespace().nth(named);
    words.starts_with(|c: char| c.is_uppercase())
        && words.contains(char::is_lowercase)
        && (1..=MOST_WORDS).contains(&named)
        && number.is_some_and(is_number)
}

/// Whether a limit stands right behind a shortened unit and its number: the `Min` of `4 in. Min`.
pub(super) fn stands_behind_a_unit(before: &str, limit: &str) -> bool {
    let head = before.get(..before.len().saturating_sub(limit.len()));
    let mut words = head.unwrap_or_default().split_whitespace().rev();
    let unit = words.next().and_then(|word| word.strip_suffix('.'));
    unit.is_some_and(|unit| MAY_END.contains(&unit.to_lowercase().as_str()))
        && words.next().is_some_and(is_number)
}

pub(super) fn is_limit(word: &str) -> bool {
    ["min", "max", "minimum", "maximum"]
        .iter()
        .any(|limit| word.eq_ignore_ascii_case(limit))
}

pub(super) fn is_number(word: &str) -> bool {
    let digits = word.contains(|c: char| c.is_ascii_digit());
    digits && !word.ends_with(char::is_alphabetic) || count_word(word).is_some()
}

/// Whether a word goes on with the measure of the number before it: `3 in. Min spaced 12 in. OC`.
pub(super) fn goes_on_measuring(word: &str) -> bool {
    [
        "spaced", "wide", "deep", "thick", "long", "high", "apart", "dense", "centres", "centers",
    ]
    .contains(&word)
}

/// Whether words that begin with a limit go on with numbers each of which a limit closes: `Max Depth: 4 In. Min Lap: 1 In. Min`. Then the first closes what
/// stands before it.
pub(super) fn closes_throughout(rest: &str) -> bool {
    const MOST_WORDS: usize = 24;
    let end = rest.find([';', '\n']).unwrap_or(rest.len());
    let mut words = rest
        .get(..end)
        .unwrap_or_default()
        .split_whitespace()
        .skip(1)
        .take(MOST_WORDS);
    let mut closed = false;
    while let Some(word) = words.next() {
        if !word.starts_with(|c: char| c.is_ascii_digit()) {
            closed = false;
            continue;
        }
        let mut next = words.next().unwrap_or_default();
        if !is_limit(next.trim_end_matches(['.', ',', ':'])) {
            next = words.next().unwrap_or_default();
        }
        closed = is_limit(next.trim_end_matches(['.', ',', ':']));
        if !closed {
            return false;
        }
    }
    closed
}

/// Whether "approx." closes the number before it and a sentence: `Tack-free 45 min. approx. Wait 14 days.`
pub(super) fn closes_about(before: &str, word: &str, next: &str) -> bool {
    let said = || {
        before
            .get(..before.len() - word.len())
            .unwrap_or_default()
            .trim_end()
    };
    let measured = || {
        let said = said().trim_end_matches(')');
        let unit = said
            .trim_end_matches('.')
            .rsplit(' ')
            .next()
            .unwrap_or_default();
        said.ends_with('.') && ABBREVIATIONS.contains(&unit.to_lowercase().as_str())
            || said.ends_with(|c: char| c.is_ascii_digit())
            || ["mm", "cm", "m", "days", "hours", "minutes", "h", "d", "hr"].contains(&unit)
    };
    let mut letters = next.chars();
    let begins = letters.next().is_some_and(char::is_uppercase)
        && letters.next().is_some_and(char::is_lowercase);
    matches!(word, "approx" | "appr") && begins && measured()
}
