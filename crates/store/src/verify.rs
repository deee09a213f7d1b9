//! Whether all of it is as it was written.
//!
//! Three things must hold: each entry of the journal has the hash of what it says and of the entry before it; each record
//! is what the journal makes of it; each attachment that was ever named has the bytes it was named for.
//!
//! The chain shows that something was changed; it can't show it to somebody who lets the same person keep the whole of it, as they could
//! write it anew. So note the hash of its end elsewhere, in a report say: a chain that still leads through it was not rewritten before it.

use core::fmt;

use schemars::JsonSchema;
use serde::Serialize;

use crate::error::StoreError;
use crate::journal::{Entry, Head, Replay};
use crate::key::Kind;
use crate::store::Store;

/// What a look through the whole store came to.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Verified {
    /// Where the chain ends.
    pub head: Head,
    /// How many records there are, removed ones too.
    pub records: usize,
    /// How many attachments were ever named.
    pub attachments: usize,
    /// What isn't as it was written: at most [`MOST_FLAWS`].
    pub flaws: Vec<Flaw>,
    /// How many more there are.
    pub left_out: usize,
}

/// The most flaws that are listed.
pub const MOST_FLAWS: usize = 200;

/// Something that isn't as it was written.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Flaw {
    /// Where.
    pub place: String,
    /// What is wrong there.
    pub problem: String,
}

impl fmt::Display for Flaw {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.place, self.problem)
    }
}

/// Flaws, as they are found.
#[derive(Debug, Default)]
struct Flaws {
    listed: Vec<Flaw>,
    left_out: usize,
}

impl Flaws {
    fn add(&mut self, place: impl Into<String>, problem: impl fmt::Display) {
        if self.listed.len() == MOST_FLAWS {
            self.left_out += 1;
        } else {
            self.listed.push(Flaw {
                place: place.into(),
                problem: problem.to_string(),
            });
        }
    }
}

/// How many entries are read at once.
const AT_ONCE: i64 = 1000;

impl Store {
    /// Looks through all of it: the database's file, the chain, the records, the attachments. With a hash that was noted before, also whether
    /// the chain leads through it. Others may go on writing meanwhile.
    ///
    /// # Errors
    /// Never for what it finds; only when it can't even begin.
    pub async fn verify(&self, noted: Option<&str>) -> Result<Verified, StoreError> {
        let mut flaws = Flaws::default();
        match self.database.flaws_of_file().await {
            Ok(said) => said.iter().for_each(|line| flaws.add("the file", line)),
            Err(error) => flaws.add("the file", error),
        }
        let mut replay = Replay::default();
        let mut noted = noted.map(|hash| (hash, false));
        self.follow_to_the_end(&mut replay, &mut flaws, &mut noted)
            .await;
        match self.database.entries_outside().await {
            Ok(0) => {}
            Ok(outside) => flaws.add(
                "the journal",
                format_args!("the chain doesn't lead to {outside} of its entries"),
            ),
            Err(error) => flaws.add("the journal", error),
        }
        let records = replay.len();
        self.compare_records(&mut replay, &mut flaws, &mut noted)
            .await;
        if let Some((hash, false)) = noted {
            flaws.add(
                "the journal",
                format_args!("the chain doesn't lead through {hash}"),
            );
        }
        for (sha256, bytes) in &replay.attachments {
            match self.attachments.get(sha256).await {
                Ok(found) if u64::try_from(found.len()).ok() == Some(*bytes) => {}
                Ok(_) => flaws.add(
                    sha256,
                    format_args!("it hasn't {bytes} bytes, as its record says"),
                ),
                Err(error) => flaws.add("the attachments", error),
            }
        }
        Ok(Verified {
            head: replay.head,
            records,
            attachments: replay.attachments.len(),
            flaws: flaws.listed,
            left_out: flaws.left_out,
        })
    }

    async fn follow_to_the_end(
        &self,
        replay: &mut Replay,
        flaws: &mut Flaws,
        noted: &mut Option<(&str, bool)>,
    ) {
        let head = match self.database.head().await {
            Ok(head) => head,
            Err(error) => return flaws.add("the journal's end", error),
        };
        loop {
            match self.database.entries_after(replay.head.seq, AT_ONCE).await {
                Ok(entries) if entries.is_empty() => break,
                Ok(entries) => {
                    // What was appended after the look began is looked at next time.
                    let until = entries.iter().take_while(|entry| entry.seq <= head.seq);
                    let count = until.map(|entry| step(replay, entry, flaws, noted)).count();
                    if count < entries.len() {
                        break;
                    }
                }
                Err(error) => {
                    let place = format!("the journal after entry {}", replay.head.seq);
                    return flaws.add(place, error);
                }
            }
        }
        if replay.head != head {
            flaws.add(
                "the journal's end",
                format_args!("it should be entry {}, {}", head.seq, head.hash),
            );
        }
    }

    /// Compares the records with what the journal makes of them. One that was changed meanwhile is followed to where it stands.
    async fn compare_records(
        &self,
        replay: &mut Replay,
        flaws: &mut Flaws,
        noted: &mut Option<(&str, bool)>,
    ) {
        let mut rows = Vec::new();
        let read = self.database.each_row(&Kind::ALL, |held| {
            if held.seq > replay.head.seq {
                rows.push(held);
            } else {
                settle(replay, &held, flaws);
            }
            Ok(())
        });
        if let Err(error) = read.await {
            return flaws.add("the records", error);
        }
        if !rows.is_empty() {
            let mut later = replay.clone();
            self.follow_to_the_end(&mut later, flaws, noted).await;
            for held in rows {
                replay.settle(&held);
                match self.database.history(&held.key).await {
                    Ok(entries) if entries.iter().any(|entry| is_by(&held, entry)) => {}
                    Ok(_) => flaws.add(held.key.to_string(), "the journal knows nothing of this"),
                    Err(error) => flaws.add(held.key.to_string(), error),
                }
            }
        }
        for key in replay.unsettled() {
            flaws.add(key.to_string(), "the journal has it, but it isn't there");
        }
    }
}

fn step(replay: &mut Replay, entry: &Entry, flaws: &mut Flaws, noted: &mut Option<(&str, bool)>) {
    if let Err(problem) = replay.step(entry) {
        flaws.add(format!("entry {} of the journal", entry.seq), problem);
    }
    if let Some((hash, found)) = noted {
        *found = *found || *hash == entry.hash;
    }
}

fn settle(replay: &mut Replay, held: &crate::records::Held<Option<String>>, flaws: &mut Flaws) {
    match replay.settle(held) {
        Some(true) => {}
        Some(false) => flaws.add(
            held.key.to_string(),
            "it isn't what the journal makes of it",
        ),
        None => flaws.add(held.key.to_string(), "the journal knows nothing of it"),
    }
}

fn is_by(held: &crate::records::Held<Option<String>>, entry: &Entry) -> bool {
    entry.seq == held.seq && entry.version == held.version && entry.after == held.value
}
