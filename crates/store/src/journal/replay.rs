//! Following the journal from its beginning: whether the chain holds, and what the records must be by it.

use std::collections::BTreeMap;

use jiff::Timestamp;

use crate::canonical::sha256;
use crate::error::StoreError;
use crate::journal::{Entry, Head};
use crate::key::Key;
use crate::records::{Held, attachment_of};

/// The journal as far as it was followed.
#[derive(Debug, Clone)]
pub(crate) struct Replay {
    /// Where it ends so far.
    pub(crate) head: Head,
    /// The last entry's change: its number, who made it, when, and what it was.
    change: Option<(i64, String, Timestamp, String)>,
    records: BTreeMap<Key, State>,
    /// Every attachment that was ever named, with its size.
    pub(crate) attachments: BTreeMap<String, u64>,
}

/// What a record must be.
#[derive(Debug, Clone, PartialEq, Eq)]
struct State {
    version: i64,
    seq: i64,
    since: i64,
    /// The hash of its value; none when it was removed.
    value: Option<String>,
}

impl Default for Replay {
    fn default() -> Self {
        Self {
            head: Head::start(),
            change: None,
            records: BTreeMap::new(),
            attachments: BTreeMap::new(),
        }
    }
}

impl Replay {
    /// Follows one entry more.
    ///
    /// # Errors
    /// What is wrong with it, in words. It is followed all the same, so that what comes after it can be looked at.
    pub(crate) fn step(&mut self, entry: &Entry) -> Result<(), String> {
        let mut wrong = Vec::new();
        if entry.seq != self.head.seq + 1 {
            wrong.push(format!("it comes after entry {}", self.head.seq));
        }
        if entry.previous != self.head.hash {
            wrong.push("it isn't chained to the entry before it".to_owned());
        }
        match entry.hash_of() {
            Ok(hash) if hash == entry.hash => {}
            Ok(_) => wrong.push("its hash isn't that of what it says".to_owned()),
            Err(error) => wrong.push(error.to_string()),
        }
        let change = Some((entry.change, entry.by.clone(), entry.at, entry.what.clone()));
        // The entries of a change follow one another and share all of this; the first gives its number.
        if entry.change != entry.seq && change != self.change {
            wrong.push(format!(
                "it isn't of the change of the entry before it, and doesn't begin one: {}",
                entry.change
            ));
        }
        self.change = change;
        let before = self.records.get(&entry.key);
        if entry.version != before.map_or(0, |state| state.version) + 1 {
            wrong.push(format!(
                "version {} of {} comes out of turn",
                entry.version, entry.key
            ));
        }
        let said = entry.before.as_deref().map(hash);
        if said != before.and_then(|state| state.value.clone()) {
            wrong.push(format!(
                "{} didn't say before what it says it did",
                entry.key
            ));
        }
        if let Some((sha256, bytes)) = entry
            .after
            .as_deref()
            .and_then(|after| attachment_of(entry.key.kind, after))
        {
            self.attachments.insert(sha256, bytes);
        }
        let since = match before {
            Some(state) if state.value.is_some() => state.since,
            _ => entry.seq,
        };
        let state = State {
            version: entry.version,
            seq: entry.seq,
            since,
            value: entry.after.as_deref().map(hash),
        };
        self.records.insert(entry.key.clone(), state);
        self.head = entry.head();
        if wrong.is_empty() {
            Ok(())
        } else {
            Err(wrong.join("; "))
        }
    }

    /// Takes out what a record must be, and says whether it is that. None when the journal knows no such record.
    pub(crate) fn settle(&mut self, held: &Held<Option<String>>) -> Option<bool> {
        let state = self.records.remove(&held.key)?;
        let found = State {
            version: held.version,
            seq: held.seq,
            since: held.since,
            value: held.value.as_deref().map(hash),
        };
        Some(state == found)
    }

    /// The records that weren't taken out.
    pub(crate) fn unsettled(&self) -> impl Iterator<Item = &Key> {
        self.records.keys()
    }

    /// How many records there are, removed ones too.
    pub(crate) fn len(&self) -> usize {
        self.records.len()
    }
}

fn hash(value: &str) -> String {
    sha256(value.as_bytes())
}

/// Follows entries that must hold.
///
/// # Errors
/// At the first that doesn't.
pub(crate) fn follow(replay: &mut Replay, entries: &[Entry]) -> Result<(), StoreError> {
    entries.iter().try_for_each(|entry| {
        replay.step(entry).map_err(|problem| {
            StoreError::Value(format!("entry {} doesn't hold: {problem}", entry.seq))
        })
    })
}
