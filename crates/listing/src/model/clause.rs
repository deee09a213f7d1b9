//! The smallest statement that can be met or not met.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::condition::Condition;
use super::requirement::{Bound, Requirement};
use super::span::Span;

/// The smallest statement of a listing that can be met or not met.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Clause {
    /// The item's path and the clause's place in it, such as `3A/2`.
    pub id: String,
    /// The path of the item it stands in; empty before the first item.
    pub item: String,
    /// Where it stands.
    pub span: Span,
    /// The words of the listing.
    pub words: String,
    /// `component.attribute` of the vocabulary, or a name local to the item.
    pub property: String,
    /// The component in plain words.
    pub component: String,
    /// The attribute in plain words.
    pub attribute: String,
    /// What is asked for.
    pub requirement: Requirement,
    /// When it applies; always, if none.
    pub condition: Option<Condition>,
    /// The option it belongs to, if it belongs to one.
    pub option: Option<String>,
    /// The rules that read it, in order.
    pub read_by: Vec<String>,
    /// How sure the reading is.
    pub confidence: Confidence,
    /// Whether a person has confirmed the reading.
    pub status: Status,
}

impl Clause {
    /// The bound, when the clause is one.
    pub const fn bound(&self) -> Option<&Bound> {
        match &self.requirement {
            Requirement::Bound(bound) => Some(bound),
            _ => None,
        }
    }

    /// The options it lies in: every entry must be chosen, each entry being any one of its names. Empty when it lies in none.
    pub fn within(&self) -> Vec<Vec<&str>> {
        let all = self
            .option
            .as_deref()
            .into_iter()
            .flat_map(|option| option.split(" & "));
        all.map(|entry| entry.split(" or ").collect()).collect()
    }

    /// Whether the property is one of the vocabulary's, and not local to the item.
    pub fn is_in_vocabulary(&self) -> bool {
        vocabulary::vocabulary().property(&self.property).is_some()
    }
}

/// How sure a reading is, by what a person may do with it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Confidence {
    /// A rule read every part of it: confirm it at a glance.
    ByRule,
    /// Read, but something about it is doubtful: look at the words before confirming.
    WithDoubt,
    /// Left as words: a person must answer it.
    Prose,
}

/// Whether a person has confirmed a reading.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Status {
    /// As the reader left it.
    Draft,
    /// A named person has confirmed it.
    Confirmed,
    /// A named person has corrected it.
    Corrected,
}
