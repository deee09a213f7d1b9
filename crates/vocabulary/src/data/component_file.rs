//! One component's file.

use measure::{Dimension, Quantity};
use serde::Deserialize;

use super::DataError;
use crate::component::Component;
use crate::instrument::{Instrument, Step};
use crate::nature::Nature;
use crate::property::{Cues, Property, TextValue, ValueKind};
use crate::stage::Stage;
use crate::trade::Trade;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct ComponentFile {
    name: String,
    title: String,
    definition: String,
    trade: Trade,
    nouns: Vec<String>,
    #[serde(default)]
    weak_nouns: Vec<String>,
    #[serde(rename = "property", default)]
    properties: Vec<PropertyEntry>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct PropertyEntry {
    attribute: String,
    concept: Option<String>,
    dimension: String,
    nature: Nature,
    title: String,
    definition: String,
    trade: Option<Trade>,
    stages: Vec<Stage>,
    #[serde(default)]
    instruments: Vec<InstrumentEntry>,
    #[serde(default)]
    cues_before: Vec<String>,
    #[serde(default)]
    cues_after: Vec<String>,
    #[serde(default)]
    onto: Vec<String>,
    plausible: Option<[String; 2]>,
    #[serde(default)]
    values: Vec<TextValueEntry>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct InstrumentEntry {
    name: String,
    resolution: Option<String>,
    #[serde(default)]
    steps: Vec<StepEntry>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct StepEntry {
    up_to: String,
    step: String,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct TextValueEntry {
    name: String,
    title: Option<String>,
    #[serde(default)]
    synonyms: Vec<String>,
}

/// Reads a component's file.
pub(super) fn read(file: &str, text: &str) -> Result<Component, DataError> {
    let entry: ComponentFile = toml::from_str(text).map_err(|e| DataError::new(file, &e))?;
    let mut properties = Vec::new();
    for property in entry.properties {
        let attribute = property.attribute.clone();
        let read = property.typed(&entry.name, entry.trade);
        properties.push(read.map_err(|e| DataError::new(file, &format!("{attribute}: {e}")))?);
    }
    Ok(Component {
        name: entry.name,
        title: entry.title,
        definition: entry.definition,
        trade: entry.trade,
        nouns: entry.nouns,
        weak_nouns: entry.weak_nouns,
        properties,
    })
}

impl PropertyEntry {
    fn typed(self, component: &str, owner: Trade) -> Result<Property, String> {
        let kind = match self.dimension.as_str() {
            "text" => ValueKind::Text(self.values.into_iter().map(TextValueEntry::typed).collect()),
            "flag" => ValueKind::Flag,
            "product" => ValueKind::Product,
            name => ValueKind::Quantity(name.parse::<Dimension>().map_err(|e| e.to_string())?),
        };
        let of_quantity = matches!(kind, ValueKind::Quantity(_));
        let concept = of_quantity.then(|| self.concept.unwrap_or_else(|| self.attribute.clone()));
        let mut instruments = Vec::new();
        for instrument in self.instruments {
            instruments.push(instrument.typed()?);
        }
        let plausible = match &self.plausible {
            Some([least, most]) => Some((quantity(least)?, quantity(most)?)),
            None => None,
        };
        Ok(Property {
            name: format!("{component}.{}", self.attribute),
            component: component.to_owned(),
            attribute: self.attribute,
            concept,
            title: self.title,
            definition: self.definition,
            kind,
            nature: self.nature,
            trade: self.trade.unwrap_or(owner),
            stages: self.stages,
            instruments,
            cues: Cues {
                before: self.cues_before,
                after: self.cues_after,
            },
            onto: self.onto,
            plausible,
        })
    }
}

impl InstrumentEntry {
    fn typed(self) -> Result<Instrument, String> {
        let resolution = self.resolution.as_deref().map(quantity).transpose()?;
        let mut steps = Vec::new();
        for entry in self.steps {
            steps.push(Step {
                up_to: quantity(&entry.up_to)?,
                step: quantity(&entry.step)?,
            });
        }
        Ok(Instrument {
            name: self.name,
            resolution,
            steps,
        })
    }
}

impl TextValueEntry {
    fn typed(self) -> TextValue {
        let title = self.title.unwrap_or_else(|| self.name.replace('-', " "));
        TextValue {
            name: self.name,
            title,
            synonyms: self.synonyms,
        }
    }
}

fn quantity(text: &str) -> Result<Quantity, String> {
    Quantity::parse(text).map_err(|e| e.to_string())
}
