//! Looking up what is known of one property.

use conformance::{Finding, JointResult, Subject, Verdict, goes_by};
use listing::{Clause, Reading, Relation};
use measure::{Dimension, Quantity};
use site::{Fact, FactsFor, Value};

use super::value::{Length, Origin};

/// What is known of a joint: its facts, and what its listing asks for and was found of it.
#[derive(Debug, Clone, Copy)]
pub struct Known<'a> {
    /// The joint's facts.
    pub subject: &'a Subject<'a>,
    /// Its listing, where one is named.
    pub listing: Option<(&'a Reading, &'a JointResult)>,
}

impl<'a> Known<'a> {
    /// What is known that counts beside this listing.
    fn facts(&self) -> FactsFor<'a> {
        match self.listing {
            Some((reading, _)) => self.subject.facts.for_listing(&goes_by(reading)),
            None => self.subject.facts.for_any_listing(),
        }
    }

    /// The fact on a property: of the item named, where one is and a fact names it.
    pub(super) fn fact(&self, property: &str, item: Option<&str>) -> Option<&'a Fact> {
        let facts = self.facts();
        let of_item = item.and_then(|item| facts.get(&format!("{item}:{property}")));
        of_item.or_else(|| facts.get(property)).or_else(|| {
            // A fact that names some item of the listing, where only one does.
            let named = facts.iter();
            let mut named = named.filter(
                |(name, _)| matches!(name.split_once(':'), Some((_, rest)) if rest == property),
            );
            let (_, first) = named.next()?;
            named
                .all(|(_, other)| other.value == first.value)
                .then_some(first)
        })
    }

    /// A text value: the fact's, by the vocabulary's name.
    pub(super) fn text(&self, property: &str) -> Option<&'a str> {
        match &self.fact(property, None)?.value {
            Value::Text(text) => Some(text),
            _ => None,
        }
    }

    /// A yes or no.
    pub(super) fn flag(&self, property: &str) -> Option<bool> {
        match self.fact(property, None)?.value {
            Value::Flag(flag) => Some(flag),
            _ => None,
        }
    }

    /// A quantity that is a fact.
    pub(super) fn quantity(&self, property: &str, dimension: Dimension) -> Option<Quantity> {
        match self.fact(property, None)?.value {
            Value::Quantity(quantity) if quantity.dimension() == dimension => Some(quantity),
            _ => None,
        }
    }

    /// A length: the fact's; else what the listing asks for.
    pub(super) fn length(&self, property: &str) -> Option<Length> {
        self.length_of(property, None)
    }

    /// As [`length`](Self::length), of an item of the listing.
    pub(super) fn length_of(&self, property: &str, item: Option<&str>) -> Option<Length> {
        let known = self.fact(property, item).and_then(|fact| match fact.value {
            Value::Quantity(quantity) => {
                Length::new(quantity, Origin::Fact(fact.provenance.kind.to_string()))
            }
            _ => None,
        });
        known.or_else(|| {
            let (value, words) = self.asked(property)?;
            Length::new(value, Origin::Listing(words))
        })
    }

    /// A count: the fact's; else what the listing asks for; at most `most`.
    pub(super) fn count(&self, property: &str, most: u8) -> Option<u8> {
        let known = self.quantity(property, Dimension::Count);
        let count = known.or_else(|| Some(self.asked(property)?.0))?;
        let whole = count.number.is_whole().then(|| count.number.numerator())?;
        u8::try_from(whole)
            .ok()
            .filter(|count| (1..=most).contains(count))
    }

    /// What the listing asks of a property at this joint, with its words.
    pub(super) fn asked(&self, property: &str) -> Option<(Quantity, String)> {
        let (clause, finding) = self.applying(property).next()?;
        let bound = clause.bound()?;
        let value = match bound.relation {
            Relation::AtMost | Relation::LessThan => bound.high(),
            _ => bound.low(),
        }?;
        Some((value, finding.explanation.requirement.clone()))
    }

    /// The clauses on a property that apply to this joint, in listing order.
    pub(super) fn applying(
        &self,
        property: &str,
    ) -> impl Iterator<Item = (&'a Clause, &'a Finding)> {
        let listing = self.listing;
        let findings = listing.into_iter().flat_map(|(_, result)| &result.findings);
        findings
            .filter(move |finding| {
                finding.explanation.property == property
                    && finding.verdict != Verdict::NotApplicable
            })
            .filter_map(move |finding| {
                let (reading, _) = listing?;
                let id = &finding.explanation.clause;
                let clause = reading.clauses.iter().find(|clause| clause.id == *id)?;
                Some((clause, finding))
            })
    }

    /// Whether the listing asks anything about a component at this joint.
    pub(super) fn asks_of(&self, component: &str) -> bool {
        self.listing.is_some_and(|(_, result)| {
            result.findings.iter().any(|finding| {
                finding.verdict != Verdict::NotApplicable
                    && is_of(&finding.explanation.property, component)
            })
        })
    }

    /// Whether anything is known of a component.
    pub(super) fn knows_of(&self, component: &str) -> bool {
        self.facts().iter().any(|(name, _)| {
            let property = name.split_once(':').map_or(name, |(_, rest)| rest);
            is_of(property, component)
        })
    }
}

/// Whether a property is one of a component's.
pub(crate) fn is_of(property: &str, component: &str) -> bool {
    property
        .strip_prefix(component)
        .is_some_and(|rest| rest.starts_with('.'))
}
