//! What a take-off is asked, and what it answers.

use measure::{Number, Quantity};
use schemars::JsonSchema;
use serde::Serialize;

use super::order::Order;

/// What kind of thing a quantity is of, in the order in which a take-off names them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Kind {
    /// The length of joint itself.
    Joint,
    /// Strips of packing, cut from batts.
    Packing,
    /// Coating.
    Coating,
    /// Sealant.
    Sealant,
    /// Runners and other profiles that lie along the joint.
    Profile,
    /// Fasteners, clips and the like, by number.
    Fasteners,
}

/// A batt or board as it comes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Stock {
    /// Its length, along which strips run, in inches.
    pub length: Number,
    /// Its width, in inches.
    pub width: Number,
    /// What a cut takes away, in inches; zero for a knife.
    pub kerf: Number,
}

/// Strips of packing in a mark; lengths in inches.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Packing {
    /// What it is, with its density: "Example wool, 4 pcf".
    pub product: String,
    /// How thick a strip is.
    pub thickness: Number,
    /// How many lie side by side.
    pub strips: u64,
    /// How wide they are cut: the depth of the packing.
    pub cut_width: Number,
    /// What they are cut from.
    pub stock: Stock,
    /// The least distance between butt joints; zero where the listing sets none.
    pub butts_apart: Number,
}

/// A coating of a mark; lengths in inches.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Coating {
    /// What it is.
    pub product: String,
    /// How wide the band is on one face, overlaps included.
    pub band: Number,
    /// How thick it is wet.
    pub wet: Number,
    /// On how many faces.
    pub faces: u64,
    /// What is lost, as a part of what is used.
    pub loss: Number,
}

/// A sealant bead of a mark; lengths in inches.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Sealant {
    /// What it is.
    pub product: String,
    /// The bead's area cut across, in square inches.
    pub area: Number,
    /// On how many faces.
    pub faces: u64,
    /// The volume of a package, in cubic inches.
    pub package: Number,
    /// What is lost, as a part of what is used.
    pub loss: Number,
}

/// A row of fasteners, clips or staples of a mark; lengths in inches.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fasteners {
    /// What they are.
    pub what: String,
    /// The greatest spacing.
    pub spacing: Number,
    /// How far the first and last may be from the ends of a run.
    pub end: Number,
    /// How many at each place.
    pub at_each: u64,
}

/// A profile that lies along the whole run, such as a runner.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Profile {
    /// What it is.
    pub what: String,
    /// How many lie side by side.
    pub rows: u64,
}

/// A mark of the schedule.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MarkAsked {
    /// Its name.
    pub mark: String,
    /// Its packing, one entry for each thickness of strip.
    pub packing: Vec<Packing>,
    /// Its coatings.
    pub coatings: Vec<Coating>,
    /// Its sealants.
    pub sealants: Vec<Sealant>,
    /// Its profiles.
    pub profiles: Vec<Profile>,
    /// Its fasteners.
    pub fasteners: Vec<Fasteners>,
}

/// A run of the schedule.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Run {
    /// The place of its mark in the list of marks.
    pub mark: usize,
    /// Its storey; empty where none is known.
    pub storey: String,
    /// Its length, in inches.
    pub length: Number,
}

/// One quantity of one mark on one storey.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Line {
    /// The mark.
    pub mark: String,
    /// The storey.
    pub storey: String,
    /// What kind of thing it is.
    pub kind: Kind,
    /// What it is a quantity of.
    pub what: String,
    /// How much: lengths in feet, coating in gallons and sealant in cubic inches with their loss, the rest by number.
    pub amount: Quantity,
    /// The volume in the building, of packing, in board feet of the uncompressed strips.
    pub volume: Option<Quantity>,
}

/// A schedule taken off.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Schedule {
    /// Quantities by mark and storey.
    pub lines: Vec<Line>,
    /// What to order, all of it together.
    pub orders: Vec<Order>,
}
