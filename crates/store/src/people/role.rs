//! What a person may do.

use core::fmt;
use core::str::FromStr;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::error::StoreError;

/// What a person may do. Each may do what those before it may.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum Role {
    /// Looks at everything, and changes nothing.
    Reader,
    /// Enters facts, and answers questions and measurements.
    Inspector,
    /// Confirms, corrects and judges clauses, imports, and reviews submittals.
    Reviewer,
    /// Invites people, and says what they may do.
    Administrator,
}

impl Role {
    /// Every role, the one that may do least first.
    pub const ALL: [Self; 4] = [
        Self::Reader,
        Self::Inspector,
        Self::Reviewer,
        Self::Administrator,
    ];

    /// Its name, as it is kept and said.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Reader => "reader",
            Self::Inspector => "inspector",
            Self::Reviewer => "reviewer",
            Self::Administrator => "administrator",
        }
    }

    /// What it lets a person do besides what those before it may, in a few words.
    pub const fn may(self) -> &'static str {
        match self {
            Self::Reader => "looks at everything",
            Self::Inspector => "enters facts and answers questions",
            Self::Reviewer => "confirms, corrects and judges clauses",
            Self::Administrator => "invites people and says what they may do",
        }
    }
}

impl fmt::Display for Role {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}

impl FromStr for Role {
    type Err = StoreError;

    fn from_str(text: &str) -> Result<Self, StoreError> {
        Self::ALL
            .into_iter()
            .find(|role| role.name() == text)
            .ok_or_else(|| {
                let names = Self::ALL.map(Self::name).join(", ");
                StoreError::Refused(format!("there is no role `{text}`; the roles are {names}"))
            })
    }
}
