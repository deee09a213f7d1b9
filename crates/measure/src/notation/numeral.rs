//! Numbers without their unit: whole, decimal, fraction and mixed, in every spelling.

use super::scan::{before, rest, skip_digits, skip_space};
use crate::number::Number;

/// How a number is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum NumeralStyle {
    /// `12`.
    Whole,
    /// `2.5` or `12,5`.
    Decimal,
    /// `1/2`, `2-1/2`, `2½`.
    Fraction,
}

/// A number as written, with the smallest difference its notation can show.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Numeral {
    /// The value.
    pub value: Number,
    /// The smallest difference the notation can show: 1/16 for `3/16`, 0.01 for `0.25`, 1 for `64`.
    pub step: Number,
    /// How it is written.
    pub style: NumeralStyle,
}

/// The most digits a number may have.
const MOST_DIGITS: usize = 12;

/// The largest denominator of a written fraction; an inch rule goes to 64ths.
const LARGEST_DENOMINATOR: i128 = 128;

/// Reads the number that begins at a byte offset; gives it with the offset of its end.
///
/// ```
/// use measure::notation::numeral_at;
/// let (read, end) = numeral_at("2-1/2 in.", 0).unwrap();
/// assert_eq!((read.value.to_string().as_str(), end), ("5/2", 5));
/// ```
pub fn numeral_at(text: &str, at: usize) -> Option<(Numeral, usize)> {
    if let Some((fraction, end)) = fraction_at(text, at) {
        return Some((fraction, end));
    }
    let (whole, end) = plain_at(text, at)?;
    // `0-1/16` runs from nought; nobody writes a mixed number so.
    if whole.style == NumeralStyle::Whole
        && !whole.value.is_zero()
        && let Some((fraction, end)) = fraction_after(text, end)
    {
        let value = whole.value.plus(fraction.value)?;
        return Some((Numeral { value, ..fraction }, end));
    }
    Some((whole, end))
}

/// The fraction of inches behind whole feet and no whole inch: `0 1/2` of `1'-0 1/2"`.
pub(super) fn fraction_behind_nought(text: &str, at: usize) -> Option<(Numeral, usize)> {
    let (whole, end) = plain_at(text, at)?;
    let nought = whole.style == NumeralStyle::Whole && whole.value.is_zero();
    nought.then(|| fraction_after(text, end))?
}

/// A fraction joined to the whole number before it: `-1/2`, ` 1/2`, `½`.
fn fraction_after(text: &str, at: usize) -> Option<(Numeral, usize)> {
    let joint = rest(text, at).chars().next()?;
    let start = match joint {
        '-' | '\u{2010}' | '\u{2011}' | '\u{2013}' => at + joint.len_utf8(),
        ' ' | '\n' | '\t' | '\u{a0}' => skip_space(text, at),
        _ => at,
    };
    let (fraction, end) = fraction_at(text, start)?;
    // `1 3/2` isn't a mixed number: its fraction would be more than one.
    (fraction.value < Number::ONE && (start > at || vulgar(joint).is_some()))
        .then_some((fraction, end))
}

/// A fraction alone: `1/2`, `½`, `1⁄2`.
fn fraction_at(text: &str, at: usize) -> Option<(Numeral, usize)> {
    let first = rest(text, at).chars().next()?;
    let (over, under, end) = if let Some((over, under)) = vulgar(first) {
        (over, under, at + first.len_utf8())
    } else {
        let slash = skip_digits(text, at);
        let stroke = rest(text, slash)
            .chars()
            .next()
            .filter(|c| matches!(c, '/' | '\u{2044}'))?;
        let below = slash + stroke.len_utf8();
        let end = skip_digits(text, below);
        let over = short_whole(text, at, slash)?;
        let under = short_whole(text, below, end)?;
        let runs_on = rest(text, end).starts_with(['/', '.']) && starts_digit(text, end + 1);
        if !(2..=LARGEST_DENOMINATOR).contains(&under) || runs_on {
            return None;
        }
        (over, under, end)
    };
    let value = Number::new(over, under)?;
    let step = Number::new(1, under)?;
    Some((
        Numeral {
            value,
            step,
            style: NumeralStyle::Fraction,
        },
        end,
    ))
}

/// A whole or decimal number.
fn plain_at(text: &str, at: usize) -> Option<(Numeral, usize)> {
    let mut end = skip_digits(text, at);
    let mut digits = text.get(at..end)?.to_owned();
    let point_first = digits.is_empty() && rest(text, at).starts_with('.');
    if digits.is_empty() && !(point_first && starts_digit(text, at + 1)) {
        return None;
    }
    // `.5` is a number; `A.5` and `3..5` aren't.
    if point_first && before(text, at).is_some_and(|c| c.is_alphanumeric() || c == '.') {
        return None;
    }
    while groups_thousands(text, end, &digits) {
        let next = skip_digits(text, end + 1);
        digits.push_str(text.get(end + 1..next)?);
        end = next;
    }
    if let Some(next) = spaced_thousands(text, end, &digits) {
        digits.push_str(text.get(next - 3..next)?);
        end = next;
    }
    let decimals_end = decimals_end(text, end, &digits);
    let decimals = decimals_end.map_or("", |stop| text.get(end + 1..stop).unwrap_or_default());
    // Of `.12.2012`, a date's end, nothing is a number.
    if digits.is_empty() && decimals.is_empty() {
        return None;
    }
    if digits.len() + decimals.len() > MOST_DIGITS {
        return None;
    }
    let scale = 10_i128.checked_pow(u32::try_from(decimals.len()).ok()?)?;
    let value = Number::new(format!("0{digits}{decimals}").parse().ok()?, scale)?;
    let style = if decimals.is_empty() {
        NumeralStyle::Whole
    } else {
        NumeralStyle::Decimal
    };
    let numeral = Numeral {
        value,
        step: Number::new(1, scale)?,
        style,
    };
    Some((numeral, decimals_end.unwrap_or(end)))
}

/// Whether a comma here is followed by exactly three digits and so groups thousands. `0,125` doesn't.
fn groups_thousands(text: &str, at: usize, digits: &str) -> bool {
    let leading = (1..=3).contains(&digits.len()) || digits.len().is_multiple_of(3);
    rest(text, at).starts_with(',')
        && skip_digits(text, at + 1) == at + 4
        && leading
        && !digits.is_empty()
        && !digits.starts_with('0')
}

/// The end of three digits after a space that groups thousands, as metric documents write them: `2 350 kg/m³`. Only what stands
/// before a metric unit or a tolerance is taken so; `12 350` in a table of inches stays two numbers. An apostrophe groups them in Swiss
/// documents, `2'200 kg/m³`: no feet have hundreds of inches.
fn spaced_thousands(text: &str, at: usize, digits: &str) -> Option<usize> {
    const METRIC: [&str; 9] = ["mm", "kg/", "±", "m ", "°C", "g/m", "Pa", "N/", "mm²"];
    let tail = rest(text, at);
    let gap = tail.starts_with([' ', '\u{a0}', '\u{2009}', '\u{202f}', '\'', '’']);
    let start = at + tail.chars().next().map_or(0, char::len_utf8);
    let end = skip_digits(text, start);
    let follows = rest(text, end).trim_start();
    let grouped =
        gap && end == start + 3 && (1..=3).contains(&digits.len()) && !digits.starts_with('0');
    let metric = |words: &str| METRIC.iter().any(|unit| words.starts_with(unit));
    // `2 150 to 2 500 kg/m³`
    let range = ["to ", "– ", "- ", "–", "and "].iter().any(|joint| {
        follows.strip_prefix(joint).is_some_and(|high| {
            let high = high.trim_start_matches(|c: char| c.is_ascii_digit() || c.is_whitespace());
            metric(high)
        })
    });
    let plain = !rest(text, end).starts_with(['"', '″', '\'', '’', '/', '-']);
    let marked = tail.starts_with(['\'', '’']) && plain;
    (grouped && (marked || metric(follows) || range)).then_some(end)
}

/// The end of the decimals after a point or a decimal comma, if any stand here.
fn decimals_end(text: &str, at: usize, whole: &str) -> Option<usize> {
    let mark = rest(text, at).chars().next()?;
    let end = skip_digits(text, at + 1);
    let count = end.checked_sub(at + 1)?;
    let reads = match mark {
        '.' => count > 0 && !(rest(text, end).starts_with('.') && starts_digit(text, end + 1)),
        ',' => (1..=2).contains(&count) || (count == 3 && whole == "0"),
        _ => false,
    };
    reads.then_some(end)
}

fn starts_digit(text: &str, at: usize) -> bool {
    rest(text, at).starts_with(|c: char| c.is_ascii_digit())
}

/// A whole number of at most three digits, as a fraction has above and below its stroke.
fn short_whole(text: &str, from: usize, to: usize) -> Option<i128> {
    let digits = text.get(from..to)?;
    (1..=3)
        .contains(&digits.len())
        .then(|| digits.parse().ok())?
}

/// The value of a fraction that is one character.
fn vulgar(c: char) -> Option<(i128, i128)> {
    Some(match c {
        '½' => (1, 2),
        '⅓' => (1, 3),
        '⅔' => (2, 3),
        '¼' => (1, 4),
        '¾' => (3, 4),
        '⅕' => (1, 5),
        '⅖' => (2, 5),
        '⅗' => (3, 5),
        '⅘' => (4, 5),
        '⅙' => (1, 6),
        '⅚' => (5, 6),
        '⅛' => (1, 8),
        '⅜' => (3, 8),
        '⅝' => (5, 8),
        '⅞' => (7, 8),
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(text: &str, value: &str, read: &str) {
        let (numeral, end) = numeral_at(text, 0).unwrap_or_else(|| panic!("`{text}` unread"));
        assert_eq!(
            (numeral.value.to_string().as_str(), text.get(..end).unwrap()),
            (value, read)
        );
    }

    #[test]
    fn every_spelling_of_a_number() {
        check("2-1/2 in.", "5/2", "2-1/2");
        check("2 1/2 in.", "5/2", "2 1/2");
        check("2½\"", "5/2", "2½");
        check("2-½ in.", "5/2", "2-½");
        check("2 1\u{2044}2", "5/2", "2 1\u{2044}2");
        check("2.5 in.", "5/2", "2.5");
        check("1/16", "1/16", "1/16");
        check("12,5 mm", "25/2", "12,5");
        check("0,125 in", "1/8", "0,125");
        check("1,200 mm", "1200", "1,200");
        check("2 350 kg/m³", "2350", "2 350");
        check("2'200 kg/m³", "2200", "2'200");
        check("10’000 Pa", "10000", "10’000");
        check("6'2\"", "6", "6");
        check(".5", "1/2", ".5");
        check("0.0239", "239/10000", "0.0239");
    }

    #[test]
    fn stops_where_the_number_stops() {
        check("100-150 pcf", "100", "100");
        check("51 - 82", "51", "51");
        check("2, 3", "2", "2");
        check("3.", "3", "3");
        check("4 by 5", "4", "4");
        check("1 3/2", "1", "1");
        check("12 1-1/2", "12", "12");
        check("12 350 in.", "12", "12");
        // A date or a decimal outline is not a decimal number.
        check("4.1.2", "4", "4");
    }

    #[test]
    fn refuses() {
        for text in ["", "x", "1234567890123", "."] {
            assert_eq!(numeral_at(text, 0), None, "{text}");
        }
        assert_eq!(numeral_at("A.5", 1), None);
    }
}
