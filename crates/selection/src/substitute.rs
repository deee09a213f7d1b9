//! What is known of a joint, were something otherwise: another product, or another value.

use conformance::Subject;
use site::{Fact, Provenance, Value, without_listing};
use vocabulary::{Nature, vocabulary};

/// What is known, with one property otherwise. Where values of single parts are known (`3A:packing.product`), each of them is.
pub fn with_value(
    facts: &[Fact],
    property: &str,
    value: &Value,
    provenance: &Provenance,
) -> Vec<Fact> {
    let is_it = |fact: &Fact| plain(&fact.property) == property;
    let otherwise = |name: &str| Fact {
        property: name.to_owned(),
        value: value.clone(),
        provenance: provenance.clone(),
        cell: None,
    };
    let mut known: Vec<Fact> = facts
        .iter()
        .map(|fact| {
            if is_it(fact) {
                otherwise(&fact.property)
            } else {
                fact.clone()
            }
        })
        .collect();
    if !facts.iter().any(is_it) {
        known.push(otherwise(property));
    }
    known
}

/// What is known, with another product of one component. What was known of the product before (its density, its
/// thickness) is not known of the other: nobody has said so.
pub fn with_product(
    facts: &[Fact],
    property: &str,
    value: &Value,
    provenance: &Provenance,
) -> Vec<Fact> {
    let component = property.split_once('.').map_or(property, |(one, _)| one);
    let is_of_the_product = |fact: &Fact| {
        let known = vocabulary().property(plain(&fact.property));
        known.is_some_and(|known| known.component == component && known.nature == Nature::Product)
    };
    let kept: Vec<Fact> = facts
        .iter()
        .filter(|fact| !is_of_the_product(fact))
        .cloned()
        .collect();
    with_value(&kept, property, value, provenance)
}

/// The joint, of which these facts are known instead.
pub fn subject_with<'a>(subject: &Subject<'a>, facts: &'a [Fact]) -> Subject<'a> {
    Subject {
        facts: facts.iter().collect(),
        ..subject.clone()
    }
}

/// The property without the part, and the listing, that it is known of.
fn plain(property: &str) -> &str {
    let property = without_listing(property);
    property
        .split_once(':')
        .map_or(property, |(_, plain)| plain)
}
