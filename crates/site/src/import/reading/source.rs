//! Where a value comes from, as a `#source` row or a cell's square brackets say it.
//!
//! | written | read as |
//! |---|---|
//! | `drawing A-801` | the sheet of a drawing |
//! | `submittal 07 84 43-03` | a submittal |
//! | `witnessed`, `witnessed by special inspector` | seen in place |
//! | `measured: tape, 1/16 in.` | an instrument and the smallest difference it shows |
//! | `stated: framing foreman's log` | somebody's word |
//! | `...; readings 1 in., 1-1/16 in.; 2026-03-14` | each reading, and the day |
//!
//! A cell that gives only readings or a day adds them to what the column's `#source` says.

use jiff::civil::Date;
use measure::Quantity;

use super::quantity::any_quantity;
use crate::import::problem::{Wrong, quoted};
use crate::model::{Provenance, ProvenanceKind};

/// A source as written: any of its three parts may be missing.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(crate) struct Source {
    kind: Option<ProvenanceKind>,
    /// The readings, not yet read: what they are readings of decides how.
    readings: Vec<String>,
    date: Option<Date>,
}

/// Reads a source.
pub(crate) fn source(text: &str) -> Result<Source, Wrong> {
    let mut source = Source::default();
    for (index, part) in text.split(';').map(str::trim).enumerate() {
        if part.is_empty() {
            continue;
        }
        let twice = || Wrong::new(format!("{} says this twice", quoted(text)), "say it once");
        if let Some(readings) = after_word(part, &["readings", "reading"]) {
            if !source.readings.is_empty() {
                return Err(twice());
            }
            source.readings = split_readings(readings);
            if source.readings.is_empty() {
                return Err(Wrong::new(
                    format!("{} gives no reading", quoted(part)),
                    READINGS,
                ));
            }
        } else if is_datelike(part) {
            if source.date.is_some() {
                return Err(twice());
            }
            source.date = Some(date(part)?);
        } else if index == 0 {
            source.kind = Some(kind(part)?);
        } else {
            let message = format!("{} is neither readings nor a day", quoted(part));
            return Err(Wrong::new(message, format!("{READINGS}; {DAY}")));
        }
    }
    Ok(source)
}

/// Reads a day written as in ISO 8601.
pub(crate) fn date(text: &str) -> Result<Date, Wrong> {
    let iso = text.len() == 10 && is_datelike(text);
    let date = iso.then(|| text.parse().ok()).flatten();
    date.ok_or_else(|| Wrong::new(format!("{} isn't a day of the calendar", quoted(text)), DAY))
}

const READINGS: &str = "write readings as `readings 1 in., 1-1/16 in.`";
const DAY: &str = "write a day as `2026-03-14`";
const KINDS: &str = "write `drawing A-801`, `submittal 07 84 43-03`, `witnessed`, `witnessed by ...`, \
                     `measured: tape, 1/16 in.` or `stated: ...`";

impl Source {
    /// This source with what it leaves out taken from another, the column's.
    pub(crate) fn or(self, column: &Self) -> Self {
        if self.kind.is_some() {
            return self;
        }
        Self {
            kind: column.kind.clone(),
            date: self.date.or(column.date),
            ..self
        }
    }

    /// This source as a whole column's, which has no readings of its own.
    pub(crate) fn of_column(self) -> Result<Self, Wrong> {
        if self.readings.is_empty() {
            return Ok(self);
        }
        let message = "readings are of one value, not of a column";
        Err(Wrong::new(
            message,
            "write them in the cell: `1 in. [readings 1 in., 1-1/16 in.]`",
        ))
    }

    /// The provenance, with its readings read by `read`.
    pub(super) fn provenance(
        self,
        read: impl Fn(&str) -> Result<Quantity, Wrong>,
    ) -> Result<Provenance, Wrong> {
        let mut kind = self.kind.unwrap_or_default();
        match &mut kind {
            ProvenanceKind::Measured { readings, .. } => {
                *readings = self
                    .readings
                    .iter()
                    .map(|text| read(text))
                    .collect::<Result<_, _>>()?;
            }
            _ if !self.readings.is_empty() => {
                let message = "there are readings, but not what they were measured with";
                return Err(Wrong::new(
                    message,
                    "write for example `measured: tape, 1/16 in.; readings ...`",
                ));
            }
            _ => {}
        }
        Ok(Provenance {
            kind,
            date: self.date,
        })
    }
}

fn kind(text: &str) -> Result<ProvenanceKind, Wrong> {
    let said = |name: &[&str]| after_word(text, name);
    let needs = |what: &str| Wrong::new(format!("{} doesn't say {what}", quoted(text)), KINDS);
    let given = |rest: &str, what| match rest {
        "" => Err(needs(what)),
        rest => Ok(rest.to_owned()),
    };
    if let Some(rest) = said(&["drawing"]) {
        return Ok(ProvenanceKind::Drawing {
            sheet: given(rest, "which sheet")?,
        });
    }
    if let Some(rest) = said(&["submittal"]) {
        return Ok(ProvenanceKind::Submittal {
            reference: given(rest, "which submittal")?,
        });
    }
    if let Some(rest) = said(&["witnessed"]) {
        let by = after_word(rest, &["by"]).unwrap_or(rest);
        return Ok(ProvenanceKind::Witnessed {
            by: (!by.is_empty()).then(|| by.to_owned()),
        });
    }
    if let Some(rest) = said(&["measured"]) {
        return measured(&given(rest, "what it was measured with")?);
    }
    if let Some(rest) = said(&["stated"]) {
        let who = after_word(rest, &["by"]).unwrap_or(rest);
        return Ok(ProvenanceKind::StatedBy {
            who: given(who, "who stated it")?,
        });
    }
    Err(Wrong::new(
        format!("{} isn't a source that is known", quoted(text)),
        KINDS,
    ))
}

/// An instrument, and after the last comma the smallest difference it shows.
fn measured(text: &str) -> Result<ProvenanceKind, Wrong> {
    let of = |instrument: &str, resolution| ProvenanceKind::Measured {
        instrument: instrument.trim().to_owned(),
        resolution,
        readings: Vec::new(),
    };
    let Some((instrument, last)) = text.rsplit_once(", ") else {
        return Ok(of(text, None));
    };
    if !last.trim_start().starts_with(|c: char| c.is_numeric()) {
        return Ok(of(text, None));
    }
    let resolution =
        any_quantity(last).filter(|one| !one.number.is_zero() && !one.number.is_negative());
    let resolution = resolution.ok_or_else(|| {
        let message = format!(
            "{} isn't a difference that an instrument shows",
            quoted(last)
        );
        Wrong::new(
            message,
            "write for example `measured: tape, 1/16 in.` or `measured: gauge, 0.5 mm`",
        )
    })?;
    Ok(of(instrument, Some(resolution)))
}

/// What follows one of these words at the start of a text, past a colon and spaces; none when it doesn't begin so.
fn after_word<'t>(text: &'t str, words: &[&str]) -> Option<&'t str> {
    words.iter().find_map(|word| {
        let (start, rest) = text.split_at_checked(word.len())?;
        let whole = start.eq_ignore_ascii_case(word) && !rest.starts_with(char::is_alphanumeric);
        whole.then(|| rest.trim_start_matches([':', ' ']))
    })
}

/// The readings of a list, split at its commas. A comma between two digits is one of the number's.
fn split_readings(list: &str) -> Vec<String> {
    let chars: Vec<char> = list.chars().collect();
    let mut readings = vec![String::new()];
    for (at, c) in chars.iter().enumerate() {
        let digit = |at: Option<usize>| {
            at.and_then(|at| chars.get(at))
                .is_some_and(char::is_ascii_digit)
        };
        let in_number = digit(at.checked_sub(1)) && digit(at.checked_add(1));
        match readings.last_mut() {
            Some(reading) if *c != ',' || in_number => reading.push(*c),
            _ => readings.push(String::new()),
        }
    }
    let readings = readings.iter().map(|reading| reading.trim().to_owned());
    readings.filter(|reading| !reading.is_empty()).collect()
}

/// Whether a text is all digits and the marks between the numbers of a date.
fn is_datelike(text: &str) -> bool {
    let marks = text
        .chars()
        .filter(|c| matches!(c, '-' | '/' | '.'))
        .count();
    let rest = text
        .chars()
        .all(|c| c.is_ascii_digit() || matches!(c, '-' | '/' | '.'));
    rest && marks == 2
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(text: &str, expected: &str) {
        let source = source(text).unwrap_or_else(|wrong| panic!("{wrong:?}"));
        let read = |text: &str| Ok(Quantity::parse(text).unwrap());
        assert_eq!(
            source.provenance(read).unwrap().to_string(),
            expected,
            "{text}"
        );
    }

    #[test]
    fn sources_as_schedules_write_them() {
        check("drawing A-801", "drawing A-801");
        check("Drawing: A-801, rev. 2", "drawing A-801, rev. 2");
        check("submittal 07 84 43-03", "submittal 07 84 43-03");
        check("witnessed", "witnessed");
        check(
            "witnessed by special inspector; 2026-03-14",
            "witnessed by special inspector; 2026-03-14",
        );
        check("measured: tape, 1/16 in.", "measured: tape, 1/16 in.");
        check("measured: tape, class 2", "measured: tape, class 2");
        check("measured: gauge, 0,5 mm", "measured: gauge, 0.5 mm");
        check(
            "stated: framing foreman's log",
            "stated: framing foreman's log",
        );
        check("stated by the foreman", "stated: the foreman");
        check(
            "measured: tape, 1/16 in.; readings 1-1/4 in., 1-3/8 in.; 2026-03-14",
            "measured: tape, 1/16 in.; readings 1-1/4 in., 1-3/8 in.; 2026-03-14",
        );
        check(
            "measured: rule; 2026-03-14; readings: 12,5 mm,13 mm",
            "measured: rule; readings 12.5 mm, 13 mm; 2026-03-14",
        );
        check("2026-03-14", "no source stated; 2026-03-14");
        check("", "no source stated");
    }

    #[track_caller]
    fn check_wrong(text: &str, part: &str) {
        let wrong = source(text).unwrap_err();
        assert!(wrong.message.contains(part), "{text}: {wrong:?}");
    }

    #[test]
    fn sources_that_cannot_be_read() {
        check_wrong("drawing", "which sheet");
        check_wrong("submittal:", "which submittal");
        check_wrong("measured", "measured with");
        check_wrong("stated by", "who stated it");
        check_wrong("guessed", "isn't a source");
        check_wrong("drawings A-801", "isn't a source");
        check_wrong("measured: tape, 1/16", "isn't a difference");
        check_wrong("measured: tape, 0 in.", "isn't a difference");
        check_wrong("witnessed; 3/14/2026", "isn't a day");
        check_wrong("witnessed; 2026-02-30", "isn't a day");
        check_wrong("witnessed; 2026-03-14; 2026-03-15", "twice");
        check_wrong("witnessed; by the inspector", "neither readings nor a day");
        check_wrong("measured: tape; readings", "gives no reading");
        check_wrong("measured: tape; readings 1 in.; readings 2 in.", "twice");
    }

    #[test]
    fn a_cell_adds_to_its_column() {
        let column = source("measured: tape, 1/16 in.; 2026-03-01").unwrap();
        let read = |text: &str| Ok(Quantity::parse(text).unwrap());
        let check = |cell: &str, expected: &str| {
            let provenance = source(cell).unwrap().or(&column).provenance(read).unwrap();
            assert_eq!(provenance.to_string(), expected);
        };
        check(
            "readings 1 in.",
            "measured: tape, 1/16 in.; readings 1 in.; 2026-03-01",
        );
        check("2026-03-14", "measured: tape, 1/16 in.; 2026-03-14");
        check("witnessed", "witnessed");
    }

    #[test]
    fn readings_need_an_instrument() {
        let wrong = source("witnessed; readings 1 in.")
            .unwrap()
            .provenance(|_| unreachable!());
        assert!(
            wrong
                .unwrap_err()
                .message
                .contains("what they were measured with")
        );
    }
}
