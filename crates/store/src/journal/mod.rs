//! The journal's entries, each chained by hash to the one before it.

mod replay;

use jiff::Timestamp;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::canonical;
use crate::error::StoreError;
use crate::key::Key;

pub(crate) use replay::{Replay, follow};

/// What stands in the place of a hash before the first entry.
pub const START: &str = "0000000000000000000000000000000000000000000000000000000000000000";

/// Where the chain ends.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Head {
    /// The number of the last entry; 0 when there is none.
    pub seq: i64,
    /// Its hash.
    pub hash: String,
}

impl Head {
    /// The head of an empty journal.
    pub fn start() -> Self {
        Self {
            seq: 0,
            hash: START.to_owned(),
        }
    }
}

/// One record changed once.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Entry {
    /// Its number, from 1, without gaps.
    pub seq: i64,
    /// The number of the first entry of the change it is part of: what was changed together shares it.
    pub change: i64,
    /// When, as whoever changed it said.
    pub at: Timestamp,
    /// Who.
    pub by: String,
    /// What was done, in a few words.
    pub what: String,
    /// The record.
    #[serde(flatten)]
    pub key: Key,
    /// The record's version after it.
    pub version: i64,
    /// What it said before, in the canonical form; none where there was nothing.
    pub before: Option<String>,
    /// What it says after, in the canonical form; none where it was removed.
    pub after: Option<String>,
    /// The hash of the entry before.
    pub previous: String,
    /// The hash of all of the above.
    pub hash: String,
}

/// Some records changed together.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Made {
    /// The first of its entries.
    pub first: Entry,
    /// How many records were changed.
    pub records: i64,
}

/// What an entry's hash is taken of.
#[derive(Serialize)]
struct Hashed<'e> {
    seq: i64,
    change: i64,
    at: Timestamp,
    by: &'e str,
    what: &'e str,
    kind: &'static str,
    name: &'e str,
    part: &'e str,
    version: i64,
    before: Option<&'e str>,
    after: Option<&'e str>,
    previous: &'e str,
}

impl Entry {
    /// The hash that it should have: SHA-256 of everything else of it in the canonical form.
    ///
    /// # Errors
    /// Never, as all of it is text and whole numbers.
    pub fn hash_of(&self) -> Result<String, StoreError> {
        let hashed = Hashed {
            seq: self.seq,
            change: self.change,
            at: self.at,
            by: &self.by,
            what: &self.what,
            kind: self.key.kind.name(),
            name: &self.key.name,
            part: &self.key.part,
            version: self.version,
            before: self.before.as_deref(),
            after: self.after.as_deref(),
            previous: &self.previous,
        };
        Ok(canonical::sha256(canonical::text(&hashed)?.as_bytes()))
    }

    /// The same entry with its hash.
    ///
    /// # Errors
    /// As [`hash_of`](Self::hash_of).
    pub(crate) fn sealed(mut self) -> Result<Self, StoreError> {
        self.hash = self.hash_of()?;
        Ok(self)
    }

    /// Where the chain ends with it.
    pub fn head(&self) -> Head {
        Head {
            seq: self.seq,
            hash: self.hash.clone(),
        }
    }
}
