//! Standards that listings cite.

use serde::Deserialize;

/// A standard by its number.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Standard {
    /// The number, as listings cite it: `ASTM E1966`.
    pub number: String,
    /// What it is about.
    pub subject: String,
    /// What kind of standard it is.
    pub kind: StandardKind,
    /// Other spellings of its number.
    #[serde(default)]
    pub synonyms: Vec<String>,
    /// Where the subject was read, or "from memory".
    pub source: String,
}

/// What kind of standard it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum StandardKind {
    /// Fire test of joints.
    JointTest,
    /// Fire test of perimeter barriers and curtain walls.
    PerimeterTest,
    /// Fire test of penetrations.
    PenetrationTest,
    /// Fire test of walls, floors and beams.
    AssemblyTest,
    /// Time-temperature curve and general requirements.
    Curve,
    /// Movement cycling.
    MovementTest,
    /// Classification of results.
    Classification,
    /// Measurement on site or of samples.
    FieldTest,
    /// Inspection of installed work.
    Inspection,
    /// Product.
    Product,
    /// Installation.
    Installation,
    /// Design and judgment.
    Design,
}

impl StandardKind {
    /// The plain title.
    pub const fn title(self) -> &'static str {
        match self {
            Self::JointTest => "fire test of joints",
            Self::PerimeterTest => "fire test of perimeter barriers",
            Self::PenetrationTest => "fire test of penetrations",
            Self::AssemblyTest => "fire test of assemblies",
            Self::Curve => "fire curve and general requirements",
            Self::MovementTest => "movement test",
            Self::Classification => "classification",
            Self::FieldTest => "field or sample test",
            Self::Inspection => "inspection",
            Self::Product => "product",
            Self::Installation => "installation",
            Self::Design => "design",
        }
    }
}
