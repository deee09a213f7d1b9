//! A slotted or deep-leg runner through its range: what jams, what unlaps, and at which deflection.
//!
//! The runner hangs from the structure above; studs and board stand on the floor. As the structure comes down, the
//! screws of the studs go up in their slots, the studs come nearer the web of the runner, and the board nearer the
//! structure. As it goes up, the screws go down and the studs slip out of the legs.

use measure::{Number, Quantity, Unit};

use crate::between::Between;
use crate::error::Error;
use crate::exact::exact;
use crate::known::{Known, length_unit};
use crate::worked::{Computed, Standing, Worked, both};

/// Screws through board and leg hold the wall to the structure, and the joint can't move.
const LEGS_MEET_SCREWS: &str = "the legs reach the uppermost screws of the board, and jam";

/// What is asked of a runner.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RunnerAsked {
    /// The slot's length, over all; none for a runner without slots.
    pub slot: Option<Known>,
    /// The height of the screw's centre above the lower end of the slot; half of the slot where nothing is said.
    pub screw_at: Option<Known>,
    /// The screw's diameter in the slot.
    pub screw_diameter: Option<Known>,
    /// The length of the runner's legs.
    pub leg: Known,
    /// The gap between the studs' ends and the runner's web.
    pub stud_gap: Known,
    /// The gap between the board and the structure above.
    pub board_gap: Known,
    /// How far the uppermost screws of the board are below the structure above.
    pub top_screw: Option<Known>,
    /// The least overlap of studs and legs that must be left.
    pub least_overlap: Option<Known>,
    /// What a tape can tell, for all of these lengths.
    pub resolution: Option<Quantity>,
    /// How far the structure comes down.
    pub down: Known,
    /// How far it goes up.
    pub up: Known,
}

/// Where a runner comes to its end.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct End {
    /// What happens there.
    pub what: &'static str,
    /// At which deflection.
    pub at: Between,
    /// Whether the demand stops short of it.
    pub standing: Standing,
}

/// A runner through its range.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Runner {
    /// What happens as the structure comes down, the first first.
    pub down: Vec<End>,
    /// What happens as it goes up.
    pub up: Vec<End>,
    /// The unit of the deflections.
    pub unit: Unit,
}

/// Takes a runner through its range.
///
/// # Errors
/// A length that isn't above zero, a screw outside its slot, studs that don't reach into the legs.
pub fn runner(asked: &RunnerAsked) -> Result<Computed<Runner>, Error> {
    let unit = length_unit(asked.leg.quantity.unit);
    let leg = asked.leg.above_zero("the leg of the runner", unit)?;
    let stud_gap = asked.stud_gap.not_negative("the gap at the studs", unit)?;
    let board_gap = asked.board_gap.not_negative("the gap at the board", unit)?;
    let down = asked.down.not_negative("the movement down", unit)?;
    let up = asked.up.not_negative("the movement up", unit)?;
    let half = match asked.resolution {
        None => Number::ZERO,
        Some(step) => (exact(Known::new(step, "").above_zero("the resolution", unit)?) / 2)
            .get("the resolution")?,
    };
    let what = "the range of the runner";
    let overlap = (exact(leg) - stud_gap).get(what)?;
    if overlap <= Number::ZERO {
        return Err(Error::range(
            "the gap at the studs",
            asked.stud_gap.quantity,
            format!("less than the legs, {}", asked.leg.quantity),
        ));
    }
    let mut worked = inputs(asked);
    worked.step(format!(
        "overlap of studs and legs = {} - {} = {}",
        both(leg, unit),
        both(stud_gap, unit),
        both(overlap, unit)
    ));
    let around =
        |value: Number, times: i32| Between::around(value, (exact(half) * times).get(what)?, what);
    let mut coming_down = vec![
        (
            "the studs reach the web of the runner, and jam",
            around(stud_gap, 1)?,
        ),
        (
            "the board reaches the structure above, and is crushed",
            around(board_gap, 1)?,
        ),
    ];
    if let Some(top_screw) = &asked.top_screw {
        let below = top_screw.not_negative("the distance of the board's screws", unit)?;
        let clear = (exact(below) - leg).get(what)?;
        worked.step(format!(
            "the board's screws are below the legs by {} - {} = {}",
            both(below, unit),
            both(leg, unit),
            both(clear, unit)
        ));
        coming_down.push((LEGS_MEET_SCREWS, around(clear, 2)?));
    }
    let mut going_up = Vec::new();
    if let Some(slot) = &asked.slot {
        let (above, below) = travel(asked, slot, unit)?;
        worked.step(format!(
            "the screw can go up {} and down {} in its slot",
            both(above, unit),
            both(below, unit)
        ));
        coming_down.push((
            "the screws reach the upper end of their slots, and jam",
            around(above, 2)?,
        ));
        going_up.push((
            "the screws reach the lower end of their slots, and pull on the studs",
            around(below, 2)?,
        ));
    }
    if let Some(least) = &asked.least_overlap {
        let least = least.not_negative("the least overlap", unit)?;
        let left = (exact(overlap) - least).get(what)?;
        going_up.push((
            "studs and legs overlap less than they must",
            around(left, 2)?,
        ));
    }
    going_up.push(("the studs slip out of the legs", around(overlap, 2)?));
    let down = ends("down", coming_down, down, unit, &mut worked);
    let up = ends("up", going_up, up, unit, &mut worked);
    Ok(worked.with(Runner { down, up, unit }))
}

fn inputs(asked: &RunnerAsked) -> Worked {
    let mut worked = Worked::of("Runner through its range");
    worked.given_if("slot", asked.slot.as_ref());
    worked.given_if(
        "screw above the lower end of the slot",
        asked.screw_at.as_ref(),
    );
    worked.given_if("diameter of the screw", asked.screw_diameter.as_ref());
    worked.given("leg of the runner", &asked.leg);
    worked.given("gap between studs and web", &asked.stud_gap);
    worked.given("gap between board and structure", &asked.board_gap);
    worked.given_if(
        "uppermost screws of the board, below the structure",
        asked.top_screw.as_ref(),
    );
    worked.given_if(
        "least overlap of studs and legs",
        asked.least_overlap.as_ref(),
    );
    worked.given("structure comes down by", &asked.down);
    worked.given("structure goes up by", &asked.up);
    worked.formula("overlap = leg - gap at the studs; the screw's travel = slot - screw's place - half its diameter, each way", "geometry; studs engage both runners (ASTM C754, 5.3.1.3)");
    worked
}

/// How far the screw can go up and down in its slot.
fn travel(asked: &RunnerAsked, slot: &Known, unit: Unit) -> Result<(Number, Number), Error> {
    let what = "the slot";
    let long = slot.above_zero("the slot", unit)?;
    let radius = match &asked.screw_diameter {
        None => Number::ZERO,
        Some(diameter) => {
            (exact(diameter.not_negative("the diameter of the screw", unit)?) / 2).get(what)?
        }
    };
    let place = match &asked.screw_at {
        None => (exact(long) / 2).get(what)?,
        Some(at) => at.not_negative("the place of the screw", unit)?,
    };
    let above = (exact(long) - place - radius).get(what)?;
    let below = (exact(place) - radius).get(what)?;
    if above.is_negative() || below.is_negative() {
        return Err(Error::range(
            "the place of the screw",
            both(place, unit),
            format!("within the slot, {}, by half its diameter", slot.quantity),
        ));
    }
    Ok((above, below))
}

fn ends(
    way: &str,
    mut found: Vec<(&'static str, Between)>,
    demand: Number,
    unit: Unit,
    worked: &mut Worked,
) -> Vec<End> {
    found.sort_by_key(|(_, at)| at.low);
    let ends: Vec<End> = found
        .into_iter()
        .map(|(what, at)| End {
            what,
            at,
            standing: at.at_least(demand),
        })
        .collect();
    for end in &ends {
        let middle = end
            .at
            .low
            .plus(end.at.high)
            .and_then(|sum| sum.over(Number::whole(2)))
            .unwrap_or(end.at.low);
        worked.ranged(format!("{way}: {}", end.what), middle, end.at, unit);
        let words = match end.standing {
            Standing::Met => continue,
            Standing::NotMet if middle.is_negative() => format!(
                "{} before anything moves: by {}",
                end.what,
                both(-middle, unit)
            ),
            Standing::NotMet => format!(
                "{} at {} {way}, and the movement is {}",
                end.what,
                both(middle, unit),
                both(demand, unit)
            ),
            _ => format!(
                "whether {} within {} {way} can't be told: {} is too near it for the tape",
                end.what,
                both(demand, unit),
                both(middle, unit)
            ),
        };
        worked.find(end.standing, words);
    }
    if ends.iter().all(|end| end.standing == Standing::Met) {
        worked.find(
            Standing::Met,
            format!("free through {} {way}", both(demand, unit)),
        );
    }
    ends
}
