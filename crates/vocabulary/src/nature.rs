//! How a property comes by its value, which decides what "nominal" asks of it.

use core::fmt;

use serde::{Deserialize, Serialize};

/// The nature of a property.
///
/// ```
/// let density = vocabulary::vocabulary().property("packing.density").unwrap();
/// assert_eq!(density.nature, vocabulary::Nature::Product);
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
pub enum Nature {
    /// Bought or declared by a nominal value: a wool's density, a gauge, a rating. A nominal requirement is met
    /// by that nominal value and by no other.
    Product,
    /// Measured in place. A nominal requirement is met within the tolerance of a cited standard.
    Dimension,
    /// Counted.
    Count,
    /// Named: a maker's product.
    Named,
    /// Stated in words, one of a list or yes and no.
    Text,
}

impl Nature {
    /// Every nature.
    pub const ALL: &'static [Self] = &[
        Self::Product,
        Self::Dimension,
        Self::Count,
        Self::Named,
        Self::Text,
    ];

    /// The name that files and JSON carry.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Product => "product",
            Self::Dimension => "dimension",
            Self::Count => "count",
            Self::Named => "named",
            Self::Text => "text",
        }
    }

    /// The plain title.
    pub const fn title(self) -> &'static str {
        match self {
            Self::Product => "bought or declared by nominal value",
            Self::Dimension => "measured in place",
            Self::Count => "counted",
            Self::Named => "named product",
            Self::Text => "stated in words",
        }
    }
}

crate::named::named!(Nature, "nature");
