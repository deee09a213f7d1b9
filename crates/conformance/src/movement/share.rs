//! A movement stated as a length, as a percentage of the joint's width.
//!
//! The width is the narrowest reading as found: the same length asks most of the fill there. Where nobody has seen the
//! joint, the width that is meant to be built stands in; by it a movement can fail, since that is what is meant, but
//! not be met. What the readings leave uncertain is carried into the percentage.

use engineering::Between;
use engineering::movement::{part_of_width, percent_in_words};
use measure::{Dimension, Number, Quantity, Unit, print};
use site::{Fact, Value};

use super::Direction;
use crate::assessment::Assessment;
use crate::comparison::{Guard, readings};
use crate::condition::reason_of;
use crate::evidence::{Evidence, evidence, property};
use crate::explain::value_in_words;
use crate::subject::Case;
use crate::verdict::{Reason, Verdict};

const WIDTH: &str = "joint.width";

const NOMINAL: &str = "Nobody has measured the joint: the width that is meant to be built stands in for the width as found, and a \
                       narrower joint needs more.";

/// What is known of a movement as a length.
pub(crate) enum Length<'a> {
    /// Nobody states it.
    NotStated,
    /// It is stated, and is nothing.
    Zero(&'a Fact),
    /// It is stated, and is so much of the width.
    Share(Box<Share<'a>>),
    /// It is stated; what part of the width it is can't be told.
    Unusable(Box<Assessment<'a>>),
}

/// A length as a percentage of the joint's width.
#[derive(Debug, Clone)]
pub(crate) struct Share<'a> {
    /// The length.
    pub(crate) movement: Quantity,
    /// The fact that states it.
    pub(crate) fact: &'a Fact,
    /// The width it is a percentage of: of several readings the narrowest.
    pub(crate) width: Quantity,
    /// The fact that states the width.
    pub(crate) width_fact: &'a Fact,
    /// Whether that is the width as found; else it is the nominal one, and nobody has seen what is built.
    pub(crate) is_as_found: bool,
    /// The percentage.
    pub(crate) percent: Number,
    /// The least and the greatest that it can be as closely as the readings tell.
    pub(crate) between: Between,
    /// What the structure does: "closing".
    moves: &'static str,
}

impl<'a> Length<'a> {
    /// What is known of a movement in a direction.
    pub(crate) fn of(direction: &Direction, subject: &Case<'a>) -> Self {
        let unusable = |found: Assessment<'a>| Self::Unusable(Box::new(found));
        let fact = match evidence(direction.length, subject) {
            Evidence::None => return Self::NotStated,
            Evidence::Shown(fact) => fact,
            other => {
                let open = Assessment::open(reason_of(other)).on(other.fact());
                let sentence = format!(
                    "How far the structure moves the joint in {} is stated, but in a way that shows nothing.",
                    direction.moves
                );
                return unusable(
                    open.asking(direction.length)
                        .saying(requirement(direction), sentence),
                );
            }
        };
        match fact.value {
            Value::Quantity(length) if length.dimension() == Dimension::Length => {
                let of_length = property(direction.length);
                let mut each = Guard::of_each(fact, of_length);
                if each.all(|(length, guard)| length.number.is_zero() && guard == Guard::Exact) {
                    return Self::Zero(fact);
                }
            }
            _ => {
                let sentence = format!("`{}` is no length.", fact.value);
                let open = Assessment::open(Reason::Unreadable).on(fact);
                return unusable(
                    open.asking(direction.length)
                        .saying(requirement(direction), sentence),
                );
            }
        }
        match Share::of(direction, fact, subject) {
            Ok(share) => Self::Share(Box::new(share)),
            Err(found) => Self::Unusable(found),
        }
    }
}

impl<'a> Share<'a> {
    fn of(
        direction: &Direction,
        fact: &'a Fact,
        subject: &Case<'a>,
    ) -> Result<Self, Box<Assessment<'a>>> {
        let without = |reason: Reason, width: Option<&'a Fact>, why: &str| {
            let sentence = format!(
                "{} of {} is stated; what part of the joint that is can't be told: {why}.",
                value_in_words(&fact.value),
                direction.moves
            );
            let open = Assessment::open(reason).on(width.or(Some(fact)));
            Box::new(open.asking(WIDTH).saying(requirement(direction), sentence))
        };
        let found = evidence(WIDTH, subject);
        let (width_fact, is_as_found) = match found {
            Evidence::Shown(width) => (width, true),
            Evidence::NotSeen(width) => (width, false),
            Evidence::None => {
                return Err(without(
                    Reason::NoFact,
                    None,
                    "the joint's width isn't known",
                ));
            }
            Evidence::NoSource(width) => {
                let why = "nobody says where the joint's width is known from";
                return Err(without(Reason::NoSource, Some(width), why));
            }
            Evidence::Unreadable(width) => {
                let why = "the joint's width can't be read";
                return Err(without(Reason::Unreadable, Some(width), why));
            }
        };
        let mut most: Option<Self> = None;
        for (width, width_guard) in Guard::of_each(width_fact, property(WIDTH)) {
            for (movement, guard) in Guard::of_each(fact, property(direction.length)) {
                let (Some(length), Some(of)) =
                    (spread(movement, guard), spread(width, width_guard))
                else {
                    let why = "how finely it was measured isn't recorded, or it is no length";
                    return Err(without(Reason::Unreadable, Some(width_fact), why));
                };
                let Some((percent, between)) = percent(length, of) else {
                    let why = "the joint's width is too near to nothing";
                    return Err(without(Reason::Unreadable, Some(width_fact), why));
                };
                let share = Self {
                    movement,
                    fact,
                    width,
                    width_fact,
                    is_as_found,
                    percent,
                    between,
                    moves: direction.moves,
                };
                most = Some(match most {
                    Some(known) => known.greater(share),
                    None => share,
                });
            }
        }
        most.ok_or_else(|| without(Reason::Unreadable, Some(width_fact), "it can't be read"))
    }

    /// The greater of two, with bounds that hold for both.
    fn greater(self, other: Self) -> Self {
        let between = Between {
            low: self.between.low.max(other.between.low),
            high: self.between.high.max(other.between.high),
        };
        let greater = if other.percent > self.percent {
            other
        } else {
            self
        };
        Self { between, ..greater }
    }

    /// In words, the percentage written so that it can't pass for the one it is held against: "1/2 in. (12.7 mm) of
    /// closing on 7/8 in. (≈ 22.2 mm) as found is ≈ 57.1 %".
    pub(crate) fn words(&self, against: Option<Number>) -> String {
        format!(
            "{} of {} on {} {} is {}",
            print::both(self.movement),
            self.moves,
            print::both(self.width),
            self.how_known(),
            percent_in_words(self.percent, against)
        )
    }

    /// The least and the greatest percentage, where the readings leave a difference.
    pub(crate) fn range_words(&self, against: Option<Number>) -> String {
        let Between { low, high } = self.between;
        if low == high {
            return String::new();
        }
        format!(
            ", between {} and {} as closely as it was measured",
            percent_in_words(low, against),
            percent_in_words(high, against)
        )
    }

    const fn how_known(&self) -> &'static str {
        if self.is_as_found {
            "as found"
        } else {
            "of nominal width"
        }
    }

    /// A verdict held to what the width is worth: what nobody has seen, or what lies outside its own readings, can't
    /// show that the movement is met. The verdict carries the share.
    pub(crate) fn weigh(self, found: Assessment<'a>) -> Assessment<'a> {
        let width = self.width_fact;
        let mut found = match found.verdict {
            Verdict::Met if !self.is_as_found => {
                found.reopened(Reason::NotSeen).on(width).asking(WIDTH)
            }
            Verdict::Met if readings::is_scattered(width) => {
                found.reopened(Reason::Scattered).on(width).asking(WIDTH)
            }
            Verdict::Open if found.reason == Reason::TooClose => found.asking(WIDTH),
            _ => found,
        };
        if !self.is_as_found {
            found.notes.push(NOMINAL.to_owned());
        }
        found.share = Some(Box::new(self));
        found
    }
}

/// What a listing must give where the length can't be used.
fn requirement(direction: &Direction) -> String {
    format!("movement in {}", direction.words)
}

/// A length with what its instrument leaves uncertain, in inches; none when that can't be told.
fn spread(length: Quantity, guard: Guard) -> Option<Between> {
    let inches = |length: Quantity| length.to(Unit::Inch).map(|length| length.number);
    let at = inches(length)?;
    let half = match guard {
        Guard::Exact => Number::ZERO,
        Guard::Within(half) => inches(half)?,
        Guard::Unknown => return None,
    };
    Some(Between {
        low: at.minus(half)?.max(Number::ZERO),
        high: at.plus(half)?,
    })
}

/// A movement as a percentage of a width, and the least and the greatest that it can be.
fn percent(movement: Between, width: Between) -> Option<(Number, Between)> {
    let hundred = Number::whole(100);
    let middle = |of: Between| of.low.plus(of.high)?.over(Number::whole(2));
    let at = Between::exactly;
    let (moved, wide) = (middle(movement)?, middle(width)?);
    let part = part_of_width(at(moved), at(wide)).ok()?.low;
    let between = part_of_width(movement, width).ok()?;
    let between = Between {
        low: between.low.times(hundred)?,
        high: between.high.times(hundred)?,
    };
    Some((part.times(hundred)?, between))
}
