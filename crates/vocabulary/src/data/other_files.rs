//! The files that are about no one component.

use measure::{Dimension, Quantity};
use serde::Deserialize;
use serde::de::DeserializeOwned;

use super::DataError;
use crate::attribute::Attribute;
use crate::movement::MovementClass;
use crate::property::Cues;
use crate::rating::{Rating, TemperatureLimit};
use crate::standard::Standard;
use crate::term::Term;

/// All that is about no one component.
pub(crate) struct Common {
    pub(crate) attributes: Vec<Attribute>,
    pub(crate) movement_classes: Vec<MovementClass>,
    pub(crate) ratings: Vec<Rating>,
    pub(crate) limits: Vec<TemperatureLimit>,
    pub(crate) standards: Vec<Standard>,
    pub(crate) terms: Vec<Term>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct AttributesFile {
    #[serde(rename = "attribute")]
    attributes: Vec<AttributeEntry>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct AttributeEntry {
    name: String,
    title: String,
    definition: String,
    dimensions: Vec<String>,
    before: Vec<String>,
    after: Vec<String>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct MovementFile {
    #[serde(rename = "class")]
    classes: Vec<MovementClass>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RatingsFile {
    #[serde(rename = "rating")]
    ratings: Vec<Rating>,
    #[serde(rename = "limit")]
    limits: Vec<LimitEntry>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct LimitEntry {
    name: String,
    title: String,
    definition: String,
    rise: String,
    rise_metric: Option<String>,
    source: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct StandardsFile {
    #[serde(rename = "standard")]
    standards: Vec<Standard>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct TermsFile {
    #[serde(rename = "term")]
    terms: Vec<Term>,
}

/// Reads them all.
pub(super) fn read() -> Result<Common, DataError> {
    let attributes: AttributesFile = file(
        "attributes.toml",
        include_str!("../../data/attributes.toml"),
    )?;
    let movement: MovementFile = file("movement.toml", include_str!("../../data/movement.toml"))?;
    let ratings: RatingsFile = file("ratings.toml", include_str!("../../data/ratings.toml"))?;
    let standards: StandardsFile =
        file("standards.toml", include_str!("../../data/standards.toml"))?;
    let terms: TermsFile = file("terms.toml", include_str!("../../data/terms.toml"))?;

    let attributes = attributes.attributes.into_iter().map(AttributeEntry::typed);
    let limits = ratings.limits.into_iter().map(LimitEntry::typed);
    Ok(Common {
        attributes: attributes
            .collect::<Result<_, _>>()
            .map_err(|e| DataError::new("attributes.toml", &e))?,
        movement_classes: movement.classes,
        ratings: ratings.ratings,
        limits: limits
            .collect::<Result<_, _>>()
            .map_err(|e| DataError::new("ratings.toml", &e))?,
        standards: standards.standards,
        terms: terms.terms,
    })
}

fn file<T: DeserializeOwned>(name: &str, text: &str) -> Result<T, DataError> {
    toml::from_str(text).map_err(|e| DataError::new(name, &e))
}

impl AttributeEntry {
    fn typed(self) -> Result<Attribute, String> {
        let mut dimensions = Vec::new();
        for name in &self.dimensions {
            let dimension: Dimension = name.parse().map_err(|e| format!("{}: {e}", self.name))?;
            dimensions.push(dimension);
        }
        Ok(Attribute {
            name: self.name,
            title: self.title,
            definition: self.definition,
            dimensions,
            cues: Cues {
                before: self.before,
                after: self.after,
            },
        })
    }
}

impl LimitEntry {
    fn typed(self) -> Result<TemperatureLimit, String> {
        let quantity =
            |text: &str| Quantity::parse(text).map_err(|e| format!("{}: {e}", self.name));
        Ok(TemperatureLimit {
            rise: quantity(&self.rise)?,
            rise_metric: self.rise_metric.as_deref().map(quantity).transpose()?,
            name: self.name.clone(),
            title: self.title,
            definition: self.definition,
            source: self.source,
        })
    }
}
