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
    "wet", "dry",
];

/// Every number in words with a unit in a stretch.
pub(super) fn spelled_numbers(text: &str, within: Span) -> Vec<Span> {
    let words = words(text, within);
    words
        .iter()
        .zip(words.iter().skip(1))
        .filter(|(number, unit)| {
            let number = number.of(text).to_lowercase();
            let unit = unit.of(text).to_lowercase();
            let last = number.rsplit('-').next().unwrap_or_default().to_owned();
            let listed = |unit: &str| UNITS.contains(&unit);
            // A sentence's stop ends an inch as well.
            let measures = listed(&unit) || unit != "in." && listed(unit.trim_end_matches(stops));
            NUMBERS.contains(&last.as_str()) && measures
        })
        .map(|(number, unit)| number.join(*unit))
        .collect()
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
            let is_number = !digits.is_empty() && digits.bytes().all(|byte| byte.is_ascii_digit());
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
