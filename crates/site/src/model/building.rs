//! The building, its storeys and its rated barriers.

use std::collections::BTreeMap;

use measure::Quantity;
use serde::{Deserialize, Serialize};

use super::{Fact, Value};

/// The building the joints are in.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize, schemars::JsonSchema)]
pub struct Building {
    /// What it is called; empty when no building file was given.
    pub name: String,
    /// The edition of the building code it is under, as its drawings state it.
    pub code_edition: Option<String>,
    /// The storeys, in the file's order; empty when they weren't listed.
    pub storeys: Vec<Storey>,
    /// Whatever else the reader should know.
    pub note: Option<String>,
}

/// A storey of the building.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, schemars::JsonSchema)]
pub struct Storey {
    /// What it is called on the drawings, such as `L3`.
    pub name: String,
    /// The height of its floor above the drawings' datum; negative below it.
    pub elevation: Option<Quantity>,
}

/// A rated wall or floor of the building.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize, schemars::JsonSchema)]
pub struct Barrier {
    /// What it is called on the drawings, such as `FB-2`.
    pub name: String,
    /// What it is, in the project's own words: wall, floor, shaft.
    pub kind: String,
    /// What it separates, in words.
    pub title: String,
    /// What is known of it, by property: `barrier.rating`, `barrier.smoke_barrier`.
    pub facts: BTreeMap<String, Fact>,
}

impl Barrier {
    /// The property that says how long the barrier is to resist fire.
    pub const RATING: &'static str = "barrier.rating";
    /// The property that says whether it also limits smoke.
    pub const SMOKE_BARRIER: &'static str = "barrier.smoke_barrier";

    /// The fire-resistance rating that the drawings ask of it; none when nobody said.
    pub fn rating(&self) -> Option<Quantity> {
        match self.facts.get(Self::RATING)?.value {
            Value::Quantity(rating) => Some(rating),
            _ => None,
        }
    }

    /// Whether it is also a smoke barrier; none when nobody said.
    pub fn smoke_barrier(&self) -> Option<bool> {
        match self.facts.get(Self::SMOKE_BARRIER)?.value {
            Value::Flag(smoke) => Some(smoke),
            _ => None,
        }
    }
}
