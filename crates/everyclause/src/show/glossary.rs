//! What a word of the trade means.

use serde::Serialize;
use vocabulary::{Component, Entry as Meaning, Property, ValueKind, vocabulary};

use super::page::{labelled, wrapped};
use super::paint::{QUIET, STRONG, paint};
use super::words::listed;

/// One meaning of a word, for programs.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub(crate) struct Entry {
    title: String,
    kind: &'static str,
    definition: String,
    details: Vec<(String, String)>,
}

impl Entry {
    /// One meaning with all that is known of it.
    pub(crate) fn of(meaning: &Meaning<'_>) -> Self {
        Self {
            title: meaning.title().to_owned(),
            kind: meaning.kind(),
            definition: meaning.definition().to_owned(),
            details: details(meaning)
                .into_iter()
                .map(|(label, words)| (label.to_owned(), words))
                .collect(),
        }
    }
}

/// Every meaning, one after the other.
pub(crate) fn glossary(meanings: &[Meaning<'_>]) -> String {
    let mut text = String::new();
    for (at, meaning) in meanings.iter().enumerate() {
        if at > 0 {
            text.push('\n');
        }
        text.push_str(&format!(
            "{}  {}\n",
            paint(STRONG, meaning.title()),
            paint(QUIET, meaning.kind())
        ));
        text.push_str(&wrapped(meaning.definition(), 2, 0));
        for (label, words) in details(meaning) {
            if !words.is_empty() {
                text.push_str(&labelled(label, &words, 2, 18));
            }
        }
    }
    text
}

fn details(meaning: &Meaning<'_>) -> Vec<(&'static str, String)> {
    match meaning {
        Meaning::Component(component) => of_component(component),
        Meaning::Property(property) => of_property(property),
        Meaning::Term(term) => vec![("also called", term.synonyms.join(", "))],
        Meaning::Standard(standard) => {
            vec![
                ("kind", standard.kind.title().to_owned()),
                ("also written", standard.synonyms.join(", ")),
            ]
        }
        Meaning::MovementClass(class) => {
            let phases = class
                .phases
                .iter()
                .map(|phase| format!("{} cycles at {} a minute", phase.cycles, phase.per_minute));
            vec![
                ("cause", class.cause.clone()),
                ("cycling", phases.collect::<Vec<_>>().join(", then ")),
                ("source", class.source.clone()),
            ]
        }
        Meaning::Rating(rating) => vec![("standards", rating.standards.join(", "))],
        Meaning::Attribute(attribute) => {
            let having: Vec<&str> = vocabulary()
                .properties()
                .filter(|property| {
                    property.attribute == attribute.name
                        || property.concept.as_ref() == Some(&attribute.name)
                })
                .map(|property| property.name.as_str())
                .collect();
            vec![("properties", having.join(", "))]
        }
        Meaning::TemperatureLimit(_) => Vec::new(),
    }
}

fn of_component(component: &Component) -> Vec<(&'static str, String)> {
    let properties: Vec<&str> = component
        .properties
        .iter()
        .map(|property| property.name.as_str())
        .collect();
    vec![
        ("trade", component.trade.title().to_owned()),
        ("listings call it", singular(&component.nouns)),
        ("or perhaps", singular(&component.weak_nouns)),
        ("properties", properties.join(", ")),
    ]
}

/// The nouns without the plurals of others.
fn singular(nouns: &[String]) -> String {
    let is_plural = |noun: &str| {
        nouns.iter().any(|other| {
            noun.strip_suffix('s') == Some(other) || noun.strip_suffix("es") == Some(other)
        })
    };
    nouns
        .iter()
        .map(String::as_str)
        .filter(|noun| !is_plural(noun))
        .collect::<Vec<_>>()
        .join(", ")
}

fn of_property(property: &Property) -> Vec<(&'static str, String)> {
    let values = match &property.kind {
        ValueKind::Quantity(dimension) => format!("a {}", dimension.name().replace('_', " ")),
        ValueKind::Text(values) => {
            let values: Vec<String> = values
                .iter()
                .map(|value| {
                    if value.synonyms.is_empty() {
                        value.name.clone()
                    } else {
                        format!("{} ({})", value.name, value.synonyms.join(", "))
                    }
                })
                .collect();
            format!("one of {}", values.join("; "))
        }
        ValueKind::Flag => "yes or no".to_owned(),
        ValueKind::Product => "a product, as `Maker | Product`".to_owned(),
    };
    let instruments = property
        .instruments
        .iter()
        .map(|instrument| match instrument.resolution {
            Some(resolution) => format!("{} (to {resolution})", instrument.name),
            None => instrument.name.clone(),
        });
    let stages: Vec<&str> = property.stages.iter().map(|stage| stage.title()).collect();
    let cues: Vec<&str> = property
        .cues
        .before
        .iter()
        .chain(&property.cues.after)
        .map(String::as_str)
        .collect();
    vec![
        ("column", property.name.clone()),
        ("value", values),
        ("trade", property.trade.title().to_owned()),
        ("can be seen", listed(&stages)),
        ("measured with", instruments.collect::<Vec<_>>().join(", ")),
        ("listings say", cues.join(", ")),
    ]
}
