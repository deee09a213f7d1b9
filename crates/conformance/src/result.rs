//! The result of checking one joint.

use core::ops::Deref;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::explanation::Explanation;
use crate::verdict::{Counts, Overall, Standing, Verdict};

/// A verdict on one clause, and why.
///
/// A *finding* is what the program says; a *judgment* is what a named person decides.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Finding {
    /// The verdict.
    pub verdict: Verdict,
    /// Why.
    pub explanation: Explanation,
}

/// Everything found at one joint against one listing.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
#[non_exhaustive]
pub struct JointResult {
    /// The joint.
    pub joint: String,
    /// Its mark.
    pub mark: String,
    /// The listing's designation; the file's name where it has none.
    pub listing: String,
    /// The listing's edition, as written.
    pub edition: String,
    /// The name of the listing's file.
    pub source_name: String,
    /// SHA-256 of the listing's source.
    pub source_sha256: String,
    /// Whether the reading of the listing is confirmed.
    pub standing: Standing,
    /// What it comes to.
    pub overall: Overall,
    /// How many clauses have which verdict.
    pub counts: Counts,
    /// What was chosen of each group of options, in listing order.
    pub chosen: Vec<Chosen>,
    /// What was taken to be so without being shown, each in a sentence. None of it can make a joint conform.
    pub assumed: Vec<String>,
    /// Whatever a person should know of the check as a whole, such as judgments that fit no clause.
    pub notes: Vec<String>,
    /// What the head of the listing asks, then what is asked about options, then where items speak only of other cases,
    /// then every clause in listing order.
    pub findings: Vec<Finding>,
}

impl JointResult {
    /// Whether every applicable clause is met or judged. Of a provisional result that isn't final.
    pub fn conforms(&self) -> bool {
        self.overall == Overall::Conforms
    }

    /// The findings with one verdict, in order.
    pub fn with(&self, verdict: Verdict) -> impl Iterator<Item = &Finding> {
        self.findings
            .iter()
            .filter(move |finding| finding.verdict == verdict)
    }

    /// The finding on a clause, by its id.
    pub fn finding(&self, clause: &str) -> Option<&Finding> {
        self.findings
            .iter()
            .find(|finding| finding.explanation.clause == clause)
    }
}

/// What was chosen of a group of options.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Chosen {
    /// The group: the base item's path, or "configuration".
    pub group: String,
    /// The choice, as clauses name it; none when an optional item is left out.
    pub choice: Option<String>,
    /// How it was chosen.
    pub how: How,
    /// Every choice with its counts, in listing order.
    pub considered: Vec<Considered>,
}

/// How a choice was made.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum How {
    /// A fact says which is built.
    Stated,
    /// What is known of the joint fits it best.
    BestFit,
    /// Nothing is known that bears on it.
    Unknown,
}

/// A choice that was considered.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Considered {
    /// The choice.
    pub choice: String,
    /// The verdicts on its clauses.
    pub counts: Counts,
    /// Whether anything known of the joint bears on its clauses.
    pub has_evidence: bool,
}

/// A result on a confirmed listing. Only [`check_confirmed`](crate::check_confirmed) makes one.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(transparent)]
pub struct Final(pub(crate) JointResult);

/// A result on a draft. It can't become final but by confirming the listing and checking again.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(transparent)]
pub struct Provisional(pub(crate) JointResult);

impl Deref for Final {
    type Target = JointResult;
    fn deref(&self) -> &JointResult {
        &self.0
    }
}

impl Deref for Provisional {
    type Target = JointResult;
    fn deref(&self) -> &JointResult {
        &self.0
    }
}

impl From<Final> for JointResult {
    fn from(result: Final) -> Self {
        result.0
    }
}

impl From<Provisional> for JointResult {
    fn from(result: Provisional) -> Self {
        result.0
    }
}
