//! Who owns a property.

use core::fmt;

use serde::{Deserialize, Serialize};

/// The trade that owns a property: the one that can say what it is, or put it right.
///
/// Written in kebab-case in files and JSON; [`Display`](fmt::Display) is the plain title.
///
/// ```
/// use vocabulary::Trade;
/// assert_eq!(Trade::Framing.to_string(), "Framing");
/// assert_eq!("firestop".parse(), Ok(Trade::Firestop));
/// ```
#[derive(
    Debug,
    Clone,
    Copy,
    PartialEq,
    Eq,
    Hash,
    PartialOrd,
    Ord,
    Serialize,
    Deserialize,
    schemars::JsonSchema,
)]
#[serde(rename_all = "kebab-case")]
pub enum Trade {
    /// Drawings and requirements: architect, engineer, code consultant.
    Design,
    /// Floors, roofs, decks and concrete.
    Structure,
    /// Structural steel.
    Steel,
    /// Fire protection sprayed or painted on steel and deck.
    Fireproofing,
    /// Studs, runners, clips and their fasteners.
    Framing,
    /// Gypsum board.
    Board,
    /// Packing, coating, sealant and seals.
    Firestop,
}

impl Trade {
    /// Every trade, in the order in which they work on a joint.
    pub const ALL: &'static [Self] = &[
        Self::Design,
        Self::Structure,
        Self::Steel,
        Self::Fireproofing,
        Self::Framing,
        Self::Board,
        Self::Firestop,
    ];

    /// The name that files and JSON carry.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Design => "design",
            Self::Structure => "structure",
            Self::Steel => "steel",
            Self::Fireproofing => "fireproofing",
            Self::Framing => "framing",
            Self::Board => "board",
            Self::Firestop => "firestop",
        }
    }

    /// The plain title, as a heading would have it.
    pub const fn title(self) -> &'static str {
        match self {
            Self::Design => "Design",
            Self::Structure => "Structure",
            Self::Steel => "Structural steel",
            Self::Fireproofing => "Fireproofing",
            Self::Framing => "Framing",
            Self::Board => "Gypsum board",
            Self::Firestop => "Firestop",
        }
    }
}

crate::named::named!(Trade, "trade");
