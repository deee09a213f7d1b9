//! Whether a fact may show that a clause is met.
//!
//! Three questions come before any comparison:
//!
//! 1. *Is there a fact at all?* If not, the clause is open.
//! 2. *Does anybody stand for it?* A value without a source shows nothing: open, whichever way it points. Only what the
//!    project asks of a barrier needs no source: it shows nothing that is built.
//! 3. *Could its source know?* A drawing or submittal says what is meant to be built. A drawing can show what can be
//!    seen on drawings, a submittal that and what can be seen on delivery. Of a property that can only be seen in place
//!    they show nothing of what is built: a value that fails is reported as failing, since that is what is meant; one that
//!    would do is open until somebody has seen it. The joint's width is such a property although drawings give it:
//!    listings bound it as found.

use measure::{Dimension, Quantity};
use site::{Barrier, Fact, ProvenanceKind, Value};
use vocabulary::{Property, Stage, vocabulary};

use crate::subject::Case;

/// What is known of a property, and what it is worth.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Evidence<'a> {
    /// Nothing is known.
    None,
    /// A value that nobody stands for.
    NoSource(&'a Fact),
    /// A value that says what is meant to be built, of something that can only be seen in place.
    NotSeen(&'a Fact),
    /// A value that can't be read as what is asked for.
    Unreadable(&'a Fact),
    /// A value that may show that a clause is met.
    Shown(&'a Fact),
}

impl<'a> Evidence<'a> {
    /// The fact, whatever it is worth.
    pub(crate) const fn fact(self) -> Option<&'a Fact> {
        match self {
            Self::None => None,
            Self::NoSource(fact)
            | Self::NotSeen(fact)
            | Self::Unreadable(fact)
            | Self::Shown(fact) => Some(fact),
        }
    }
}

/// Properties that listings bound as found on site, although drawings give them too.
const AS_FOUND: &[&str] = &["joint.width"];

/// What the project asks of its barriers. The barrier's row is itself the place where it is asked, so that it needs no
/// further source.
const DEMANDS: &[&str] = &[Barrier::RATING, Barrier::SMOKE_BARRIER];

/// What is known of a property at a joint, and what it is worth.
pub(crate) fn evidence<'a>(name: &str, subject: &Case<'a>) -> Evidence<'a> {
    evidence_of(name, || property(name), subject)
}

/// As [`evidence`], with the vocabulary's property at hand or looked up when it is needed.
pub(crate) fn evidence_of<'a>(
    name: &str,
    property: impl Fn() -> Option<&'static Property>,
    subject: &Case<'a>,
) -> Evidence<'a> {
    let Some(fact) = subject.facts.get(name) else {
        return Evidence::None;
    };
    if quantities(fact).any(is_impossible) {
        return Evidence::Unreadable(fact);
    }
    let seen_early =
        |stages: &[Stage]| !AS_FOUND.contains(&name) && is_of_stage(property(), stages);
    match fact.provenance.kind {
        ProvenanceKind::Unstated if !DEMANDS.contains(&name) => Evidence::NoSource(fact),
        ProvenanceKind::Drawing { .. } if !seen_early(&[Stage::Drawings]) => {
            Evidence::NotSeen(fact)
        }
        ProvenanceKind::Submittal { .. } if !seen_early(&[Stage::Drawings, Stage::Delivery]) => {
            Evidence::NotSeen(fact)
        }
        _ => Evidence::Shown(fact),
    }
}

/// Whether a property can be seen at one of some stages. Of one that the vocabulary doesn't know nobody can say so, and
/// it must be seen in place.
fn is_of_stage(property: Option<&Property>, stages: &[Stage]) -> bool {
    property.is_some_and(|property| property.stages.iter().any(|one| stages.contains(one)))
}

/// Whether a value can't be one of anything built: less than nothing, of what has no less than nothing.
fn is_impossible(quantity: Quantity) -> bool {
    let may_be_negative = matches!(
        quantity.dimension(),
        Dimension::Temperature | Dimension::TemperatureDifference | Dimension::Angle
    );
    quantity.number.is_negative() && !may_be_negative
}

/// The vocabulary's property of that name, if it has one.
pub(crate) fn property(name: &str) -> Option<&'static Property> {
    vocabulary().property(name)
}

/// Every quantity that a fact gives: its readings, then the value its holder wrote where that isn't
/// one of them; nothing when it is no quantity.
pub(crate) fn quantities(fact: &Fact) -> impl Iterator<Item = Quantity> {
    let value = match fact.value {
        Value::Quantity(quantity) => Some(quantity),
        _ => None,
    };
    let readings = match &fact.provenance.kind {
        ProvenanceKind::Measured { readings, .. } if value.is_some() => readings.as_slice(),
        _ => &[],
    };
    let value = value.filter(|value| !readings.contains(value));
    readings.iter().copied().chain(value)
}
