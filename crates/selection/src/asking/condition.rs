//! What a condition is found from.

use site::{Judgment, Provenance, Value};

use super::Asked;

/// All that listings are found from for a joint or mark. Two that are equal find the same, whatever cells they were read from and
/// whatever the joints are called.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct Condition {
    /// The joint and mark, where people have decided something of either: a decision is looked up by their names.
    judged: Option<(String, String)>,
    judgments: Vec<Judgment>,
    /// What is known, in order.
    facts: Vec<(String, Value, Provenance)>,
}

impl Condition {
    /// How many facts and decisions it has.
    pub const fn len(&self) -> usize {
        self.facts.len() + self.judgments.len()
    }

    /// Whether nothing is known.
    pub const fn is_empty(&self) -> bool {
        self.len() == 0
    }
}

impl Asked {
    /// All that listings are found from.
    pub fn condition(&self) -> Condition {
        let names = || (self.name.clone(), self.mark.clone());
        let subject = self.subject();
        let facts = subject.facts.iter();
        let known = facts.map(|fact| {
            let value = fact.value.clone();
            (fact.property.clone(), value, fact.provenance.clone())
        });
        Condition {
            judged: (!self.judgments.is_empty()).then(names),
            judgments: self.judgments.clone(),
            facts: known.collect(),
        }
    }
}
