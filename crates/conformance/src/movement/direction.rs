//! The directions in which a joint moves.

use listing::MovementDirection;

/// A direction of movement, with the properties that say how much of it is needed.
pub(crate) struct Direction {
    /// The id of the check on the head of a listing.
    pub(crate) id: &'static str,
    /// What is needed as a percentage of the width.
    pub(crate) property: &'static str,
    /// What is needed as a length.
    pub(crate) length: &'static str,
    /// What is tested, in words.
    pub(crate) words: &'static str,
    /// What the structure does, in words.
    pub(crate) moves: &'static str,
    /// Whether a movement tested is one in this direction.
    pub(crate) covers: fn(MovementDirection) -> bool,
}

pub(crate) const COMPRESSION: Direction = Direction {
    id: "header/movement-compression",
    property: "joint.movement_compression",
    length: "joint.closing_displacement",
    words: "compression",
    moves: "closing",
    covers: |tested| {
        matches!(
            tested,
            MovementDirection::Compression | MovementDirection::CompressionOrExtension
        )
    },
};

pub(crate) const EXTENSION: Direction = Direction {
    id: "header/movement-extension",
    property: "joint.movement_extension",
    length: "joint.opening_displacement",
    words: "extension",
    moves: "opening",
    covers: |tested| {
        matches!(
            tested,
            MovementDirection::Extension | MovementDirection::CompressionOrExtension
        )
    },
};

pub(crate) const SHEAR: Direction = Direction {
    id: "header/movement-shear",
    property: "joint.movement_shear",
    length: "joint.shear_displacement",
    words: "shear",
    moves: "shear",
    covers: |tested| matches!(tested, MovementDirection::Shear),
};

impl Direction {
    /// The direction that a property gives a percentage of.
    pub(crate) fn of_percentage(property: &str) -> Option<Self> {
        [COMPRESSION, EXTENSION, SHEAR]
            .into_iter()
            .find(|direction| direction.property == property)
    }
}
