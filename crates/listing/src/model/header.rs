//! What the head of a listing states.

use measure::{Number, Unit};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::requirement::Relation;
use super::span::Span;

/// What the head of a listing states, as read.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Header {
    /// The title.
    pub title: String,
    /// The designation, as the laboratory writes it.
    pub designation: String,
    /// The edition, revision or issue date, as written.
    pub edition: String,
    /// Standards, such as `ASTM E1966`.
    pub standards: Vec<String>,
    /// Assembly ratings in hours, ascending.
    pub ratings_hr: Vec<Number>,
    /// The joint width.
    pub width: Option<WidthLimit>,
    /// Movement capabilities, in the order stated.
    pub movement: Vec<Movement>,
    /// Air leakage, in the order stated: all values, where configurations differ.
    pub leakage: Vec<Leakage>,
    /// What the head states differently for different configurations or ratings, so that no one value holds for all.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub differs: Vec<HeaderTopic>,
}

/// A topic of the head.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum HeaderTopic {
    /// The joint's width.
    Width,
    /// The assembly ratings.
    Rating,
    /// Air leakage.
    Leakage,
}

/// The joint width that the head states.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct WidthLimit {
    /// How the width is bounded.
    pub relation: Relation,
    /// The low or only value.
    pub lo: Option<Number>,
    /// The high value.
    pub hi: Option<Number>,
    /// The unit of both.
    pub unit: Unit,
    /// The strictest of several high values, where the head states one for each configuration; `hi` is the most generous.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub strictest_hi: Option<Number>,
    /// Where it stands.
    pub span: Span,
}

/// A movement capability: classes, direction and percentage of the installed nominal width.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Movement {
    /// Cycling classes, as Roman numerals (UL 2079, ASTM E1966).
    pub classes: Vec<String>,
    /// The direction.
    pub direction: MovementDirection,
    /// Percent of the installed nominal width.
    pub percent: Number,
    /// The configuration it is stated for, as written, if any.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub option: Option<String>,
    /// Where it stands.
    pub span: Span,
}

/// The direction of a movement.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum MovementDirection {
    /// The joint closes.
    Compression,
    /// The joint opens.
    Extension,
    /// Either.
    CompressionOrExtension,
    /// Its faces slide along each other.
    Shear,
}

/// An air leakage rating.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Leakage {
    /// The temperature of the test.
    pub at: LeakageTemperature,
    /// How the value is stated.
    pub relation: LeakageRelation,
    /// The value.
    pub value: Number,
    /// Its unit; a joint's is per length (cfm/ft).
    pub unit: Unit,
    /// Where it stands.
    pub span: Span,
}

/// The temperature of a leakage test (UL 2079).
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
pub enum LeakageTemperature {
    /// Ambient, 75 ± 20 °F.
    #[serde(rename = "ambient")]
    Ambient,
    /// 400 °F (204 °C).
    #[serde(rename = "400F")]
    Elevated,
}

/// How a leakage value is stated.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum LeakageRelation {
    /// "less than 1 cfm/lin ft".
    LessThan,
    /// "0.4 cfm/lin ft".
    Equal,
    /// "max 1 cfm/lin ft".
    AtMost,
}
