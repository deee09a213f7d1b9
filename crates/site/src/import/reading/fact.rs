//! A cell as a fact: its value, and where the value comes from.

use core::cmp::Ordering;

use measure::{Dimension, Quantity};

use super::dimension::in_words;
use super::quantity::quantity;
use super::value::{local, value};
use super::{Source, is_spreadsheet_error, says_not_known, source};
use crate::import::column::About;
use crate::import::problem::{Wrong, quoted};
use crate::model::{Cell, Fact, Provenance, ProvenanceKind, Value};

/// Reads a cell of a property's or option's column: a value, and in square brackets after it where it comes from if that isn't
/// what the column's source says. None when the cell says that nothing is known.
pub(crate) fn fact(
    about: &About,
    text: &str,
    column: &Source,
    cell: Cell,
) -> Result<Option<Fact>, Wrong> {
    let (text, bracket) = split(text)?;
    if says_not_known(text) {
        return Ok(None);
    }
    if text.is_empty() {
        let message = "there is a source, but no value before it";
        return Err(Wrong::new(
            message,
            "write the value first: `4 pcf [submittal 07 84 43-05]`",
        ));
    }
    if is_spreadsheet_error(text) {
        return Err(Wrong::new(
            format!("{} is a formula's error", quoted(text)),
            "mend the formula or write the value",
        ));
    }
    let value = match about {
        About::Property(property) | About::OfItem { property, .. } => value(property, text)?,
        About::Local { name, kind } => local(name, kind, text)?,
        About::Option(_) => Value::Text(text.to_owned()),
    };
    let source = match bracket {
        Some(bracket) => source(bracket)?.or(column),
        None => column.clone(),
    };
    let provenance = provenance(about, source)?;
    if let Value::Quantity(quantity) = value {
        lies_within_readings(quantity, &provenance)?;
    }
    Ok(Some(Fact {
        property: about.name().to_owned(),
        value,
        provenance,
        cell: Some(cell),
    }))
}

/// The text before a bracket at a cell's end, and the text in the bracket.
fn split(text: &str) -> Result<(&str, Option<&str>), Wrong> {
    let (value, bracket) = match text.split_once('[') {
        Some((value, rest)) => (value, Some(rest)),
        None => (text, None),
    };
    let inside = bracket.map(|rest| {
        rest.strip_suffix(']')
            .filter(|inside| !inside.contains(['[', ']']))
    });
    match inside {
        None if !value.contains(']') => Ok((value, None)),
        Some(Some(inside)) if !value.contains(']') => Ok((value.trim(), Some(inside))),
        _ => {
            let message = format!("the square brackets of {} don't match", quoted(text));
            Err(Wrong::new(
                message,
                "write one pair, at the end: `4 pcf [submittal 07 84 43-05]`",
            ))
        }
    }
}

/// The source as a provenance of this property: what an instrument shows must be of the property's own kind.
fn provenance(about: &About, source: Source) -> Result<Provenance, Wrong> {
    let provenance = source.provenance(|reading| match about.dimension() {
        Some(dimension) => quantity(dimension, about.name(), reading),
        None => Err(Wrong::new(
            format!("{} isn't measured in readings", about.name()),
            "leave the readings out",
        )),
    })?;
    if let ProvenanceKind::Measured {
        resolution: Some(resolution),
        ..
    } = &provenance.kind
    {
        suits(about, *resolution)?;
    }
    Ok(provenance)
}

fn suits(about: &About, resolution: Quantity) -> Result<(), Wrong> {
    let (of, is) = (about.dimension(), resolution.dimension());
    let rise = of == Some(Dimension::Temperature) && is == Dimension::TemperatureDifference;
    if of == Some(is) || rise {
        return Ok(());
    }
    let what = of.map_or("not a quantity", in_words);
    Err(Wrong::new(
        format!(
            "the instrument shows {resolution}, {}; {} is {what}",
            in_words(is),
            about.name()
        ),
        "write the smallest difference that it shows of this property, or leave it out",
    ))
}

/// A measured value is one of its readings or between them.
fn lies_within_readings(value: Quantity, provenance: &Provenance) -> Result<(), Wrong> {
    let ProvenanceKind::Measured { readings, .. } = &provenance.kind else {
        return Ok(());
    };
    let on_side = |side: Ordering| {
        readings.iter().any(|reading| {
            reading
                .compare(value)
                .is_some_and(|order| order == side || order == Ordering::Equal)
        })
    };
    if readings.is_empty() || (on_side(Ordering::Less) && on_side(Ordering::Greater)) {
        return Ok(());
    }
    let readings: Vec<_> = readings.iter().map(ToString::to_string).collect();
    Err(Wrong::new(
        format!("{value} isn't within its readings, {}", readings.join(", ")),
        "correct the value or the readings",
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(property: &str, text: &str, column: &str) -> Result<Option<Fact>, Wrong> {
        let about = About::Property(vocabulary::vocabulary().property(property).unwrap());
        let cell = Cell {
            file: String::new(),
            sheet: None,
            row: 1,
            column: "A".to_owned(),
        };
        fact(&about, text, &source(column).unwrap(), cell)
    }

    #[track_caller]
    fn check(property: &str, text: &str, column: &str, value: &str, provenance: &str) {
        let fact = read(property, text, column).unwrap().unwrap();
        let found = (fact.value.to_string(), fact.provenance.to_string());
        assert_eq!(found, (value.to_owned(), provenance.to_owned()), "{text}");
    }

    #[test]
    fn values_with_their_sources() {
        check(
            "packing.density",
            "4 pcf",
            "drawing A-801",
            "4 pcf",
            "drawing A-801",
        );
        check("packing.density", "4 pcf", "", "4 pcf", "no source stated");
        check(
            "packing.density",
            "4 pcf [submittal 07 84 43-05]",
            "drawing A-801",
            "4 pcf",
            "submittal 07 84 43-05",
        );
        check("packing.flush", "yes [witnessed]", "", "yes", "witnessed");
        check(
            "joint.width",
            "1-3/8 in. [measured: tape, 1/16 in.; readings 1-1/4 in., 1-3/8 in., 1-3/8 in.; 2026-03-14]",
            "drawing A-801",
            "1-3/8 in.",
            "measured: tape, 1/16 in.; readings 1-1/4 in., 1-3/8 in., 1-3/8 in.; 2026-03-14",
        );
        check(
            "joint.width",
            "34 mm [readings 33 mm, 1-3/8 in.]",
            "measured: tape",
            "34 mm",
            "measured: tape; readings 33 mm, 1-3/8 in.",
        );
        check(
            "board.layers",
            "2 [measured: count; readings 2, 2]",
            "",
            "2",
            "measured: count; readings 2, 2",
        );
        check(
            "coating.application_temperature",
            "58 °F [measured: probe, 1 K]",
            "",
            "58 °F",
            "measured: probe, 1 K rise",
        );
    }

    #[test]
    fn nothing_known_is_no_fact() {
        for text in [
            "-",
            "–",
            "n/a",
            "N/A",
            "?",
            "tbd",
            "TBD",
            "unknown",
            "? [witnessed]",
        ] {
            assert_eq!(read("packing.density", text, ""), Ok(None), "{text}");
        }
    }

    #[track_caller]
    fn check_wrong(property: &str, text: &str, column: &str, part: &str) {
        let wrong = read(property, text, column).unwrap_err();
        assert!(wrong.message.contains(part), "{text}: {wrong:?}");
    }

    #[test]
    fn facts_that_cannot_be() {
        check_wrong("packing.density", "[witnessed]", "", "no value before it");
        check_wrong("packing.density", "4 pcf [witnessed", "", "don't match");
        check_wrong("packing.density", "4 pcf witnessed]", "", "don't match");
        check_wrong(
            "packing.density",
            "4 pcf [witnessed] [drawing A-1]",
            "",
            "don't match",
        );
        check_wrong(
            "packing.density",
            "4 pcf [witnessed] nominal",
            "",
            "don't match",
        );
        check_wrong("packing.density", "4 pcf [seen]", "", "isn't a source");
        check_wrong("packing.density", "#REF!", "", "formula's error");
        check_wrong(
            "joint.width",
            "1 in. [measured: tape; readings 7/8 in., 15/16 in.]",
            "",
            "isn't within its readings",
        );
        check_wrong(
            "joint.width",
            "1 in. [measured: tape; readings 26 mm, 27 mm]",
            "",
            "isn't within its readings",
        );
        check_wrong(
            "joint.width",
            "1 in. [measured: tape; readings 7/8, 1 in.]",
            "",
            "has no unit",
        );
        check_wrong(
            "joint.width",
            "1 in. [measured: tape; readings 4 pcf]",
            "",
            "is a density",
        );
        check_wrong(
            "joint.width",
            "1 in. [measured: tape, 3 %]",
            "",
            "3 %, a percentage; joint.width is a length",
        );
        check_wrong(
            "packing.flush",
            "yes [measured: eye; readings 1 in.]",
            "",
            "isn't measured in readings",
        );
        check_wrong(
            "joint.width",
            "1 in. [drawing A-801; readings 1 in.]",
            "",
            "measured with",
        );
    }
}
