//! A value of a property, with where it comes from.

use core::fmt;

use measure::Quantity;
use serde::{Deserialize, Serialize};

use super::said::{SaidOf, is_of_a_listing, said_of, without_listing};
use super::{Cell, Provenance};

/// A value of a property at a joint.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, schemars::JsonSchema)]
pub struct Fact {
    /// The property: `component.attribute`, as the vocabulary names it; or one that a listing has for itself, with the listing that this is
    /// said of: `2A:runner.gauge@hw-d-0412-ed4`, `option.3B@hw-d-0412-ed4`.
    pub property: String,
    /// The value.
    pub value: Value,
    /// Where the value comes from.
    pub provenance: Provenance,
    /// The cell it was read from; none when it didn't come from a file.
    pub cell: Option<Cell>,
}

impl Fact {
    /// The property without the listing that the fact was said of: the name that the vocabulary or the listing has for it.
    pub fn asked_as(&self) -> &str {
        without_listing(&self.property)
    }

    /// Whether it is on a property that a listing has for itself, such as `2A2:flute_width`: in another listing the same name may mean
    /// something else.
    pub fn is_of_one_listing(&self) -> bool {
        is_of_a_listing(&self.property)
    }

    /// The listing that it was said of; none where it names none.
    pub fn said_of(&self) -> Option<SaidOf<'_>> {
        said_of(&self.property)
    }
}

/// What a property is found to be.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize, schemars::JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Value {
    /// A number with its unit. Of a measurement, the value that its holder wrote; its readings stand in the provenance.
    Quantity(Quantity),
    /// One of the vocabulary's values for the property, by its name; or free text where it has none.
    Text(String),
    /// Yes or no.
    Flag(bool),
    /// A product.
    Product(ProductFact),
}

/// A product, as a schedule names it.
#[derive(
    Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, schemars::JsonSchema,
)]
pub struct ProductFact {
    /// Who makes it, where that is known.
    pub maker: Option<String>,
    /// The product's name or type.
    pub product: String,
}

impl fmt::Display for Value {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Quantity(quantity) => quantity.fmt(f),
            Self::Text(text) => f.pad(text),
            Self::Flag(true) => f.pad("yes"),
            Self::Flag(false) => f.pad("no"),
            Self::Product(product) => product.fmt(f),
        }
    }
}

impl fmt::Display for ProductFact {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match &self.maker {
            Some(maker) => f.pad(&format!("{maker} | {}", self.product)),
            None => f.pad(&self.product),
        }
    }
}
