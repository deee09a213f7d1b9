//! What the schedule knows of a joint, as the library takes it.

use engineering::{Known, Readings};
use measure::{Dimension, Quantity, print};
use site::{Fact, Facts, ProvenanceKind, Value};

/// A quantity of a fact, with its provenance.
pub(super) fn known(fact: &Fact, dimension: Dimension) -> Option<Known> {
    match &fact.value {
        Value::Quantity(quantity) if quantity.dimension() == dimension => {
            Some(Known::new(*quantity, fact.provenance.to_string()))
        }
        _ => None,
    }
}

/// The readings of a fact: all of them, else its value.
pub(super) fn readings(fact: &Fact) -> Option<Readings> {
    let value = known(fact, Dimension::Length)?;
    let (values, resolution) = match &fact.provenance.kind {
        ProvenanceKind::Measured {
            readings,
            resolution,
            ..
        } if !readings.is_empty() => (readings.clone(), *resolution),
        ProvenanceKind::Measured { resolution, .. } => (vec![value.quantity], *resolution),
        _ => (vec![value.quantity], None),
    };
    Some(Readings::new(values, resolution, value.provenance))
}

/// A product by its name, its maker left out.
pub(super) fn product(facts: &Facts<'_>, property: &str) -> Option<String> {
    match &facts.get(property)?.value {
        Value::Product(product) => Some(product.product.clone()),
        other => Some(other.to_string()),
    }
}

/// The packing as it is ordered: product and density.
pub(super) fn packing_product(facts: &Facts<'_>) -> Option<String> {
    let named = product(facts, "packing.product");
    let density = facts
        .get("packing.density")
        .map(|fact| fact.value.to_string());
    let parts: Vec<String> = named.into_iter().chain(density).collect();
    (!parts.is_empty()).then(|| parts.join(", "))
}

pub(super) fn counted(fact: &Fact) -> Option<u64> {
    match &fact.value {
        Value::Quantity(quantity) if quantity.number.is_whole() => {
            u64::try_from(quantity.number.numerator())
                .ok()
                .filter(|n| *n > 0)
        }
        _ => None,
    }
}

pub(super) fn widest(width: &Readings) -> Option<Quantity> {
    width.values.iter().copied().reduce(|widest, other| {
        if other
            .compare(widest)
            .is_some_and(core::cmp::Ordering::is_gt)
        {
            other
        } else {
            widest
        }
    })
}

pub(super) fn in_words(width: &Readings) -> String {
    let words: Vec<String> = width
        .values
        .iter()
        .map(|value| print::trade(*value))
        .collect();
    words.join(", ")
}
