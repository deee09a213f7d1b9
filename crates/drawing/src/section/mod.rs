//! The section itself: parts in their places, at one state of movement.

mod behaviour;
mod board_wall;
mod deck;
mod gap;
mod head;
mod infill;
mod part;
mod scene;
mod soffit;
mod sprayed_beam;

pub(crate) use behaviour::both;
pub(crate) use deck::profile as deck_profile;
pub use behaviour::{Behaviour, State};
pub use part::{Component, Look, Material, Part, Shape};
pub use scene::{Kinds, Measure, Scene, Side, Trouble};

use crate::known::{Condition, Kind};

impl Scene {
    /// The section of a joint at a state of its movement; none where it has no such state.
    pub fn of(condition: &Condition, state: State) -> Option<Self> {
        let behaviour = Behaviour::at(condition, state)?;
        Some(match condition.kind {
            Kind::HeadOfWall => head::scene(condition, behaviour),
            Kind::BottomOfWall => head::scene(condition, behaviour).upside_down(),
            Kind::WallToWall | Kind::FloorToFloor | Kind::FloorToWall => {
                gap::scene(condition, behaviour)
            }
        })
    }
}
