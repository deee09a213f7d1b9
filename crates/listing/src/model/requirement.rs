//! What a clause asks for.

use core::fmt;

use measure::{Agreement, Number, Quantity, Unit};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::span::Span;

/// What a clause asks for.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "kind", rename_all = "snake_case")]
#[expect(
    clippy::large_enum_variant,
    reason = "most clauses are bounds, and a listing has a hundred of them"
)]
pub enum Requirement {
    /// A bound on a quantity.
    Bound(Bound),
    /// One of a set of named products.
    Named {
        /// Any one of these will do.
        names: Vec<ProductName>,
    },
    /// Something must, must not or may be there.
    Presence {
        /// Which.
        presence: Presence,
    },
    /// What another item, standard or assembly design says.
    Reference {
        /// The item, standard or design.
        to: String,
    },
    /// Words that a person must answer.
    Prose,
}

/// How a quantity is bounded.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum Relation {
    /// That or more; for a gauge, that or heavier.
    AtLeast,
    /// That or less.
    AtMost,
    /// Strictly less.
    LessThan,
    /// Strictly more.
    MoreThan,
    /// Called that. A nominal value is no limit: a product is met by that nominal value and no other.
    Nominal,
    /// That and nothing else.
    Exactly,
    /// From the low to the high value, both allowed unless said otherwise.
    Between,
    /// Near that; how near, a person must say.
    About,
}

impl Relation {
    /// The relation in words, to stand before a value.
    pub const fn words(self) -> &'static str {
        match self {
            Self::AtLeast => "at least",
            Self::AtMost => "at most",
            Self::LessThan => "less than",
            Self::MoreThan => "more than",
            Self::Nominal => "nominal",
            Self::Exactly => "exactly",
            Self::Between => "between",
            Self::About => "about",
        }
    }

    /// The relation that holds when this one doesn't, for "not less than" and the like.
    pub const fn negated(self) -> Option<Self> {
        Some(match self {
            Self::AtLeast => Self::LessThan,
            Self::AtMost => Self::MoreThan,
            Self::LessThan => Self::AtLeast,
            Self::MoreThan => Self::AtMost,
            _ => return None,
        })
    }
}

/// A bound on a quantity.
///
/// At least and more than fill `lo`; at most and less than fill `hi`; nominal, exactly and about fill `lo`;
/// between fills both.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Bound {
    /// How the quantity is bounded.
    pub relation: Relation,
    /// The low or the only value.
    pub lo: Option<Number>,
    /// The high value.
    pub hi: Option<Number>,
    /// The unit of both.
    pub unit: Unit,
    /// Whether the low value itself is excluded, as in "over 1 to 2 in.".
    #[serde(default, skip_serializing_if = "core::ops::Not::not")]
    pub lo_excluded: bool,
    /// Whether the words give the value with no qualifier at all.
    #[serde(default, skip_serializing_if = "core::ops::Not::not")]
    pub bare: bool,
    /// Where the number stands.
    pub at: Span,
    /// The same value in a second unit, as "(64 mm)" states it.
    pub second: Option<SecondValue>,
}

impl Bound {
    /// The low or the only value as a quantity.
    pub fn low(&self) -> Option<Quantity> {
        self.lo.map(|number| Quantity::new(number, self.unit))
    }

    /// The high value as a quantity.
    pub fn high(&self) -> Option<Quantity> {
        self.hi.map(|number| Quantity::new(number, self.unit))
    }

    /// The same bound as its second unit states it, if it does.
    #[must_use]
    pub fn in_second_unit(&self) -> Option<Self> {
        let second = self.second.as_ref()?;
        // "(64 mm)" beside "max 2-1/2 in." states the high value.
        let upper = self.lo.is_none() && second.hi.is_none();
        let (lo, hi) = if upper {
            (None, second.lo)
        } else {
            (second.lo, second.hi)
        };
        Some(Self {
            lo,
            hi,
            unit: second.unit,
            second: None,
            ..self.clone()
        })
    }
}

impl fmt::Display for Bound {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let words = self.relation.words();
        match (self.low(), self.high()) {
            (Some(lo), Some(hi)) if self.lo_excluded => write!(f, "over {lo}, up to {hi}"),
            (Some(lo), Some(hi)) => write!(f, "{words} {lo} and {hi}"),
            (Some(one), None) | (None, Some(one)) => write!(f, "{words} {one}"),
            (None, None) => f.write_str(words),
        }
    }
}

/// The same value in a second unit.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct SecondValue {
    /// The low or the only value.
    pub lo: Option<Number>,
    /// The high value of a range.
    pub hi: Option<Number>,
    /// The unit of both.
    pub unit: Unit,
    /// How far the two statements agree.
    pub agreement: Agreement,
}

/// A product that a listing names.
#[derive(
    Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema,
)]
pub struct ProductName {
    /// Who makes it, as the listing writes it.
    pub maker: String,
    /// What it is called.
    pub product: String,
}

impl fmt::Display for ProductName {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.maker.is_empty() {
            f.write_str(&self.product)
        } else {
            write!(f, "{} ({})", self.product, self.maker)
        }
    }
}

/// Whether something must be there.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Presence {
    /// It must be there.
    Required,
    /// It must not be there.
    Absent,
    /// It may be there or not.
    Optional,
}
