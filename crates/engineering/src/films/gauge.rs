//! Film readings against a least thickness.
//!
//! A notch gauge (ASTM D4414) says only that the film lies between its longest wetted tab and the next: a reading is
//! two figures. Where those lie on either side of the limit, the reading can't tell.

use measure::{Number, Quantity, Unit};

use crate::between::Between;
use crate::error::Error;
use crate::exact::{count, exact};
use crate::known::{Known, length_unit};
use crate::worked::{Computed, Standing, Worked, both, trade};

/// One reading of a film.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NotchReading {
    /// A notch gauge: the longest tab that was wetted, and the next that wasn't.
    Notch {
        /// The longest wetted tab.
        wetted: Quantity,
        /// The next tab, not wetted.
        next: Quantity,
    },
    /// A gauge with a scale, and its resolution.
    Scale {
        /// The reading.
        reading: Quantity,
        /// The smallest division.
        resolution: Quantity,
    },
}

/// What is asked of a set of readings.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FilmAsked {
    /// The readings.
    pub readings: Vec<NotchReading>,
    /// Where they come from.
    pub provenance: String,
    /// The least thickness that the listing asks for, at every place.
    pub least: Known,
    /// How many readings the listing or the plan asks for.
    pub count: Option<u64>,
}

/// What a set of readings says.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FilmRead {
    /// The least reading, within what its gauge can tell.
    pub least: Between,
    /// The mean, likewise.
    pub mean: Between,
    /// Readings that are surely below.
    pub below: usize,
    /// Readings that can't tell.
    pub unclear: usize,
    /// What is found.
    pub standing: Standing,
}

/// Least, mean and count of film readings, against the least thickness asked for.
///
/// # Errors
/// No reading, a tab not shorter than the next, a resolution that isn't above zero.
pub fn film_readings(asked: &FilmAsked) -> Result<Computed<FilmRead>, Error> {
    let unit = match asked.least.quantity.unit {
        kept @ (Unit::Mil | Unit::Micrometre) => kept,
        other => length_unit(other),
    };
    let least = asked.least.above_zero("the least thickness", unit)?;
    let mut all = Vec::new();
    for reading in &asked.readings {
        all.push(reading.between(unit)?);
    }
    let help = "give at least one reading";
    let missing = || Error::missing("the film", help);
    let lowest = all.iter().map(|one| one.low).min().ok_or_else(missing)?;
    let lowest_high = all.iter().map(|one| one.high).min().ok_or_else(missing)?;
    let how_many = count(all.len() as u64)?;
    let mean = |end: fn(&Between) -> Number| {
        let sum = all.iter().fold(exact(0), |sum, one| sum + end(one));
        (sum / how_many).get("the mean")
    };
    let mean = Between {
        low: mean(|one| one.low)?,
        high: mean(|one| one.high)?,
    };
    let standings: Vec<Standing> = all.iter().map(|one| one.at_least(least)).collect();
    let of = |standing| standings.iter().filter(|one| **one == standing).count();
    let (below, unclear) = (of(Standing::NotMet), of(Standing::Open));
    let mut standing = standings.iter().copied().fold(Standing::Met, Standing::and);
    let mut worked = Worked::of("Film readings");
    let words: Vec<String> = all.iter().map(|one| in_words(*one, unit)).collect();
    worked.chosen("readings", &words.join("; "), &asked.provenance);
    worked.given("least thickness", &asked.least);
    if let Some(wanted) = asked.count {
        worked.chosen("readings asked for", &wanted.to_string(), "as given");
    }
    let is_notch = |one: &NotchReading| matches!(one, NotchReading::Notch { .. });
    if asked.readings.iter().any(is_notch) {
        worked.formula(
            "the film lies between the longest wetted tab and the next",
            "ASTM D4414, notch gauge",
        );
    }
    if !asked.readings.iter().all(is_notch) {
        worked.formula(
            "the film lies within half the resolution of the reading",
            "JCGM 100:2008, F.2.2.1",
        );
    }
    let least_read = Between {
        low: lowest,
        high: lowest_high,
    };
    for (name, of) in [("least reading", least_read), ("mean", mean)] {
        let middle = ((exact(of.low) + of.high) / 2).get("the mean")?;
        worked.ranged(name, middle, of, unit);
    }
    worked.result("readings", how_many, Unit::Count);
    worked.find(
        standing,
        match standing {
            Standing::Met => format!("every reading shows at least {}", both(least, unit)),
            Standing::NotMet => format!("{below} of {} readings are below {}", all.len(), both(least, unit)),
            _ => format!("{unclear} of {} readings can't tell whether {} is reached: read there again with a finer gauge", all.len(), both(least, unit)),
        },
    );
    if let Some(wanted) = asked.count {
        let enough = u64::try_from(all.len()).is_ok_and(|n| n >= wanted);
        let found = if enough {
            Standing::Met
        } else {
            Standing::Open
        };
        worked.find(
            found,
            format!("{} readings of {wanted} asked for", all.len()),
        );
        standing = standing.and(found);
    }
    if asked.readings.iter().any(is_notch) {
        worked
            .note("a notch gauge doesn't prove volume solids; the dry film is measured after cure");
    }
    Ok(worked.with(FilmRead {
        least: least_read,
        mean,
        below,
        unclear,
        standing,
    }))
}

impl NotchReading {
    fn between(self, unit: Unit) -> Result<Between, Error> {
        match self {
            Self::Notch { wetted, next } => {
                let low = Known::new(wetted, "").not_negative("the wetted tab", unit)?;
                let high = Known::new(next, "").above_zero("the next tab", unit)?;
                if low >= high {
                    return Err(Error::range(
                        "the wetted tab",
                        wetted,
                        format!("less than the next tab, {next}"),
                    ));
                }
                Ok(Between { low, high })
            }
            Self::Scale {
                reading,
                resolution,
            } => {
                let value = Known::new(reading, "").not_negative("a reading", unit)?;
                let step = Known::new(resolution, "").above_zero("the resolution", unit)?;
                Between::around(value, (exact(step) / 2).get("the resolution")?, "a reading")
            }
        }
    }
}

fn in_words(one: Between, unit: Unit) -> String {
    format!("{} to {}", trade(one.low, unit), trade(one.high, unit))
}
