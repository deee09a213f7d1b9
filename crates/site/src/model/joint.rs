//! Marks, and the joints of each.

use std::collections::{BTreeMap, BTreeSet};

use measure::Quantity;
use serde::{Deserialize, Serialize};

use super::Fact;

/// A type of joint, as drawings tag it.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize, schemars::JsonSchema)]
pub struct Mark {
    /// The tag, such as `HW1`.
    pub name: String,
    /// The type in words.
    pub title: String,
    /// The listing it is to be built to: a designation or a file's stem.
    pub listing: Option<String>,
    /// What is known of every joint of the mark, by property.
    pub facts: BTreeMap<String, Fact>,
}

/// One run of a mark at a place.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize, schemars::JsonSchema)]
pub struct Joint {
    /// What it is called, such as `J-001`.
    pub name: String,
    /// The mark it is of. In a project without a marks file, a joint with no mark is a type of its own and bears its own name.
    pub mark: String,
    /// The listing it is to be built to, where that isn't its mark's.
    pub listing: Option<String>,
    /// The storey it is on.
    pub storey: Option<String>,
    /// The barrier it is part of.
    pub barrier: Option<String>,
    /// Where it is on the building's grid.
    pub grid: Option<String>,
    /// How long it is; also a fact, `joint.length`.
    pub length: Option<Quantity>,
    /// What is known of this joint, by property; it overrides what is known of its mark and barrier.
    pub facts: BTreeMap<String, Fact>,
    /// Properties that the schedule says are not known at this joint (`?`, `TBD`): for these, not even what is known
    /// of its mark or barrier counts.
    pub not_known: BTreeSet<String>,
}
