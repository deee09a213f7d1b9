//! What is to be changed, and why it can't be.

use core::fmt;
use std::collections::BTreeSet;

use jiff::Timestamp;
use schemars::JsonSchema;
use serde::Serialize;

use crate::canonical;
use crate::error::StoreError;
use crate::journal::{Entry, Head};
use crate::key::Key;
use crate::records::{Held, Record};

/// The most characters of a person's name.
pub const MOST_IN_NAME: usize = 200;

/// The most characters of what a change is called.
pub const MOST_IN_WHAT: usize = 500;

/// The most bytes of what a record says. A line of an archive has room for it twice, before and after, however it is escaped.
pub const MOST_IN_VALUE: usize = 3 << 20;

/// Some records to be changed together, or not at all.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Change {
    /// Who changes them: the name that stands behind it.
    pub by: String,
    /// When.
    pub at: Timestamp,
    /// What is done, in a few words: "confirmed 3A/2".
    pub what: String,
    /// The records.
    pub edits: Vec<Edit>,
}

/// One record to be changed.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct Edit {
    /// Which.
    pub key: Key,
    /// The version that whoever changes it has seen; 0 where they have seen none.
    pub seen: i64,
    /// What it says from now on, in the canonical form; none to remove it.
    after: Option<String>,
}

impl Edit {
    /// A record that says something else from now on, or for the first time.
    ///
    /// # Errors
    /// When the key is of another kind, or the value can't be kept.
    pub fn put<T: Record>(key: Key, seen: i64, value: &T) -> Result<Self, StoreError> {
        if key.kind != T::KIND {
            return Err(StoreError::Refused(format!(
                "{key} can't hold a {}",
                T::KIND.name()
            )));
        }
        Ok(Self {
            after: Some(canonical::text(value)?),
            key,
            seen,
        })
    }

    /// A record that is removed. The journal keeps what it said.
    pub const fn remove(key: Key, seen: i64) -> Self {
        Self {
            key,
            seen,
            after: None,
        }
    }

    /// What the record says from now on, in the canonical form; none when it is removed.
    pub fn after(&self) -> Option<&str> {
        self.after.as_deref()
    }
}

/// A change that was made.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Done {
    /// Where the chain ends now.
    pub head: Head,
    /// How many records were changed.
    pub changed: usize,
}

/// A record that others have changed since it was seen.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Conflict {
    /// Which.
    pub key: Key,
    /// The version that was seen.
    pub seen: i64,
    /// What it says now; none when it was removed.
    pub now: Option<Held<String>>,
    /// What was done to it since, the oldest first.
    pub since: Vec<Entry>,
}

impl fmt::Display for Conflict {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.since.last() {
            Some(last) => write!(f, "{}: {} {} ({})", self.key, last.by, last.what, last.at),
            None => write!(f, "{}: version {} was never written", self.key, self.seen),
        }
    }
}

impl Change {
    /// Whether it can be made at all.
    ///
    /// # Errors
    /// When nobody stands behind it, nothing says what it is, or a record is named twice.
    pub(crate) fn check(&self) -> Result<(), StoreError> {
        lines(&self.by, &self.what)?;
        let mut keys = BTreeSet::new();
        for edit in &self.edits {
            edit.key.check()?;
            if let Some(after) = &edit.after {
                check_value(&edit.key, after)?;
            }
            if !keys.insert(&edit.key) {
                return Err(StoreError::Refused(format!(
                    "{} is changed twice in one change",
                    edit.key
                )));
            }
        }
        Ok(())
    }
}

/// Whether a record may say so much.
///
/// # Errors
/// When it has more than [`MOST_IN_VALUE`] bytes.
pub(crate) fn check_value(key: &Key, value: &str) -> Result<(), StoreError> {
    if value.len() > MOST_IN_VALUE {
        return Err(StoreError::Refused(format!(
            "what {key} would say has more than {} MB",
            MOST_IN_VALUE >> 20
        )));
    }
    Ok(())
}

/// Whether somebody stands behind a change, and something says what it is.
///
/// # Errors
/// When one of them isn't said, is too long, or isn't one line.
pub(crate) fn lines(by: &str, what: &str) -> Result<(), StoreError> {
    line("who changes it", by, MOST_IN_NAME)?;
    line("what is changed", what, MOST_IN_WHAT)
}

/// Whether a text is one line that says something.
fn line(what: &str, text: &str, most: usize) -> Result<(), StoreError> {
    let problem = if text.trim().is_empty() {
        "isn't said".to_owned()
    } else if text.chars().count() > most {
        format!("has more than {most} characters")
    } else if text.chars().any(char::is_control) {
        "holds a line break or another control character".to_owned()
    } else {
        return Ok(());
    };
    Err(StoreError::Refused(format!("{what} {problem}")))
}
