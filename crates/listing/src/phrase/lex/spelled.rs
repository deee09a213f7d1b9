//! Quantities spelled out: `twelve inches`, `half an inch`, `an inch and a half`.

use measure::notation::{self, Stated};

use super::super::words::{count_word, fraction_word};
use super::word_end as end_of_word;

/// A quantity spelled out: `twelve inches`, `seventy-two hours`, `one inch`.
pub(super) fn spelled_quantity(text: &str, at: usize, word_end: usize) -> Option<(Stated, usize)> {
    let word = text.get(at..word_end)?;
    if let Some(found) = spelled_fraction(text, at).or_else(|| spelled_mixed(text, at, word_end)) {
        return Some(found);
    }
    // `at least a foot`, `within an inch`
    let one = matches!(word, "a" | "an") && ends_in_comparison(text.get(..at)?);
    let number = if one { 1 } else { count_word(word)? };
    let unit_start = in_figures(text, word_end, number).unwrap_or(word_end);
    let (unit, end) = notation::unit_at(text, unit_start)?;
    let spelled = text.get(unit_start..end)?.trim_matches([' ', '-']);
    // A short unit after a spelled number would be a word of its own: `two min`.
    let no_word = matches!(
        spelled,
        "day" | "hr" | "hrs" | "mm" | "cm" | "ft" | "pcf" | "mil"
    );
    if spelled.len() < 4 && !no_word && !is_inches(text, spelled, end) {
        return None;
    }
    // Of `one hundred and fifty millimetres` or `twenty five millimetres` only the end would be read.
    let head = text.get(..at)?.trim_end();
    let word_before = head
        .rsplit(|c: char| !(c.is_alphanumeric() || c == '-'))
        .next()?;
    let second = word_before == "and"
        && head
            .trim_end_matches("and")
            .trim_end()
            .to_lowercase()
            .ends_with("hundred");
    if second || is_number_word(word_before) {
        return None;
    }
    let mut number = measure::Number::whole(number);
    let mut end = end;
    // `an inch and a half`, `one inch and one-quarter`
    if let Some((part, part_end)) = part_after(text, end) {
        number = number.plus(part)?;
        end = part_end;
    }
    let style = notation::NumeralStyle::Whole;
    Some((
        Stated {
            number,
            unit,
            step: measure::Number::ONE,
            style,
            span: at..end,
        },
        end,
    ))
}

/// Whether a spelled number's "in" is its unit: `two in. of wool`, `six in. wide`. A sentence that ends in it has a capital behind.
fn is_inches(text: &str, spelled: &str, end: usize) -> bool {
    let rest = text.get(end..).unwrap_or_default();
    let rest = rest.strip_prefix('.').unwrap_or(rest);
    let goes_on = rest
        .strip_prefix(' ')
        .is_some_and(|rest| rest.starts_with(|c: char| c.is_lowercase() || c == '('));
    let stopped = spelled.ends_with('.') || text.get(end..).is_some_and(|r| r.starts_with('.'));
    spelled.trim_end_matches('.').eq_ignore_ascii_case("in") && stopped && goes_on
}

/// A number spelled out where another follows that has its unit, said again in figures or not: `twenty-five (25) and fifty (50) percent`, `four to six
/// inches`.
pub(super) fn spelled_in_figures(
    text: &str,
    at: usize,
    word_end: usize,
) -> Option<(notation::Numeral, usize)> {
    if let Some(part) = part_of_a_range(text, at) {
        return Some(part);
    }
    let number = count_word(text.get(at..word_end)?)?;
    if opens_spelled_range(text, at, word_end) {
        let numeral = notation::Numeral {
            value: measure::Number::whole(number),
            step: measure::Number::ONE,
            style: notation::NumeralStyle::Whole,
        };
        return Some((numeral, word_end));
    }
    let end = in_figures(text, word_end, number)?;
    let rest = text.get(end..)?;
    let goes_on = [" and ", " to ", " or "]
        .into_iter()
        .find_map(|joint| rest.strip_prefix(joint))?;
    let next = goes_on.split(' ').next().unwrap_or_default();
    let numbered = next.starts_with(|c: char| c.is_ascii_digit()) || count_word(next).is_some();
    numbered.then(|| {
        let numeral = notation::Numeral {
            value: measure::Number::whole(number),
            step: measure::Number::ONE,
            style: notation::NumeralStyle::Whole,
        };
        (numeral, end)
    })
}

/// `four to six inches`, `between two and four inches`: a number in the unit of the one that ends its range.
fn opens_spelled_range(text: &str, at: usize, word_end: usize) -> bool {
    let (Some(head), Some(rest)) = (text.get(..at), text.get(word_end..)) else {
        return false;
    };
    let between = head.trim_end().to_lowercase().ends_with("between");
    let joint = [" to ", " or ", " and "]
        .into_iter()
        .filter(|joint| between || *joint != " and ")
        .find(|joint| rest.starts_with(joint));
    let Some(start) = joint.map(|joint| word_end + joint.len()) else {
        return false;
    };
    let end = end_of_word(text, start);
    let word = text.get(start..end).unwrap_or_default();
    let single = ["single", "double", "one"];
    is_number_word(word)
        && !single.contains(&word)
        && spelled_quantity(text, start, end).is_some_and(|(stated, _)| {
            stated.unit.dimension() == measure::Dimension::Length
                && stated.style == notation::NumeralStyle::Whole
        })
}

/// Where the figures end that say a spelled number again: `thirty-six (36) hours`.
fn in_figures(text: &str, word_end: usize, number: i32) -> Option<usize> {
    let rest = text.get(word_end..)?;
    let figures = format!(" ({number})");
    rest.starts_with(&figures)
        .then_some(word_end + figures.len())
}

/// Whether a word is a number, or "hundred" or "thousand".
fn is_number_word(word: &str) -> bool {
    let lower = word.to_lowercase();
    matches!(lower.as_str(), "hundred" | "thousand")
        || (lower != "single" && lower != "double" && count_word(&lower).is_some())
}

/// The part of a unit that is added after it: `an inch *and a half*`.
fn part_after(text: &str, at: usize) -> Option<(measure::Number, usize)> {
    let rest = text.get(at..)?;
    let opening = [" and a ", " and "]
        .into_iter()
        .find(|opening| rest.starts_with(opening))?;
    let start = at + opening.len();
    let end = end_of_word(text, start);
    let after = text.get(end..)?.trim_start();
    let part = fraction_word(text.get(start..end)?)?;
    // `one inch and half the width` adds nothing.
    let own_unit = ["inch", "of", "the", "hour", "foot", "its"]
        .iter()
        .any(|word| after.starts_with(word));
    (!own_unit).then_some((part, end))
}

/// `three and one-quarter inches`, `two and a half hours`.
fn spelled_mixed(text: &str, at: usize, word_end: usize) -> Option<(Stated, usize)> {
    let whole = count_word(text.get(at..word_end)?)?;
    let rest = text.get(word_end..)?;
    let opening = [" and a ", " and "]
        .into_iter()
        .find(|opening| rest.starts_with(opening))?;
    let (part, end) = part_at(text, word_end + opening.len())?;
    let (unit, unit_end) = notation::unit_at(text, end)?;
    let spelled = text.get(end..unit_end)?.trim_matches([' ', '-']);
    let number = measure::Number::whole(whole).plus(part)?;
    matches!(
        spelled,
        "inch" | "inches" | "foot" | "feet" | "hour" | "hours"
    )
    .then(|| {
        let stated = Stated {
            number,
            unit,
            step: part,
            style: notation::NumeralStyle::Fraction,
            span: at..unit_end,
        };
        (stated, unit_end)
    })
}

/// `half an inch`, `a quarter inch`, `three-quarters of an inch`.
fn spelled_fraction(text: &str, at: usize) -> Option<(Stated, usize)> {
    let (number, word_end) = part_at(text, at)?;
    let rest = text.get(word_end..)?;
    let joint = [" of an", " of a", " an", " a", ""]
        .into_iter()
        .find(|joint| {
            rest.starts_with(joint)
                && rest
                    .get(joint.len()..)
                    .is_some_and(|rest| rest.starts_with([' ', '-']))
        })?;
    let (unit, end) = notation::unit_at(text, word_end + joint.len())?;
    let spelled = text
        .get(word_end + joint.len()..end)?
        .trim_matches([' ', '-']);
    matches!(spelled, "inch" | "foot" | "hour" | "mile").then(|| {
        (
            Stated {
                number,
                unit,
                step: number,
                style: notation::NumeralStyle::Fraction,
                span: at..end,
            },
            end,
        )
    })
}

/// A part of a whole, in one word or two, with its end: `half`, `three-eighths`, `three quarters`.
fn part_at(text: &str, at: usize) -> Option<(measure::Number, usize)> {
    let end = end_of_word(text, at);
    let word = text.get(at..end)?;
    if let Some(part) = fraction_word(word) {
        return Some((part, end));
    }
    let parts = count_word(word)?;
    let start = end + 1;
    let end = end_of_word(text, start);
    let part = fraction_word(text.get(start..end)?)?;
    Some((part.times(measure::Number::whole(parts))?, end))
}

/// `one half to three quarters inch`: a part in the unit of the one that ends its range.
fn part_of_a_range(text: &str, at: usize) -> Option<(notation::Numeral, usize)> {
    let (value, end) = part_at(text, at)?;
    let next = text.get(end..)?.strip_prefix(" to ").map(|_| end + 4)?;
    spelled_fraction(text, next)?;
    let numeral = notation::Numeral {
        value,
        step: value,
        style: notation::NumeralStyle::Fraction,
    };
    Some((numeral, end))
}

/// Whether words end in one that compares with a number.
fn ends_in_comparison(words: &str) -> bool {
    ["least", "than", "most", "within", "exceed", "exceeding"]
        .iter()
        .any(|word| words.trim_end().ends_with(word))
}
