//! Changing records: the one way in.

use std::collections::BTreeMap;

use sqlx::{Any, AnyConnection, AssertSqlSafe, Row, Transaction};

use super::read::records_of_keys;
use super::sql::{ENTRY, HELD, ROWS, places};
use super::{Beside, Database};
use crate::change::{Change, Conflict, Done, Edit};
use crate::error::StoreError;
use crate::journal::{Entry, Head};
use crate::key::Key;
use crate::records::Held;

/// Changes that are made together: the journal's end is locked until they are.
pub(crate) struct Batch<'d> {
    transaction: Transaction<'d, Any>,
    head: Head,
}

impl Database {
    /// Begins to append. Whoever else wants to waits.
    ///
    /// # Errors
    /// When the database doesn't answer or can't be written.
    pub(crate) async fn begin(&self) -> Result<Batch<'_>, StoreError> {
        let waiting = StoreError::while_("can't be written");
        let mut transaction = self.pool.begin().await.map_err(&waiting)?;
        if !self.is_file {
            // Whoever waits must then see what others wrote, whatever the server is set to.
            sqlx::query("SET TRANSACTION ISOLATION LEVEL READ COMMITTED")
                .execute(&mut *transaction)
                .await
                .map_err(&waiting)?;
        }
        // In both databases this waits for whoever holds the row, and then sees what they wrote.
        let row = sqlx::query("UPDATE head SET seq = seq WHERE id = 1 RETURNING seq, hash")
            .fetch_one(&mut *transaction)
            .await
            .map_err(&waiting)?;
        let read = || -> Result<_, sqlx::Error> { Ok((row.try_get(0)?, row.try_get(1)?)) };
        let (seq, hash) = read().map_err(&waiting)?;
        Ok(Batch {
            transaction,
            head: Head { seq, hash },
        })
    }

    /// Makes a change, and what is to be done beside it; or says who was first. `relied_on` are records that it doesn't change, each with the
    /// version that was seen: where one was changed since, nothing is made.
    ///
    /// # Errors
    /// When a record isn't as it was seen, or the database can't be written. Then nothing is changed.
    pub(crate) async fn change(
        &self,
        change: &Change,
        beside: &[Beside<'_>],
        relied_on: &[(Key, i64)],
    ) -> Result<Done, StoreError> {
        change.check()?;
        let mut batch = self.begin().await?;
        let first = batch.head.seq + 1;
        let mut conflicts = batch.unlike(relied_on).await?;
        for edits in change.edits.chunks(ROWS) {
            let now = batch.held(edits.iter().map(|edit| &edit.key)).await?;
            for edit in edits {
                let held = now.get(&edit.key);
                if !is_as_seen(edit, held) {
                    conflicts.push(batch.conflict(&edit.key, edit.seen, held).await?);
                }
            }
            if conflicts.is_empty() {
                let entries = batch.entries(change, first, edits, &now)?;
                batch.append(&entries).await?;
            }
        }
        if !conflicts.is_empty() {
            batch.abandon().await?;
            return Err(StoreError::Conflicts(conflicts));
        }
        for one in beside {
            batch.beside(one).await?;
        }
        let changed = change.edits.len();
        Ok(Done {
            head: batch.finish().await?,
            changed,
        })
    }
}

/// Whether a record is as it was seen. A removed one is as good as none, for who has seen none.
fn is_as_seen(edit: &Edit, now: Option<&Held<Option<String>>>) -> bool {
    match now {
        None => edit.seen == 0,
        Some(held) => edit.seen == held.version || (edit.seen == 0 && held.value.is_none()),
    }
}

/// The last entry on each record, as one statement can't change a row twice; with the number of the entry since which
/// the record is there, or 0 where it was there before these.
fn latest(entries: &[Entry]) -> Vec<(&Entry, i64)> {
    let mut last: BTreeMap<&Key, (&Entry, i64)> = BTreeMap::new();
    for entry in entries {
        let since = match last.get(&entry.key) {
            _ if entry.before.is_none() => entry.seq,
            Some((_, since)) => *since,
            None => 0,
        };
        last.insert(&entry.key, (entry, since));
    }
    last.into_values().collect()
}

impl Batch<'_> {
    /// Where the chain ends.
    pub(crate) const fn head(&self) -> &Head {
        &self.head
    }

    /// What statements of the transaction go through.
    pub(super) fn connection(&mut self) -> &mut AnyConnection {
        &mut self.transaction
    }

    /// The records of some keys, removed ones too.
    async fn held<'k>(
        &mut self,
        keys: impl Iterator<Item = &'k Key> + Clone,
    ) -> Result<BTreeMap<Key, Held<Option<String>>>, StoreError> {
        let rows = records_of_keys(&mut *self.transaction, keys).await?;
        let keyed = rows.into_iter().map(|held| (held.key.clone(), held));
        Ok(keyed.collect())
    }

    /// What is said of records that aren't as they were seen.
    async fn unlike(&mut self, relied_on: &[(Key, i64)]) -> Result<Vec<Conflict>, StoreError> {
        let mut conflicts = Vec::new();
        for some in relied_on.chunks(ROWS) {
            let now = self.held(some.iter().map(|(key, _)| key)).await?;
            for (key, seen) in some {
                let held = now.get(key);
                if held.map_or(0, |held| held.version) != *seen {
                    conflicts.push(self.conflict(key, *seen, held).await?);
                }
            }
        }
        Ok(conflicts)
    }

    async fn conflict(
        &mut self,
        key: &Key,
        seen: i64,
        now: Option<&Held<Option<String>>>,
    ) -> Result<Conflict, StoreError> {
        let since = super::read::entries_of(&mut *self.transaction, key, seen).await?;
        let live = now.and_then(|held| {
            held.value.clone().map(|value| Held {
                key: held.key.clone(),
                version: held.version,
                seq: held.seq,
                since: held.since,
                value,
            })
        });
        Ok(Conflict {
            key: key.clone(),
            seen,
            now: live,
            since,
        })
    }

    fn entries(
        &self,
        change: &Change,
        first: i64,
        edits: &[Edit],
        now: &BTreeMap<Key, Held<Option<String>>>,
    ) -> Result<Vec<Entry>, StoreError> {
        let mut head = self.head.clone();
        let mut entries = Vec::with_capacity(edits.len());
        for edit in edits {
            let before = now.get(&edit.key);
            let entry = Entry {
                seq: head.seq + 1,
                change: first,
                at: change.at,
                by: change.by.clone(),
                what: change.what.clone(),
                key: edit.key.clone(),
                version: before.map_or(0, |held| held.version) + 1,
                before: before.and_then(|held| held.value.clone()),
                after: edit.after().map(str::to_owned),
                previous: head.hash,
                hash: String::new(),
            }
            .sealed()?;
            head = entry.head();
            entries.push(entry);
        }
        Ok(entries)
    }

    /// Appends entries that follow the chain's end, and brings the records to what they say.
    ///
    /// # Errors
    /// When the database can't be written.
    pub(crate) async fn append(&mut self, entries: &[Entry]) -> Result<(), StoreError> {
        for some in entries.chunks(ROWS) {
            self.append_to_journal(some).await?;
        }
        for some in latest(entries).chunks(ROWS) {
            self.write_records(some).await?;
        }
        if let Some(entry) = entries.last() {
            self.head = entry.head();
        }
        Ok(())
    }

    async fn append_to_journal(&mut self, entries: &[Entry]) -> Result<(), StoreError> {
        let sql = format!(
            "INSERT INTO journal ({ENTRY}) VALUES {}",
            places(entries.len(), 13)
        );
        let mut query = sqlx::query(AssertSqlSafe(sql));
        for entry in entries {
            query = query
                .bind(entry.seq)
                .bind(entry.change)
                .bind(entry.at.to_string())
                .bind(entry.by.as_str())
                .bind(entry.what.as_str())
                .bind(entry.key.kind.name())
                .bind(entry.key.name.as_str())
                .bind(entry.key.part.as_str())
                .bind(entry.version)
                .bind(entry.before.as_deref())
                .bind(entry.after.as_deref())
                .bind(entry.previous.as_str())
                .bind(entry.hash.as_str());
        }
        let written = query.execute(&mut *self.transaction).await;
        written
            .map(|_| ())
            .map_err(StoreError::while_("can't be written"))
    }

    /// Writes the latest state of each record.
    async fn write_records(&mut self, entries: &[(&Entry, i64)]) -> Result<(), StoreError> {
        let sql = format!(
            "INSERT INTO record ({HELD}) VALUES {} \
             ON CONFLICT (kind, name, part) DO UPDATE SET version = excluded.version, seq = excluded.seq, \
             since = CASE WHEN excluded.since = 0 THEN record.since ELSE excluded.since END, \
             value = excluded.value",
            places(entries.len(), 7)
        );
        let mut query = sqlx::query(AssertSqlSafe(sql));
        for (entry, since) in entries {
            query = query
                .bind(entry.key.kind.name())
                .bind(entry.key.name.as_str())
                .bind(entry.key.part.as_str())
                .bind(entry.version)
                .bind(entry.seq)
                .bind(*since)
                .bind(entry.after.as_deref());
        }
        let written = query.execute(&mut *self.transaction).await;
        written
            .map(|_| ())
            .map_err(StoreError::while_("can't be written"))
    }

    /// Makes what was appended last.
    ///
    /// # Errors
    /// When the database can't be written; then nothing was appended.
    pub(crate) async fn finish(mut self) -> Result<Head, StoreError> {
        let failing = StoreError::while_("can't be written");
        sqlx::query("UPDATE head SET seq = $1, hash = $2 WHERE id = 1")
            .bind(self.head.seq)
            .bind(self.head.hash.as_str())
            .execute(&mut *self.transaction)
            .await
            .map_err(&failing)?;
        self.transaction.commit().await.map_err(&failing)?;
        Ok(self.head)
    }

    /// Leaves everything as it was.
    ///
    /// # Errors
    /// When the database doesn't answer; then, too, everything is as it was.
    pub(crate) async fn abandon(self) -> Result<(), StoreError> {
        let undone = self.transaction.rollback().await;
        undone.map_err(StoreError::while_("can't be written"))
    }
}
