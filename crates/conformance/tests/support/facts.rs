//! Facts, from one line each.

use measure::{Number, Quantity};
use site::{Fact, ProductFact, Provenance, ProvenanceKind, Value};

use super::quantity_of;

/// A fact from its line.
pub fn fact(line: &str) -> Fact {
    let (line, source) = line.split_once(" <- ").unwrap_or((line, "witnessed"));
    let (property, value) = line
        .split_once(" = ")
        .unwrap_or_else(|| panic!("`{line}` is no fact"));
    Fact {
        property: property.to_owned(),
        value: value_of(value),
        provenance: Provenance {
            kind: source_of(source),
            date: None,
        },
        cell: None,
    }
}

fn value_of(text: &str) -> Value {
    if text == "yes" || text == "no" {
        return Value::Flag(text == "yes");
    }
    if let Some(product) = text.strip_prefix("product ") {
        return Value::Product(ProductFact {
            maker: None,
            product: product.to_owned(),
        });
    }
    if let Some((maker, product)) = text.split_once(" | ") {
        return Value::Product(ProductFact {
            maker: Some(maker.to_owned()),
            product: product.to_owned(),
        });
    }
    if text.parse::<Number>().is_ok() {
        return Value::Quantity(quantity_of(text));
    }
    Quantity::parse(text).map_or_else(|_| Value::Text(text.to_owned()), Value::Quantity)
}

fn source_of(text: &str) -> ProvenanceKind {
    let (word, rest) = text.split_once(' ').unwrap_or((text, ""));
    match word {
        "drawing" => ProvenanceKind::Drawing {
            sheet: rest.to_owned(),
        },
        "submittal" => ProvenanceKind::Submittal {
            reference: rest.to_owned(),
        },
        "witnessed" => ProvenanceKind::Witnessed { by: None },
        "stated" => ProvenanceKind::StatedBy {
            who: rest.to_owned(),
        },
        "unstated" => ProvenanceKind::Unstated,
        "measured" => {
            let (resolution, readings) = rest.split_once(": ").unwrap_or((rest, ""));
            ProvenanceKind::Measured {
                instrument: "rule".to_owned(),
                resolution: (!resolution.is_empty()).then(|| quantity_of(resolution)),
                readings: readings
                    .split(", ")
                    .filter(|one| !one.is_empty())
                    .map(quantity_of)
                    .collect(),
            }
        }
        other => panic!("`{other}` is no source"),
    }
}
