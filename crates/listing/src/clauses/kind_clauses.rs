//! The kinds that stand beside numbers, as clauses: "lightweight", "mineral wool".

use vocabulary::{Property, vocabulary};

use super::bounds::Reading;
use super::context::Context;
use super::draft::{Draft, Yield};
use super::kinds::{Kind, kinds};
use super::leftover::{Role, Segment};
use crate::model::{Condition, Confidence, ProductName, Requirement, Span};
use crate::naming::Mention;

impl Context<'_, '_> {
    /// The kinds that the words of the numbers' clauses speak of: a clause for each property, whatever kinds of it the sentence allows.
    pub(super) fn kinds(
        &self,
        readings: &[Reading],
        parts: &[(Segment, Role)],
        mentions: &[Mention],
        found: &mut Yield,
    ) {
        let spoken = kinds(self.sentence, mentions);
        let shown: Vec<(&Reading, Segment)> = readings
            .iter()
            .filter_map(|reading| Some((reading, self.extent(reading, parts)?)))
            .collect();
        let beside = |kind: &Kind<'_>| {
            shown
                .iter()
                .find(|(_, extent)| extent.first <= kind.first && kind.last <= extent.last)
                .map(|(reading, _)| *reading)
        };
        let beside_numbers: Vec<(&Kind<'_>, &Reading)> = spoken
            .iter()
            .filter_map(|kind| Some((kind, beside(kind)?)))
            .collect();
        let mut properties: Vec<&'static Property> = Vec::new();
        for (kind, _) in &beside_numbers {
            if !properties
                .iter()
                .any(|held| held.name == kind.property.name)
            {
                properties.push(kind.property);
            }
        }
        for property in properties {
            let own: Vec<_> = beside_numbers
                .iter()
                .copied()
                .filter(|(kind, _)| kind.property.name == property.name)
                .collect();
            let draft = self.kind_clause(property, &own);
            let again = found.clauses.iter().any(|held| {
                (
                    &held.property,
                    &held.requirement,
                    &held.condition,
                    &held.options,
                ) == (
                    &draft.property,
                    &draft.requirement,
                    &draft.condition,
                    &draft.options,
                )
            });
            if !again {
                found.clauses.push(draft);
            }
        }
    }

    /// One clause for the kinds of one property.
    fn kind_clause(&self, property: &'static Property, own: &[(&Kind<'_>, &Reading)]) -> Draft {
        let governed: Vec<_> = own
            .iter()
            .map(|(kind, reading)| {
                let (condition, options) =
                    self.governed(reading.amounts.first().copied().unwrap_or(0));
                // "Lightweight" that parts its number from another's is no condition of itself.
                let words = self.sentence.source_of(kind.first, kind.last);
                let apart = |condition: &Condition| {
                    condition.span.end() <= words.start() || words.end() <= condition.span.start()
                };
                (condition.filter(apart), options)
            })
            .collect();
        let alike = governed.windows(2).all(|pair| pair.first() == pair.last());
        let (condition, options) = governed
            .into_iter()
            .next()
            .filter(|_| alike)
            .unwrap_or_else(|| (None, self.around.options.clone()));
        let mut names: Vec<ProductName> = Vec::new();
        let mut values: Vec<&str> = Vec::new();
        for (kind, _) in own {
            if !values.contains(&kind.value.name.as_str()) {
                values.push(&kind.value.name);
                names.push(ProductName {
                    maker: String::new(),
                    product: kind.words.to_owned(),
                });
            }
        }
        let span = own
            .iter()
            .map(|(kind, _)| self.sentence.source_of(kind.first, kind.last))
            .reduce(Span::join)
            .unwrap_or_default();
        let denied = own.iter().any(|(kind, _)| kind.denied);
        let component = vocabulary().component(&property.component);
        Draft {
            span,
            property: property.name.clone(),
            component: component.map_or_else(String::new, |own| own.title.to_lowercase()),
            attribute: property.attribute.replace('_', " "),
            requirement: if denied {
                Requirement::Prose
            } else {
                Requirement::Named { names }
            },
            condition,
            options,
            read_by: vec!["kind beside a number".to_owned()],
            confidence: if denied {
                Confidence::Prose
            } else if alike {
                Confidence::ByRule
            } else {
                Confidence::WithDoubt
            },
        }
    }
}
