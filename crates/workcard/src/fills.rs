//! Coating and sealant of one joint.

use engineering::films::{self, RunAsked};
use engineering::{Error, Known, Readings};
use measure::unit::System;
use measure::{Number, Quantity, Unit};

use crate::asks::Asks;
use crate::facts::widest;
use crate::{AtHand, JointWork};

/// The coating: wet film, band and volume.
pub(super) fn of_coating(
    work: &mut JointWork,
    width: &Readings,
    asks: &Asks<'_>,
    at_hand: &AtHand,
) -> Result<(), Error> {
    let Some(wet) = asks.least("coating.wet_thickness") else {
        if asks.has("coating.") {
            work.gaps.push(
                "coating: the listing states no wet film that a program could read".to_owned(),
            );
        }
        return Ok(());
    };
    work.wet = Some(wet.quantity);
    let Some(widest) = widest(width) else {
        return Ok(());
    };
    let mut overlaps: Vec<Known> = Vec::new();
    let mut seen: Vec<&str> = Vec::new();
    for (property, _) in asks
        .properties()
        .filter(|(property, _)| property.starts_with("coating.overlap"))
    {
        if !seen.contains(&property) {
            seen.push(property);
            overlaps.extend(asks.least(property));
        }
    }
    // One overlap that names no surface is for both sides of the joint.
    if let [one] = overlaps.as_slice() {
        let other = one.clone();
        overlaps.push(other);
    }
    let length = work
        .length
        .unwrap_or_else(|| Quantity::new(Number::ONE, Unit::Foot));
    let asked = RunAsked {
        length: Known::new(length, "schedule"),
        width: Known::new(widest, "widest reading"),
        overlaps,
        wet,
        faces: work.faces,
        loss: Some(Known::new(at_hand.loss, "as given")),
    };
    let found = films::run_coating(&asked)?;
    work.band = Some(found.value.band);
    if work.length.is_some() {
        work.coating_volume = Some(found.value.volume);
        work.coating = Some(
            found
                .worked
                .serving("coating.wet_thickness and coating.overlap"),
        );
    }
    Ok(())
}

/// The sealant: a bead as wide as the joint on each face, and a round one where the listing has one.
pub(super) fn of_sealant(
    work: &mut JointWork,
    width: &Readings,
    asks: &Asks<'_>,
    at_hand: &AtHand,
) -> Result<(), Error> {
    if work.seal.is_some() {
        work.gaps.push(
            "preformed seal: how many lie side by side isn't stated, so its length is left out"
                .to_owned(),
        );
        if asks.has("sealant.") {
            let words = "sealant: a preformed seal fills the joint; where sealant goes beside it stands in the listing's words, and how much isn't worked out";
            work.gaps.push(words.to_owned());
        }
        work.sealant_depth = asks.least("sealant.depth").map(|depth| depth.quantity);
        return Ok(());
    }
    of_round_bead(work, asks, at_hand)?;
    let (Some(depth), Some(widest)) = (asks.least("sealant.depth"), widest(width)) else {
        if asks.has("sealant.") && work.bead_diameter.is_none() {
            work.gaps
                .push("sealant: the listing states no depth that a program could read".to_owned());
        }
        return Ok(());
    };
    work.sealant_depth = Some(depth.quantity);
    let section = films::Section::Rectangle {
        width: Known::new(widest, "widest reading"),
        depth,
    };
    let bead = films::bead(&films::BeadAsked {
        section,
        length: None,
        package: None,
        loss: Some(Known::new(at_hand.loss, "as given")),
    })?;
    work.bead_area = Some(Quantity::new(bead.value.area.high, square(widest.unit)));
    Ok(())
}

/// A round bead, laid once along the run.
fn of_round_bead(work: &mut JointWork, asks: &Asks<'_>, at_hand: &AtHand) -> Result<(), Error> {
    let Some(diameter) = asks.least("sealant.bead_diameter") else {
        return Ok(());
    };
    work.bead_diameter = Some(diameter.quantity);
    let unit = square(diameter.quantity.unit);
    let section = films::Section::Round { diameter };
    let bead = films::bead(&films::BeadAsked {
        section,
        length: None,
        package: None,
        loss: Some(Known::new(at_hand.loss, "as given")),
    })?;
    work.round_bead_area = Some(Quantity::new(bead.value.area.high, unit));
    Ok(())
}

/// The unit of area that goes with a length.
const fn square(length: Unit) -> Unit {
    match length.system() {
        System::Metric => Unit::SquareMillimetre,
        _ => Unit::SquareInch,
    }
}
