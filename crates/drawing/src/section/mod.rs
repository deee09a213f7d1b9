//! The section itself: parts in their places, at one state of movement.

mod behaviour;
mod board_wall;
mod deck;
mod gap;
mod gap_fill;
mod head;
mod infill;
mod part;
mod scene;
mod soffit;
mod sprayed_beam;

pub(crate) use behaviour::both;
pub use behaviour::{Behaviour, Moved, State};
pub(crate) use deck::profile as deck_profile;
pub use part::{Component, Look, Material, Part, Shape};
pub use scene::{Kinds, Measure, Scene, Side, Trouble};

use crate::known::{Condition, Kind};

/// What is less than this counts as none, in millimetres: half of the tenth that dimensions are written to.
const BARELY_MM: f64 = 0.05;

impl Scene {
    /// The section of a joint as it was found.
    pub fn as_found(condition: &Condition) -> Self {
        Self::with(condition, Behaviour::as_found(condition))
    }

    /// The section of a joint at a state of its movement; none where it has no such state.
    pub fn of(condition: &Condition, state: State) -> Option<Self> {
        Some(Self::with(condition, Behaviour::at(condition, state)?))
    }

    /// The section of a joint that has moved so far; none where it doesn't move that way.
    pub fn moved(condition: &Condition, moved: Moved) -> Option<Self> {
        Some(Self::with(condition, Behaviour::moved(condition, moved)?))
    }

    fn with(condition: &Condition, behaviour: Behaviour) -> Self {
        match condition.kind {
            Kind::HeadOfWall => head::scene(condition, behaviour),
            Kind::BottomOfWall => head::scene(condition, behaviour).upside_down(),
            Kind::WallToWall | Kind::FloorToFloor | Kind::FloorToWall => {
                gap::scene(condition, behaviour)
            }
        }
    }
}
