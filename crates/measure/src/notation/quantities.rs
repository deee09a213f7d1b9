//! Numbers with their units.

use core::ops::Range;

use super::numeral::{Numeral, NumeralStyle, fraction_behind_nought, numeral_at};
use super::scan::{before, rest, skip_space};
use super::units::unit_at;
use crate::number::Number;
use crate::quantity::Quantity;
use crate::unit::Unit;

/// A quantity as a text states it: exact, with the place it stands and the fineness of its notation.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stated {
    /// The number.
    pub number: Number,
    /// The unit.
    pub unit: Unit,
    /// The smallest difference the notation can show, in the unit.
    pub step: Number,
    /// How the number is written.
    pub style: NumeralStyle,
    /// The bytes it stands on.
    pub span: Range<usize>,
}

impl Stated {
    /// The quantity without its notation.
    pub const fn quantity(&self) -> Quantity {
        Quantity::new(self.number, self.unit)
    }

    fn new(numeral: Numeral, unit: Unit, span: Range<usize>) -> Self {
        Self {
            number: numeral.value,
            unit,
            step: numeral.step,
            style: numeral.style,
            span,
        }
    }
}

/// Why a text isn't a quantity.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum ParseQuantityError {
    /// There is no number.
    #[error("`{0}` has no number; write for example `2-1/2 in.`, `64 mm`, `4 pcf` or `33 %`")]
    NoNumber(String),
    /// The number has no unit.
    #[error(
        "`{0}` has a number but no known unit; write for example `{1} in.`, `{1} mm` or `{1} %`"
    )]
    NoUnit(String, String),
    /// Words stand around the quantity.
    #[error("`{0}` has more than a quantity in it; `{1}` was read and `{2}` is left over")]
    LeftOver(String, String, String),
}

/// Reads a whole text as one quantity, a sign before it allowed.
///
/// # Errors
/// When there is no number, no known unit, or more than that.
pub fn quantity(text: &str) -> Result<Stated, ParseQuantityError> {
    let trimmed = text.trim();
    let unsigned = trimmed
        .trim_start_matches(['-', '+', '\u{2212}'])
        .trim_start();
    let negative = trimmed.starts_with(['-', '\u{2212}']);
    let start = trimmed.len() - unsigned.len();
    let Some(mut stated) = quantity_at(trimmed, start) else {
        return Err(match numeral_at(trimmed, start) {
            Some((_, end)) => ParseQuantityError::NoUnit(
                trimmed.to_owned(),
                trimmed.get(..end).unwrap_or_default().to_owned(),
            ),
            None => ParseQuantityError::NoNumber(trimmed.to_owned()),
        });
    };
    let left = rest(trimmed, stated.span.end).trim();
    if !left.is_empty() {
        let read = trimmed.get(..stated.span.end).unwrap_or_default();
        return Err(ParseQuantityError::LeftOver(
            trimmed.to_owned(),
            read.to_owned(),
            left.to_owned(),
        ));
    }
    if negative {
        stated.number = -stated.number;
    }
    Ok(stated)
}

/// Reads the quantity that begins at a byte offset. Its number may not continue a word or number
/// (`W8`, `4.1`), and no sign is read.
pub fn quantity_at(text: &str, at: usize) -> Option<Stated> {
    if before(text, at).is_some_and(runs_into_number) || is_denominator(text, at) {
        return None;
    }
    let first = rest(text, at).chars().next()?;
    if first.is_alphabetic() || first == '#' {
        return prefixed_at(text, at);
    }
    let (numeral, end) = numeral_at(text, at)?;
    let (unit, unit_end) = unit_at(text, end)?;
    if unit == Unit::Foot
        && let Some(both) = feet_and_inches(text, at, numeral, unit_end)
    {
        return Some(both);
    }
    Some(Stated::new(numeral, unit, at..unit_end))
}

/// Whether a stroke before a place makes what stands there the lower half of a fraction: `1/2 in.` Behind a unit or a bracket it parts two quantities:
/// `12 in. max./6 in. min.`, `(edges)/12 in.`
fn is_denominator(text: &str, at: usize) -> bool {
    let stroke = |c: char| matches!(c, '/' | '\u{2044}');
    let Some(c) = before(text, at).filter(|c| stroke(*c)) else {
        return false;
    };
    let parts = |c: char| matches!(c, '.' | ')' | ']' | '"' | '%') || c.is_alphabetic();
    !before(text, at - c.len_utf8()).is_some_and(parts)
}

/// The inches that follow whole feet, summed in inches: `8 ft 3-1/2 in.`, `8'-3 1/2"`.
fn feet_and_inches(text: &str, at: usize, feet: Numeral, feet_end: usize) -> Option<Stated> {
    if feet.style != NumeralStyle::Whole {
        return None;
    }
    let gap = rest(text, feet_end);
    let joined = gap.trim_start_matches([' ', '\n', '\t', '-', ',']);
    let start = feet_end + (gap.len() - joined.len());
    let (inches, end) = fraction_behind_nought(text, start).or_else(|| numeral_at(text, start))?;
    let (unit, end) = unit_at(text, end)?;
    if unit != Unit::Inch || inches.value >= 12 {
        return None;
    }
    let number = feet.value.times(Number::whole(12))?.plus(inches.value)?;
    Some(Stated::new(
        Numeral {
            value: number,
            ..inches
        },
        Unit::Inch,
        at..end,
    ))
}

/// The sizes whose name stands first: `No. 25 MSG`, `No. 8`, `#10`, `Schedule 40`.
fn prefixed_at(text: &str, at: usize) -> Option<Stated> {
    let (word, unit) = PREFIXES.iter().find(|(word, _)| {
        text.get(at..at + word.len())
            .is_some_and(|here| here.eq_ignore_ascii_case(word))
    })?;
    let start = skip_space(text, at + word.len());
    let (numeral, end) = numeral_at(text, start)?;
    let spaced = word.ends_with(['.', '#']) || start > at + word.len();
    if numeral.style != NumeralStyle::Whole || !spaced {
        return None;
    }
    let follows = unit_at(text, end).filter(|(unit, _)| unit.dimension().lower_is_heavier());
    match (follows, *unit) {
        (Some((unit, end)), Unit::ScrewNumber) => Some(Stated::new(numeral, unit, at..end)),
        (None, unit) if !rest(text, end).starts_with(|c: char| c.is_alphanumeric()) => {
            Some(Stated::new(numeral, unit, at..end))
        }
        _ => None,
    }
}

const PREFIXES: &[(&str, Unit)] = &[
    ("No.", Unit::ScrewNumber),
    ("Nos.", Unit::ScrewNumber),
    ("#", Unit::ScrewNumber),
    ("Schedule", Unit::Schedule),
    ("Sch.", Unit::Schedule),
    ("AWG", Unit::Awg),
];

/// Whether a character before a number makes a part of a name of it: `W8`, `12`. The sign of a diameter, `Ø3 mm`, is a letter, and no part of a name.
fn runs_into_number(c: char) -> bool {
    c.is_alphanumeric() && !matches!(c, 'Ø' | 'ø')
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(text: &str, number: &str, unit: Unit, read: &str) {
        let stated = quantity_at(text, 0).unwrap_or_else(|| panic!("`{text}` unread"));
        assert_eq!(
            (
                stated.number.to_string().as_str(),
                stated.unit,
                text.get(stated.span).unwrap()
            ),
            (number, unit, read)
        );
    }

    #[test]
    fn a_number_may_run_into_the_sign_of_a_diameter_and_into_no_other_letter() {
        for text in ["Ø3 mm", "ø3 mm"] {
            let stated = quantity_at(text, text.len() - "3 mm".len());
            assert_eq!(
                stated.map(|stated| stated.unit),
                Some(Unit::Millimetre),
                "{text}"
            );
        }
        assert!(quantity_at("W3 mm", 1).is_none());
    }

    #[test]
    fn every_spelling_of_a_quantity() {
        check("2-1/2 in. (64 mm)", "5/2", Unit::Inch, "2-1/2 in.");
        check("2½\" (64 mm)", "5/2", Unit::Inch, "2½\"");
        check(
            "8 ft 3-1/2 in. (2527 mm)",
            "199/2",
            Unit::Inch,
            "8 ft 3-1/2 in.",
        );
        check("1'-0 1/2\" wide", "25/2", Unit::Inch, "1'-0 1/2\"");
        check("1 ft 0-1/2 in. wide", "25/2", Unit::Inch, "1 ft 0-1/2 in.");
        check("1'-0¾\" wide", "51/4", Unit::Inch, "1'-0¾\"");
        check("2'-0\" wide", "24", Unit::Inch, "2'-0\"");
        check("8'-3 1/2\" long", "199/2", Unit::Inch, "8'-3 1/2\"");
        check("12 ft high", "12", Unit::Foot, "12 ft");
        check("10 ft 40 in. apart", "10", Unit::Foot, "10 ft");
        check("No. 25 MSG (0.018 in.)", "25", Unit::Gauge, "No. 25 MSG");
        check("No. 8 by 1/2-inch long", "8", Unit::ScrewNumber, "No. 8");
        check("No. 18 SWG", "18", Unit::Swg, "No. 18 SWG");
        check("25 ga steel", "25", Unit::Gauge, "25 ga");
        check("Schedule 40 pipe", "40", Unit::Schedule, "Schedule 40");
        check("0,2 mm thick", "1/5", Unit::Millimetre, "0,2 mm");
        check("40°F (4°C)", "40", Unit::Fahrenheit, "40°F");
        check("90 min.", "90", Unit::Minute, "90 min");
        check(
            "0.4 cfm/lin ft (0.62",
            "2/5",
            Unit::CfmPerFoot,
            "0.4 cfm/lin ft",
        );
    }
}
