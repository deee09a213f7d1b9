//! What a joint lies between, and whether it moves.

/// What a joint lies between.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum JointKind {
    /// FF.
    FloorToFloor,
    /// WW.
    WallToWall,
    /// FW.
    FloorToWall,
    /// HW.
    HeadOfWall,
    /// BW.
    BottomOfWall,
    /// CG.
    CornerGuard,
    /// CW.
    Perimeter,
}

/// Whether a joint is meant to move.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Motion {
    /// S.
    Static,
    /// D.
    Dynamic,
}

impl JointKind {
    /// Every kind.
    pub const ALL: &'static [Self] = &[
        Self::FloorToFloor,
        Self::WallToWall,
        Self::FloorToWall,
        Self::HeadOfWall,
        Self::BottomOfWall,
        Self::CornerGuard,
        Self::Perimeter,
    ];

    /// The two letters.
    pub const fn code(self) -> &'static str {
        match self {
            Self::FloorToFloor => "FF",
            Self::WallToWall => "WW",
            Self::FloorToWall => "FW",
            Self::HeadOfWall => "HW",
            Self::BottomOfWall => "BW",
            Self::CornerGuard => "CG",
            Self::Perimeter => "CW",
        }
    }

    /// In words.
    pub const fn title(self) -> &'static str {
        match self {
            Self::FloorToFloor => "floor-to-floor joint",
            Self::WallToWall => "wall-to-wall joint",
            Self::FloorToWall => "floor-to-wall joint",
            Self::HeadOfWall => "head-of-wall joint",
            Self::BottomOfWall => "bottom-of-wall joint",
            Self::CornerGuard => "corner guard",
            Self::Perimeter => "perimeter joint",
        }
    }

    /// The word of the property `joint.kind` that means the same.
    pub const fn value_name(self) -> &'static str {
        match self {
            Self::FloorToFloor => "floor-to-floor",
            Self::WallToWall => "wall-to-wall",
            Self::FloorToWall => "floor-to-wall",
            Self::HeadOfWall => "head-of-wall",
            Self::BottomOfWall => "bottom-of-wall",
            Self::CornerGuard => "corner-guard",
            Self::Perimeter => "perimeter",
        }
    }

    pub(super) fn of_code(code: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|kind| kind.code() == code)
    }
}

impl Motion {
    /// The letter.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Static => "S",
            Self::Dynamic => "D",
        }
    }

    /// In words, as the property `joint.static_or_dynamic` has it.
    pub const fn title(self) -> &'static str {
        match self {
            Self::Static => "static",
            Self::Dynamic => "dynamic",
        }
    }

    pub(super) fn of_code(code: &str) -> Option<Self> {
        [Self::Static, Self::Dynamic]
            .into_iter()
            .find(|motion| motion.code() == code)
    }
}
