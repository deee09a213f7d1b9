//! What movement makes of a joint: its width, the packing's compression and density, how far the studs are in the runner.

use measure::{Number, Quantity, Unit, print};

use crate::known::movement::{closed_by, compression, density_in_place};
use crate::known::{Condition, Length, Wall, as_number};

/// A state of movement.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum State {
    /// As far closed as it goes.
    Closed,
    /// As found.
    AsFound,
    /// As far open as it goes.
    Open,
    /// Somewhere between.
    Moving,
}

/// How far a joint has moved, in percent of the way that it goes: -100 is fully closed, 0 as found, 100 fully open.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Moved(i8);

impl Moved {
    /// As found.
    pub const NONE: Self = Self(0);

    /// So far; what is farther than fully is fully.
    pub fn percent(percent: i64) -> Self {
        Self(i8::try_from(percent.clamp(-100, 100)).unwrap_or_default())
    }

    const fn state(self) -> State {
        match self.0 {
            -100 => State::Closed,
            0 => State::AsFound,
            100 => State::Open,
            _ => State::Moving,
        }
    }
}

impl State {
    /// The state in words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Closed => "Fully closed",
            Self::AsFound => "As found",
            Self::Open => "Fully open",
            Self::Moving => "On its way",
        }
    }
}

/// What a state of movement makes of a joint.
#[derive(Debug, Clone, PartialEq)]
pub struct Behaviour {
    /// The state.
    pub state: State,
    /// The joint's width.
    pub width: Quantity,
    /// The width in millimetres.
    pub(crate) mm: f64,
    /// By how many millimetres the joint has closed; below zero where it has opened.
    pub(crate) closed_mm: f64,
    /// The same exactly.
    closed: Option<Quantity>,
    /// The compression of the packing, or of the preformed seal; below zero where it is too thin to fill the joint.
    pub compression: Option<Number>,
    /// The density of the packing in place.
    pub density: Option<Quantity>,
    /// How far the studs are in the runner; below zero where they have left it.
    pub engagement: Option<Quantity>,
    /// How far the end of the stud is from the runner's web; below zero where it would be in it.
    pub stud_room: Option<Quantity>,
}

impl Behaviour {
    /// A joint as it was found.
    pub fn as_found(condition: &Condition) -> Self {
        Self::closed(
            condition,
            State::AsFound,
            Number::ZERO,
            condition.width.quantity,
        )
    }

    /// A state of a joint; none where it doesn't move so, and none where nothing says that it does.
    pub fn at(condition: &Condition, state: State) -> Option<Self> {
        let moved = match state {
            State::Closed => Moved(-100),
            State::Open => Moved(100),
            State::AsFound | State::Moving => Moved::NONE,
        };
        Self::moved(condition, moved)
    }

    /// A joint that has moved so far; none where it doesn't move that way, and none where nothing says that it does.
    pub fn moved(condition: &Condition, moved: Moved) -> Option<Self> {
        let way = match moved.0 {
            0 => Number::ZERO,
            ..0 => condition.motion.closing.as_ref()?.ratio(),
            _ => condition.motion.opening.as_ref()?.ratio(),
        };
        let part = Number::new(i128::from(-moved.0), 100)?;
        let ratio = way.times(part)?;
        let width = closed_by(condition.width.quantity, ratio)?;
        Some(Self::closed(condition, moved.state(), ratio, width))
    }

    /// A joint closed by a share of its width.
    fn closed(condition: &Condition, state: State, ratio: Number, width: Quantity) -> Self {
        let mm = width
            .to(Unit::Millimetre)
            .map_or(0.0, |width| as_number(width.number));
        let packing = condition.fill.packing.as_ref();
        let thickness = packing.and_then(|packing| packing.thickness.as_ref());
        let seal = condition
            .fill
            .seal
            .as_ref()
            .and_then(|seal| seal.width.as_ref());
        let filler = thickness.or(seal);
        let stated = packing.and_then(|packing| packing.compression);
        let worked_out = filler.and_then(|filler| compression(filler.quantity, width));
        let density = packing
            .and_then(|packing| packing.density)
            .zip(thickness)
            // Packing that is too thin to fill the joint isn't compressed at all.
            .filter(|_| worked_out.is_some_and(|compression| !compression.is_negative()))
            .and_then(|(density, thickness)| density_in_place(density, thickness.quantity, width));
        let (engagement, stud_room) = framing(condition, ratio);
        Self {
            closed_mm: condition.width.mm() - mm,
            compression: worked_out.or_else(|| {
                let stated = stated.filter(|_| state == State::AsFound)?;
                stated.number.over(Number::whole(100))
            }),
            closed: condition.width.quantity.times(ratio),
            state,
            width,
            mm,
            density,
            engagement,
            stud_room,
        }
    }

    /// By how much the joint has closed, exactly; below zero where it has opened.
    pub(crate) const fn closed_by(&self) -> Option<Quantity> {
        self.closed
    }

    /// How the width is written: exact where the trade's notation can, else to 1/32 in. or 0.1 mm.
    pub fn width_words(&self) -> String {
        both(self.width)
    }

    /// What is written at the state, line by line.
    pub fn lines(&self, condition: &Condition) -> Vec<String> {
        let mut lines = Vec::new();
        let filler = if condition.fill.packing.is_some() {
            "packing"
        } else {
            "seal"
        };
        if let Some(compression) = self.compression {
            let percent = one_decimal(compression.times(Number::whole(100)), Unit::Percent);
            let density = self.density.map(|density| {
                let near = one_decimal(Some(density.number), density.unit);
                format!(", {near} in place")
            });
            lines.push(if compression.is_negative() {
                format!("{filler} too thin to fill the joint")
            } else {
                format!(
                    "{filler} compressed {percent}{}",
                    density.unwrap_or_default()
                )
            });
        }
        if let Some(engagement) = self.engagement {
            let words = both(engagement);
            lines.push(if engagement.number.is_negative() {
                "stud out of the runner".to_owned()
            } else {
                format!("stud {words} in the runner")
            });
        }
        lines
    }
}

/// How far the studs are in the runner, and how far from its web. A stud that rests on the runner doesn't move in it.
fn framing(condition: &Condition, ratio: Number) -> (Option<Quantity>, Option<Quantity>) {
    let Some(Wall::Framed(wall)) = &condition.wall else {
        return (None, None);
    };
    let gap = wall.stud.end_gap.as_ref();
    let Some(gap) = gap.filter(|_| condition.kind == crate::known::Kind::HeadOfWall) else {
        return (None, None);
    };
    let closed = condition.width.quantity.times(ratio);
    let gap = closed.and_then(|closed| gap.quantity.minus(closed));
    let engagement = gap.and_then(|gap| shortest_leg(wall).quantity.minus(gap));
    (
        engagement,
        gap.and_then(|gap| gap.minus(wall.runner.steel.quantity)),
    )
}

/// The leg that a stud leaves first.
fn shortest_leg(wall: &crate::known::Framed) -> &Length {
    wall.runner.short_leg.as_ref().unwrap_or(&wall.runner.leg)
}

/// A length in both systems, rounded to 1/32 in. or 0.1 mm where its own notation can't write it exactly.
pub(crate) fn both(length: Quantity) -> String {
    let (step, unit) = match length.unit {
        Unit::Millimetre => (Number::new(1, 10), Unit::Inch),
        Unit::Inch => (Number::new(1, 32), Unit::Millimetre),
        _ => return print::both(length),
    };
    let own = step.and_then(|step| length.number.nearest(step));
    let exact = own == Some(length.number) || print::trade(length).contains('/');
    let first = match own {
        Some(near) if !exact => format!("≈ {}", print::trade(Quantity::new(near, length.unit))),
        _ => print::trade(length),
    };
    let other = match unit {
        Unit::Millimetre => length.to(unit).map(|mm| one_decimal(Some(mm.number), unit)),
        _ => length
            .to(unit)
            .and_then(|inch| Number::new(1, 32).map(|step| print::rounded(inch, step))),
    };
    match other {
        Some(other) => format!("{first} ({other})"),
        None => first,
    }
}

/// A number to one decimal, marked where that isn't exact.
pub(crate) fn one_decimal(number: Option<Number>, unit: Unit) -> String {
    let Some(number) = number else {
        return String::new();
    };
    let near = Number::new(1, 10)
        .and_then(|step| number.nearest(step))
        .unwrap_or(number);
    let mark = if near == number { "" } else { "≈ " };
    format!("{mark}{}", print::trade(Quantity::new(near, unit)))
}
