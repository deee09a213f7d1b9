//! What named people have decided about clauses.

use jiff::civil::Date;
use serde::{Deserialize, Serialize};

/// A person's recorded decision on a clause that no fact can settle.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize, schemars::JsonSchema)]
pub struct Judgment {
    /// The joint or mark it was made for.
    pub scope: Scope,
    /// The listing it was made on, by its name alone, or with its document as facts name it (`hw-d-0412-ed4#0123456789abcdef`). None when it is whichever the joint is built to: then it is for a clause with all its words alone.
    pub listing: Option<String>,
    /// The clause's item, such as `3A`.
    pub item: String,
    /// The clause's words.
    pub words: String,
    /// What was decided.
    pub decision: Decision,
    /// Who decided.
    pub by: String,
    /// On which day.
    pub when: Date,
    /// On what ground.
    pub basis: String,
}

/// What a judgment is about.
#[derive(
    Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, schemars::JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum Scope {
    /// One joint, by name.
    Joint(String),
    /// Every joint of a mark, by the mark's name.
    Mark(String),
}

/// What was decided.
#[derive(
    Debug,
    Clone,
    Copy,
    PartialEq,
    Eq,
    PartialOrd,
    Ord,
    Hash,
    Serialize,
    Deserialize,
    schemars::JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum Decision {
    /// The clause is taken to be met.
    Accepted,
    /// The clause is taken not to be met.
    Rejected,
}
