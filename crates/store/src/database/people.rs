//! What stands beside the journal: passwords, sessions, visits.

use jiff::Timestamp;
use sqlx::AssertSqlSafe;

use super::Database;
use super::append::Batch;
use super::read::quoted;
use super::sql::{ENTRY, entry};
use crate::error::StoreError;
use crate::journal::Entry;
use crate::key::Kind;
use crate::people::{DAYS_OF_VISITS, Visit};

/// What is done beside a change, in the same transaction.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Beside<'b> {
    /// Ends every session of a person.
    EndSessions {
        /// The name of their key.
        person: &'b str,
    },
    /// Sets a person's password.
    SetPassword {
        /// The name of their key.
        person: &'b str,
        /// The password's hash.
        hash: &'b str,
    },
}

const MILLISECONDS_A_DAY: i64 = 24 * 60 * 60 * 1000;

impl Batch<'_> {
    /// Does what is to be done beside the change.
    ///
    /// # Errors
    /// When the database can't be written.
    pub(super) async fn beside(&mut self, beside: &Beside<'_>) -> Result<(), StoreError> {
        let query = match *beside {
            Beside::EndSessions { person } => {
                sqlx::query("DELETE FROM session WHERE person = $1").bind(person)
            }
            Beside::SetPassword { person, hash } => sqlx::query(
                "INSERT INTO credential (person, password) VALUES ($1, $2) \
                 ON CONFLICT (person) DO UPDATE SET password = excluded.password",
            )
            .bind(person)
            .bind(hash),
        };
        let done = query.execute(self.connection()).await;
        done.map(|_| ())
            .map_err(StoreError::while_("can't be written"))
    }
}

impl Database {
    /// The hash of a person's password.
    ///
    /// # Errors
    /// When the database can't be read.
    pub(crate) async fn password(&self, person: &str) -> Result<Option<String>, StoreError> {
        sqlx::query_scalar("SELECT password FROM credential WHERE person = $1")
            .bind(person)
            .fetch_optional(&self.pool)
            .await
            .map_err(StoreError::while_("can't be read"))
    }

    /// Begins a session of a person who has a password, by its hash, and forgets those that began before a moment. Whether it was begun.
    ///
    /// # Errors
    /// When the database can't be written.
    pub(crate) async fn begin_session(
        &self,
        hash: &str,
        (person, password): (&str, &str),
        at: i64,
        forget: i64,
    ) -> Result<bool, StoreError> {
        let failing = StoreError::while_("can't be written");
        // A change of the password ends every session of its own; whoever comes while it is made waits here, and is then told.
        let mut batch = self.begin().await?;
        sqlx::query("DELETE FROM session WHERE began < $1")
            .bind(forget)
            .execute(&mut *batch.connection())
            .await
            .map_err(&failing)?;
        let begun = sqlx::query(
            "INSERT INTO session (hash, person, began, used) \
             SELECT CAST($1 AS TEXT), person, CAST($2 AS BIGINT), CAST($2 AS BIGINT) FROM credential \
             WHERE person = $3 AND password = $4",
        )
        .bind(hash)
        .bind(at)
        .bind(person)
        .bind(password)
        .execute(&mut *batch.connection())
        .await
        .map_err(&failing)?;
        batch.finish().await?;
        Ok(begun.rows_affected() > 0)
    }

    /// A session: whose it is, when it began, when it was last used.
    ///
    /// # Errors
    /// When the database can't be read.
    pub(crate) async fn session(
        &self,
        hash: &str,
    ) -> Result<Option<(String, i64, i64)>, StoreError> {
        sqlx::query_as("SELECT person, began, used FROM session WHERE hash = $1")
            .bind(hash)
            .fetch_optional(&self.pool)
            .await
            .map_err(StoreError::while_("can't be read"))
    }

    /// Notes that a session was used.
    ///
    /// # Errors
    /// When the database can't be written.
    pub(crate) async fn use_session(&self, hash: &str, at: i64) -> Result<(), StoreError> {
        let query = sqlx::query("UPDATE session SET used = $1 WHERE hash = $2");
        let done = query.bind(at).bind(hash).execute(&self.pool).await;
        done.map(|_| ())
            .map_err(StoreError::while_("can't be written"))
    }

    /// Ends a session.
    ///
    /// # Errors
    /// When the database can't be written.
    pub(crate) async fn end_session(&self, hash: &str) -> Result<(), StoreError> {
        let query = sqlx::query("DELETE FROM session WHERE hash = $1");
        let done = query.bind(hash).execute(&self.pool).await;
        done.map(|_| ())
            .map_err(StoreError::while_("can't be written"))
    }

    /// Ends every session of a person.
    ///
    /// # Errors
    /// When the database can't be written.
    pub(crate) async fn end_sessions_of(&self, person: &str) -> Result<(), StoreError> {
        let query = sqlx::query("DELETE FROM session WHERE person = $1");
        let done = query.bind(person).execute(&self.pool).await;
        done.map(|_| ())
            .map_err(StoreError::while_("can't be written"))
    }

    /// Notes a visit, and forgets those of long ago.
    ///
    /// # Errors
    /// When the database can't be written.
    pub(crate) async fn note(&self, visit: &Visit) -> Result<(), StoreError> {
        let failing = StoreError::while_("can't be written");
        let at = visit.at.as_millisecond();
        sqlx::query("INSERT INTO visit (at, person, event, address) VALUES ($1, $2, $3, $4)")
            .bind(at)
            .bind(visit.person.as_deref().unwrap_or_default())
            .bind(visit.event.name())
            .bind(visit.address.as_str())
            .execute(&self.pool)
            .await
            .map_err(&failing)?;
        sqlx::query("DELETE FROM visit WHERE at < $1")
            .bind(at - DAYS_OF_VISITS * MILLISECONDS_A_DAY)
            .execute(&self.pool)
            .await
            .map_err(&failing)?;
        Ok(())
    }

    /// The visits until a moment, the latest first.
    ///
    /// # Errors
    /// When the database can't be read.
    pub(crate) async fn visits(&self, until: i64, most: i64) -> Result<Vec<Visit>, StoreError> {
        let rows: Vec<(i64, String, String, String)> = sqlx::query_as(
            "SELECT at, person, event, address FROM visit WHERE at <= $1 ORDER BY at DESC LIMIT $2",
        )
        .bind(until)
        .bind(most)
        .fetch_all(&self.pool)
        .await
        .map_err(StoreError::while_("can't be read"))?;
        rows.into_iter()
            .map(|(at, person, event, address)| {
                Ok(Visit {
                    at: Timestamp::from_millisecond(at).map_err(|error| {
                        StoreError::Value(format!("a visit has no time: {error}"))
                    })?,
                    person: Some(person).filter(|person| !person.is_empty()),
                    event: event.parse()?,
                    address,
                })
            })
            .collect()
    }

    /// The last entries on records of some kinds, the latest first.
    ///
    /// # Errors
    /// When the database can't be read.
    pub(crate) async fn entries_of_kinds(
        &self,
        kinds: &[Kind],
        most: i64,
    ) -> Result<Vec<Entry>, StoreError> {
        let sql = format!(
            "SELECT {ENTRY} FROM journal WHERE kind IN ({}) ORDER BY seq DESC LIMIT $1",
            quoted(kinds)
        );
        let rows = sqlx::query(AssertSqlSafe(sql))
            .bind(most)
            .fetch_all(&self.pool)
            .await
            .map_err(StoreError::while_("can't be read"))?;
        rows.iter().map(entry).collect()
    }

    /// The last entry that somebody made before one.
    ///
    /// # Errors
    /// When the database can't be read.
    pub(crate) async fn last_entry_by(
        &self,
        by: &str,
        seq: i64,
    ) -> Result<Option<Entry>, StoreError> {
        let sql = format!(
            "SELECT {ENTRY} FROM journal WHERE by = $1 AND seq < $2 ORDER BY seq DESC LIMIT 1"
        );
        let row = sqlx::query(AssertSqlSafe(sql))
            .bind(by)
            .bind(seq)
            .fetch_optional(&self.pool)
            .await
            .map_err(StoreError::while_("can't be read"))?;
        row.as_ref().map(entry).transpose()
    }
}
