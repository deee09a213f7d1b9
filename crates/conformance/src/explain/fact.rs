//! The fact that a verdict used, in words.

use measure::{Quantity, Unit, print};
use site::{Fact, ProductFact, ProvenanceKind, Value};

use super::SubjectMatter;
use crate::assessment::{Assessment, Detail};
use crate::comparison::readings;
use crate::explanation::{FactUsed, Readings, ShareUsed};

/// The fact that a verdict used, if it used one.
pub(crate) fn used(found: &Assessment<'_>) -> Option<FactUsed> {
    let fact = found.fact?;
    let decided = match &found.detail {
        Detail::Bound(compared, _) => Some(compared.value),
        Detail::Said(said) => said.value,
        _ => None,
    };
    Some(in_full(fact, decided))
}

/// A fact, with the reading that decided.
fn in_full(fact: &Fact, decided: Option<Quantity>) -> FactUsed {
    let value = match fact.value {
        Value::Quantity(quantity) => Some(quantity),
        _ => None,
    };
    FactUsed {
        property: fact.asked_as().to_owned(),
        title: SubjectMatter::of_property(fact.asked_as()).title,
        value: decided.map_or_else(|| value_in_words(&fact.value), print::both),
        quantity: decided.or(value),
        readings: readings_of(fact, decided),
        provenance: provenance(fact),
        date: fact.provenance.date,
        place: fact.cell.as_ref().map(ToString::to_string),
        cell: fact.cell.clone(),
    }
}

/// The movement that a verdict turned on, where that is a length.
pub(crate) fn share(found: &Assessment<'_>) -> Option<ShareUsed> {
    let share = found.share.as_deref()?;
    let percent = |number| Quantity::new(number, Unit::Percent);
    Some(ShareUsed {
        movement: share.movement,
        width: in_full(share.width_fact, Some(share.width)),
        is_as_found: share.is_as_found,
        percent: percent(share.percent),
        least: percent(share.between.low),
        greatest: percent(share.between.high),
        words: format!("{}{}", share.words(None), share.range_words(None)),
    })
}

/// A value in words, a quantity in both systems.
pub(crate) fn value_in_words(value: &Value) -> String {
    match value {
        Value::Quantity(quantity) => print::both(*quantity),
        Value::Product(ProductFact {
            maker: Some(maker),
            product,
        }) => format!("{product} ({maker})"),
        other => other.to_string(),
    }
}

/// Where a fact comes from, its readings left to [`Readings`].
pub(crate) fn provenance(fact: &Fact) -> String {
    match &fact.provenance.kind {
        ProvenanceKind::Measured {
            instrument,
            resolution,
            ..
        } => match resolution {
            Some(resolution) => format!("measured: {instrument}, to {resolution}"),
            None => format!("measured: {instrument}"),
        },
        other => other.to_string(),
    }
}

fn readings_of(fact: &Fact, decided: Option<Quantity>) -> Option<Readings> {
    let ProvenanceKind::Measured { readings, .. } = &fact.provenance.kind else {
        return None;
    };
    let extreme = |wanted: core::cmp::Ordering| {
        readings.iter().copied().reduce(|extreme, other| {
            if other.compare(extreme) == Some(wanted) {
                other
            } else {
                extreme
            }
        })
    };
    let smallest = extreme(core::cmp::Ordering::Less)?;
    let largest = extreme(core::cmp::Ordering::Greater)?;
    let mean = readings::mean(readings);
    let count = readings.len();
    let words = in_words(count, smallest, largest, mean, decided);
    Some(Readings {
        count,
        smallest,
        largest,
        mean,
        words,
    })
}

fn in_words(
    count: usize,
    smallest: Quantity,
    largest: Quantity,
    mean: Option<Quantity>,
    decided: Option<Quantity>,
) -> String {
    if count == 1 {
        return format!("1 reading, {smallest}");
    }
    let mean = mean
        .map(|mean| format!(", mean {mean}"))
        .unwrap_or_default();
    let decided = decided
        .map(|decided| format!("; {decided} decided"))
        .unwrap_or_default();
    format!("{count} readings, {smallest} to {largest}{mean}{decided}")
}
