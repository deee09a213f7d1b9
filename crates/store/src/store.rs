//! An open store.

use std::collections::BTreeMap;
use std::path::PathBuf;

use crate::attachments::{Attached, Attachments};
use crate::change::{Change, Done};
use crate::database::Database;
use crate::error::StoreError;
use crate::journal::{Entry, Head, Made};
use crate::key::{Key, Kind};
use crate::place::{AttachmentsPlace, Place};
use crate::records::{Held, Record};

/// An open store: records, their journal, and attachments. It may be used by many at once.
#[derive(Debug, Clone)]
pub struct Store {
    pub(crate) database: Database,
    pub(crate) attachments: Attachments,
    /// The database's file, or the folder of the attachments.
    pub(crate) beside: Option<PathBuf>,
}

/// Where files of one's own may lie.
pub(crate) fn beside(place: &Place, attachments: &AttachmentsPlace) -> Option<PathBuf> {
    match (place, attachments) {
        (Place::File(path), _) => Some(path.clone()),
        (Place::Postgres(_), AttachmentsPlace::Folder(folder)) => Some(folder.clone()),
        (Place::Postgres(_), AttachmentsPlace::Bucket(_)) => None,
    }
}

impl Store {
    /// Makes an empty store.
    ///
    /// # Errors
    /// When there is a store already, or nothing can be made there.
    pub async fn make(place: &Place, attachments: &AttachmentsPlace) -> Result<Self, StoreError> {
        let beside = beside(place, attachments);
        let attachments = Attachments::at(attachments)?;
        Ok(Self {
            database: Database::make(place).await?,
            attachments,
            beside,
        })
    }

    /// Opens a store.
    ///
    /// # Errors
    /// When there is none, or it can't be read.
    pub async fn open(place: &Place, attachments: &AttachmentsPlace) -> Result<Self, StoreError> {
        let beside = beside(place, attachments);
        let attachments = Attachments::at(attachments)?;
        Ok(Self {
            database: Database::open(place).await?,
            attachments,
            beside,
        })
    }

    /// Makes a change, whole or not at all. When this is done it is there to stay.
    ///
    /// # Errors
    /// [`StoreError::Conflicts`] when a record isn't as it was seen; or when the database can't be written.
    pub async fn change(&self, change: &Change) -> Result<Done, StoreError> {
        self.database.change(change, &[], &[]).await
    }

    /// Makes a change as [`change`](Self::change) does, where some records that it doesn't change are still as they were seen: each with its
    /// version, 0 where there never was one.
    ///
    /// # Errors
    /// As [`change`](Self::change); of those records too.
    pub async fn change_relying_on(
        &self,
        change: &Change,
        relied_on: &[(Key, i64)],
    ) -> Result<Done, StoreError> {
        self.database.change(change, &[], relied_on).await
    }

    /// Where the chain of the journal ends.
    ///
    /// # Errors
    /// When the database can't be read.
    pub async fn head(&self) -> Result<Head, StoreError> {
        self.database.head().await
    }

    /// A record of a kind, if there is one.
    ///
    /// # Errors
    /// When the database can't be read, or the record isn't what its kind says.
    pub async fn get<T: Record>(&self, key: &Key) -> Result<Option<Held<T>>, StoreError> {
        let held = self.database.record(key).await?;
        held.map(Held::read).transpose()
    }

    /// The records of some keys, as far as there are any.
    ///
    /// # Errors
    /// When the database can't be read.
    pub async fn records(&self, keys: &[Key]) -> Result<BTreeMap<Key, Held<String>>, StoreError> {
        self.database.records(keys).await
    }

    /// The records of a kind that share a name, in the order they came: the facts of an owner, the confirmed clauses of a listing.
    ///
    /// # Errors
    /// As [`get`](Self::get).
    pub async fn get_all<T: Record>(&self, name: &str) -> Result<Vec<Held<T>>, StoreError> {
        let held = self.database.records_of(T::KIND, name).await?;
        held.into_iter().map(Held::read).collect()
    }

    /// Hands over every record of some kinds in the order they came, as all of them stood at one moment.
    ///
    /// # Errors
    /// When the database can't be read, or `take` says so.
    pub async fn each(
        &self,
        kinds: &[Kind],
        take: impl FnMut(Held<String>) -> Result<(), StoreError>,
    ) -> Result<(), StoreError> {
        self.database.each_record(kinds, take).await
    }

    /// What was done to a record, the oldest first.
    ///
    /// # Errors
    /// When the database can't be read.
    pub async fn history(&self, key: &Key) -> Result<Vec<Entry>, StoreError> {
        self.database.history(key).await
    }

    /// The journal's entries after one, the oldest first, at most so many.
    ///
    /// # Errors
    /// When the database can't be read.
    pub async fn entries_after(&self, seq: i64, most: i64) -> Result<Vec<Entry>, StoreError> {
        self.database.entries_after(seq, most).await
    }

    /// The journal's entries before one, the newest first, at most so many.
    ///
    /// # Errors
    /// When the database can't be read.
    pub async fn entries_before(&self, seq: i64, most: i64) -> Result<Vec<Entry>, StoreError> {
        self.database.entries_before(seq, most).await
    }

    /// What was changed before an entry, the latest first, at most so many changes.
    ///
    /// # Errors
    /// When the database can't be read.
    pub async fn changes_before(&self, seq: i64, most: usize) -> Result<Vec<Made>, StoreError> {
        // The entries of a change follow one another, so that it ends where the next begins.
        let mut end = self.entries_before(seq, 1).await?;
        let mut end = end.pop().map_or(0, |last| last.seq);
        let firsts = self.database.firsts_before(seq, most).await?;
        let made = firsts.into_iter().map(|first| {
            let records = end.saturating_sub(first.seq).saturating_add(1);
            end = first.seq.saturating_sub(1);
            Made { first, records }
        });
        Ok(made.collect())
    }

    /// The records that were changed after an entry, each with the number of the entry that did, the oldest first, at most so many.
    ///
    /// # Errors
    /// When the database can't be read.
    pub async fn changed_after(&self, seq: i64, most: i64) -> Result<Vec<(i64, Key)>, StoreError> {
        self.database.changed_after(seq, most).await
    }

    /// The records of some kinds that were changed after an entry, each once with the number of the entry that changed it last, the oldest
    /// first.
    ///
    /// # Errors
    /// When the database can't be read.
    pub async fn changed_of_kinds(
        &self,
        kinds: &[Kind],
        seq: i64,
    ) -> Result<Vec<(i64, Key)>, StoreError> {
        self.database.changed_of_kinds(kinds, seq).await
    }

    /// Where a file may lie that can be made anew from the store at any time: beside the database's file, or beside the folder of the
    /// attachments. There is none where both are on other machines.
    pub fn next_to(&self, ending: &str) -> Option<PathBuf> {
        let mut name = self.beside.as_ref()?.as_os_str().to_owned();
        name.push(ending);
        Some(name.into())
    }

    /// Puts an attachment in its place. It is named by a record afterwards, never before.
    ///
    /// # Errors
    /// When it is too large or can't be written.
    pub async fn attach(&self, bytes: Vec<u8>) -> Result<Attached, StoreError> {
        self.attachments.put(bytes).await
    }

    /// An attachment's bytes.
    ///
    /// # Errors
    /// When they aren't there, or aren't what was put there.
    pub async fn attachment(&self, sha256: &str) -> Result<Vec<u8>, StoreError> {
        self.attachments.get(sha256).await
    }

    /// Closes the database.
    pub async fn close(self) {
        self.database.close().await;
    }
}
