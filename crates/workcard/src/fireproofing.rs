//! Sprayed fireproofing at one joint.

use engineering::{Error, Worked, fireproofing};
use site::FactsFor;

use crate::asks::Asks;
use crate::facts::measured;

/// Readings of the fireproofing, and of the coating's overlap onto it, against what the listing asks; none where it
/// asks nothing, or nobody has measured. What a drawing shows is no reading.
pub(super) fn at_joint(asks: &Asks<'_>, facts: &FactsFor<'_>) -> Result<Option<Worked>, Error> {
    let Some(least) = asks.least(THICKNESS) else {
        return Ok(None);
    };
    let Some(thickness) = facts.get(THICKNESS).and_then(measured) else {
        return Ok(None);
    };
    let lap = facts
        .get(OVERLAP)
        .and_then(measured)
        .zip(asks.least(OVERLAP));
    let lap = lap.as_ref().map(|(readings, least)| (readings, least));
    let found = fireproofing::at_joint(&thickness, &least, lap)?;
    Ok(Some(found.worked.serving(THICKNESS)))
}

pub(super) const THICKNESS: &str = "fireproofing.thickness";
const OVERLAP: &str = "coating.overlap_fireproofing";
