//! What fills the flutes of a deck over a wall that crosses them.

use engineering::flutes::{CrossingAsked, Profile, crossing, voids_across};
use engineering::{Error, Known, Worked};
use measure::{Number, Quantity, Unit};
use schemars::JsonSchema;
use serde::Serialize;
use site::{FactsFor, Value};

use crate::asks::Asks;
use crate::facts::length;

/// The flutes over a joint, and what fills them.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct Flutes {
    /// The fewest, wherever the wall begins.
    pub fewest: u64,
    /// The most.
    pub most: u64,
    /// How deep they are.
    pub deep: Option<Quantity>,
    /// From rib to rib.
    pub pitch: Quantity,
    /// How long a piece is along the flute.
    pub long: Option<Quantity>,
    /// The voids worked out; none where nobody has measured the ribs.
    pub worked: Option<Worked>,
}

/// The flutes over a joint; else what is missing. Neither where no deck's flutes cross the wall.
pub(super) fn flutes(
    asks: &Asks<'_>,
    facts: &FactsFor<'_>,
    run: Option<Quantity>,
) -> Result<Result<Option<Flutes>, String>, Error> {
    let direction = facts.get("deck.direction").map(|fact| &fact.value);
    match direction {
        Some(Value::Text(name)) if name == "across" => {}
        Some(Value::Text(name)) if name == "at-an-angle" => {
            return Ok(Err("flutes: they cross the wall at an angle; see `everyclause calc flutes --help` for how many and how large".to_owned()));
        }
        _ => return Ok(Ok(None)),
    }
    let find = |property: &str| length(facts, asks, property);
    let (Some(run), Some(pitch)) = (run, find("deck.flute_spacing")) else {
        return Ok(Err("flutes: how many are to be filled isn't worked out, as the length of the wall or the spacing of the flutes isn't known".to_owned()));
    };
    let deep = find("deck.depth");
    let long = find("packing.length")
        .or_else(|| through_the_wall(facts, asks))
        .or_else(|| asks.least("packing.length"));
    let run = Known::new(run, "schedule");
    let (fewest, most) = voids_across(&run, &pitch)?;
    let mut made = Flutes {
        fewest,
        most,
        deep: deep.as_ref().map(|deep| deep.quantity),
        pitch: pitch.quantity,
        long: long.as_ref().map(|long| long.quantity),
        worked: None,
    };
    let ribs = find("deck.rib_width_top").zip(find("deck.rib_width_bottom"));
    if let (Some((top, bottom)), Some(deep), Some(long)) = (ribs, deep, long) {
        let found = crossing(&CrossingAsked {
            profile: Profile {
                name: "own".to_owned(),
                title: "as recorded".to_owned(),
                depth: deep.quantity,
                pitch: pitch.quantity,
                rib_top: top.quantity,
                rib_bottom: bottom.quantity,
                source: bottom.provenance,
            },
            angle: Known::new(
                Quantity::new(Number::from(90), Unit::Degree),
                "flutes across the wall",
            ),
            length: run,
            depth: long,
        })?;
        made.fewest = found.value.fewest;
        made.most = found.value.most;
        made.worked = Some(found.worked.serving("packing in the flutes"));
    }
    Ok(Ok(Some(made)))
}

/// The wall's thickness: as recorded, else studs and board on both sides together.
fn through_the_wall(facts: &FactsFor<'_>, asks: &Asks<'_>) -> Option<Known> {
    let find = |property: &str| length(facts, asks, property);
    find("wall.thickness").or_else(|| {
        let (stud, board) = (find("stud.width")?, find("board.total_thickness")?);
        let both_sides = board.quantity.times(Number::from(2))?;
        let board = both_sides.to(stud.quantity.unit)?;
        let number = stud.quantity.number.plus(board.number)?;
        Some(Known::new(
            Quantity::new(number, stud.quantity.unit),
            "studs and board on both sides",
        ))
    })
}
