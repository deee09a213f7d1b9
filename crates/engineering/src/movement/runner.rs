//! A slotted or deep-leg runner through its range: what jams, what unlaps, and at which deflection.
//!
//! The runner hangs from the structure above; studs and board stand on the floor. As the structure comes down, the
//! screws of the studs go up in their slots, the studs come nearer the web of the runner, and the board nearer the
//! structure. As it goes up, the screws go down and the studs slip out of the legs.

use measure::{Number, Unit};

use crate::between::Between;
use crate::error::Error;
use crate::exact::exact;
use crate::known::{Known, Readings, Summary};
use crate::worked::{Computed, Standing, Worked, both, trade};

/// Screws through board and leg hold the wall to the structure, and the joint can't move.
const LEGS_MEET_SCREWS: &str = "the legs reach the uppermost screws of the board, and jam";

/// What is asked of a runner. Lengths that were read at several places along the run keep all of their readings: the
/// place with the least room decides.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RunnerAsked {
    /// The slot's length, over all; none for a runner without slots.
    pub slot: Option<Readings>,
    /// The height of the screw's centre above the lower end of the slot; half of the slot where nothing is said.
    pub screw_at: Option<Readings>,
    /// The screw's diameter in the slot.
    pub screw_diameter: Option<Known>,
    /// The length of the runner's legs.
    pub leg: Readings,
    /// The gap between the studs' ends and the runner's web.
    pub stud_gap: Readings,
    /// The gap between the board and the structure above.
    pub board_gap: Readings,
    /// How far the uppermost screws of the board are below the structure above.
    pub top_screw: Option<Readings>,
    /// The least overlap of studs and legs that must be left.
    pub least_overlap: Option<Known>,
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
    /// How far below the structure the board's uppermost screws must be at least, for the legs to come down clear of them.
    pub screws_clear_at: Number,
    /// The unit of these.
    pub unit: Unit,
}

/// Takes a runner through its range.
///
/// # Errors
/// A length that isn't above zero, a screw outside its slot, studs that don't reach into the legs.
pub fn runner(asked: &RunnerAsked) -> Result<Computed<Runner>, Error> {
    let unit = asked.leg.length_unit("the leg of the runner")?;
    let leg = above_zero(&asked.leg, "the leg of the runner", unit)?;
    let stud_gap = asked.stud_gap.summary("the gap at the studs", unit)?;
    let board_gap = asked.board_gap.summary("the gap at the board", unit)?;
    let down = asked.down.not_negative("the movement down", unit)?;
    let up = asked.up.not_negative("the movement up", unit)?;
    let what = "the range of the runner";
    let overlap = (exact(leg.least) - stud_gap.greatest).get(what)?;
    if overlap <= Number::ZERO {
        return Err(Error::range(
            "the gap at the studs",
            trade(stud_gap.greatest, unit),
            format!("less than the legs, {}", trade(leg.least, unit)),
        ));
    }
    let mut worked = inputs(asked);
    worked.step(format!(
        "overlap of studs and legs = {} - {} = {}",
        both(leg.least, unit),
        both(stud_gap.greatest, unit),
        both(overlap, unit)
    ));
    // What is the difference of two lengths may be off by what both were read with.
    let around = |value: Number, halves: [Number; 2]| {
        let [one, other] = halves;
        Between::around(value, (exact(one) + other).get(what)?, what)
    };
    let of_overlap = [leg.half, stud_gap.half];
    let mut coming_down = vec![
        Limit::touched(
            "the studs reach the web of the runner, and jam",
            around(stud_gap.least, [stud_gap.half, Number::ZERO])?,
        ),
        Limit::touched(
            "the board reaches the structure above, and is crushed",
            around(board_gap.least, [board_gap.half, Number::ZERO])?,
        ),
    ];
    if let Some(top_screw) = &asked.top_screw {
        let below = top_screw.summary("the distance of the board's screws", unit)?;
        let clear = (exact(below.least) - leg.greatest).get(what)?;
        worked.step(format!(
            "the board's screws are below the legs by {} - {} = {}",
            both(below.least, unit),
            both(leg.greatest, unit),
            both(clear, unit)
        ));
        let clear = around(clear, [below.half, leg.half])?;
        coming_down.push(Limit::touched(LEGS_MEET_SCREWS, clear));
    }
    let mut going_up = Vec::new();
    if let Some(slot) = &asked.slot {
        let travel = travel(asked, slot, unit)?;
        worked.step(format!(
            "the screw can go up {} and down {} in its slot",
            both(travel.above, unit),
            both(travel.below, unit)
        ));
        coming_down.push(Limit::touched(
            "the screws reach the upper end of their slots, and jam",
            around(travel.above, travel.halves)?,
        ));
        going_up.push(Limit::touched(
            "the screws reach the lower end of their slots, and pull on the studs",
            around(travel.below, travel.halves)?,
        ));
    }
    if let Some(least) = &asked.least_overlap {
        let least = least.not_negative("the least overlap", unit)?;
        let left = (exact(overlap) - least).get(what)?;
        going_up.push(Limit::touched(
            "studs and legs overlap less than they must",
            around(left, of_overlap)?,
        ));
    }
    going_up.push(Limit {
        what: "the studs slip out of the legs",
        at: around(overlap, of_overlap)?,
        is_reached_at: true,
    });
    let screws_clear_at = (exact(leg.greatest) + leg.half + down).get(what)?;
    let down = ends("down", coming_down, down, unit, &mut worked);
    let up = ends("up", going_up, up, unit, &mut worked);
    worked.result(
        "legs clear the board's screws from, below the structure",
        screws_clear_at,
        unit,
    );
    Ok(worked.with(Runner {
        down,
        up,
        screws_clear_at,
        unit,
    }))
}

/// Readings of a length that is there at all.
fn above_zero(readings: &Readings, input: &str, unit: Unit) -> Result<Summary, Error> {
    let summary = readings.summary(input, unit)?;
    if summary.least.is_zero() {
        return Err(Error::range(input, trade(summary.least, unit), "above 0"));
    }
    Ok(summary)
}

fn inputs(asked: &RunnerAsked) -> Worked {
    let mut worked = Worked::of("Runner through its range");
    worked.read_if("slot", asked.slot.as_ref());
    worked.read_if(
        "screw above the lower end of the slot",
        asked.screw_at.as_ref(),
    );
    worked.given_if("diameter of the screw", asked.screw_diameter.as_ref());
    worked.read("leg of the runner", &asked.leg);
    worked.read("gap between studs and web", &asked.stud_gap);
    worked.read("gap between board and structure", &asked.board_gap);
    worked.read_if(
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

/// How far the screw can go up and down in its slot, and half the resolutions of what that was read with.
struct Travel {
    above: Number,
    below: Number,
    halves: [Number; 2],
}

fn travel(asked: &RunnerAsked, slot: &Readings, unit: Unit) -> Result<Travel, Error> {
    let what = "the slot";
    let long = above_zero(slot, "the slot", unit)?;
    let radius = match &asked.screw_diameter {
        None => Number::ZERO,
        Some(diameter) => {
            (exact(diameter.not_negative("the diameter of the screw", unit)?) / 2).get(what)?
        }
    };
    let (lowest, highest, half) = match &asked.screw_at {
        None => {
            let middle = (exact(long.least) / 2).get(what)?;
            (middle, middle, long.half)
        }
        Some(at) => {
            let place = at.summary("the place of the screw", unit)?;
            (place.least, place.greatest, place.half)
        }
    };
    let above = (exact(long.least) - highest - radius).get(what)?;
    let below = (exact(lowest) - radius).get(what)?;
    for (room, place) in [(above, highest), (below, lowest)] {
        if room.is_negative() {
            return Err(Error::range(
                "the place of the screw",
                both(place, unit),
                format!(
                    "within the slot, {}, by half its diameter",
                    trade(long.least, unit)
                ),
            ));
        }
    }
    Ok(Travel {
        above,
        below,
        halves: [long.half, half],
    })
}

/// What ends the movement one way, and where.
struct Limit {
    what: &'static str,
    at: Between,
    /// Whether it has happened once the movement is as far as that, and not only beyond it.
    is_reached_at: bool,
}

impl Limit {
    /// One that the movement may go as far as.
    const fn touched(what: &'static str, at: Between) -> Self {
        Self {
            what,
            at,
            is_reached_at: false,
        }
    }

    fn standing(&self, demand: Number) -> Standing {
        if self.is_reached_at {
            self.at.above(demand)
        } else {
            self.at.at_least(demand)
        }
    }
}

fn ends(
    way: &str,
    mut found: Vec<Limit>,
    demand: Number,
    unit: Unit,
    worked: &mut Worked,
) -> Vec<End> {
    found.sort_by_key(|limit| limit.at.low);
    let ends: Vec<End> = found
        .into_iter()
        .map(|limit| End {
            what: limit.what,
            at: limit.at,
            standing: limit.standing(demand),
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
