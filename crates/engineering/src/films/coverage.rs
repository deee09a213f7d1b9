//! What a volume covers, and the volume for a run of joint.

use measure::{Number, Quantity, Unit};

use super::COVERAGE_SOURCE;
use super::solids::solids;
use crate::error::{Error, plain};
use crate::exact::{count, exact};
use crate::known::{Known, length_unit};
use crate::worked::{Computed, Worked, both, trade};

/// What a volume covers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Coverage {
    /// Area for each volume: square feet a gallon, or square metres a litre.
    pub rate: Quantity,
}

/// Coverage of a wet film, or of a dry one by its volume solids.
///
/// One US gallon is 231 cubic inches, so it covers 231,000 square inches, 1604 1/6 sq ft, at one mil. One litre covers
/// a thousand square metres at one micrometre.
///
/// # Errors
/// A film that isn't above zero, solids outside 0 to 100 %, a loss outside 0 to below 100 %.
pub fn coverage(
    film: &Known,
    volume_solids: Option<&Known>,
    loss: Option<&Known>,
) -> Result<Computed<Coverage>, Error> {
    let is_metric = length_unit(film.quantity.unit) == Unit::Millimetre;
    let (unit, rate_unit) = if is_metric {
        (Unit::Micrometre, Unit::SquareMetrePerLitre)
    } else {
        (Unit::Mil, Unit::SquareFootPerGallon)
    };
    let thickness = film.above_zero("the film", unit)?;
    let vs = volume_solids.map_or(Ok(Number::ONE), solids)?;
    let share_lost = loss.map_or(Ok(Number::ZERO), |loss| loss.part("the loss"))?;
    let of_one = if is_metric {
        exact(1000)
    } else {
        exact(231_000) / 144
    };
    let reach = (of_one * vs * (exact(1) - share_lost) / thickness).get("the coverage")?;
    let mut worked = Worked::of("Coverage");
    let film_name = if volume_solids.is_some() {
        "dry film"
    } else {
        "wet film"
    };
    worked.given(film_name, film);
    worked.given_if("volume solids, VS", volume_solids);
    worked.given_if("loss, p", loss);
    let (of_one_words, notation, source) = if is_metric {
        (
            "1000 m²·µm/L",
            "area per volume = 1000 m²·µm/L × VS × (1 - p) / film (VS = 1 for a wet film)",
            "a litre is a million cubic millimetres (NIST SP 811, B.8)",
        )
    } else {
        (
            "1604 1/6 sq ft·mil/gal",
            "area per volume = 1604 1/6 sq ft·mil/gal × VS × (1 - p) / film (VS = 1 for a wet film)",
            COVERAGE_SOURCE,
        )
    };
    worked.formula(notation, source);
    worked.step(format!(
        "{of_one_words} × {} × {} / {} = {}",
        plain(vs),
        plain((exact(1) - share_lost).get("the loss")?),
        trade(thickness, unit),
        both(reach, rate_unit)
    ));
    worked.result("coverage", reach, rate_unit);
    Ok(worked.with(Coverage {
        rate: Quantity::new(reach, rate_unit),
    }))
}

/// What is asked of the coating on a run.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RunAsked {
    /// The length of the run.
    pub length: Known,
    /// The width of the joint, which the coating bridges.
    pub width: Known,
    /// The overlaps onto what lies on either side: one length each.
    pub overlaps: Vec<Known>,
    /// The wet film.
    pub wet: Known,
    /// How many faces are coated.
    pub faces: u64,
    /// What is lost by overspray and in the pot, as a percentage of what is used.
    pub loss: Option<Known>,
}

/// The coating on a run.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct RunCoating {
    /// The width of the band, joint and overlaps.
    pub band: Quantity,
    /// The area, all faces.
    pub area: Quantity,
    /// The volume to bring, loss included.
    pub volume: Quantity,
}

/// Band, area and volume of the coating on a run.
///
/// # Errors
/// A length that isn't above zero, a negative overlap, a loss outside 0 to below 100 %, no face.
pub fn run_coating(asked: &RunAsked) -> Result<Computed<RunCoating>, Error> {
    let unit = length_unit(asked.width.quantity.unit);
    let is_metric = unit == Unit::Millimetre;
    let length = asked.length.above_zero("the length of the run", unit)?;
    let width = asked.width.above_zero("the width", unit)?;
    let wet = asked.wet.above_zero("the wet film", unit)?;
    let share_lost = asked
        .loss
        .as_ref()
        .map_or(Ok(Number::ZERO), |loss| loss.part("the loss"))?;
    if asked.faces == 0 {
        return Err(Error::range("the number of faces", 0, "1 or more"));
    }
    let what = "the coating of the run";
    let mut band = exact(width);
    for overlap in &asked.overlaps {
        band = band + overlap.not_negative("the overlap", unit)?;
    }
    let band = band.get(what)?;
    let area = (exact(length) * band * count(asked.faces)?).get(what)?;
    let used = exact(area) * wet / (exact(1) - share_lost);
    let mut worked = Worked::of("Coating for a run");
    worked.given("length of the run, L", &asked.length);
    worked.given("width of the joint, W", &asked.width);
    for overlap in &asked.overlaps {
        worked.given("overlap", overlap);
    }
    worked.given("wet film, WFT", &asked.wet);
    worked.chosen("faces", &asked.faces.to_string(), "as given");
    worked.given_if("loss, p", asked.loss.as_ref());
    worked.formula(
        "band = W + overlaps; area = L × band × faces; volume = area × WFT / (1 - p)",
        COVERAGE_SOURCE,
    );
    let laps = asked.overlaps.iter().map(|lap| lap.quantity.to_string());
    let parts: Vec<String> = [trade(width, unit)].into_iter().chain(laps).collect();
    worked.step(format!(
        "band = {} = {}",
        parts.join(" + "),
        both(band, unit)
    ));
    worked.result("band", band, unit);
    let (area_value, volume_value) = if is_metric {
        (
            (exact(area) / 1_000_000).get(what)?,
            (used / 1_000_000).get(what)?,
        )
    } else {
        ((exact(area) / 144).get(what)?, (used / 231).get(what)?)
    };
    let (area_unit, volume_unit) = if is_metric {
        (Unit::SquareMetre, Unit::Litre)
    } else {
        (Unit::SquareFoot, Unit::Gallon)
    };
    worked.step(format!(
        "area = {} × {} × {} = {}",
        trade(length, unit),
        trade(band, unit),
        asked.faces,
        both(area_value, area_unit)
    ));
    worked.step(format!(
        "volume = {} × {} / {} = {}",
        trade(area_value, area_unit),
        trade(wet, unit),
        plain((exact(1) - share_lost).get(what)?),
        both(volume_value, volume_unit)
    ));
    worked.result("area", area_value, area_unit);
    worked.result("volume to bring", volume_value, volume_unit);
    Ok(worked.with(RunCoating {
        band: Quantity::new(band, unit),
        area: Quantity::new(area_value, area_unit),
        volume: Quantity::new(volume_value, volume_unit),
    }))
}
