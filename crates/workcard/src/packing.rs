//! Packing of one joint.

use engineering::packing::{self, Direction, Layer, PackingAsked, Rule, Stack};
use engineering::{Error, Readings};
use measure::Dimension;
use site::FactsFor;

use crate::asks::Asks;
use crate::facts::{Moves, known, measured, movement};
use crate::joint::Strip;
use crate::{AtHand, JointWork};

/// The packing: strips to lay, how they are cut and how far they are compressed.
pub(super) fn of_packing(
    work: &mut JointWork,
    width: &Readings,
    asks: &Asks<'_>,
    facts: &FactsFor<'_>,
    at_hand: &AtHand,
) -> Result<(), Error> {
    let compression = Rule {
        least: asks.least("packing.compression"),
        most: asks.most("packing.compression"),
        nominal: asks.nominal("packing.compression"),
    };
    if compression == Rule::default() {
        if asks
            .properties()
            .any(|(property, _)| property.starts_with("packing."))
        {
            work.gaps.push("packing: the listing states no compression that a program could read; see its words below".to_owned());
        }
        return Ok(());
    }
    let Some(depth) = asks.least("packing.depth") else {
        work.gaps.push(
            "packing: the listing states no depth that a program could read; see its words below"
                .to_owned(),
        );
        return Ok(());
    };
    for other in asks.items_of("packing.compression") {
        if Some(other) != asks.last_item_of("packing.compression") {
            work.gaps.push(format!("packing of item {other}: the listing has it beside that of the joint itself, and the schedule doesn't give its section; `everyclause calc flutes` computes what fills the flutes of a deck"));
        }
    }
    // The schedule's thickness is of all strips together.
    let thickness = facts.get("packing.thickness");
    let scheduled = thickness.and_then(|fact| known(fact, Dimension::Length));
    let proposed = scheduled.as_ref().map(|all| {
        let layer = Layer {
            strips: 1,
            thickness: all.quantity,
        };
        Stack::of(vec![layer], all.quantity.unit)
    });
    if scheduled.is_none() && at_hand.stock.is_empty() {
        work.gaps.push("packing: the schedule doesn't say how thick it is; give the thicknesses at hand with --stock to have strips chosen".to_owned());
        return Ok(());
    }
    work.is_scheduled = scheduled.is_some();
    work.cut_width = Some(depth.quantity);
    let asked = PackingAsked {
        width: width.clone(),
        depth,
        compression,
        stock: at_hand.stock.clone(),
        density: facts
            .get("packing.density")
            .and_then(|fact| known(fact, Dimension::Density)),
        direction: Direction::ThroughThickness,
        closing: movement(facts, width, Moves::Closing),
        opening: movement(facts, width, Moves::Opening),
        proposed: proposed.transpose()?,
        proposed_read_to: thickness
            .and_then(measured)
            .and_then(|readings| readings.resolution),
    };
    let found = packing::packing(&asked)?;
    work.strips = found
        .value
        .stack
        .layers
        .iter()
        .map(|layer| Strip {
            count: layer.strips,
            thickness: layer.thickness,
        })
        .collect();
    work.packing = Some(
        found
            .worked
            .serving("packing.compression and packing.depth"),
    );
    Ok(())
}
