//! What is kept of people, and of those invited.

use jiff::Timestamp;
use serde::{Deserialize, Serialize};

use super::Role;
use super::name::key_of;
use crate::key::{Key, Kind};
use crate::records::Record;

/// A person, kept under their name in its folded form.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PersonRecord {
    /// The name that stands in the journal behind what they change.
    pub name: String,
    /// What they may do.
    pub role: Role,
    /// Whether they may sign in.
    pub may_sign_in: bool,
    /// When they last set a password.
    pub password_set: Timestamp,
}

impl PersonRecord {
    /// The key they are kept under.
    pub fn key(&self) -> Key {
        key_of(&self.name)
    }
}

impl Record for PersonRecord {
    const KIND: Kind = Kind::Person;
}

/// An invitation, kept under the hash of its token. It is removed when it is taken up or withdrawn, so that nobody takes it up twice.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct InvitationRecord {
    /// Whom it is for, as whoever made it calls them.
    pub whom: String,
    /// What they may do.
    pub role: Role,
    /// When it runs out.
    pub until: Timestamp,
    /// Whether it is for somebody who is there already and needs another password: `whom`, then, is their name.
    pub again: bool,
}

impl InvitationRecord {
    /// The key of the invitation whose token has a hash.
    pub fn key(hash: &str) -> Key {
        Key::new(Kind::Invitation, hash, "")
    }
}

impl Record for InvitationRecord {
    const KIND: Kind = Kind::Invitation;
}
