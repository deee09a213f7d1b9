//! The facts that may bear on a point.

use std::collections::BTreeSet;

use listing::{Bound, Requirement};
use site::Barrier;

use super::{OfClause, Point, What};
use crate::comparison::{Tolerance, joint_widths};
use crate::instances::tested;
use crate::movement::Direction;
use crate::offered;
use crate::rating::JOINT_RATING;

impl Point {
    /// The properties whose facts alone decide it, in order, each once; none where more may bear on it. Joints of which these
    /// are known alike have the same verdict on it.
    pub fn rests_on(&self) -> Option<Vec<&str>> {
        let What::Clause(of) = &self.0 else {
            return None;
        };
        let mut names: BTreeSet<&str> = BTreeSet::from([of.clause.property.as_str()]);
        names.extend(of.condition.as_ref().into_iter().flat_map(tested));
        if let Requirement::Bound(bound) = &of.clause.requirement {
            names.extend(besides(of, bound));
        }
        if names.contains(JOINT_RATING) {
            names.insert(Barrier::RATING);
        }
        Some(names.into_iter().collect())
    }
}

/// What bears on a bound besides the fact on its property.
fn besides<'p>(of: &'p OfClause, bound: &Bound) -> Vec<&'p str> {
    let property = of.clause.property.as_str();
    let mut names: Vec<&str> = Tolerance::rest_on(property).collect();
    if offered::is_leakage(property) {
        names.push(Barrier::SMOKE_BARRIER);
    }
    if let Some(direction) = Direction::of_percentage(property) {
        names.extend([direction.length, joint_widths::JOINT_WIDTH]);
    }
    if joint_widths::is_so_stated(bound) {
        names.push(joint_widths::JOINT_WIDTH);
    }
    names
}
