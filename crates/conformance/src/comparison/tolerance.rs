//! Tolerances of cited standards, as data.

use std::sync::LazyLock;

use measure::Quantity;
use serde::{Deserialize, Deserializer};
use site::Value;

use crate::evidence::{Evidence, evidence};
use crate::subject::Case;

/// How far a measured value may lie from its nominal one, by a cited standard.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Tolerance {
    /// The standard, by number.
    pub(crate) standard: String,
    /// What the tolerance is for.
    pub(crate) about: String,
    /// How the figure is known.
    pub(crate) source: String,
    /// The property it holds for.
    property: String,
    /// The least nominal value, itself included.
    #[serde(default, deserialize_with = "maybe_quantity")]
    from: Option<Quantity>,
    /// The least nominal value, itself excluded.
    #[serde(default, deserialize_with = "maybe_quantity")]
    over: Option<Quantity>,
    /// The greatest nominal value.
    #[serde(deserialize_with = "quantity")]
    to: Quantity,
    /// How far above.
    #[serde(deserialize_with = "quantity")]
    pub(crate) plus: Quantity,
    /// How far below.
    #[serde(deserialize_with = "quantity")]
    pub(crate) minus: Quantity,
    /// What else must be known for it to hold.
    only: Option<Only>,
}

#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
struct Only {
    property: String,
    values: Vec<String>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    tolerance: Vec<Tolerance>,
}

#[expect(
    clippy::expect_used,
    reason = "the data are compiled in, and a test reads them"
)]
static TOLERANCES: LazyLock<Vec<Tolerance>> =
    LazyLock::new(|| load().expect("the embedded tolerances read"));

fn load() -> Result<Vec<Tolerance>, toml::de::Error> {
    toml::from_str::<File>(include_str!("../../data/tolerances.toml")).map(|file| file.tolerance)
}

impl Tolerance {
    /// The tolerance that holds for a nominal value of a property at a joint, if a standard gives one.
    pub(crate) fn of(
        property: &str,
        nominal: Quantity,
        subject: &Case<'_>,
    ) -> Option<&'static Self> {
        let fits = |tolerance: &&Self| {
            tolerance.property == property
                && tolerance.covers(nominal).unwrap_or(false)
                && tolerance
                    .only
                    .as_ref()
                    .is_none_or(|only| only.holds(subject))
        };
        TOLERANCES.iter().find(fits)
    }

    /// What else must be known for the tolerances of a property to hold.
    pub(crate) fn rest_on(property: &str) -> impl Iterator<Item = &'static str> {
        let of_it = TOLERANCES
            .iter()
            .filter(move |one| one.property == property);
        of_it.filter_map(|one| Some(one.only.as_ref()?.property.as_str()))
    }

    fn covers(&self, nominal: Quantity) -> Option<bool> {
        let mut covered = nominal.compare(self.to)?.is_le();
        if let Some(from) = self.from {
            covered &= nominal.compare(from)?.is_ge();
        }
        if let Some(over) = self.over {
            covered &= nominal.compare(over)?.is_gt();
        }
        Some(covered)
    }
}

impl Only {
    fn holds(&self, subject: &Case<'_>) -> bool {
        match evidence(&self.property, subject) {
            Evidence::Shown(fact) => match &fact.value {
                Value::Text(text) => self.values.contains(text),
                _ => false,
            },
            _ => false,
        }
    }
}

fn quantity<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Quantity, D::Error> {
    let text = String::deserialize(deserializer)?;
    Quantity::parse(&text).map_err(serde::de::Error::custom)
}

fn maybe_quantity<'de, D: Deserializer<'de>>(
    deserializer: D,
) -> Result<Option<Quantity>, D::Error> {
    quantity(deserializer).map(Some)
}

#[cfg(test)]
mod tests {
    #[test]
    fn the_embedded_tolerances_read() {
        if let Err(error) = super::load() {
            panic!("{error}");
        }
    }
}
