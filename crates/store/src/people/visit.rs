//! Who came, who couldn't, and who went.

use core::str::FromStr;

use jiff::Timestamp;

use crate::error::StoreError;

/// What happened at the door.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Event {
    /// Somebody signed in.
    SignedIn,
    /// A name and a password didn't belong together.
    Failed,
    /// Somebody signed out.
    SignedOut,
}

impl Event {
    const ALL: [Self; 3] = [Self::SignedIn, Self::Failed, Self::SignedOut];

    /// Its name, as it is kept.
    pub const fn name(self) -> &'static str {
        match self {
            Self::SignedIn => "signed in",
            Self::Failed => "failed",
            Self::SignedOut => "signed out",
        }
    }
}

impl FromStr for Event {
    type Err = StoreError;

    fn from_str(text: &str) -> Result<Self, StoreError> {
        Self::ALL
            .into_iter()
            .find(|event| event.name() == text)
            .ok_or_else(|| StoreError::Value(format!("there is no kind of visit `{text}`")))
    }
}

/// Something that happened at the door.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Visit {
    /// When.
    pub at: Timestamp,
    /// Who, by the name of their key. None where the name that was given is nobody's: it isn't kept, as it may be a password in
    /// the wrong place.
    pub person: Option<String>,
    /// What happened.
    pub event: Event,
    /// From which network address.
    pub address: String,
}
