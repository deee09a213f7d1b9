//! The joint as it is drawn: plain data, every length with whence it is known.

use measure::Quantity;

use super::movement::Motion;
use super::value::Length;

/// A joint as it is drawn.
#[derive(Debug, Clone, PartialEq)]
pub struct Condition {
    /// Which kind of joint.
    pub kind: Kind,
    /// Its width as found: between the two parts it separates.
    pub width: Length,
    /// The floor or roof.
    pub floor: Option<Floor>,
    /// The wall.
    pub wall: Option<Wall>,
    /// What fills the joint.
    pub fill: Fill,
    /// How far it closes and opens.
    pub motion: Motion,
    /// The readings of its width along the run.
    pub run: Run,
}

/// A kind of joint.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// Between the top of a wall and what is above it.
    HeadOfWall,
    /// Between the foot of a wall and the floor.
    BottomOfWall,
    /// Between two walls.
    WallToWall,
    /// Between two floors.
    FloorToFloor,
    /// Between the edge of a floor and a wall.
    FloorToWall,
}

impl Kind {
    /// The kind in words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::HeadOfWall => "head of wall",
            Self::BottomOfWall => "bottom of wall",
            Self::WallToWall => "wall to wall",
            Self::FloorToFloor => "floor to floor",
            Self::FloorToWall => "floor to wall",
        }
    }
}

/// A floor or roof.
#[derive(Debug, Clone, PartialEq)]
#[expect(clippy::large_enum_variant, reason = "a drawing has one")]
pub enum Floor {
    /// A flat slab.
    Slab {
        /// Its thickness.
        thickness: Length,
    },
    /// Concrete on a fluted steel deck.
    Deck(Deck),
    /// A beam under a deck, with the wall below it.
    Beam(Beam),
}

/// Concrete on a fluted steel deck.
#[derive(Debug, Clone, PartialEq)]
pub struct Deck {
    /// From the underside of the valley to the top of the crest.
    pub depth: Length,
    /// From one flute to the next.
    pub pitch: Length,
    /// The width of a valley at its underside.
    pub rib_bottom: Length,
    /// The width of a rib at the level of the crests.
    pub rib_top: Length,
    /// The concrete over the crests.
    pub cover: Length,
    /// Whether the flutes run along the wall; across it otherwise.
    pub along: bool,
    /// Whether somebody says which way the flutes run.
    pub direction_known: bool,
}

/// A steel beam under a deck, with the wall below and along it.
#[derive(Debug, Clone, PartialEq)]
pub struct Beam {
    /// Its depth.
    pub depth: Length,
    /// The width of its flanges.
    pub flange_width: Length,
    /// The thickness of its flanges.
    pub flange_thickness: Length,
    /// The deck over it.
    pub deck: Deck,
    /// Its fireproofing.
    pub fireproofing: Option<Fireproofing>,
    /// What hangs the runner from it.
    pub clip: Option<Clip>,
}

/// Sprayed fireproofing.
#[derive(Debug, Clone, PartialEq)]
pub struct Fireproofing {
    /// Its thickness.
    pub thickness: Length,
    /// How far it laps onto the deck.
    pub lap: Option<Length>,
}

/// A clip between beam and runner, as high as the fireproofing is thick.
#[derive(Debug, Clone, PartialEq)]
pub struct Clip {
    /// The length of each leg.
    pub leg: Length,
    /// The thickness of its steel.
    pub steel: Length,
}

/// A wall.
#[derive(Debug, Clone, PartialEq)]
#[expect(clippy::large_enum_variant, reason = "a drawing has one")]
pub enum Wall {
    /// Gypsum board on studs.
    Framed(Framed),
    /// Concrete or masonry.
    Solid(Solid),
}

/// A wall of concrete or masonry.
#[derive(Debug, Clone, PartialEq)]
pub struct Solid {
    /// Its thickness.
    pub thickness: Length,
    /// Whether it is laid of units.
    pub masonry: bool,
}

/// A wall of gypsum board on studs.
#[derive(Debug, Clone, PartialEq)]
pub struct Framed {
    /// How many layers of board on the left and on the right.
    pub layers: [u8; 2],
    /// The thickness of each layer.
    pub board: Length,
    /// The liner panel on the left, of a shaft wall.
    pub liner: Option<Length>,
    /// The studs.
    pub stud: Stud,
    /// The runner at the joint.
    pub runner: Runner,
    /// How far the row of screws next to the joint is from the floor.
    pub top_screw: Option<Length>,
    /// How far the board stops short of the floor, where that is known besides the joint's width.
    pub board_gap: Option<Length>,
}

/// The studs of a wall.
#[derive(Debug, Clone, PartialEq)]
pub struct Stud {
    /// From face to face of the wall's cavity.
    pub width: Length,
    /// How far the stud stops short of the floor.
    pub end_gap: Option<Length>,
    /// The thickness of its steel.
    pub steel: Length,
    /// Whether somebody has seen it fastened to the runner.
    pub fastened: Option<bool>,
}

/// A kind of runner, as far as it looks otherwise.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RunnerKind {
    /// A channel.
    Channel,
    /// A channel with long legs.
    DeepLeg,
    /// A channel with slots in its legs.
    Slotted,
    /// A channel with one leg longer than the other.
    J,
}

impl RunnerKind {
    /// The kind in words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Channel => "runner",
            Self::DeepLeg => "deep-leg runner",
            Self::Slotted => "slotted runner",
            Self::J => "J-runner",
        }
    }
}

/// The runner at the joint.
#[derive(Debug, Clone, PartialEq)]
pub struct Runner {
    /// Which kind.
    pub kind: RunnerKind,
    /// The length of its legs; of the longer one, where they differ.
    pub leg: Length,
    /// The length of the shorter leg, where they differ.
    pub short_leg: Option<Length>,
    /// The thickness of its steel.
    pub steel: Length,
    /// The length of its slots.
    pub slot: Option<Length>,
    /// How far apart its fasteners are.
    pub fastener_spacing: Option<Length>,
}

/// Which way the fibres of the packing run.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fibres {
    /// From one face of the joint to the other.
    AcrossJoint,
    /// In the plane of the faces of the joint, as seen in the section.
    AlongFaces,
    /// Along the run, out of the section.
    AlongRun,
}

impl Fibres {
    /// The direction in words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::AcrossJoint => "fibres across the joint",
            Self::AlongFaces => "fibres parallel to the joint's faces",
            Self::AlongRun => "fibres along the run",
        }
    }
}

/// What fills a joint.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Fill {
    /// Packing.
    pub packing: Option<Packing>,
    /// Sprayed coating.
    pub coating: Option<Coating>,
    /// Sealant at the faces.
    pub sealant: Option<Sealant>,
    /// A preformed seal.
    pub seal: Option<Seal>,
    /// A bead of sealant under the runner: its diameter.
    pub bead: Option<Length>,
    /// Tape in the runner: its width.
    pub tape: Option<Length>,
    /// Clips that hold the packing from below: the thickness of their steel.
    pub support: Option<Length>,
}

impl Fill {
    /// Whether nothing fills the joint.
    pub const fn is_empty(&self) -> bool {
        self.packing.is_none()
            && self.coating.is_none()
            && self.sealant.is_none()
            && self.seal.is_none()
    }
}

/// Packing.
#[derive(Debug, Clone, PartialEq)]
pub struct Packing {
    /// How deep it is, at right angles to the joint's width.
    pub depth: Length,
    /// How thick it is before it is compressed.
    pub thickness: Option<Length>,
    /// Its compression as seen, where somebody has: a percentage.
    pub compression: Option<Quantity>,
    /// Its density before it is compressed.
    pub density: Option<Quantity>,
    /// Which way its fibres run.
    pub fibres: Option<Fibres>,
    /// How far it stands back from the face.
    pub recess: Option<Length>,
    /// How long its pieces in the flutes are.
    pub flute_length: Option<Length>,
}

/// Sprayed coating.
#[derive(Debug, Clone, PartialEq)]
pub struct Coating {
    /// Its thickness.
    pub thickness: Length,
    /// Which film that thickness is of: "wet", "dry"; empty where it is the usual one.
    pub film: &'static str,
    /// How far it laps onto the wall, or onto the first of two like parts.
    pub onto_wall: Length,
    /// How far it laps onto the floor, or what is above the wall.
    pub onto_floor: Length,
    /// On how many faces.
    pub faces: u8,
}

/// Sealant at the faces.
#[derive(Debug, Clone, PartialEq)]
pub struct Sealant {
    /// Its depth.
    pub depth: Length,
    /// On how many faces.
    pub faces: u8,
}

/// A preformed seal.
#[derive(Debug, Clone, PartialEq)]
pub struct Seal {
    /// Its width before it is compressed.
    pub width: Option<Length>,
    /// Its depth.
    pub depth: Length,
}

/// What was read of a joint's width along its run.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Run {
    /// The readings, in the order taken.
    pub readings: Vec<Quantity>,
    /// The instrument, where it is said.
    pub instrument: String,
    /// How long the run is.
    pub length: Option<Quantity>,
    /// The least width that the listing allows.
    pub least: Option<Quantity>,
    /// The greatest width that the listing allows.
    pub greatest: Option<Quantity>,
}
