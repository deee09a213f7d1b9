//! When a property can still be seen.

use core::fmt;

use serde::{Deserialize, Serialize};

/// A stage of the work at which a property can be seen or measured.
///
/// Ordered as the work goes, so that the last stage of a property is its greatest. Written in kebab-case
/// in files and JSON; [`Display`](fmt::Display) is the plain title.
///
/// ```
/// use vocabulary::Stage;
/// assert!(Stage::Wet < Stage::AfterCure);
/// assert_eq!(Stage::OpeningUp.to_string(), "only by opening up");
/// assert_eq!("before-closing".parse(), Ok(Stage::BeforeClosing));
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
pub enum Stage {
    /// On drawings, specifications and submittals.
    Drawings,
    /// On delivery: labels, certificates, material before it is used.
    Delivery,
    /// Before closing: framing and steel still open to view.
    BeforeClosing,
    /// While the material is placed.
    Placing,
    /// While the coating or sealant is wet.
    Wet,
    /// After cure.
    AfterCure,
    /// Only by opening up what is closed, and then making it good.
    OpeningUp,
}

impl Stage {
    /// Every stage, in the order of the work.
    pub const ALL: &'static [Self] = &[
        Self::Drawings,
        Self::Delivery,
        Self::BeforeClosing,
        Self::Placing,
        Self::Wet,
        Self::AfterCure,
        Self::OpeningUp,
    ];

    /// The name that files and JSON carry.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Drawings => "drawings",
            Self::Delivery => "delivery",
            Self::BeforeClosing => "before-closing",
            Self::Placing => "placing",
            Self::Wet => "wet",
            Self::AfterCure => "after-cure",
            Self::OpeningUp => "opening-up",
        }
    }

    /// The plain title, so that it follows "can be seen".
    pub const fn title(self) -> &'static str {
        match self {
            Self::Drawings => "on drawings",
            Self::Delivery => "on delivery",
            Self::BeforeClosing => "before closing",
            Self::Placing => "during placing",
            Self::Wet => "while wet",
            Self::AfterCure => "after cure",
            Self::OpeningUp => "only by opening up",
        }
    }
}

crate::named::named!(Stage, "stage");
