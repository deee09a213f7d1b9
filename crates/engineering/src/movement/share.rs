//! A movement as a part of the joint's width as found.
//!
//! A listing's movement is a percentage of the installed nominal width (UL 2079, ASTM E1966), and the structure moves by
//! a length. Only the width that is there makes the one out of the other: the same length is a greater part of a joint
//! built narrower.

use measure::{Number, Quantity, Unit, print};

use crate::between::Between;
use crate::error::{Error, plain};
use crate::exact::exact;
use crate::known::{Known, Readings};
use crate::worked::{Computed, Standing, Worked, both, percent_words};

/// What is asked of a movement and a width.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ShareAsked {
    /// How far the joint closes, opens or shears after its width was read.
    pub movement: Known,
    /// The width as found, one reading or several along the run.
    pub found: Readings,
    /// The percentage tested in that direction.
    pub tested: Option<Known>,
}

/// A movement as a part of a width.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Share {
    /// The narrowest width, as closely as it was read.
    pub narrowest: Between,
    /// The unit of that.
    pub unit: Unit,
    /// The movement as a part of it: 0.25 for 25 %.
    pub part: Between,
    /// Against what was tested; a note where nothing was given.
    pub standing: Standing,
}

/// A movement over a width, both in one unit: the least and the greatest part of it that the movement can be. Exact.
///
/// # Errors
/// A width that may be nothing, a movement below zero, numbers that can't be held exactly.
pub fn part_of_width(movement: Between, width: Between) -> Result<Between, Error> {
    if width.low <= Number::ZERO {
        let valid = "above 0 by more than half a division of the instrument";
        return Err(Error::range("the width", plain(width.low), valid));
    }
    if movement.low.is_negative() {
        return Err(Error::range(
            "the movement",
            plain(movement.low),
            "0 or more",
        ));
    }
    let what = "the movement as a part of the width";
    Ok(Between {
        low: (exact(movement.low) / width.high).get(what)?,
        high: (exact(movement.high) / width.low).get(what)?,
    })
}

/// Holds a movement, as a part of the narrowest width as found, against the percentage tested.
///
/// # Errors
/// A width that isn't above zero, a negative movement or percentage, values that are no lengths.
pub fn share(asked: &ShareAsked) -> Result<Computed<Share>, Error> {
    let unit = asked.found.length_unit("the width as found")?;
    let found = asked.found.summary("the width as found", unit)?;
    let movement = asked.movement.not_negative("the movement", unit)?;
    let narrowest = Between::around(found.least, found.half, "the width as found")?;
    let part = part_of_width(Between::exactly(movement), narrowest)?;
    let at = (exact(movement) / found.least).get("the movement")?;

    let mut worked = Worked::of("Movement as a part of the width as found");
    worked.read("width as found, w", &asked.found);
    worked.given("movement, d", &asked.movement);
    worked.given_if("percentage tested", asked.tested.as_ref());
    worked.formula(
        "needed = d / w, w the narrowest reading",
        super::SHARE_SOURCE,
    );
    worked.step(format!(
        "d / w = {} / {} = {}",
        both(movement, unit),
        both(found.least, unit),
        percent_words(at)
    ));
    let percent = |part: Number| (exact(part) * 100).get("the movement");
    let range = Between {
        low: percent(part.low)?,
        high: percent(part.high)?,
    };
    worked.ranged("movement needed", percent(at)?, range, Unit::Percent);
    let standing = match &asked.tested {
        Some(tested) => hold(
            "movement",
            (part, at),
            ("the percentage tested", tested),
            &mut worked,
        )?,
        None => Standing::Note,
    };
    Ok(worked.with(Share {
        narrowest,
        unit,
        part,
        standing,
    }))
}

/// Holds what is needed, within what the readings leave of it, against what was tested.
pub(super) fn hold(
    name: &str,
    (part, at): (Between, Number),
    (input, tested): (&str, &Known),
    worked: &mut Worked,
) -> Result<Standing, Error> {
    let limit = crate::known::percent(input, tested.quantity)?;
    if limit.is_negative() {
        return Err(Error::range(input, tested.quantity, "0 % or more"));
    }
    let standing = part.at_most(limit);
    let percent = |part: Number| (exact(part) * 100).get(name);
    let (at, limit) = (percent(at)?, percent(limit)?);
    let needed = percent_in_words(at, Some(limit));
    let tested = percent_in_words(limit, None);
    let words = match standing {
        Standing::Met => format!("{name}: {needed} is needed, no more than the {tested} tested"),
        Standing::NotMet => format!("{name}: {needed} is needed, more than the {tested} tested"),
        _ => format!(
            "{name}: whether the {needed} needed is more than the {tested} tested can't be told as closely as the width was read"
        ),
    };
    worked.find(standing, words);
    Ok(standing)
}

/// A percentage to a tenth, marked where it is rounded; written out further where the tenth would stand on another side
/// of what it is held against, or upon it.
pub fn percent_in_words(percent: Number, against: Option<Number>) -> String {
    let written = |percent: Number| print::trade(Quantity::new(percent, Unit::Percent));
    let tenth = Number::new(1, 10).and_then(|step| percent.nearest(step));
    match tenth {
        Some(tenth) if tenth != percent => {
            let is_told_apart = |other: Number| tenth.cmp(&other) == percent.cmp(&other);
            if against.is_none_or(is_told_apart) {
                format!("≈ {}", written(tenth))
            } else {
                written(percent)
            }
        }
        _ => written(percent),
    }
}
