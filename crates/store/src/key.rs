//! Under which key a record is kept.

use core::fmt;
use core::str::FromStr;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::error::StoreError;

/// What a record is of.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum Kind {
    /// The building.
    Building,
    /// A rated wall or floor.
    Barrier,
    /// A type of joint.
    Mark,
    /// A joint.
    Joint,
    /// What is known of one property of a joint, mark or barrier.
    Fact,
    /// What a named person has decided about a clause.
    Judgment,
    /// A listing's document.
    Listing,
    /// A clause that a named person has confirmed or corrected.
    Confirmation,
    /// A document or photograph.
    Attachment,
    /// An answer to a question.
    Answer,
    /// What a contractor proposes for some marks, and what came of it.
    Submittal,
    /// What a reviewer says of a clause of a submittal.
    Comment,
    /// A person who may sign in to the project.
    Person,
    /// An invitation that nobody has taken up.
    Invitation,
}

impl Kind {
    /// Every kind.
    pub const ALL: [Self; 14] = [
        Self::Building,
        Self::Barrier,
        Self::Mark,
        Self::Joint,
        Self::Fact,
        Self::Judgment,
        Self::Listing,
        Self::Confirmation,
        Self::Attachment,
        Self::Answer,
        Self::Submittal,
        Self::Comment,
        Self::Person,
        Self::Invitation,
    ];

    /// Its name, as it is kept.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Building => "building",
            Self::Barrier => "barrier",
            Self::Mark => "mark",
            Self::Joint => "joint",
            Self::Fact => "fact",
            Self::Judgment => "judgment",
            Self::Listing => "listing",
            Self::Confirmation => "confirmation",
            Self::Attachment => "attachment",
            Self::Answer => "answer",
            Self::Submittal => "submittal",
            Self::Comment => "comment",
            Self::Person => "person",
            Self::Invitation => "invitation",
        }
    }
}

impl FromStr for Kind {
    type Err = StoreError;

    fn from_str(text: &str) -> Result<Self, StoreError> {
        Self::ALL
            .into_iter()
            .find(|kind| kind.name() == text)
            .ok_or_else(|| StoreError::Value(format!("there is no kind of record `{text}`")))
    }
}

/// The key of a record.
#[derive(
    Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema,
)]
pub struct Key {
    /// What it is of.
    pub kind: Kind,
    /// The thing: a joint's name, a listing's file, the [`Owner`] of a fact. Empty for the building.
    pub name: String,
    /// Which part of it: a property, a clause. Empty where the thing is one record.
    pub part: String,
}

/// The most bytes of a key's name and of its part; an index of PostgreSQL takes no more than 2,704 in all.
pub const MOST_IN_KEY: usize = 1000;

impl Key {
    /// A key.
    pub fn new(kind: Kind, name: impl Into<String>, part: impl Into<String>) -> Self {
        Self {
            kind,
            name: name.into(),
            part: part.into(),
        }
    }

    /// The key of the building.
    pub fn building() -> Self {
        Self::new(Kind::Building, "", "")
    }

    /// The key of what is known of a property.
    pub fn fact(owner: &Owner, property: &str) -> Self {
        Self::new(Kind::Fact, owner.to_string(), property)
    }

    /// The key of a document or photograph, by its hash.
    pub fn attachment(owner: &Owner, sha256: &str) -> Self {
        Self::new(Kind::Attachment, owner.to_string(), sha256)
    }

    /// The key of what was confirmed of a clause of a listing's file.
    pub fn confirmation(file: &str, clause: &str) -> Self {
        Self::new(Kind::Confirmation, file, clause)
    }

    /// Whether it can be kept in either database.
    ///
    /// # Errors
    /// When a part of it is too long or holds a NUL.
    pub(crate) fn check(&self) -> Result<(), StoreError> {
        for text in [&self.name, &self.part] {
            if text.len() > MOST_IN_KEY {
                let start: String = text.chars().take(40).collect();
                return Err(StoreError::Refused(format!(
                    "the name `{start}…` is longer than {MOST_IN_KEY} bytes"
                )));
            }
            if text.contains('\0') {
                return Err(StoreError::Refused(format!(
                    "the name `{}` holds a NUL character",
                    text.replace('\0', "\u{fffd}")
                )));
            }
        }
        Ok(())
    }
}

impl fmt::Display for Key {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.kind.name())?;
        for text in [&self.name, &self.part] {
            if !text.is_empty() {
                write!(f, " {text}")?;
            }
        }
        Ok(())
    }
}

/// Whose fact, judgment, document or photograph it is.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Owner {
    /// A joint's, by name.
    Joint(String),
    /// A mark's: of every joint of it.
    Mark(String),
    /// A barrier's: of every joint in it.
    Barrier(String),
    /// A submittal's, by number: of nothing that is built.
    Submittal(String),
}

impl fmt::Display for Owner {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Joint(name) => write!(f, "joint:{name}"),
            Self::Mark(name) => write!(f, "mark:{name}"),
            Self::Barrier(name) => write!(f, "barrier:{name}"),
            Self::Submittal(number) => write!(f, "submittal:{number}"),
        }
    }
}

impl FromStr for Owner {
    type Err = StoreError;

    fn from_str(text: &str) -> Result<Self, StoreError> {
        match text.split_once(':') {
            Some(("joint", name)) => Ok(Self::Joint(name.to_owned())),
            Some(("mark", name)) => Ok(Self::Mark(name.to_owned())),
            Some(("barrier", name)) => Ok(Self::Barrier(name.to_owned())),
            Some(("submittal", number)) => Ok(Self::Submittal(number.to_owned())),
            _ => Err(StoreError::Value(format!(
                "`{text}` is no joint, mark, barrier or submittal"
            ))),
        }
    }
}
