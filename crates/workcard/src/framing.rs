//! The framing and the board at a head of wall: how far the runner lets them move, and where the board's screws go.

use engineering::movement::{self, End, RunnerAsked};
use engineering::takeoff::{SpacingAsked, fasteners};
use engineering::{Error, Known, Readings, Worked};
use measure::{Dimension, Number, Quantity, Unit};
use schemars::JsonSchema;
use serde::Serialize;
use site::{FactsFor, Value};

use crate::asks::Asks;
use crate::facts::{Moves, counted, known, length, lengths, movement, of_item, product};

/// The runner through its range.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct Range {
    /// As the structure comes down.
    pub down: Way,
    /// As it goes up.
    pub up: Way,
    /// Whether the studs are screwed through slots.
    pub is_slotted: bool,
    /// Whether somebody says where in their slots the screws are; else they are taken to be in the middle.
    pub is_place_recorded: bool,
    /// How far below the structure the board's uppermost screws must be at least, for the legs to come down clear of them.
    pub screws_clear_at: Quantity,
    /// All of it worked out.
    pub worked: Worked,
}

/// One way of moving.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Way {
    /// How far it moves.
    pub by: Quantity,
    /// How far it can, at the least that the readings leave; below zero where it is held as it stands.
    pub room: Quantity,
    /// What ends it.
    pub end: String,
}

/// The board's screws.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Screws {
    /// How far the uppermost are below the structure, at least, as the listing asks.
    pub below: Option<Quantity>,
    /// How far they are, as recorded.
    pub recorded: Option<Quantity>,
    /// The greatest spacing that the listing asks for.
    pub spacing: Option<Quantity>,
    /// How many the uppermost rows take, with one at each stud, layer and side; doubled studs and openings take more.
    pub uppermost: Option<u64>,
}

/// A No. 10 screw, ASME B18.6.4: the thickest that fastens studs commonly, so that no room is taken for granted.
fn taken_screw() -> Option<Known> {
    let diameter = Quantity::new(Number::new(190, 1000)?, Unit::Inch);
    Some(Known::new(
        diameter,
        "a No. 10 screw, as its diameter isn't recorded",
    ))
}

/// The runner of a head of wall through its range; else what is missing for it. Neither where the studs reach no
/// runner that moves.
pub(super) fn range(
    asks: &Asks<'_>,
    facts: &FactsFor<'_>,
    width: &Readings,
) -> Result<Result<Option<Range>, String>, Error> {
    let is = |property: &str, name: &str| {
        facts
            .get(property)
            .is_some_and(|fact| matches!(&fact.value, Value::Text(text) if text == name))
    };
    let has_gap = asks.speaks_of("stud.end_gap") || facts.get("stud.end_gap").is_some();
    if !has_gap || is("joint.static_or_dynamic", "static") || is("joint.kind", "bottom-of-wall") {
        return Ok(Ok(None));
    }
    let find = |property: &str| lengths(facts, asks, property);
    let leg = find("runner.leg_length");
    let stud_gap = find("stud.end_gap");
    // The board's gap is the joint's width where nobody says otherwise.
    let board_gap = find("board.gap").unwrap_or_else(|| width.clone());
    let slot = find("runner.slot_length");
    let down = movement(facts, width, Moves::Closing);
    let up = movement(facts, width, Moves::Opening);
    let slot_is_missing =
        slot.is_none() && (asks.speaks_of("runner.slot_length") || is("runner.kind", "slotted"));
    let missing: Vec<&str> = [
        (leg.is_none(), "the length of the runner's legs"),
        (stud_gap.is_none(), "the gap at the studs' ends"),
        (slot_is_missing, "the length of the slots"),
        (down.is_none(), "the movement in compression"),
        (up.is_none(), "the movement in extension"),
    ]
    .into_iter()
    .filter_map(|(is_missing, what)| is_missing.then_some(what))
    .collect();
    let (Some(leg), Some(stud_gap), Some(down), Some(up), []) =
        (leg, stud_gap, down, up, missing.as_slice())
    else {
        let words = format!(
            "runner: how far it can move isn't worked out, as nobody has shown {}",
            missing.join(", ")
        );
        return Ok(Err(words));
    };
    let place = of_item(
        facts,
        asks.item_of("runner.screw_position"),
        "runner.screw_position",
    );
    if slot.is_some() && place.is_some_and(|place| place.value.to_string() != "centre") {
        return Ok(Err("runner: how far it can move isn't worked out, as the screws aren't at the centre of their slots: measure where they are, and see `everyclause calc runner --help`".to_owned()));
    }
    let asked = RunnerAsked {
        screw_at: None,
        screw_diameter: slot.as_ref().and_then(|_| taken_screw()),
        slot,
        leg,
        stud_gap,
        board_gap,
        top_screw: find("board.top_screw_distance"),
        least_overlap: None,
        down: down.clone(),
        up: up.clone(),
    };
    let is_slotted = asked.slot.is_some();
    let found = movement::runner(&asked)?;
    let unit = found.value.unit;
    let screws_clear_at = Quantity::new(found.value.screws_clear_at, unit);
    let (down, up) = (
        way(&found.value.down, down.quantity, unit),
        way(&found.value.up, up.quantity, unit),
    );
    Ok(Ok(down.zip(up).map(|(down, up)| Range {
        down,
        up,
        is_slotted,
        is_place_recorded: place.is_some(),
        screws_clear_at,
        worked: found.worked.serving("runner, studs and board"),
    })))
}

/// The first end of a way.
fn way(ends: &[End], by: Quantity, unit: Unit) -> Option<Way> {
    let first = ends.iter().min_by_key(|end| end.at.low)?;
    Some(Way {
        by,
        room: Quantity::new(first.at.low, unit),
        end: first.what.to_owned(),
    })
}

/// The board's screws at a joint; none where nothing is asked or known of them.
pub(super) fn screws(
    asks: &Asks<'_>,
    facts: &FactsFor<'_>,
    run: Option<Quantity>,
) -> Result<Option<Screws>, Error> {
    let below = asks.least("board.top_screw_distance");
    let spacing = asks.most("board.screw_spacing");
    let recorded = length(facts, asks, "board.top_screw_distance");
    if below.is_none() && spacing.is_none() && recorded.is_none() {
        return Ok(None);
    }
    let stud_spacing = length(facts, asks, "stud.spacing").or_else(|| asks.most("stud.spacing"));
    let count = |property: &str| {
        of_item(facts, asks.item_of(property), property)
            .filter(|fact| known(fact, Dimension::Count).is_some())
            .and_then(counted)
    };
    let layers = count("board.layers").zip(count("board.sides"));
    let uppermost = match (run, stud_spacing, layers) {
        (Some(run), Some(spacing), Some((layers, sides))) => {
            let asked = SpacingAsked {
                run: Known::new(run, "schedule"),
                spacing,
                end: None,
                at_each: layers.saturating_mul(sides),
            };
            Some(fasteners(&asked)?.value)
        }
        _ => None,
    };
    Ok(Some(Screws {
        below: below.map(|known| known.quantity),
        recorded: recorded.map(|known| known.quantity),
        spacing: spacing.map(|known| known.quantity),
        uppermost,
    }))
}

/// The preformed seal: its product and size as recorded, each beside what is asked; none where nothing is said of one.
pub(super) fn seal(asks: &Asks<'_>, facts: &FactsFor<'_>) -> Option<String> {
    let mut parts: Vec<String> = product(facts, asks.item_of("seal.product"), "seal.product")
        .into_iter()
        .collect();
    for (property, word) in [("seal.width", "wide"), ("seal.depth", "deep")] {
        let recorded = length(facts, asks, property).map(|known| known.quantity);
        let asked = asks.least(property).map(|known| known.quantity);
        parts.extend(match (recorded, asked) {
            (Some(recorded), Some(asked)) => {
                Some(format!("{recorded} {word}; at least {asked} is asked"))
            }
            (Some(recorded), None) => Some(format!("{recorded} {word}")),
            (None, Some(asked)) => Some(format!("at least {asked} {word}")),
            (None, None) => None,
        });
    }
    parts.extend(
        asks.least("seal.compression")
            .map(|known| format!("compressed at least {}", known.quantity)),
    );
    (!parts.is_empty()).then(|| parts.join("; "))
}
