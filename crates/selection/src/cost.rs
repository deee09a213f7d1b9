//! How hard a change is, for putting listings in order.
//!
//! Common practice, and no price: the later a trade works on a joint, the less of others' work must come off to change its own.
//! The firestop is placed last and is changed first; board, framing, sprayed fireproofing, structural steel and the structure follow in the
//! reverse order of the work. What the drawings ask of the joint itself (width, movement) is changed with the
//! structure or not at all. Each trade costs twice the one after it: of two listings that need as many changes, the one
//! that needs only the firestop's comes first. Within a trade, what is hidden once it is placed costs a little more than what can be exchanged before, or put right on
//! the surface.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use site::Barrier;
use vocabulary::{Stage, Trade, vocabulary};

/// How hard a change is: 2 (a product of the firestop trade) to 65 (the structure). Sums put listings in order and mean no more.
#[derive(
    Debug,
    Clone,
    Copy,
    Default,
    PartialEq,
    Eq,
    PartialOrd,
    Ord,
    Hash,
    Serialize,
    Deserialize,
    JsonSchema,
)]
#[serde(transparent)]
pub struct Cost(pub u32);

impl Cost {
    /// The least that a change costs.
    pub const LEAST: Self = Self(2);

    /// What it costs to change a property, by the trade that owns it and when it can be seen.
    pub fn of(property: &str, trade: Option<Trade>) -> Self {
        let known = vocabulary().property(property);
        let last_open = known.and_then(|property| {
            let stages = property.stages.iter().copied();
            stages.filter(|stage| *stage != Stage::OpeningUp).max()
        });
        let hidden = matches!(last_open, Some(Stage::BeforeClosing | Stage::Placing));
        // A part that the vocabulary doesn't know is taken for framing, which stands in the middle.
        let steps = trade.map_or(2, steps);
        Self((2 << steps) + u32::from(hidden))
    }

    /// Both together.
    #[must_use]
    pub const fn and(self, other: Self) -> Self {
        Self(self.0.saturating_add(other.0))
    }
}

/// How many trades' work stands on this one's.
const fn steps(trade: Trade) -> u32 {
    match trade {
        Trade::Firestop => 0,
        Trade::Board => 1,
        Trade::Framing => 2,
        Trade::Fireproofing => 3,
        Trade::Steel => 4,
        Trade::Structure | Trade::Design => 5,
    }
}

/// What the building asks and nobody changes to suit a listing: the kind of joint, the barrier's rating, and that it
/// is a smoke barrier.
pub fn is_asked_of_the_building(property: &str) -> bool {
    const KIND: &str = "joint.kind";
    [KIND, Barrier::RATING, Barrier::SMOKE_BARRIER].contains(&property)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cost(property: &str) -> Cost {
        Cost::of(
            property,
            vocabulary().property(property).map(|one| one.trade),
        )
    }

    /// Common practice: what stands on other work is changed first.
    #[test]
    fn the_later_in_the_work_the_cheaper() {
        let order = [
            "packing.density",
            "packing.depth",
            "board.layers",
            "stud.spacing",
            "fireproofing.density",
            "beam.weight",
            "floor.thickness",
        ];
        let costs: Vec<Cost> = order.iter().map(|property| cost(property)).collect();
        assert!(costs.is_sorted_by(|a, b| a < b), "{costs:?}");
        assert_eq!(costs.first(), Some(&Cost::LEAST));
    }

    #[test]
    fn two_of_firestop_cost_less_than_one_of_firestop_and_one_of_framing() {
        let two = cost("packing.density").and(cost("coating.wet_thickness"));
        assert!(two < cost("packing.density").and(cost("stud.spacing")));
    }
}
