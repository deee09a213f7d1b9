//! What moves a joint, added up: closing, opening and shear, apart from what happened before its width was read.

use measure::{Number, Quantity, Unit};

use crate::error::Error;
use crate::exact::exact;
use crate::known::{Known, length_unit};
use crate::worked::{Computed, Worked, both};

/// Why a joint moves.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Cause {
    /// The weight of the building.
    DeadLoad,
    /// What comes and goes.
    LiveLoad,
    /// Creep and shrinkage.
    Creep,
    /// Temperature.
    Thermal,
    /// Wind.
    Wind,
    /// Earthquake. Kept apart from the rest.
    Seismic,
}

/// Which way a joint moves.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Sense {
    /// Narrower.
    Closes,
    /// Wider.
    Opens,
    /// Narrower by so much and wider by so much.
    EitherWay,
    /// Along its length, or across its faces.
    Shears,
}

/// Whether it happens before or after the width is read that the rest is counted from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum When {
    /// Before: it is in the width already.
    Before,
    /// After: the joint must follow it.
    After,
}

/// One thing that moves a joint.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Contribution {
    /// Why.
    pub cause: Cause,
    /// How far, without sign.
    pub amount: Known,
    /// Which way.
    pub sense: Sense,
    /// Before or after the width is read.
    pub when: When,
}

/// How far a joint moves from the width as read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Moves {
    /// Narrower by.
    pub closing: Number,
    /// Wider by.
    pub opening: Number,
    /// Along itself by.
    pub shear: Number,
}

/// The demand on a joint.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Demand {
    /// Everything but earthquake.
    pub usual: Moves,
    /// Earthquake alone.
    pub seismic: Moves,
    /// The unit of these lengths.
    pub unit: Unit,
}

/// Adds up what moves a joint after its width is read. Earthquake is kept apart; what came before is left out, and named.
///
/// # Errors
/// No contribution, a negative amount, an amount that is no length.
pub fn combine(contributions: &[Contribution]) -> Result<Computed<Demand>, Error> {
    let help = "give at least one movement with its cause, its direction and when it happens";
    let first = contributions
        .first()
        .ok_or_else(|| Error::missing("the movement", help))?;
    let unit = length_unit(first.amount.quantity.unit);
    let nothing = Moves {
        closing: Number::ZERO,
        opening: Number::ZERO,
        shear: Number::ZERO,
    };
    let mut demand = Demand {
        usual: nothing,
        seismic: nothing,
        unit,
    };
    let mut worked = Worked::of("Movement demand on a joint");
    worked.formula(
        "closing, opening and shear = sums of what happens after the width is read; earthquake apart",
        "common practice in the design of movement joints",
    );
    for one in contributions {
        let amount = one.amount.not_negative("the movement", unit)?;
        let name = format!("{}, {}", one.cause.words(), one.sense.words());
        worked.given(&name, &one.amount);
        if one.when == When::Before {
            worked.step(format!(
                "{name}: {} happens before the width is read, and is in it already",
                both(amount, unit)
            ));
            continue;
        }
        let moves = if one.cause == Cause::Seismic {
            &mut demand.seismic
        } else {
            &mut demand.usual
        };
        let add = |to: &mut Number| -> Result<(), Error> {
            *to = (exact(*to) + amount).get("the movement")?;
            Ok(())
        };
        match one.sense {
            Sense::Closes => add(&mut moves.closing)?,
            Sense::Opens => add(&mut moves.opening)?,
            Sense::Shears => add(&mut moves.shear)?,
            Sense::EitherWay => {
                add(&mut moves.closing)?;
                add(&mut moves.opening)?;
            }
        }
    }
    let Moves {
        closing,
        opening,
        shear,
    } = demand.usual;
    for (name, amount) in [("closing", closing), ("opening", opening), ("shear", shear)] {
        worked.result(name, amount, unit);
    }
    if demand.seismic != nothing {
        let Moves {
            closing,
            opening,
            shear,
        } = demand.seismic;
        for (name, amount) in [
            ("closing, earthquake", closing),
            ("opening, earthquake", opening),
            ("shear, earthquake", shear),
        ] {
            worked.result(name, amount, unit);
        }
    }
    Ok(worked.with(demand))
}

impl Demand {
    /// Closing and opening as quantities, the greater of usual and earthquake.
    pub fn greatest(self) -> (Quantity, Quantity) {
        let greater = |of: fn(Moves) -> Number| {
            Quantity::new(of(self.usual).max(of(self.seismic)), self.unit)
        };
        (
            greater(|moves| moves.closing),
            greater(|moves| moves.opening),
        )
    }
}

impl Cause {
    /// In words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::DeadLoad => "dead load",
            Self::LiveLoad => "live load",
            Self::Creep => "creep and shrinkage",
            Self::Thermal => "temperature",
            Self::Wind => "wind",
            Self::Seismic => "earthquake",
        }
    }
}

impl Sense {
    /// In words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Closes => "closing",
            Self::Opens => "opening",
            Self::EitherWay => "closing and opening",
            Self::Shears => "shear",
        }
    }
}
