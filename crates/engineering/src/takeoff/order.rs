//! What to order.

use measure::{Number, Quantity};

use super::asked::Kind;

/// One thing to order, the whole schedule together.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Order {
    /// What kind of thing it is.
    pub kind: Kind,
    /// What it is.
    pub what: String,
    /// How much of it ends up in the building.
    pub net: Quantity,
    /// How much of it is bought: batts by the board foot, the rest as it is sold.
    pub bought: Quantity,
    /// Batts, cartridges and the like, where it comes so.
    pub pieces: Option<u64>,
    /// No way of cutting takes fewer pieces than this, where it is cut.
    pub at_least: Option<u64>,
    /// The part that is lost in cutting, where it is cut.
    pub waste: Option<Number>,
}
