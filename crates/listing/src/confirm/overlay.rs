//! The overlay's file.

use measure::Quantity;
use serde::{Deserialize, Serialize};

use crate::model::{Clause, Presence, ProductName, Relation};

/// What a person decided about the clauses of one source.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Overlay {
    /// SHA-256 of the source that it was made on.
    pub source_sha256: String,
    /// The source's name then.
    pub source_name: String,
    /// One entry a clause, in the order of the listing.
    #[serde(default, rename = "clause")]
    pub entries: Vec<Entry>,
}

/// One clause, confirmed or corrected.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Entry {
    /// The clause's id at the time.
    pub clause: String,
    /// Its item.
    pub item: String,
    /// Its words, white space evened.
    pub words: String,
    /// Its number as read, to tell apart clauses that share their words.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub value: String,
    /// Who decided.
    pub by: String,
    /// When.
    pub when: jiff::civil::Date,
    /// What is right, when the reading was wrong.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub correction: Option<Correction>,
    /// What the same words ask for besides, and the reader has overlooked.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub further: Vec<Correction>,
}

/// What is right where the reading was wrong. What isn't said stays as read.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Correction {
    /// The property.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub property: Option<String>,
    /// How the number is bounded.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub relation: Option<Relation>,
    /// The low or only value, as `2-1/2 in.`
    #[serde(
        default,
        skip_serializing_if = "Option::is_none",
        with = "trade_quantity"
    )]
    pub lo: Option<Quantity>,
    /// The high value.
    #[serde(
        default,
        skip_serializing_if = "Option::is_none",
        with = "trade_quantity"
    )]
    pub hi: Option<Quantity>,
    /// Whether it is no bound at all, but words for a person.
    #[serde(default, skip_serializing_if = "core::ops::Not::not")]
    pub prose: bool,
    /// Whether it always applies, whatever condition was read.
    #[serde(default, skip_serializing_if = "core::ops::Not::not")]
    pub unconditional: bool,
    /// Whether something must, must not or may be there. What may be there or not asks for nothing.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub presence: Option<Presence>,
    /// The option it belongs to, as the listing's choices are named; empty when it belongs to none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub option: Option<String>,
    /// When it applies.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub applies: Option<Applies>,
    /// Products, any one of which will do.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub names: Vec<ProductName>,
}

/// When a clause applies: where a property is so.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Applies {
    /// The property.
    pub property: String,
    /// How it is compared: any relation but nominal and about.
    pub relation: Relation,
    /// The low or only value.
    #[serde(
        default,
        skip_serializing_if = "Option::is_none",
        with = "trade_quantity"
    )]
    pub lo: Option<Quantity>,
    /// The high value.
    #[serde(
        default,
        skip_serializing_if = "Option::is_none",
        with = "trade_quantity"
    )]
    pub hi: Option<Quantity>,
}

/// Why a text isn't an overlay.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("the confirmation file can't be read: {0}")]
pub struct OverlayError(String);

impl Entry {
    /// An entry on a clause as it stands.
    pub fn of(
        clause: &Clause,
        by: &str,
        when: jiff::civil::Date,
        correction: Option<Correction>,
    ) -> Self {
        Self {
            clause: clause.id.clone(),
            item: clause.item.clone(),
            words: evened(&clause.words),
            value: value_of(clause),
            by: by.to_owned(),
            when,
            correction,
            further: Vec::new(),
        }
    }
}

/// The longest error that quotes the line it is about.
const LONGEST_TOLD: usize = 1000;

/// What is wrong, with the line quoted; of a line that is no person's, its number.
fn told(text: &str, error: &toml::de::Error) -> String {
    let whole = error.to_string();
    if whole.len() <= LONGEST_TOLD {
        return whole;
    }
    let before = error.span().and_then(|span| text.get(..span.start));
    let line = 1 + before.map_or(0, |before| before.matches('\n').count());
    let message: String = error.message().chars().take(200).collect();
    format!("line {line}: {message}")
}

impl Overlay {
    /// Reads an overlay's file.
    ///
    /// # Errors
    /// When the text isn't TOML, or has a field or value that an overlay doesn't have.
    pub fn parse(text: &str) -> Result<Self, OverlayError> {
        toml::from_str(text).map_err(|error| OverlayError(told(text, &error)))
    }

    /// The overlay as its file holds it.
    pub fn to_toml(&self) -> String {
        toml::to_string_pretty(self).unwrap_or_default()
    }

    /// Puts entries in place of those on the same clauses, and after the rest.
    pub fn add(&mut self, entries: Vec<Entry>) {
        self.entries
            .retain(|held| !entries.iter().any(|new| new.clause == held.clause));
        self.entries.extend(entries);
    }
}

/// Words with their white space evened.
pub(crate) fn evened(words: &str) -> String {
    words.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// A clause's number as read; empty for what has none.
pub(super) fn value_of(clause: &Clause) -> String {
    clause
        .bound()
        .map_or_else(String::new, |bound| match (bound.lo, bound.hi) {
            (Some(lo), Some(hi)) => format!("{lo}..{hi} {}", bound.unit),
            (Some(one), None) | (None, Some(one)) => format!("{one} {}", bound.unit),
            (None, None) => String::new(),
        })
}

mod trade_quantity {
    use measure::Quantity;
    use serde::{Deserialize, Deserializer, Serializer};

    #[expect(
        clippy::ref_option,
        reason = "serde calls it with a reference to the field"
    )]
    pub(super) fn serialize<S: Serializer>(
        quantity: &Option<Quantity>,
        serializer: S,
    ) -> Result<S::Ok, S::Error> {
        match quantity {
            Some(quantity) => {
                serializer.serialize_some(&format!("{} {}", quantity.number, quantity.unit))
            }
            None => serializer.serialize_none(),
        }
    }

    pub(super) fn deserialize<'de, D: Deserializer<'de>>(
        deserializer: D,
    ) -> Result<Option<Quantity>, D::Error> {
        let Some(text) = Option::<String>::deserialize(deserializer)? else {
            return Ok(None);
        };
        if let Some((number, unit)) = text.split_once(' ')
            && let (Ok(number), Ok(unit)) = (number.parse(), unit.parse())
        {
            return Ok(Some(Quantity::new(number, unit)));
        }
        Quantity::parse(&text)
            .map(Some)
            .map_err(serde::de::Error::custom)
    }
}
