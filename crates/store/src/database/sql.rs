//! Small pieces of SQL, and rows as values.

use jiff::Timestamp;
use sqlx::Row;
use sqlx::any::AnyRow;

use crate::error::StoreError;
use crate::journal::Entry;
use crate::key::{Key, Kind};
use crate::records::Held;

/// How many rows one statement takes. PostgreSQL takes 65,535 values a statement, SQLite 32,766.
pub(super) const ROWS: usize = 500;

/// `($1, $2), ($3, $4)`: places for so many rows of so many values.
pub(super) fn places(rows: usize, columns: usize) -> String {
    let row = |row: usize| {
        let places: Vec<String> = (1..=columns)
            .map(|column| format!("${}", row * columns + column))
            .collect();
        format!("({})", places.join(", "))
    };
    (0..rows).map(row).collect::<Vec<_>>().join(", ")
}

/// The columns of an entry, in the order of [`entry`].
pub(super) const ENTRY: &str =
    "seq, change, at, by, what, kind, name, part, version, before, after, previous, hash";

/// The columns of a record, in the order of [`held`].
pub(super) const HELD: &str = "kind, name, part, version, seq, since, value";

/// An entry of the journal.
pub(super) fn entry(row: &AnyRow) -> Result<Entry, StoreError> {
    let read = || -> Result<_, sqlx::Error> {
        Ok((
            (row.try_get::<i64, _>(0)?, row.try_get::<i64, _>(1)?),
            row.try_get::<String, _>(2)?,
            (row.try_get::<String, _>(3)?, row.try_get::<String, _>(4)?),
            (
                row.try_get::<String, _>(5)?,
                row.try_get::<String, _>(6)?,
                row.try_get::<String, _>(7)?,
            ),
            row.try_get::<i64, _>(8)?,
            (
                row.try_get::<Option<String>, _>(9)?,
                row.try_get::<Option<String>, _>(10)?,
            ),
            (row.try_get::<String, _>(11)?, row.try_get::<String, _>(12)?),
        ))
    };
    let ((seq, change), at, (by, what), (kind, name, part), version, (before, after), hashes) =
        read().map_err(StoreError::while_("gives an entry that can't be read"))?;
    let at: Timestamp = at
        .parse()
        .map_err(|error| StoreError::Value(format!("entry {seq} has no time: {error}")))?;
    Ok(Entry {
        seq,
        change,
        at,
        by,
        what,
        key: Key {
            kind: kind.parse()?,
            name,
            part,
        },
        version,
        before,
        after,
        previous: hashes.0,
        hash: hashes.1,
    })
}

/// The number of an entry, and the key of its record.
pub(super) fn key(row: &AnyRow) -> Result<(i64, Key), StoreError> {
    let read = || -> Result<_, sqlx::Error> {
        Ok((
            row.try_get::<i64, _>(0)?,
            row.try_get::<String, _>(1)?,
            row.try_get::<String, _>(2)?,
            row.try_get::<String, _>(3)?,
        ))
    };
    let (seq, kind, name, part) =
        read().map_err(StoreError::while_("gives an entry that can't be read"))?;
    Ok((seq, Key::new(kind.parse()?, name, part)))
}

/// A record, removed or not.
pub(super) fn held(row: &AnyRow) -> Result<Held<Option<String>>, StoreError> {
    let read = || -> Result<_, sqlx::Error> {
        Ok((
            (
                row.try_get::<String, _>(0)?,
                row.try_get::<String, _>(1)?,
                row.try_get::<String, _>(2)?,
            ),
            (
                row.try_get::<i64, _>(3)?,
                row.try_get::<i64, _>(4)?,
                row.try_get::<i64, _>(5)?,
            ),
            row.try_get::<Option<String>, _>(6)?,
        ))
    };
    let ((kind, name, part), (version, seq, since), value) =
        read().map_err(StoreError::while_("gives a record that can't be read"))?;
    Ok(Held {
        key: Key {
            kind: kind.parse::<Kind>()?,
            name,
            part,
        },
        version,
        seq,
        since,
        value,
    })
}

#[cfg(test)]
mod tests {
    #[test]
    fn places_are_numbered_through() {
        assert_eq!(super::places(2, 3), "($1, $2, $3), ($4, $5, $6)");
    }
}
