//! What the schedule knows of a joint, as the library takes it.

use engineering::{Known, Readings};
use measure::{Dimension, Number, Quantity, print};
use site::{Fact, FactsFor, ProvenanceKind, Value};
use vocabulary::vocabulary;

use crate::asks::Asks;

/// A quantity of a fact, with its provenance.
pub(super) fn known(fact: &Fact, dimension: Dimension) -> Option<Known> {
    match &fact.value {
        Value::Quantity(quantity) if quantity.dimension() == dimension => {
            Some(Known::new(*quantity, fact.provenance.to_string()))
        }
        _ => None,
    }
}

/// The fact of a part: what is known of the part that an item describes, else of the property alone.
pub(super) fn of_item<'a>(
    facts: &FactsFor<'a>,
    item: Option<&str>,
    property: &str,
) -> Option<&'a Fact> {
    item.and_then(|item| facts.get(&format!("{item}:{property}")))
        .or_else(|| facts.get(property))
}

/// A length of a part, with its provenance.
pub(super) fn length(facts: &FactsFor<'_>, asks: &Asks<'_>, property: &str) -> Option<Known> {
    of_item(facts, asks.item_of(property), property).and_then(|fact| known(fact, Dimension::Length))
}

/// A way that a joint moves.
#[derive(Debug, Clone, Copy)]
pub(super) enum Moves {
    Closing,
    Opening,
}

impl Moves {
    /// The properties that state it: as a share of the width, and as a length.
    const fn stated(self) -> (&'static str, &'static str) {
        match self {
            Self::Closing => ("joint.movement_compression", "joint.closing_displacement"),
            Self::Opening => ("joint.movement_extension", "joint.opening_displacement"),
        }
    }
}

/// How far a joint moves; where a share of the width and a length are both stated, the greater.
pub(super) fn movement(facts: &FactsFor<'_>, width: &Readings, moves: Moves) -> Option<Known> {
    let (share, length) = moves.stated();
    let by_length = facts.get(length).and_then(readings).and_then(|readings| {
        let greatest = widest(&readings)?;
        Some(Known::new(greatest, readings.provenance))
    });
    match (by_length, by_share(facts, width, share)) {
        (Some(length), Some(share)) => {
            let is_greater = share.quantity.compare(length.quantity)?.is_gt();
            Some(if is_greater { share } else { length })
        }
        (one, other) => one.or(other),
    }
}

/// A share of the joint's width that moves, as a length: of its widest reading, so that none is too small.
fn by_share(facts: &FactsFor<'_>, width: &Readings, property: &str) -> Option<Known> {
    let share = known(facts.get(property)?, Dimension::Fraction)?;
    let part = share.quantity.number.over(Number::from(100))?;
    let by = widest(width)?.times(part)?;
    Some(Known::new(
        by,
        format!("{} of the width, {}", share.quantity, share.provenance),
    ))
}

/// The readings of a length of a part.
pub(super) fn lengths(facts: &FactsFor<'_>, asks: &Asks<'_>, property: &str) -> Option<Readings> {
    of_item(facts, asks.item_of(property), property).and_then(readings)
}

/// The readings of a fact: all of them, and its value where that is none of them. What was measured with nobody knows
/// what may be off by what the coarsest usual instrument leaves, as in the check.
pub(super) fn readings(fact: &Fact) -> Option<Readings> {
    let value = known(fact, Dimension::Length)?;
    let mut values = vec![value.quantity];
    let mut resolution = None;
    if let ProvenanceKind::Measured {
        readings,
        resolution: stated,
        ..
    } = &fact.provenance.kind
    {
        if !readings.is_empty() {
            values.clone_from(readings);
            if !readings.contains(&value.quantity) {
                values.push(value.quantity);
            }
        }
        resolution = stated.or_else(|| usual_resolution(fact, value.quantity));
    }
    Some(Readings::new(values, resolution, value.provenance))
}

fn usual_resolution(fact: &Fact, reading: Quantity) -> Option<Quantity> {
    let property = fact.asked_as().rsplit(':').next()?;
    vocabulary()
        .property(property)?
        .coarsest_resolution(reading)
}

/// The readings of a fact that was measured; none of what is drawn or stated.
pub(super) fn measured(fact: &Fact) -> Option<Readings> {
    match fact.provenance.kind {
        ProvenanceKind::Measured { .. } => readings(fact),
        _ => None,
    }
}

/// Whether somebody saw or measured it, or gave their word: a drawing and a submittal say what is meant to be built.
pub(super) const fn is_as_found(fact: &Fact) -> bool {
    !matches!(
        fact.provenance.kind,
        ProvenanceKind::Drawing { .. } | ProvenanceKind::Submittal { .. }
    )
}

/// A product by its name, its maker left out.
pub(super) fn product(facts: &FactsFor<'_>, item: Option<&str>, property: &str) -> Option<String> {
    match &of_item(facts, item, property)?.value {
        Value::Product(product) => Some(product.product.clone()),
        other => Some(other.to_string()),
    }
}

/// The packing as it is ordered: product and density. Of several packings, that of the gap: the one whose compression
/// is asked last, as listings describe what fills flutes before it.
pub(super) fn packing_product(facts: &FactsFor<'_>, item: Option<&str>) -> Option<String> {
    let named = product(facts, item, "packing.product");
    let density = of_item(facts, item, "packing.density").map(|fact| fact.value.to_string());
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

/// The greatest of several readings.
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
