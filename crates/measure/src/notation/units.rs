//! Unit spellings, longest first.

use std::sync::LazyLock;

use super::scan::{is_note_mark, rest, skip_space};
use crate::unit::Unit;

/// How a spelling must stand in the text.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Letters {
    /// Capitals or not.
    Either,
    /// Just as written here: `F` and `C` are scales, `f` and `c` are not.
    AsWritten,
}

use Letters::{AsWritten, Either};

/// The spellings; a space stands for any white space or none.
const SPELLINGS: &[(&str, Unit, Letters)] = &[
    ("in.", Unit::Inch, Either),
    ("in", Unit::Inch, Either),
    ("inch", Unit::Inch, Either),
    ("inches", Unit::Inch, Either),
    ("\"", Unit::Inch, Either),
    ("\u{2033}", Unit::Inch, Either),
    ("\u{201d}", Unit::Inch, Either),
    ("''", Unit::Inch, Either),
    ("ft.", Unit::Foot, Either),
    ("ft", Unit::Foot, Either),
    ("foot", Unit::Foot, Either),
    ("feet", Unit::Foot, Either),
    ("lin ft", Unit::Foot, Either),
    ("LF", Unit::Foot, AsWritten),
    ("lin. ft.", Unit::Foot, Either),
    ("lineal feet", Unit::Foot, Either),
    ("linear feet", Unit::Foot, Either),
    ("'", Unit::Foot, Either),
    ("\u{2032}", Unit::Foot, Either),
    ("\u{2019}", Unit::Foot, Either),
    ("mil", Unit::Mil, Either),
    ("mils", Unit::Mil, Either),
    ("mm", Unit::Millimetre, Either),
    ("millimetre", Unit::Millimetre, Either),
    ("millimetres", Unit::Millimetre, Either),
    ("millimeter", Unit::Millimetre, Either),
    ("millimeters", Unit::Millimetre, Either),
    ("cm", Unit::Centimetre, Either),
    ("m", Unit::Metre, AsWritten),
    ("metre", Unit::Metre, Either),
    ("metres", Unit::Metre, Either),
    ("meter", Unit::Metre, Either),
    ("meters", Unit::Metre, Either),
    ("um", Unit::Micrometre, AsWritten),
    ("µm", Unit::Micrometre, AsWritten),
    ("μm", Unit::Micrometre, AsWritten),
    ("micron", Unit::Micrometre, Either),
    ("microns", Unit::Micrometre, Either),
    ("sq in.", Unit::SquareInch, Either),
    ("sq in", Unit::SquareInch, Either),
    ("sq. in.", Unit::SquareInch, Either),
    ("square inches", Unit::SquareInch, Either),
    ("in2", Unit::SquareInch, Either),
    ("in²", Unit::SquareInch, Either),
    ("sq ft", Unit::SquareFoot, Either),
    ("sq. ft.", Unit::SquareFoot, Either),
    ("square feet", Unit::SquareFoot, Either),
    ("ft2", Unit::SquareFoot, Either),
    ("ft²", Unit::SquareFoot, Either),
    ("mm2", Unit::SquareMillimetre, Either),
    ("mm²", Unit::SquareMillimetre, Either),
    ("cm2", Unit::SquareCentimetre, Either),
    ("cm²", Unit::SquareCentimetre, Either),
    ("m2", Unit::SquareMetre, Either),
    ("m²", Unit::SquareMetre, Either),
    ("sq m", Unit::SquareMetre, Either),
    ("cu in.", Unit::CubicInch, Either),
    ("cu in", Unit::CubicInch, Either),
    ("in3", Unit::CubicInch, Either),
    ("gal", Unit::Gallon, Either),
    ("gallon", Unit::Gallon, Either),
    ("gallons", Unit::Gallon, Either),
    ("fl oz", Unit::FluidOunce, Either),
    ("fl. oz.", Unit::FluidOunce, Either),
    ("L", Unit::Litre, AsWritten),
    ("litre", Unit::Litre, Either),
    ("litres", Unit::Litre, Either),
    ("liters", Unit::Litre, Either),
    ("mL", Unit::Millilitre, Either),
    ("lb/ft", Unit::PoundPerFoot, Either),
    ("lb/lin ft", Unit::PoundPerFoot, Either),
    ("lb per ft", Unit::PoundPerFoot, Either),
    ("lbs/ft", Unit::PoundPerFoot, Either),
    ("plf", Unit::PoundPerFoot, Either),
    ("pounds per foot", Unit::PoundPerFoot, Either),
    ("pounds per lineal foot", Unit::PoundPerFoot, Either),
    ("kg/m", Unit::KilogramPerMetre, Either),
    ("psf", Unit::PoundForcePerSquareFoot, Either),
    ("lb/ft2", Unit::PoundPerSquareFoot, Either),
    ("lb/ft²", Unit::PoundPerSquareFoot, Either),
    ("lb/sq ft", Unit::PoundPerSquareFoot, Either),
    ("lb per sq ft", Unit::PoundPerSquareFoot, Either),
    ("g/m2", Unit::GramPerSquareMetre, Either),
    ("g/m²", Unit::GramPerSquareMetre, Either),
    ("kg/m2", Unit::KilogramPerSquareMetre, Either),
    ("kg/m²", Unit::KilogramPerSquareMetre, Either),
    ("pcf", Unit::PoundPerCubicFoot, Either),
    ("lb/ft3", Unit::PoundPerCubicFoot, Either),
    ("lb/ft³", Unit::PoundPerCubicFoot, Either),
    ("lb/cu ft", Unit::PoundPerCubicFoot, Either),
    ("lb per cu ft", Unit::PoundPerCubicFoot, Either),
    ("lbs/ft3", Unit::PoundPerCubicFoot, Either),
    ("lbs per cu ft", Unit::PoundPerCubicFoot, Either),
    ("lb per cu. ft.", Unit::PoundPerCubicFoot, Either),
    ("lb. per cu. ft.", Unit::PoundPerCubicFoot, Either),
    ("lbs. per cu. ft.", Unit::PoundPerCubicFoot, Either),
    ("lb. per cu ft", Unit::PoundPerCubicFoot, Either),
    ("lb./cu. ft.", Unit::PoundPerCubicFoot, Either),
    ("lb/cu. ft.", Unit::PoundPerCubicFoot, Either),
    ("lb per cubic foot", Unit::PoundPerCubicFoot, Either),
    ("lb. per cubic foot", Unit::PoundPerCubicFoot, Either),
    ("lbs per cubic foot", Unit::PoundPerCubicFoot, Either),
    ("lbs. per cubic foot", Unit::PoundPerCubicFoot, Either),
    ("pounds per cubic foot", Unit::PoundPerCubicFoot, Either),
    ("pound-per-cubic-foot", Unit::PoundPerCubicFoot, Either),
    ("pounds-per-cubic-foot", Unit::PoundPerCubicFoot, Either),
    ("pounds to the cubic foot", Unit::PoundPerCubicFoot, Either),
    ("pounds a cubic foot", Unit::PoundPerCubicFoot, Either),
    ("kg/m3", Unit::KilogramPerCubicMetre, Either),
    ("kg/m³", Unit::KilogramPerCubicMetre, Either),
    ("kg per m3", Unit::KilogramPerCubicMetre, Either),
    ("kg per cubic metre", Unit::KilogramPerCubicMetre, Either),
    ("°C", Unit::Celsius, Either),
    ("° C", Unit::Celsius, Either),
    ("ºC", Unit::Celsius, Either),
    ("deg C", Unit::Celsius, Either),
    ("deg. C", Unit::Celsius, Either),
    ("degrees C", Unit::Celsius, Either),
    ("degrees Celsius", Unit::Celsius, Either),
    ("C", Unit::Celsius, AsWritten),
    ("°F", Unit::Fahrenheit, Either),
    ("° F", Unit::Fahrenheit, Either),
    ("ºF", Unit::Fahrenheit, Either),
    ("deg F", Unit::Fahrenheit, Either),
    ("deg. F", Unit::Fahrenheit, Either),
    ("degrees F", Unit::Fahrenheit, Either),
    ("degrees Fahrenheit", Unit::Fahrenheit, Either),
    ("F", Unit::Fahrenheit, AsWritten),
    ("K", Unit::KelvinRise, AsWritten),
    ("°F rise", Unit::FahrenheitRise, Either),
    ("deg F rise", Unit::FahrenheitRise, Either),
    ("s", Unit::Second, AsWritten),
    ("sec", Unit::Second, Either),
    ("seconds", Unit::Second, Either),
    ("min", Unit::Minute, Either),
    ("mins", Unit::Minute, Either),
    ("minute", Unit::Minute, Either),
    ("minutes", Unit::Minute, Either),
    ("h", Unit::Hour, Either),
    ("hr", Unit::Hour, Either),
    ("hrs", Unit::Hour, Either),
    ("hour", Unit::Hour, Either),
    ("hours", Unit::Hour, Either),
    ("d", Unit::Day, AsWritten),
    ("day", Unit::Day, Either),
    ("days", Unit::Day, Either),
    ("week", Unit::Week, Either),
    ("weeks", Unit::Week, Either),
    ("month", Unit::Month, Either),
    ("months", Unit::Month, Either),
    ("mo", Unit::Month, Either),
    ("mos", Unit::Month, Either),
    ("year", Unit::Year, Either),
    ("years", Unit::Year, Either),
    ("%", Unit::Percent, Either),
    ("percent", Unit::Percent, Either),
    ("per cent", Unit::Percent, Either),
    ("pct", Unit::Percent, Either),
    ("deg", Unit::Degree, Either),
    ("degree", Unit::Degree, Either),
    ("degrees", Unit::Degree, Either),
    ("°", Unit::Degree, Either),
    ("Pa", Unit::Pascal, Either),
    ("kPa", Unit::Kilopascal, Either),
    ("MPa", Unit::Megapascal, AsWritten),
    ("in. water", Unit::InchOfWater, Either),
    ("in. of water", Unit::InchOfWater, Either),
    ("in. w.g.", Unit::InchOfWater, Either),
    ("inch of water", Unit::InchOfWater, Either),
    ("inches of water", Unit::InchOfWater, Either),
    ("in. H2O", Unit::InchOfWater, Either),
    ("psi", Unit::PoundPerSquareInch, Either),
    ("ksi", Unit::Ksi, Either),
    ("MPa", Unit::Megapascal, Either),
    ("N/mm2", Unit::Megapascal, Either),
    ("N/mm²", Unit::Megapascal, Either),
    ("lbf/ft", Unit::PoundForcePerFoot, Either),
    ("N/m", Unit::NewtonPerMetre, AsWritten),
    ("cfm/ft", Unit::CfmPerFoot, Either),
    ("cfm/lf", Unit::CfmPerFoot, Either),
    ("cfm per lf", Unit::CfmPerFoot, Either),
    ("cfm/lin ft", Unit::CfmPerFoot, Either),
    ("cfm/lin. ft.", Unit::CfmPerFoot, Either),
    ("cfm/ lin ft", Unit::CfmPerFoot, Either),
    ("cfm/lineal ft", Unit::CfmPerFoot, Either),
    ("cfm/linear ft", Unit::CfmPerFoot, Either),
    ("cfm/linear foot", Unit::CfmPerFoot, Either),
    ("cfm/lineal foot", Unit::CfmPerFoot, Either),
    ("cfm per ft", Unit::CfmPerFoot, Either),
    ("cfm per foot", Unit::CfmPerFoot, Either),
    ("cfm per lin ft", Unit::CfmPerFoot, Either),
    ("cfm per lineal foot", Unit::CfmPerFoot, Either),
    ("cfm per linear foot", Unit::CfmPerFoot, Either),
    ("cfm per linear ft", Unit::CfmPerFoot, Either),
    ("cu ft/min/ft", Unit::CfmPerFoot, Either),
    ("L/s.m", Unit::LitrePerSecondMetre, Either),
    ("L/(s.m)", Unit::LitrePerSecondMetre, Either),
    ("L/s/m", Unit::LitrePerSecondMetre, Either),
    ("L/s·m", Unit::LitrePerSecondMetre, Either),
    ("L/(s·m)", Unit::LitrePerSecondMetre, Either),
    ("L/s per m", Unit::LitrePerSecondMetre, Either),
    ("L/s per lin m", Unit::LitrePerSecondMetre, Either),
    ("L/s/lin m", Unit::LitrePerSecondMetre, Either),
    ("L/s per linear metre", Unit::LitrePerSecondMetre, Either),
    ("L/s per metre", Unit::LitrePerSecondMetre, Either),
    ("m3/h/m", Unit::CubicMetrePerHourMetre, Either),
    ("m³/h/m", Unit::CubicMetrePerHourMetre, Either),
    ("m3/(h·m)", Unit::CubicMetrePerHourMetre, Either),
    ("m³/(h·m)", Unit::CubicMetrePerHourMetre, Either),
    ("cfm/ft2", Unit::CfmPerSquareFoot, Either),
    ("cfm/ft²", Unit::CfmPerSquareFoot, Either),
    ("cfm/sq ft", Unit::CfmPerSquareFoot, Either),
    ("cfm per sq ft", Unit::CfmPerSquareFoot, Either),
    ("cfm per square foot", Unit::CfmPerSquareFoot, Either),
    ("L/s/m2", Unit::LitrePerSecondSquareMetre, Either),
    ("L/s/m²", Unit::LitrePerSecondSquareMetre, Either),
    ("L/s per m²", Unit::LitrePerSecondSquareMetre, Either),
    ("MSG", Unit::Gauge, Either),
    ("GSG", Unit::Gauge, Either),
    ("ga", Unit::Gauge, Either),
    ("ga.", Unit::Gauge, Either),
    ("gauge", Unit::Gauge, Either),
    ("gage", Unit::Gauge, Either),
    ("MSG gauge", Unit::Gauge, Either),
    ("SWG", Unit::Swg, Either),
    ("AWG", Unit::Awg, Either),
];

/// Words that make a bare `in` the preposition, not the inch.
const AFTER_PREPOSITION: &[&str] = &[
    "a",
    "accordance",
    "addition",
    "all",
    "an",
    "any",
    "both",
    "each",
    "either",
    "every",
    "its",
    "item",
    "items",
    "lieu",
    "line",
    "number",
    "order",
    "place",
    "section",
    "series",
    "that",
    "the",
    "their",
    "these",
    "this",
    "those",
    "total",
    "turn",
    "which",
];

struct Spelling {
    /// The parts between the spaces.
    parts: Vec<&'static str>,
    unit: Unit,
    letters: Letters,
}

/// Spellings by the first letter, longest first.
static BY_FIRST: LazyLock<Vec<(char, Vec<Spelling>)>> = LazyLock::new(|| {
    let mut spellings: Vec<_> = SPELLINGS.iter().collect();
    spellings.sort_by_key(|(text, ..)| core::cmp::Reverse(text.len()));
    let mut by_first: Vec<(char, Vec<Spelling>)> = Vec::new();
    for &&(text, unit, letters) in &spellings {
        let parts = text.split(' ').collect();
        let first = first_letter(text);
        let spelling = Spelling {
            parts,
            unit,
            letters,
        };
        match by_first.iter_mut().find(|(letter, _)| *letter == first) {
            Some((_, group)) => group.push(spelling),
            None => by_first.push((first, vec![spelling])),
        }
    }
    by_first
});

fn first_letter(text: &str) -> char {
    text.chars().next().unwrap_or(' ').to_ascii_lowercase()
}

/// Reads the unit that stands at a byte offset, after any white space or one hyphen; gives it with the
/// offset of its end. The longest spelling wins.
///
/// ```
/// use measure::{Unit, notation::unit_at};
/// assert_eq!(unit_at("5 in. deep", 1), Some((Unit::Inch, 5)));
/// assert_eq!(unit_at("25 inside", 2), None);
/// ```
pub fn unit_at(text: &str, at: usize) -> Option<(Unit, usize)> {
    let mut start = skip_space(text, at);
    if start == at && rest(text, at).starts_with(['-', '\u{2010}', '\u{2011}']) {
        start += first_len(text, at);
    }
    let first = first_letter(rest(text, start));
    let (_, group) = BY_FIRST.iter().find(|(letter, _)| *letter == first)?;
    group.iter().find_map(|spelling| {
        let end = spelling_end(text, start, spelling)?;
        (!is_preposition(text, end, spelling)).then_some((spelling.unit, end))
    })
}

fn first_len(text: &str, at: usize) -> usize {
    rest(text, at).chars().next().map_or(0, char::len_utf8)
}

/// The end of a spelling that stands here as a whole word.
fn spelling_end(text: &str, start: usize, spelling: &Spelling) -> Option<usize> {
    let mut at = start;
    for (index, part) in spelling.parts.iter().enumerate() {
        if index > 0 {
            at = skip_space(text, at);
        }
        let here = text.get(at..at + part.len())?;
        let same = match spelling.letters {
            Either => here.eq_ignore_ascii_case(part),
            AsWritten => here == *part,
        };
        if !same {
            return None;
        }
        at += part.len();
    }
    let last = spelling.parts.last()?;
    let next = rest(text, at).chars().next();
    // Of `4 in.²` the stop shortens the unit; of `4 mm.²` it ends a sentence.
    let powered = rest(text, at);
    let powered = if last.eq_ignore_ascii_case("in") || last.eq_ignore_ascii_case("ft") {
        powered.trim_start_matches('.')
    } else {
        powered
    };
    let is_powered = powered.starts_with(['²', '³']) && is_length(last);
    let is_word = last.ends_with(char::is_alphanumeric);
    let runs_on = next.is_some_and(|c| c.is_alphanumeric() && !is_note_mark(c))
        || is_word && is_per(rest(text, at));
    (!(is_powered || is_word && runs_on)).then_some(at)
}

/// Whether a stroke and another unit follow: of `1.5 L/m` no litre is meant.
fn is_per(text: &str) -> bool {
    const PER: &[&str] = &[
        "m", "m2", "m²", "m3", "m³", "cm", "l", "min", "s", "h", "hr", "ft", "ft2", "ft²", "sf",
        "lf", "kg",
    ];
    let Some(behind) = text.strip_prefix('/') else {
        return false;
    };
    let ends = |c: char| !c.is_alphanumeric();
    let unit = behind.split(ends).next().unwrap_or_default().to_lowercase();
    PER.contains(&unit.as_str())
}

/// Whether a spelling ends in a length, so that `²` behind it makes an area, and is no mark of a note.
fn is_length(spelling: &str) -> bool {
    const LENGTHS: &[&str] = &[
        "in",
        "inch",
        "inches",
        "ft",
        "foot",
        "feet",
        "lf",
        "m",
        "mm",
        "cm",
        "um",
        "µm",
        "μm",
        "metre",
        "metres",
        "meter",
        "meters",
        "millimetre",
        "millimetres",
        "millimeter",
        "millimeters",
    ];
    let end = spelling.trim_end_matches(['.', ')']);
    let tail = end.rsplit(['/', '.', '·', '(']).next().unwrap_or(end);
    LENGTHS
        .iter()
        .any(|length| length.eq_ignore_ascii_case(tail))
}

/// Whether a bare `in` here is followed by a word that makes it the preposition.
fn is_preposition(text: &str, end: usize, spelling: &Spelling) -> bool {
    if spelling.parts != ["in"] {
        return false;
    }
    let after = rest(text, skip_space(text, end));
    let word: String = after.chars().take_while(|c| c.is_alphabetic()).collect();
    AFTER_PREPOSITION.contains(&word.to_lowercase().as_str())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_longest_spelling_wins() {
        for (text, unit, end) in [
            ("1 cfm/lin ft", Unit::CfmPerFoot, 12),
            ("1 CFM/sq ft", Unit::CfmPerSquareFoot, 11),
            ("2 L/s per lin m", Unit::LitrePerSecondMetre, 15),
            ("64 kg/m³ (", Unit::KilogramPerCubicMetre, 9),
            ("3-in. (", Unit::Inch, 5),
            ("5/8-inch thick", Unit::Inch, 8),
            ("6 in2", Unit::SquareInch, 5),
            ("40 F (4 C)", Unit::Fahrenheit, 4),
            ("4 pcf² min", Unit::PoundPerCubicFoot, 5),
            ("6 mm⁽¹⁾ thick", Unit::Millimetre, 4),
            ("4 in.¹ deep", Unit::Inch, 5),
            ("6 in² wide", Unit::SquareInch, 6),
            ("6 mm.² The", Unit::Millimetre, 4),
            ("110 pounds per cubic foot", Unit::PoundPerCubicFoot, 25),
            ("110 lb. per cu. ft. dry", Unit::PoundPerCubicFoot, 19),
            ("110 lbs per cubic foot", Unit::PoundPerCubicFoot, 22),
        ] {
            let number_end = text.find([' ', '-']).unwrap();
            assert_eq!(unit_at(text, number_end), Some((unit, end)), "{text}");
        }
    }

    #[test]
    fn words_that_only_begin_like_units_are_not_units() {
        for text in [
            "25 inside",
            "2 in the wall",
            "2 in each bay",
            "4 minor",
            "3 Configuration",
            "2 fasteners",
            "3 ft³",
            "4 in.²",
            "4 inches²",
            "5 N/m²",
        ] {
            let number_end = text.find(' ').unwrap();
            assert_eq!(unit_at(text, number_end), None, "{text}");
        }
    }
}
