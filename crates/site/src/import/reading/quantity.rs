//! A cell that states a quantity.

use measure::notation::{self, numeral_at};
use measure::{Agreement, Dimension, Number, ParseQuantityError, Quantity, Stated, Unit, dual};

use super::dimension::{example, in_words, ordinary};
use crate::import::problem::{Wrong, quoted};

/// Reads one quantity of a dimension. `of` names what it is a value of, for what is said when it is wrong.
///
/// A count or a gauge may stand without a unit, and a ratio is written `1:12`, `1 in 12` or `1/12`. A second value in parentheses
/// must say the same as the first, which is the one taken.
pub(crate) fn quantity(dimension: Dimension, of: &str, text: &str) -> Result<Quantity, Wrong> {
    let quantity = match unitless(dimension, text) {
        Some(quantity) => quantity,
        None => with_unit(dimension, of, text)?,
    };
    if quantity.dimension() != dimension {
        return Err(Wrong::new(
            format!(
                "{of} is {}; {} is {}",
                in_words(dimension),
                quoted(text),
                in_words(quantity.dimension())
            ),
            example(dimension, &number_in(text, dimension)),
        ));
    }
    if quantity.number.is_negative() && !may_be_negative(dimension) {
        let message = format!("{} is less than nothing", quoted(text));
        return Err(Wrong::new(message, "write it without the minus sign"));
    }
    if dimension == Dimension::Count && !quantity.number.is_whole() {
        return Err(Wrong::new(
            format!("{} isn't a whole number of things", quoted(text)),
            "write a whole number",
        ));
    }
    Ok(quantity)
}

/// Reads one quantity of any dimension, which may be negative.
pub(crate) fn any_quantity(text: &str) -> Option<Quantity> {
    Quantity::parse(text).ok()
}

fn may_be_negative(dimension: Dimension) -> bool {
    matches!(
        dimension,
        Dimension::Temperature | Dimension::TemperatureDifference | Dimension::Angle
    )
}

/// What stands without a unit because its dimension has none.
fn unitless(dimension: Dimension, text: &str) -> Option<Quantity> {
    match dimension {
        Dimension::Count => number(text).map(|number| Quantity::new(number, Unit::Count)),
        Dimension::Gauge => {
            // In a column of gauges `No. 20` can only be one.
            let text = text
                .strip_prefix("No.")
                .or_else(|| text.strip_prefix('#'))
                .unwrap_or(text);
            let number = number(text.trim()).filter(|number| number.is_whole())?;
            Some(Quantity::new(number, Unit::Gauge))
        }
        Dimension::Ratio => {
            let (first, second) = [":", " in ", " to ", "/"]
                .iter()
                .find_map(|between| text.split_once(between))?;
            let ratio = number(first.trim())?.over(number(second.trim())?)?;
            Some(Quantity::new(ratio, Unit::Ratio))
        }
        _ => None,
    }
}

/// A text that is a number and nothing else, with or without a sign.
fn number(text: &str) -> Option<Number> {
    let unsigned = text.strip_prefix('-').unwrap_or(text);
    let (numeral, end) = numeral_at(unsigned, 0)?;
    let number = if unsigned.len() == text.len() {
        numeral.value
    } else {
        -numeral.value
    };
    (end == unsigned.len()).then_some(number)
}

/// The first number in a text, for an example; an ordinary one when there is none.
fn number_in(text: &str, dimension: Dimension) -> String {
    let number = numeral_at(text, 0).and_then(|(_, end)| text.get(..end));
    number.unwrap_or_else(|| ordinary(dimension)).to_owned()
}

fn with_unit(dimension: Dimension, of: &str, text: &str) -> Result<Quantity, Wrong> {
    let (first, second) = match text
        .strip_suffix(')')
        .and_then(|text| text.rsplit_once('('))
    {
        Some((first, second)) => (first.trim(), Some(second.trim())),
        None => (text, None),
    };
    let read =
        |text: &str| notation::quantity(text).map_err(|error| unread(dimension, of, text, &error));
    let first = read(first)?;
    if let Some(second) = second {
        same(text, &first, &read(second)?)?;
    }
    Ok(first.quantity())
}

/// Whether two statements of one value agree.
fn same(text: &str, first: &Stated, second: &Stated) -> Result<(), Wrong> {
    let why = match dual::agreement(first, second) {
        Some(Agreement::Consistent) => return Ok(()),
        Some(Agreement::LooselyRounded | Agreement::InConflict) => "don't say the same",
        None => "aren't of one kind",
    };
    let message = format!("the two values of {} {why}", quoted(text));
    Err(Wrong::new(message, "write the one that was found, alone"))
}

/// What is said of a text that isn't a quantity.
fn unread(dimension: Dimension, of: &str, text: &str, error: &ParseQuantityError) -> Wrong {
    let right = example(dimension, &number_in(text, dimension));
    if let Some(word) = bound(text) {
        let message = format!("{} is a limit; {of} is one value as found", quoted(text));
        return Wrong::new(message, format!("leave `{word}` out: {right}"));
    }
    if looks_like_date(text) {
        let message = format!(
            "{} is a date where {of} is {}",
            quoted(text),
            in_words(dimension)
        );
        let help = "if a spreadsheet took a fraction for a date, format the column as text and write it again";
        return Wrong::new(
            message,
            format!("{help}; {}", example(dimension, ordinary(dimension))),
        );
    }
    match error {
        ParseQuantityError::LeftOver(_, read, left) => {
            let message = format!("{} is left over after {}", quoted(left), quoted(read));
            Wrong::new(
                message,
                format!("write one value and nothing else: {right}"),
            )
        }
        ParseQuantityError::NoUnit(_, written) if number(text).is_some() || written == text => {
            Wrong::new(
                format!(
                    "{} has no unit; {of} is {}",
                    quoted(text),
                    in_words(dimension)
                ),
                right,
            )
        }
        ParseQuantityError::NoUnit(..) => {
            let message = format!(
                "{} has no unit that is known; {of} is {}",
                quoted(text),
                in_words(dimension)
            );
            Wrong::new(message, right)
        }
        ParseQuantityError::NoNumber(_) => {
            let message = format!(
                "{} has no number that can be read; {of} is {}",
                quoted(text),
                in_words(dimension)
            );
            Wrong::new(message, right)
        }
    }
}

/// The word or sign by which a text states a limit rather than a value.
fn bound(text: &str) -> Option<&'static str> {
    const WORDS: &[&str] = &[
        "min", "max", "minimum", "maximum", "approx", "about", "nominal", "nom", "ca",
    ];
    const SIGNS: &[&str] = &["<=", ">=", "<", ">", "≤", "≥", "≈", "~", "±", "+/-"];
    let lower = text.to_lowercase();
    let mut words = lower.split(|c: char| !c.is_alphabetic());
    // `90 min` is a time: there the word is the unit.
    let leads = |word: &&&str| lower.starts_with(**word);
    let word = words
        .next()
        .and_then(|first| WORDS.iter().find(|word| **word == first));
    word.or_else(|| SIGNS.iter().find(leads)).copied()
}

/// Whether a text is a date as spreadsheets show one: `2026-03-04`, `4-Mar`, `Mar-04`, `3/4/2026`.
fn looks_like_date(text: &str) -> bool {
    const MONTHS: &[&str] = &[
        "jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec",
    ];
    let parts: Vec<_> = text.split(['-', '/', ' ']).collect();
    let numeric = |part: &str| {
        !part.is_empty() && part.len() <= 4 && part.bytes().all(|b| b.is_ascii_digit())
    };
    let month = |part: &&str| MONTHS.contains(&part.to_lowercase().as_str());
    let months = parts.iter().filter(|part| month(part)).count();
    let others = parts
        .iter()
        .filter(|part| !month(part))
        .all(|part| numeric(part));
    others && matches!((parts.len(), months), (3, 0 | 1) | (2, 1))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(dimension: Dimension, text: &str, expected: &str) {
        let read =
            quantity(dimension, "packing.depth", text).unwrap_or_else(|wrong| panic!("{wrong:?}"));
        assert_eq!(
            (read.number.to_string() + " " + read.unit.symbol()).as_str(),
            expected,
            "{text}"
        );
    }

    #[test]
    fn quantities_as_schedules_write_them() {
        check(Dimension::Length, "2-1/2 in.", "5/2 in");
        check(Dimension::Length, "2½\"", "5/2 in");
        check(Dimension::Length, "27 ft 6 in.", "330 in");
        check(Dimension::Length, "12,5 mm", "25/2 mm");
        check(Dimension::Length, "2-1/2 in. (64 mm)", "5/2 in");
        check(Dimension::Length, "64 mm (2-1/2 in.)", "64 mm");
        check(Dimension::Count, "2", "2 count");
        check(Dimension::Count, "0", "0 count");
        check(Dimension::Gauge, "20", "20 gauge");
        check(Dimension::Gauge, "20 MSG", "20 gauge");
        check(Dimension::Gauge, "No. 20", "20 gauge");
        check(Dimension::Gauge, "No. 20 MSG", "20 gauge");
        check(Dimension::ScrewSize, "No. 8", "8 screw_no");
        check(Dimension::Ratio, "1:12", "1/12 ratio");
        check(Dimension::Ratio, "1 in 12", "1/12 ratio");
        check(Dimension::Ratio, "1/12", "1/12 ratio");
        check(Dimension::Temperature, "-4 °C", "-4 degC");
        check(Dimension::Time, "90 min", "90 min");
        check(Dimension::Fraction, "41 %", "41 percent");
        check(Dimension::Fraction, "12,5 %", "25/2 percent");
    }

    #[track_caller]
    fn check_wrong(dimension: Dimension, text: &str, message: &str, help: &str) {
        let wrong = quantity(dimension, "packing.depth", text).unwrap_err();
        assert!(wrong.message.contains(message), "{text}: {wrong:?}");
        assert!(wrong.help.contains(help), "{text}: {wrong:?}");
    }

    #[test]
    fn a_number_without_its_unit() {
        check_wrong(
            Dimension::Length,
            "2.5",
            "`2.5` has no unit; packing.depth is a length",
            "`2.5 in.` or `2.5 mm`",
        );
        check_wrong(Dimension::Length, "-2.5", "no unit", "in.");
        check_wrong(Dimension::Fraction, "0.33", "has no unit", "`33 %`");
        check_wrong(
            Dimension::Density,
            "4 lb",
            "no unit that is known",
            "`4 pcf` or `4 kg/m3`",
        );
        check_wrong(Dimension::ScrewSize, "8", "no unit", "`No. 8`");
    }

    #[test]
    fn the_unit_of_something_else() {
        check_wrong(
            Dimension::Density,
            "4 in.",
            "packing.depth is a density; `4 in.` is a length",
            "`4 pcf`",
        );
        check_wrong(
            Dimension::TemperatureDifference,
            "325 °F",
            "is a temperature",
            "`325 °F rise`",
        );
        check_wrong(Dimension::Gauge, "0.021 in.", "is a length", "MSG");
        check_wrong(
            Dimension::Count,
            "2 in.",
            "a count; `2 in.` is a length",
            "`2`",
        );
        check_wrong(Dimension::Time, "6 months", "a time in months", "hr");
    }

    #[test]
    fn what_is_not_one_value() {
        check_wrong(
            Dimension::Length,
            "1 in. to 2 in.",
            "`to 2 in.` is left over after `1 in.`",
            "one value",
        );
        check_wrong(
            Dimension::Length,
            "min 2 in.",
            "is a limit",
            "leave `min` out",
        );
        check_wrong(Dimension::Length, "≥ 2 in.", "is a limit", "leave `≥` out");
        check_wrong(Dimension::Length, "deep", "no number", "in.");
        check_wrong(
            Dimension::Length,
            "4-Mar",
            "is a date",
            "format the column as text",
        );
        check_wrong(
            Dimension::Length,
            "2026-03-04",
            "is a date",
            "format the column as text",
        );
        check_wrong(
            Dimension::Length,
            "2-1/2 in. (76 mm)",
            "don't say the same",
            "alone",
        );
        check_wrong(
            Dimension::Length,
            "6 in. (150 mm)",
            "don't say the same",
            "alone",
        );
        check_wrong(
            Dimension::Length,
            "6 in. (4 pcf)",
            "aren't of one kind",
            "alone",
        );
        check_wrong(
            Dimension::Length,
            "-1 in.",
            "less than nothing",
            "without the minus",
        );
        check_wrong(Dimension::Count, "2.5", "whole number", "whole number");
        check_wrong(Dimension::Count, "-2", "less than nothing", "minus");
        check_wrong(Dimension::Ratio, "1:0", "has no", "1:");
        check_wrong(Dimension::Gauge, "20.5", "no unit", "MSG");
        check_wrong(
            Dimension::Length,
            "2-1/2 in. wall",
            "left over",
            "`2-1/2 in.`",
        );
    }
}
