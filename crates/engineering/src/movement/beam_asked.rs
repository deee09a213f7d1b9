//! What is asked of a beam.

use crate::error::Error;
use crate::known::Known;

/// How a beam is held.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Supports {
    /// Free to turn at both ends; with several spans, continuous over the supports between.
    Pinned,
    /// Fixed at both ends.
    Fixed,
    /// Fixed at the left end, free to turn at the right.
    FixedLeft,
    /// Fixed at the left end, free at the right.
    Cantilever,
}

/// A force at a place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PointLoad {
    /// The force.
    pub force: Known,
    /// Its distance from the left support of its span.
    pub at: Known,
}

/// One span.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SpanAsked {
    /// Its length.
    pub length: Known,
    /// The load on all of its length: live load where the movement after installation is wanted.
    pub uniform: Option<Known>,
    /// Forces on it.
    pub points: Vec<PointLoad>,
}

/// What is asked of a beam.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BeamAsked {
    /// The spans, from left to right; one to six.
    pub spans: Vec<SpanAsked>,
    /// How it is held.
    pub supports: Supports,
    /// The modulus of elasticity, E.
    pub modulus: Known,
    /// The second moment of area, I.
    pub inertia: Known,
    /// Where the joint is: the span, counted from 1, and the distance from its left support.
    pub joint: Option<(usize, Known)>,
    /// A limit on the deflection, as the n of L/n.
    pub limit: Option<u32>,
}

impl BeamAsked {
    /// Refuses what is no beam, and a beam without a load: zero would be an answer to a question nobody self.
    pub(super) fn could_be(&self) -> Result<(), Error> {
        if self.spans.is_empty() || self.spans.len() > 6 {
            return Err(Error::range(
                "the number of spans",
                self.spans.len(),
                "1 to 6",
            ));
        }
        if self.supports == Supports::Cantilever && self.spans.len() > 1 {
            return Err(Error::range(
                "the number of spans",
                self.spans.len(),
                "1 for a cantilever",
            ));
        }
        if self
            .spans
            .iter()
            .all(|span| span.uniform.is_none() && span.points.is_empty())
        {
            return Err(Error::missing("the load", "give a uniform load or a force"));
        }
        Ok(())
    }
}
