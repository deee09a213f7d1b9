//! What can go wrong, said for people.

use core::fmt::Display;

use thiserror::Error;

use crate::change::Conflict;

/// Why the store couldn't do what was asked. Whatever it was, nothing is half-done.
#[derive(Debug, Error)]
#[non_exhaustive]
pub enum StoreError {
    /// Others have changed what was to be changed.
    #[error("{}", conflicts(.0))]
    Conflicts(Vec<Conflict>),
    /// The change itself is at fault.
    #[error("{0}")]
    Refused(String),
    /// There is no store at the place.
    #[error("there is no store at {0}")]
    NoStore(String),
    /// There is something at the place already.
    #[error("there is a store at {0} already")]
    StoreThere(String),
    /// The store was made by a later version of the program.
    #[error("the store at {0} was written by a later version of this program")]
    Later(String),
    /// The place can't be used.
    #[error("{0}")]
    Place(String),
    /// The database says no.
    #[error("the database {doing}: {why}")]
    Database {
        /// What was being done.
        doing: &'static str,
        /// What it says.
        why: String,
    },
    /// A value can't be kept as JSON, or what is kept isn't the value it should be.
    #[error("{0}")]
    Value(String),
    /// An attachment can't be read or written.
    #[error("{0}")]
    Attachment(String),
    /// An archive can't be read or written.
    #[error("{0}")]
    Archive(String),
}

impl StoreError {
    pub(crate) fn unkeepable(why: impl Display) -> Self {
        Self::Value(format!("the value can't be kept: {why}"))
    }

    pub(crate) fn unreadable(key: &crate::key::Key, why: impl Display) -> Self {
        Self::Value(format!("{key} isn't kept as it should be: {why}"))
    }

    /// Says what was being done when the database said no.
    pub(crate) fn while_(doing: &'static str) -> impl Fn(sqlx::Error) -> Self {
        move |error| Self::Database {
            doing,
            why: said(&error),
        }
    }

    /// What would be right.
    pub const fn help(&self) -> &'static str {
        match self {
            Self::Conflicts(_) => {
                "look at what was changed, and make the change again where it still holds"
            }
            Self::Refused(_) => "put it right and try again; nothing was changed",
            Self::NoStore(_) => "is it the right place? `everyclause keep` makes a store",
            Self::StoreThere(_) => "name another place; what is there was left as it is",
            Self::Later(_) => "use that version, or a newer one; nothing was changed",
            Self::Place(_) => {
                "give a file's path, or a URL such as `postgres://person@localhost/clinic`"
            }
            Self::Database { .. } => {
                "`everyclause verify` says whether the store is as it was written"
            }
            Self::Value(_) => "`everyclause verify` looks at all of it",
            Self::Attachment(_) => {
                "is the attachments' place the right one, and may it be read and written?"
            }
            Self::Archive(_) => "is it an archive that `everyclause export` wrote, whole?",
        }
    }
}

/// What the database says, without the library's own wrapping.
fn said(error: &sqlx::Error) -> String {
    match error {
        sqlx::Error::Database(error) => error.message().to_owned(),
        sqlx::Error::PoolTimedOut => "it doesn't answer".to_owned(),
        other => other.to_string(),
    }
}

fn conflicts(conflicts: &[Conflict]) -> String {
    let described: Vec<String> = conflicts.iter().take(5).map(ToString::to_string).collect();
    let more = conflicts.len().saturating_sub(described.len());
    let more = if more == 0 {
        String::new()
    } else {
        format!("; and {more} more")
    };
    format!(
        "somebody has changed this meanwhile, and nothing was overwritten: {}{more}",
        described.join("; ")
    )
}
