//! Reading records and the journal.

use std::collections::BTreeMap;

use futures_util::TryStreamExt;
use sqlx::{Any, AssertSqlSafe, Executor, Row};

use super::Database;
use super::sql::{ENTRY, HELD, ROWS, entry, held, key, places};
use crate::error::StoreError;
use crate::journal::{Entry, Head};
use crate::key::{Key, Kind};
use crate::records::Held;

impl Database {
    /// Where the chain ends.
    pub(crate) async fn head(&self) -> Result<Head, StoreError> {
        let failing = StoreError::while_("can't be read");
        let row = sqlx::query("SELECT seq, hash FROM head WHERE id = 1")
            .fetch_one(&self.pool)
            .await
            .map_err(&failing)?;
        Ok(Head {
            seq: row.try_get(0).map_err(&failing)?,
            hash: row.try_get(1).map_err(&failing)?,
        })
    }

    /// Entries after one, the oldest first, at most so many.
    pub(crate) async fn entries_after(
        &self,
        seq: i64,
        most: i64,
    ) -> Result<Vec<Entry>, StoreError> {
        let sql = format!("SELECT {ENTRY} FROM journal WHERE seq > $1 ORDER BY seq LIMIT $2");
        self.entries(sql, &[seq, most]).await
    }

    /// Entries before one, the newest first, at most so many.
    pub(crate) async fn entries_before(
        &self,
        seq: i64,
        most: i64,
    ) -> Result<Vec<Entry>, StoreError> {
        let sql = format!("SELECT {ENTRY} FROM journal WHERE seq < $1 ORDER BY seq DESC LIMIT $2");
        self.entries(sql, &[seq, most]).await
    }

    /// The first entries of changes before an entry, the newest first, at most so many.
    pub(crate) async fn firsts_before(
        &self,
        seq: i64,
        most: usize,
    ) -> Result<Vec<Entry>, StoreError> {
        let sql = format!(
            "SELECT {ENTRY} FROM journal WHERE seq = change AND seq < $1 ORDER BY seq DESC LIMIT $2"
        );
        let most = i64::try_from(most).unwrap_or(i64::MAX);
        self.entries(sql, &[seq, most]).await
    }

    /// The keys of entries after one, the oldest first, at most so many.
    pub(crate) async fn changed_after(
        &self,
        seq: i64,
        most: i64,
    ) -> Result<Vec<(i64, Key)>, StoreError> {
        let rows = sqlx::query(
            "SELECT seq, kind, name, part FROM journal WHERE seq > $1 ORDER BY seq LIMIT $2",
        )
        .bind(seq)
        .bind(most)
        .fetch_all(&self.pool)
        .await
        .map_err(StoreError::while_("can't be read"))?;
        rows.iter().map(key).collect()
    }

    async fn entries(&self, sql: String, numbers: &[i64]) -> Result<Vec<Entry>, StoreError> {
        let mut query = sqlx::query(AssertSqlSafe(sql));
        for number in numbers {
            query = query.bind(*number);
        }
        let rows = query
            .fetch_all(&self.pool)
            .await
            .map_err(StoreError::while_("can't be read"))?;
        rows.iter().map(entry).collect()
    }

    /// How many entries the chain can't lead to: they are numbered before its beginning, or after its end as it is in the same moment.
    pub(crate) async fn entries_outside(&self) -> Result<i64, StoreError> {
        let failing = StoreError::while_("can't be read");
        let row = sqlx::query(
            "SELECT COUNT(*) FROM journal WHERE seq < 1 OR seq > (SELECT seq FROM head WHERE id = 1)",
        )
        .fetch_one(&self.pool)
        .await
        .map_err(&failing)?;
        row.try_get(0).map_err(&failing)
    }

    /// What was done to a record, the oldest first.
    pub(crate) async fn history(&self, key: &Key) -> Result<Vec<Entry>, StoreError> {
        entries_of(&self.pool, key, 0).await
    }

    /// A record, if there is one.
    pub(crate) async fn record(&self, key: &Key) -> Result<Option<Held<String>>, StoreError> {
        let sql = format!("SELECT {HELD} FROM record WHERE kind = $1 AND name = $2 AND part = $3");
        let row = sqlx::query(AssertSqlSafe(sql))
            .bind(key.kind.name())
            .bind(key.name.as_str())
            .bind(key.part.as_str())
            .fetch_optional(&self.pool)
            .await
            .map_err(StoreError::while_("can't be read"))?;
        Ok(row.as_ref().map(held).transpose()?.and_then(live))
    }

    /// The records of some keys, as far as there are any.
    pub(crate) async fn records(
        &self,
        keys: &[Key],
    ) -> Result<BTreeMap<Key, Held<String>>, StoreError> {
        let mut records = BTreeMap::new();
        for keys in keys.chunks(ROWS) {
            let rows = records_of_keys(&self.pool, keys.iter()).await?;
            let live = rows.into_iter().filter_map(live);
            records.extend(live.map(|held| (held.key.clone(), held)));
        }
        Ok(records)
    }

    /// The records of a kind and a name, in the order they came.
    pub(crate) async fn records_of(
        &self,
        kind: Kind,
        name: &str,
    ) -> Result<Vec<Held<String>>, StoreError> {
        // The sign keeps SQLite from walking all records of the kind in order, where a few of a name are asked for.
        let sql = format!(
            "SELECT {HELD} FROM record WHERE kind = $1 AND name = $2 AND value IS NOT NULL ORDER BY + since"
        );
        let rows = sqlx::query(AssertSqlSafe(sql))
            .bind(kind.name())
            .bind(name)
            .fetch_all(&self.pool)
            .await
            .map_err(StoreError::while_("can't be read"))?;
        rows.iter()
            .filter_map(|row| held(row).map(live).transpose())
            .collect()
    }

    /// The records of a kind and of some names, in the order they came.
    pub(crate) async fn records_of_names(
        &self,
        kind: Kind,
        names: &[String],
    ) -> Result<Vec<Held<String>>, StoreError> {
        let mut found = Vec::new();
        for names in names.chunks(ROWS) {
            // The sign does as in `records_of`. A list, and no table that is joined, has SQLite look each name up.
            let sql = format!(
                "SELECT {HELD} FROM record WHERE kind = '{}' AND name IN {} AND value IS NOT NULL ORDER BY + since",
                kind.name(),
                places(1, names.len())
            );
            let mut query = sqlx::query(AssertSqlSafe(sql));
            for name in names {
                query = query.bind(name.as_str());
            }
            let rows = query
                .fetch_all(&self.pool)
                .await
                .map_err(StoreError::while_("can't be read"))?;
            for row in &rows {
                found.extend(live(held(row)?));
            }
        }
        Ok(found)
    }

    /// The records of some kinds that were changed after an entry, each with the number of the entry, the oldest first.
    pub(crate) async fn changed_of_kinds(
        &self,
        kinds: &[Kind],
        seq: i64,
    ) -> Result<Vec<(i64, Key)>, StoreError> {
        let sql = format!(
            "SELECT seq, kind, name, part FROM record WHERE kind IN ({}) AND seq > $1 ORDER BY seq",
            quoted(kinds)
        );
        let rows = sqlx::query(AssertSqlSafe(sql))
            .bind(seq)
            .fetch_all(&self.pool)
            .await
            .map_err(StoreError::while_("can't be read"))?;
        rows.iter().map(key).collect()
    }

    /// Hands over every record of some kinds in the order they came, as all of them stood at one moment.
    pub(crate) async fn each_record(
        &self,
        kinds: &[Kind],
        mut take: impl FnMut(Held<String>) -> Result<(), StoreError>,
    ) -> Result<(), StoreError> {
        self.each_row(kinds, |held| match live(held) {
            Some(held) => take(held),
            None => Ok(()),
        })
        .await
    }

    /// As [`each_record`](Self::each_record), with those that were removed.
    pub(crate) async fn each_row(
        &self,
        kinds: &[Kind],
        mut take: impl FnMut(Held<Option<String>>) -> Result<(), StoreError>,
    ) -> Result<(), StoreError> {
        let sql = format!(
            "SELECT {HELD} FROM record WHERE kind IN ({}) ORDER BY since",
            quoted(kinds)
        );
        // One statement sees one state of the database, whatever is written meanwhile.
        let mut rows = sqlx::query(AssertSqlSafe(sql)).fetch(&self.pool);
        while let Some(row) = rows
            .try_next()
            .await
            .map_err(StoreError::while_("can't be read"))?
        {
            take(held(&row)?)?;
        }
        Ok(())
    }
}

/// The names of kinds, which are the program's own, as a list in a statement.
pub(super) fn quoted(kinds: &[Kind]) -> String {
    let names: Vec<String> = kinds
        .iter()
        .map(|kind| format!("'{}'", kind.name()))
        .collect();
    names.join(", ")
}

/// The records of some keys, removed ones too: no more keys than one statement takes.
pub(super) async fn records_of_keys<'e, 'k>(
    executor: impl Executor<'e, Database = Any>,
    keys: impl Iterator<Item = &'k Key> + Clone,
) -> Result<Vec<Held<Option<String>>>, StoreError> {
    let sql = format!(
        "WITH asked (kind, name, part) AS (VALUES {}) SELECT {HELD} FROM asked JOIN record USING (kind, name, part)",
        places(keys.clone().count(), 3)
    );
    let mut query = sqlx::query(AssertSqlSafe(sql));
    for key in keys {
        query = query
            .bind(key.kind.name())
            .bind(key.name.as_str())
            .bind(key.part.as_str());
    }
    let rows = query
        .fetch_all(executor)
        .await
        .map_err(StoreError::while_("can't be read"))?;
    rows.iter().map(held).collect()
}

/// What was done to a record after a version of it, the oldest first.
pub(super) async fn entries_of<'e>(
    executor: impl Executor<'e, Database = Any>,
    key: &Key,
    version: i64,
) -> Result<Vec<Entry>, StoreError> {
    let sql = format!(
        "SELECT {ENTRY} FROM journal WHERE kind = $1 AND name = $2 AND part = $3 AND version > $4 ORDER BY version"
    );
    let rows = sqlx::query(AssertSqlSafe(sql))
        .bind(key.kind.name())
        .bind(key.name.as_str())
        .bind(key.part.as_str())
        .bind(version)
        .fetch_all(executor)
        .await
        .map_err(StoreError::while_("can't be read"))?;
    rows.iter().map(entry).collect()
}

/// A record that wasn't removed.
fn live(held: Held<Option<String>>) -> Option<Held<String>> {
    Some(Held {
        value: held.value?,
        key: held.key,
        version: held.version,
        seq: held.seq,
        since: held.since,
    })
}
