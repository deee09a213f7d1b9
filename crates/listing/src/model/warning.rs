//! What a person should look at in a reading.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::span::Span;

/// Something a person should look at.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Warning {
    /// What sort of thing.
    pub kind: WarningKind,
    /// Where it stands.
    pub span: Span,
    /// The words there.
    pub words: String,
    /// What is the matter, in a sentence.
    pub message: String,
}

/// The sorts of warnings.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum WarningKind {
    /// A value in two units that disagree beyond rounding.
    DualUnitsDisagree,
    /// A number whose role couldn't be told.
    UnreadNumber,
    /// A reference to an item that the listing doesn't have.
    UnknownItem,
    /// The designation and the head of the listing don't agree.
    DesignationDisagrees,
    /// Two clauses of one property contradict each other.
    Contradiction,
    /// The text came in another encoding, or with characters that couldn't be read.
    Encoding,
    /// An item's number doesn't follow from the one before it.
    Outline,
    /// A leakage unit that doesn't fit a joint.
    LeakageUnit,
    /// Words offer an alternative, and it couldn't be told of what: all of it stays required.
    OptionNotPlaced,
    /// Nothing was found that looks like a listing.
    NotAListing,
}
