//! Numbers in words, and numbers whose unit is left out, as the second pass looks for them: by a list of its own, so that what the grammar of
//! quantities doesn't know is shown as unread.

use crate::model::Span;

const NUMBERS: &[&str] = &[
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "fifteen",
    "sixteen",
    "eighteen",
    "twenty",
    "thirty",
    "forty",
    "fifty",
    "sixty",
    "eighty",
    "ninety",
    "hundred",
    "half",
    "quarter",
    "quarters",
    "eighth",
    "eighths",
    "sixteenth",
    "sixteenths",
    "thirds",
    "fourths",
    "halves",
];

const UNITS: &[&str] = &[
    "inch",
    "inches",
    "in.",
    "foot",
    "feet",
    "ft",
    "ft.",
    "mm",
    "millimetre",
    "millimetres",
    "millimeter",
    "millimeters",
    "mil",
    "mils",
    "pcf",
    "percent",
];

/// What says behind a number without a unit that it is a length.
const LENGTHS: &[&str] = &[
    "crs", "ctrs", "cts", "centres", "centers", "thk", "thick", "dp", "deep", "wide", "wd", "dia",
    "wet", "dry", "lg",
];

/// What compares with the number behind it.
const COMPARING: &[&str] = &["than", "least", "most", "exceed", "exceeding"];

/// Words for parts of a whole.
const PARTS: &[&str] = &[
    "half",
    "quarters",
    "eighth",
    "eighths",
    "sixteenth",
    "sixteenths",
    "thirds",
    "fourths",
];

/// Every number in words with a unit in a stretch.
pub(super) fn spelled_numbers(text: &str, within: Span) -> Vec<Span> {
    let words = words(text, within);
    let mut found: Vec<Span> = Vec::new();
    for (at, word) in words.iter().enumerate().rev() {
        if found
            .last()
            .is_some_and(|span| span.start() <= word.start())
        {
            continue;
        }
        let end = match at.checked_sub(1).and_then(|before| words.get(before)) {
            _ if is_number(text, *word) && words.get(at + 1).is_some_and(|u| is_unit(text, *u)) => {
                words.get(at + 1)
            }
            Some(before) if is_compared(text, *before, *word) || is_part(text, *before, *word) => {
                Some(word)
            }
            _ => None,
        };
        if let Some(end) = end {
            found.push(whole(text, &words, at).join(*end));
        }
    }
    found.reverse();
    found
}

/// The number whose last word stands at a place: `three and one half`.
fn whole(text: &str, words: &[Span], last: usize) -> Span {
    let word = |at: usize| words.get(at).copied().unwrap_or_default();
    let mut first = last;
    while let Some(before) = first.checked_sub(1) {
        let joins = word(before).of(text).eq_ignore_ascii_case("and")
            && before
                .checked_sub(1)
                .is_some_and(|at| is_number(text, word(at)));
        if joins {
            first = before - 1;
        } else if is_number(text, word(before)) {
            first = before;
        } else {
            break;
        }
    }
    word(first).join(word(last))
}

fn is_number(text: &str, word: Span) -> bool {
    let word = word.of(text).to_lowercase();
    NUMBERS.contains(&word.rsplit('-').next().unwrap_or_default())
}

fn is_unit(text: &str, word: Span) -> bool {
    let unit = word.of(text).to_lowercase();
    let listed = |unit: &str| UNITS.contains(&unit);
    // A sentence's stop ends an inch as well.
    listed(&unit) || unit != "in." && listed(unit.trim_end_matches(stops))
}

/// `no less than six`: a number that leaves its unit out.
fn is_compared(text: &str, before: Span, word: Span) -> bool {
    let before = before.of(text).to_lowercase();
    let number = word.of(text).trim_end_matches(stops).to_lowercase();
    // "no less than half that of the other" is no number.
    let alone = number != "one" && (number != "half" || word.of(text).ends_with(stops));
    COMPARING.contains(&before.as_str()) && alone && NUMBERS.contains(&number.as_str())
}

/// `three eighths`, `one half`: a part of a unit that is left out.
fn is_part(text: &str, before: Span, word: Span) -> bool {
    let part = word.of(text).trim_end_matches(stops).to_lowercase();
    PARTS.contains(&part.as_str()) && is_number(text, before)
}

/// Every number in a stretch that only the word behind it says is a length: `600 crs`, `50 dp`.
pub(super) fn bare_lengths(text: &str, within: Span) -> Vec<Span> {
    let words = words(text, within);
    words
        .iter()
        .zip(words.iter().skip(1))
        .filter(|(number, length)| {
            let digits = number.of(text);
            let length = length.of(text);
            let title = length.starts_with(char::is_uppercase)
                && length.chars().skip(1).any(char::is_lowercase);
            // In brackets it says another number again: `3 (76) deep`.
            let bracketed = text
                .get(number.end()..)
                .is_some_and(|rest| rest.starts_with(')'));
            let is_number = digits.starts_with(|c: char| c.is_ascii_digit())
                && digits.ends_with(|c: char| c.is_ascii_digit())
                && digits
                    .bytes()
                    .all(|byte| byte.is_ascii_digit() || matches!(byte, b'.' | b'/'));
            let length = length.to_lowercase();
            is_number && !title && !bracketed && LENGTHS.contains(&length.trim_end_matches(stops))
        })
        .map(|(number, _)| *number)
        .collect()
}

fn stops(c: char) -> bool {
    matches!(c, '.' | ',' | ';' | ':' | ')')
}

/// The stretches between white space and brackets.
fn words(text: &str, within: Span) -> Vec<Span> {
    let parts = |c: char| c.is_whitespace() || matches!(c, '(' | ')');
    let mut words = Vec::new();
    let mut start = None;
    for (at, c) in within.of(text).char_indices() {
        let at = within.start() + at;
        if parts(c) {
            words.extend(start.take().map(|start| Span::new(start, at)));
        } else {
            start = start.or(Some(at));
        }
    }
    words.extend(start.map(|start| Span::new(start, within.end())));
    words
}
