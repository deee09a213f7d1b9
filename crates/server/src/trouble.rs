//! What can go wrong, said for people.

use store::people::Role;
use store::{Conflict, StoreError};

/// Why something couldn't be done. Whatever it was, nothing was changed.
#[derive(Debug, thiserror::Error)]
pub enum Trouble {
    /// There is no such thing.
    #[error("{0}")]
    Unknown(String),
    /// What was entered isn't right.
    #[error("{message}; {help}")]
    Refused {
        /// What is wrong.
        message: String,
        /// What would be right.
        help: String,
    },
    /// Somebody else was first.
    #[error("somebody has changed this meanwhile, and nothing was overwritten")]
    Conflicts(Vec<Conflict>),
    /// Nobody has signed in.
    #[error("nobody has signed in")]
    NotSignedIn,
    /// Whoever asks may not do it.
    #[error(
        "that asks for the role of {asked}, and yours is that of {role}; an administrator can give you another"
    )]
    MayNot {
        /// What they are.
        role: Role,
        /// What they would have to be.
        asked: Role,
    },
    /// The store can't do it.
    #[error("{0}")]
    Store(StoreError),
    /// The program couldn't finish its work.
    #[error("{0}")]
    Broken(String),
}

impl From<StoreError> for Trouble {
    fn from(error: StoreError) -> Self {
        match error {
            StoreError::Conflicts(conflicts) => Self::Conflicts(conflicts),
            StoreError::Refused(message) => Self::Refused {
                message,
                help: "put it right and try again".to_owned(),
            },
            other => Self::Store(other),
        }
    }
}

impl From<site::import::Refusal> for Trouble {
    fn from(refusal: site::import::Refusal) -> Self {
        Self::Refused {
            message: refusal.message,
            help: refusal.help,
        }
    }
}
