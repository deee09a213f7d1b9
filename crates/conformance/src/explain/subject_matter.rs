//! What a finding is about: a property's title, who owns it and when it can be seen.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use listing::Clause;
use vocabulary::{Component, Property, Stage, Trade, vocabulary};

use crate::words::{capitalised, in_sentence, normal, verb};

/// What a finding is about.
#[derive(Debug, Clone)]
pub(crate) struct SubjectMatter {
    pub(crate) property: String,
    pub(crate) title: String,
    pub(crate) trade: Option<Trade>,
    pub(crate) stages: Vec<Stage>,
    pub(crate) instrument: Option<String>,
}

impl SubjectMatter {
    /// A clause's property; a local one by the component's and attribute's plain words.
    pub(crate) fn of_clause(clause: &Clause, property: Option<&Property>) -> Self {
        if let Some(property) = property {
            return Self::known(property);
        }
        let words = format!("{} {}", clause.component.trim(), clause.attribute.trim());
        let title = match words.trim() {
            "" => "this clause".to_owned(),
            words => capitalised(words),
        };
        let component =
            component_of(&clause.property).or_else(|| component_named(&clause.component));
        Self {
            property: clause.property.clone(),
            title,
            trade: component.map(|component| component.trade),
            stages: Vec::new(),
            instrument: None,
        }
    }

    /// A property by its name.
    pub(crate) fn of_property(name: &str) -> Self {
        // Of one item's part it is the property all the same: `2A:runner.gauge`.
        let plain = name.split_once(':').map_or(name, |(_, plain)| plain);
        match vocabulary().property(plain) {
            Some(property) => Self::known(property),
            None => Self {
                property: name.to_owned(),
                title: plain.replace(['.', '_'], " "),
                trade: component_of(name).map(|component| component.trade),
                stages: Vec::new(),
                instrument: None,
            },
        }
    }

    /// Which option is built.
    pub(crate) fn of_option(property: &str, trade: Option<Trade>) -> Self {
        Self {
            property: property.to_owned(),
            title: "Option built".to_owned(),
            trade: trade.or(Some(Trade::Design)),
            stages: Vec::new(),
            instrument: None,
        }
    }

    fn known(property: &Property) -> Self {
        let instrument =
            property
                .instruments
                .first()
                .map(|instrument| match instrument.resolution {
                    Some(resolution) => format!("{}, to {resolution}", instrument.name),
                    None => instrument.name.clone(),
                });
        Self {
            property: property.name.clone(),
            title: property.title.clone(),
            trade: Some(property.trade),
            stages: property.stages.clone(),
            instrument,
        }
    }

    /// Whether the property is the listing's own, and not one of the vocabulary's.
    pub(crate) fn is_local(&self) -> bool {
        vocabulary().property(&self.property).is_none()
    }

    /// The title inside a sentence.
    pub(crate) fn in_sentence(&self) -> String {
        in_sentence(&self.title)
    }

    /// The title at the beginning of a sentence, with its verb: "Packing depth is", "Board layers are".
    pub(crate) fn with_verb(&self) -> String {
        format!("{} {}", capitalised(&self.title), verb(&self.title))
    }

    /// The last stage at which it can be seen without opening anything up.
    pub(crate) fn until(&self) -> Option<Stage> {
        let without_opening = self
            .stages
            .iter()
            .copied()
            .filter(|stage| *stage != Stage::OpeningUp);
        without_opening
            .max()
            .or_else(|| self.stages.last().copied())
    }
}

/// Who owns what a clause is about, where the vocabulary knows.
pub(crate) fn trade_of(clause: &Clause, property: Option<&Property>) -> Option<Trade> {
    let by_component = || {
        let component =
            component_of(&clause.property).or_else(|| component_named(&clause.component));
        component.map(|component| component.trade)
    };
    property
        .map(|property| property.trade)
        .or_else(by_component)
}

fn component_of(property: &str) -> Option<&'static Component> {
    let (component, _) = property.split_once('.')?;
    vocabulary().component(component)
}

/// The components by their titles and nouns; of two that go by one name, the first.
static BY_NAME: LazyLock<BTreeMap<String, &'static Component>> = LazyLock::new(|| {
    let mut by_name = BTreeMap::new();
    for component in vocabulary().components() {
        let nouns = component.nouns.iter().cloned();
        for name in core::iter::once(normal(&component.title)).chain(nouns) {
            by_name.entry(name).or_insert(component);
        }
    }
    by_name
});

fn component_named(words: &str) -> Option<&'static Component> {
    let wanted = normal(words);
    if wanted.is_empty() {
        return None;
    }
    BY_NAME.get(&wanted).copied()
}
