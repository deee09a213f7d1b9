//! From what is known of a joint to the joint as it is drawn.

use measure::{Dimension, Quantity};
use site::{ProvenanceKind, Value};

use super::condition::{Condition, Kind, Run};
use super::evidence::Known;
use super::movement::Motion;
use super::value::{Length, Origin};
use super::{fill, floor, wall};

/// Why a joint can't be drawn, and what would let it be.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum Undrawable {
    /// Nothing says which kind of joint it is.
    #[error("nothing says which kind of joint it is; give `joint.kind`, such as head-of-wall")]
    NoKind,
    /// A kind of joint of which no section is drawn.
    #[error(
        "a joint of the kind `{0}` isn't drawn; those that are: head-of-wall, bottom-of-wall, wall-to-wall, floor-to-floor, floor-to-wall"
    )]
    OtherKind(String),
    /// Nothing says how wide the joint is.
    #[error(
        "nothing says how wide the joint is, and its listing doesn't either; give `joint.width`, as a length above zero and up to 1 m"
    )]
    NoWidth,
    /// Nothing says what the wall is made of.
    #[error(
        "nothing says what the wall is made of; give `wall.kind`, such as gypsum-steel-stud, or `wall.thickness` of a solid one"
    )]
    NoWall,
    /// A part is said to be thinner than anything that is built.
    #[error(
        "the {part} comes to {words}, which leaves nothing to draw; give `{property}` as it is built"
    )]
    NoThickness {
        /// Which part.
        part: &'static str,
        /// What it comes to.
        words: String,
        /// The property that says so.
        property: &'static str,
    },
}

impl Condition {
    /// The joint as it is drawn: from its facts, and where a fact is open, from what its listing asks for.
    ///
    /// # Errors
    /// When not even the kind of joint, its width or the kind of wall is known.
    pub fn of(known: &Known<'_>) -> Result<Self, Undrawable> {
        let kind = kind(known)?;
        let width = width(known)?;
        let (wants_floor, wants_wall) = match kind {
            Kind::HeadOfWall | Kind::BottomOfWall | Kind::FloorToWall => (true, true),
            Kind::WallToWall => (false, true),
            Kind::FloorToFloor => (true, false),
        };
        let floor = wants_floor.then(|| floor::of(known, kind));
        let wall = wants_wall
            .then(|| wall::of(known, kind, &width))
            .transpose()?;
        let fill = fill::of(known, kind, floor.as_ref(), wall.as_ref());
        Ok(Self {
            run: run(known),
            motion: Motion::of(known),
            kind,
            width,
            floor,
            wall,
            fill,
        })
    }
}

fn kind(known: &Known<'_>) -> Result<Kind, Undrawable> {
    match known.text("joint.kind").ok_or(Undrawable::NoKind)? {
        "head-of-wall" => Ok(Kind::HeadOfWall),
        "bottom-of-wall" => Ok(Kind::BottomOfWall),
        "wall-to-wall" => Ok(Kind::WallToWall),
        "floor-to-floor" => Ok(Kind::FloorToFloor),
        "floor-to-wall" => Ok(Kind::FloorToWall),
        other => Err(Undrawable::OtherKind(other.to_owned())),
    }
}

fn width(known: &Known<'_>) -> Result<Length, Undrawable> {
    let of_header = || {
        let (reading, _) = known.listing?;
        let limit = reading.header.width.as_ref()?;
        let value = Quantity::new(limit.hi.or(limit.lo)?, limit.unit);
        let words = format!("{} {value}", limit.relation.words());
        Length::new(value, Origin::Listing(words))
    };
    known
        .length("joint.width")
        .or_else(of_header)
        .filter(|width| width.mm() > 0.0 && width.mm() <= 1000.0)
        .ok_or(Undrawable::NoWidth)
}

fn run(known: &Known<'_>) -> Run {
    let mut run = Run {
        length: known.quantity("joint.length", Dimension::Length),
        ..Run::default()
    };
    if let Some(fact) = known.fact("joint.width", None)
        && let ProvenanceKind::Measured {
            instrument,
            readings,
            ..
        } = &fact.provenance.kind
    {
        instrument.clone_into(&mut run.instrument);
        run.readings = readings
            .iter()
            .copied()
            .filter(|one| one.dimension() == Dimension::Length)
            .collect();
        if run.readings.is_empty()
            && let Value::Quantity(value) = fact.value
        {
            run.readings.push(value);
        }
    }
    for (clause, _) in known.applying("joint.width") {
        let Some(bound) = clause.bound() else {
            continue;
        };
        let stricter =
            |old: Option<Quantity>, new: Option<Quantity>, greater: bool| match (old, new) {
                (Some(old), Some(new))
                    if new
                        .compare(old)
                        .is_some_and(|order| order.is_gt() == greater) =>
                {
                    Some(new)
                }
                (None, new) => new,
                (old, _) => old,
            };
        if bound.hi.is_some() || bound.relation != listing::Relation::Nominal {
            run.greatest = stricter(run.greatest, bound.high(), false);
            run.least = stricter(run.least, bound.low(), true);
        }
    }
    if run.greatest.is_none()
        && let Some((reading, _)) = known.listing
        && let Some(limit) = &reading.header.width
    {
        run.greatest = limit
            .strictest_hi
            .or(limit.hi)
            .map(|hi| Quantity::new(hi, limit.unit));
        run.least = run
            .least
            .or(limit.lo.map(|lo| Quantity::new(lo, limit.unit)));
    }
    run
}
