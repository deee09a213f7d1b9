//! How many fasteners, clips or staples a run takes at their spacing.

use measure::{Number, Quantity, Unit};

use crate::error::{Error, plain};
use crate::exact::{ceiling, count, counted, exact};
use crate::known::{Known, length_unit};
use crate::worked::{Computed, Worked, both};

/// What is asked of a row of fasteners.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SpacingAsked {
    /// The length of the run.
    pub run: Known,
    /// The greatest spacing.
    pub spacing: Known,
    /// How far the first and the last may be from the ends; at the ends where nothing is said.
    pub end: Option<Known>,
    /// How many stand at each place.
    pub at_each: u64,
}

/// Fasteners of a run: `n = (L - 2e) / s`, rounded up, and one more.
///
/// # Errors
/// A length that isn't above zero, none at each place.
pub fn fasteners(asked: &SpacingAsked) -> Result<Computed<u64>, Error> {
    let unit = length_unit(asked.run.quantity.unit);
    let run = asked.run.above_zero("the length of the run", unit)?;
    let spacing = asked.spacing.above_zero("the spacing", unit)?;
    let end = asked.end.as_ref().map_or(Ok(Number::ZERO), |end| {
        end.not_negative("the distance from the ends", unit)
    })?;
    if asked.at_each == 0 {
        return Err(Error::range("the number at each place", 0, "1 or more"));
    }
    let places = places(run, spacing, end)?;
    let number = places.saturating_mul(asked.at_each);
    let mut worked = Worked::of("Fasteners of a run");
    worked.given("length of the run, L", &asked.run);
    worked.given("spacing, s, at most", &asked.spacing);
    worked.given_if("from the ends, e, at most", asked.end.as_ref());
    worked.chosen("at each place", &asked.at_each.to_string(), "as given");
    worked.formula(
        "places = (L - 2 e) / s, rounded up, + 1; fasteners = places × those at each",
        "geometry",
    );
    let spaces = ((exact(run) - (exact(end) * 2).get("the spacing")?) / spacing)
        .get("the spacing")?
        .max(Number::ZERO);
    worked.step(format!(
        "({} - 2 × {}) / {}: {} spaces, so {places} places",
        both(run, unit),
        both(end, unit),
        both(spacing, unit),
        plain(spaces)
    ));
    worked.result("fasteners", count(number)?, Unit::Count);
    if places > 1 {
        let between = (exact(run) - (exact(end) * 2).get("the spacing")?) / count(places - 1)?;
        let evenly = between.get("the spacing")?;
        if evenly > Number::ZERO {
            worked.result("set evenly, apart by", evenly, unit);
        }
    }
    Ok(worked.with(number))
}

/// How many places a row has.
pub(super) fn places(run: Number, spacing: Number, end: Number) -> Result<u64, Error> {
    let what = "the fasteners";
    let between = (exact(run) - (exact(end) * 2).get(what)?).get(what)?;
    if between <= Number::ZERO {
        return Ok(1);
    }
    Ok(counted(ceiling((exact(between) / spacing).get(what)?), what)? + 1)
}

/// A quantity of things.
pub(crate) fn things(number: u64) -> Result<Quantity, Error> {
    Ok(Quantity::new(count(number)?, Unit::Count))
}
