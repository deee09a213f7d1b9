//! How near to a limit a measurement may come before it can no longer tell on which side of it the joint is.
//!
//! A reading taken to the nearest division of an instrument may be off by half a division either way: that is the
//! rectangular error of a resolution (JCGM 100:2008, F.2.2.1), and a verdict that must not be wrong keeps that far from
//! the limit (JCGM 106:2012, 8.3: acceptance with a guard band). So a measured value closer to a limit than half the
//! resolution is open, and so is one exactly at it: the tape that shows 4 in. can't tell 3-31/32 in. from 4-1/32 in. A
//! finer reading or a person settles it. Other errors of a measurement aren't recorded and can't be allowed for.
//!
//! Where the resolution isn't recorded, the vocabulary's instruments for the property stand in, the coarsest of them.
//! Where there is none either, only a value exactly at the limit is held to be too close.
//!
//! What is counted, and numbered sizes such as gauges, have no such error.

use measure::{Dimension, Number, Quantity, Unit};
use site::{Fact, ProvenanceKind};
use vocabulary::Property;

use super::difference::in_unit;
use crate::evidence::quantities;

/// How far a value must keep from a limit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Guard {
    /// The value isn't measured: it is what it is.
    Exact,
    /// Half the instrument's resolution.
    Within(Quantity),
    /// Measured, with a resolution that nobody knows.
    Unknown,
}

impl Guard {
    /// The guard of one reading of a fact, or of its value.
    pub(crate) fn of(fact: &Fact, property: Option<&Property>, reading: Quantity) -> Self {
        Self::stated(fact, reading).unwrap_or_else(|| Self::usual(property, reading))
    }

    /// The guards of all of a fact's readings: the one its own resolution makes, worked out once, else each its own.
    pub(crate) fn of_each<'f>(
        fact: &'f Fact,
        property: Option<&'f Property>,
    ) -> impl Iterator<Item = (Quantity, Self)> + 'f {
        let mut known: Option<(Unit, Self)> = None;
        quantities(fact).map(move |reading| match known {
            Some((unit, guard)) if unit == reading.unit => (reading, guard),
            _ => match Self::stated(fact, reading) {
                Some(guard) => {
                    known = Some((reading.unit, guard));
                    (reading, guard)
                }
                None => (reading, Self::usual(property, reading)),
            },
        })
    }

    /// The guard that the fact itself states; none when it is measured and states no resolution of use.
    fn stated(fact: &Fact, reading: Quantity) -> Option<Self> {
        let ProvenanceKind::Measured { resolution, .. } = &fact.provenance.kind else {
            return Some(Self::Exact);
        };
        if is_counted(reading.dimension()) {
            return Some(Self::Exact);
        }
        resolution
            .filter(|resolution| fits(*resolution, reading))
            .map(Self::half_of)
    }

    /// The guard of the coarsest instrument that the vocabulary has for the property.
    fn usual(property: Option<&Property>, reading: Quantity) -> Self {
        property
            .and_then(|property| property.coarsest_resolution(reading))
            .filter(|resolution| fits(*resolution, reading))
            .map_or(Self::Unknown, Self::half_of)
    }

    fn half_of(resolution: Quantity) -> Self {
        let half = Number::new(1, 2).and_then(|half| resolution.times(half));
        half.map_or(Self::Unknown, Self::Within)
    }

    /// A wider guard, by an uncertainty of the limit itself.
    pub(crate) fn widened(self, by: Self) -> Self {
        match (self, by) {
            (Self::Unknown, _) | (_, Self::Unknown) => Self::Unknown,
            (Self::Exact, other) | (other, Self::Exact) => other,
            (Self::Within(one), Self::Within(other)) => {
                one.plus(other).map_or(Self::Unknown, Self::Within)
            }
        }
    }

    /// Whether the value is measured at all.
    pub(crate) const fn is_measured(self) -> bool {
        !matches!(self, Self::Exact)
    }
}

/// Whether a resolution can be one of a reading's instrument.
fn fits(resolution: Quantity, reading: Quantity) -> bool {
    in_unit(resolution, reading.unit).is_some_and(|number| number > Number::ZERO)
}

/// Whether a dimension is counted or numbered, and so told exactly.
pub(crate) const fn is_counted(dimension: Dimension) -> bool {
    matches!(
        dimension,
        Dimension::Count
            | Dimension::Gauge
            | Dimension::ScrewSize
            | Dimension::WireGauge
            | Dimension::ConductorGauge
            | Dimension::PipeSchedule
    )
}
