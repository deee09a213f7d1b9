//! The voids along a wall: how many, how large, how much fills them.

use measure::{Number, Quantity, Unit};

use super::angle::sine;
use super::profile::Profile;
use crate::between::Between;
use crate::error::Error;
use crate::exact::{ceiling, count, counted, exact, floor};
use crate::known::{Known, length_unit};
use crate::units::{cubic, square};
use crate::worked::{Computed, Worked, both, trade};

/// What is asked of a wall under a deck.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CrossingAsked {
    /// The deck.
    pub profile: Profile,
    /// The angle between the wall and the ribs: 90° square across, 0° beside them.
    pub angle: Known,
    /// The length of the wall.
    pub length: Known,
    /// How deep the filling is through the wall.
    pub depth: Known,
}

/// The voids along a wall.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Crossing {
    /// The area of one void, square to the ribs.
    pub area: Quantity,
    /// The area of one void in the plane of the wall's face; none beside the ribs.
    pub area_in_wall: Option<Between>,
    /// The fewest voids over the wall, wherever it begins.
    pub fewest: u64,
    /// The most.
    pub most: u64,
    /// The most that fills them, in cubic inches or millilitres.
    pub most_volume: Between,
}

/// The voids over a wall that crosses the ribs at an angle, or runs beside them.
///
/// # Errors
/// An angle outside 0° to 90°, a length that isn't above zero, ribs as wide as their pitch.
pub fn crossing(asked: &CrossingAsked) -> Result<Computed<Crossing>, Error> {
    let section = asked.profile.section()?;
    let unit = section.unit;
    let length = asked.length.above_zero("the length of the wall", unit)?;
    let depth = asked.depth.above_zero("the depth of the filling", unit)?;
    let degrees = asked.angle.not_negative("the angle", Unit::Degree)?;
    let mut worked = Worked::of("Voids under a steel deck along a wall");
    inputs(asked, &mut worked);
    worked.step(format!(
        "A = {} × ({} + {}) / 2 = {}",
        trade(section.depth, unit),
        trade(section.top, unit),
        trade(section.bottom, unit),
        both(section.area, square(unit))
    ));
    worked.result(
        "area of a void, square to the ribs",
        section.area,
        square(unit),
    );
    let what = "the voids along the wall";
    let beside = degrees.is_zero();
    let sine = if beside {
        None
    } else {
        Some(sine("the angle", asked.angle.quantity)?)
    };
    // Square to the ribs, a wall beside them is as wide as its filling is deep.
    let across = match sine {
        None => Between::exactly(depth),
        Some(sine) => Between {
            low: (exact(length) * sine.low).get(what)?,
            high: (exact(length) * sine.high).get(what)?,
        },
    };
    let fewest = counted(floor((exact(across.low) / section.pitch).get(what)?), what)?;
    let most = (exact(across.high) + section.bottom) / section.pitch;
    let most = counted(ceiling(most.get(what)?), what)?;
    worked.step(format!(
        "square to the ribs the wall reaches over {}, at a pitch of {}: {fewest} to {most} voids, by where it begins",
        both(across.high.nearest(thousandth()).unwrap_or(across.high), unit),
        trade(section.pitch, unit)
    ));
    worked.result("voids, at most", count(most)?, Unit::Count);
    let along = match sine {
        None => Between::exactly(length),
        Some(sine) => Between {
            low: (exact(depth) / sine.high).get(what)?,
            high: (exact(depth) / sine.low).get(what)?,
        },
    };
    let (volume_unit, per) = cubic(unit);
    let volume = |along: Number| (exact(section.area) * along * count(most)? / per).get(what);
    let most_volume = Between {
        low: volume(along.low)?,
        high: volume(along.high)?,
    };
    let area_in_wall = sine.map(|sine| -> Result<Between, Error> {
        Ok(Between {
            low: (exact(section.area) / sine.high).get(what)?,
            high: (exact(section.area) / sine.low).get(what)?,
        })
    });
    let area_in_wall = area_in_wall.transpose()?;
    if let Some(area) = area_in_wall {
        worked.result(
            "area of a void in the face of the wall",
            shown(area),
            square(unit),
        );
    }
    worked.result("length of the filling along a rib", shown(along), unit);
    worked.result(
        "volume of the voids, at most",
        shown(most_volume),
        volume_unit,
    );
    worked
        .note("the nominal width of the joint leaves these voids out; it is measured at the ribs");
    if beside {
        worked.note("a wall beside the ribs may stand under one rib alone or under a void for all of its length: see on site which");
    }
    Ok(worked.with(Crossing {
        area: Quantity::new(section.area, square(unit)),
        area_in_wall,
        fewest,
        most,
        most_volume,
    }))
}

/// The fewest and the most voids over a wall square across the ribs, where nobody has measured how wide the ribs are: a
/// void is then as wide as the pitch at most.
///
/// # Errors
/// A length that isn't above zero.
pub fn voids_across(length: &Known, pitch: &Known) -> Result<(u64, u64), Error> {
    let unit = length_unit(pitch.quantity.unit);
    let what = "the voids along the wall";
    let length = length.above_zero("the length of the wall", unit)?;
    let pitch = pitch.above_zero("the spacing of the flutes", unit)?;
    let whole = exact(length) / pitch;
    let fewest = counted(floor(whole.get(what)?), what)?;
    let most = counted(ceiling(((exact(length) + pitch) / pitch).get(what)?), what)?;
    Ok((fewest, most))
}

fn inputs(asked: &CrossingAsked, worked: &mut Worked) {
    let Profile {
        name,
        title,
        source,
        ..
    } = &asked.profile;
    let profile = &asked.profile;
    let words = format!(
        "{name} ({title}): {} deep, {} from rib to rib, ribs {} at the top and {} at the bottom",
        profile.depth, profile.pitch, profile.rib_top, profile.rib_bottom
    );
    worked.chosen("deck", &words, source);
    worked.given("angle between wall and ribs, θ", &asked.angle);
    worked.given("length of the wall, L", &asked.length);
    worked.given("depth of the filling through the wall, t", &asked.depth);
    worked.formula(
        "A = d × ((pitch - rib top) + (pitch - rib bottom)) / 2",
        "area of a trapezium",
    );
    worked.formula(
        "voids <= (L sin θ + void bottom) / pitch, rounded up; volume = voids × A × t / sin θ; beside the ribs: voids <= (t + void bottom) / pitch, volume = voids × A × L",
        "plane geometry; the most that any start of the wall gives",
    );
}

/// The middle of a narrow range, rounded for showing.
fn shown(between: Between) -> Number {
    if between.low == between.high {
        return between.low;
    }
    between.high.nearest(thousandth()).unwrap_or(between.high)
}

fn thousandth() -> Number {
    Number::new(1, 1000).unwrap_or(Number::ONE)
}
