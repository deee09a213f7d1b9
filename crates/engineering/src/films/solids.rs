//! Wet film from dry and back, by volume solids.

use measure::{Number, Quantity, Unit};

use super::SOLIDS_SOURCE;
use crate::between::Between;
use crate::error::{Error, plain};
use crate::exact::{Exact, exact};
use crate::known::{Known, length_unit};
use crate::worked::{Computed, Standing, Worked, both, percent_words};

/// Volume solids as a part of one: above 0 and at most 100 %.
pub(crate) fn solids(known: &Known) -> Result<Number, Error> {
    let input = "the volume solids";
    let part = crate::known::percent(input, known.quantity)?;
    if part <= Number::ZERO || part > Number::ONE {
        return Err(Error::range(
            input,
            known.quantity,
            "above 0 % and at most 100 %",
        ));
    }
    Ok(part)
}

/// How many parts of thinner come on one part of product.
fn thinned(thinner: Option<&Known>) -> Result<Exact, Error> {
    let input = "the thinner";
    let part = thinner.map_or(Ok(Number::ZERO), |known| {
        crate::known::percent(input, known.quantity)
    })?;
    if part.is_negative() {
        let value = thinner.map_or_else(String::new, |known| known.quantity.to_string());
        return Err(Error::range(
            input,
            value,
            "0 % or more of the product's volume",
        ));
    }
    Ok(exact(1) + part)
}

/// The factor of the thinner as a step has it; nothing where the product isn't thinned.
fn by_thinner(sign: &str, thinned: Exact) -> Result<String, Error> {
    let factor = thinned.get("the thinner")?;
    Ok(if factor == Number::ONE {
        String::new()
    } else {
        format!("{sign}{}", plain(factor))
    })
}

/// The unit that films are given in: as the input is, mils and micrometres kept.
fn film_unit(of: Unit) -> Unit {
    match of {
        Unit::Mil | Unit::Micrometre => of,
        other => length_unit(other),
    }
}

/// The wet film that dries to a dry one: `WFT = DFT (1 + r) / VS`, thinned by a part r of its volume.
///
/// # Errors
/// Solids outside 0 to 100 %, a film that isn't above zero, a negative part of thinner.
pub fn wet_from_dry(
    dry: &Known,
    volume_solids: &Known,
    thinner: Option<&Known>,
) -> Result<Computed<Quantity>, Error> {
    let unit = film_unit(dry.quantity.unit);
    let film = dry.above_zero("the dry film", unit)?;
    let vs = solids(volume_solids)?;
    let by = thinned(thinner)?;
    let wet = (exact(film) * by / vs).get("the wet film")?;
    let mut worked = inputs(
        "Wet film from dry",
        ("dry film, DFT", dry),
        volume_solids,
        thinner,
    );
    worked.formula("WFT = DFT (1 + r) / VS", SOLIDS_SOURCE);
    worked.step(format!(
        "WFT = {}{} / {} = {}",
        both(film, unit),
        by_thinner(" × ", by)?,
        plain(vs),
        both(wet, unit)
    ));
    worked.result("wet film, WFT", wet, unit);
    Ok(worked.with(Quantity::new(wet, unit)))
}

/// The dry film that a wet one leaves: `DFT = WFT × VS / (1 + r)`.
///
/// # Errors
/// As [`wet_from_dry`].
pub fn dry_from_wet(
    wet: &Known,
    volume_solids: &Known,
    thinner: Option<&Known>,
) -> Result<Computed<Quantity>, Error> {
    let unit = film_unit(wet.quantity.unit);
    let film = wet.above_zero("the wet film", unit)?;
    let vs = solids(volume_solids)?;
    let by = thinned(thinner)?;
    let dry = (exact(film) * vs / by).get("the dry film")?;
    let mut worked = inputs(
        "Dry film from wet",
        ("wet film, WFT", wet),
        volume_solids,
        thinner,
    );
    worked.formula("DFT = WFT × VS / (1 + r)", SOLIDS_SOURCE);
    worked.step(format!(
        "DFT = {} × {}{} = {}",
        both(film, unit),
        plain(vs),
        by_thinner(" / ", by)?,
        both(dry, unit)
    ));
    worked.result("dry film, DFT", dry, unit);
    Ok(worked.with(Quantity::new(dry, unit)))
}

fn inputs(
    name: &str,
    film: (&str, &Known),
    volume_solids: &Known,
    thinner: Option<&Known>,
) -> Worked {
    let mut worked = Worked::of(name);
    worked.given(film.0, film.1);
    worked.given("volume solids, VS", volume_solids);
    worked.given_if("thinner, r, of the product's volume", thinner);
    worked
}

/// The solids that a pair of wet and dry implies, and what it says of the product's own.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Agreement {
    /// The solids implied, as a part of one.
    pub implied: Number,
    /// What the rounding of the two figures leaves of them, as parts of one.
    pub within: Between,
    /// Whether the data sheet's solids agree; a note where there is none.
    pub standing: Standing,
}

/// The volume solids that a listing's wet and dry thickness imply, and whether the data sheet agrees.
///
/// A listing's figures are rounded: each is taken to be within half of `step` (1/64 in. where nothing else is known)
/// of what it says, and the data sheet agrees where its solids lie in what that leaves.
///
/// # Errors
/// Films that aren't above zero, a dry film thicker than the wet one, solids outside 0 to 100 %.
pub fn implied_solids(
    wet: &Known,
    dry: &Known,
    step: Quantity,
    data_sheet: Option<&Known>,
) -> Result<Computed<Agreement>, Error> {
    let unit = film_unit(wet.quantity.unit);
    let wet_film = wet.above_zero("the wet film", unit)?;
    let dry_film = dry.above_zero("the dry film", unit)?;
    if dry_film > wet_film {
        return Err(Error::range(
            "the dry film",
            dry.quantity,
            "no thicker than the wet film",
        ));
    }
    let step_number = Known::new(step, "").above_zero("the step", unit)?;
    let half = (exact(step_number) / 2).get("the step")?;
    let what = "the volume solids";
    let implied = (exact(dry_film) / wet_film).get(what)?;
    let thinnest = (exact(wet_film) - half).get(what)?;
    if thinnest <= Number::ZERO {
        return Err(Error::range(
            "the step",
            step,
            "less than twice the wet film",
        ));
    }
    let within = Between {
        low: ((exact(dry_film) - half) / (exact(wet_film) + half))
            .get(what)?
            .max(Number::ZERO),
        high: ((exact(dry_film) + half) / thinnest)
            .get(what)?
            .min(Number::ONE),
    };
    let mut worked = Worked::of("Volume solids that wet and dry imply");
    worked.given("wet film, WFT", wet);
    worked.given("dry film, DFT", dry);
    worked.given("figures are rounded to", &Known::new(step, "as given"));
    worked.given_if("volume solids of the data sheet", data_sheet);
    worked.formula("VS = DFT / WFT", SOLIDS_SOURCE);
    worked.step(format!(
        "VS = {} / {} = {}; the rounding of both leaves {} to {}",
        both(dry_film, unit),
        both(wet_film, unit),
        percent_words(implied),
        percent_words(within.low),
        percent_words(within.high)
    ));
    worked.ranged(
        "volume solids implied",
        hundredfold(implied)?,
        Between {
            low: hundredfold(within.low)?,
            high: hundredfold(within.high)?,
        },
        Unit::Percent,
    );
    let mut standing = Standing::Note;
    if let Some(sheet) = data_sheet {
        let vs = solids(sheet)?;
        standing = if within.low <= vs && vs <= within.high {
            Standing::Met
        } else {
            Standing::NotMet
        };
        let dries = (exact(wet_film) * vs).get(what)?;
        let words = match standing {
            Standing::Met => format!(
                "the data sheet's {} agree with the listing's pair",
                percent_words(vs)
            ),
            _ => format!(
                "the data sheet's {} don't agree: sprayed to the listing's wet film it dries to {}, against {} asked for; hold both thicknesses, and ask the maker",
                percent_words(vs),
                both(dries, unit),
                both(dry_film, unit)
            ),
        };
        worked.find(standing, words);
    }
    Ok(worked.with(Agreement {
        implied,
        within,
        standing,
    }))
}

fn hundredfold(part: Number) -> Result<Number, Error> {
    (exact(part) * 100).get("a percentage")
}
