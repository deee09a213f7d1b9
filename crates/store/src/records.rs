//! What is kept: one type a kind of record.

use jiff::civil::Date;
use listing::confirm;
use schemars::JsonSchema;
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};
use site::{Building, Fact, Judgment};

use crate::error::StoreError;
use crate::key::{Key, Kind};

/// A value that is kept under keys of one kind.
pub trait Record: Serialize + DeserializeOwned {
    /// The kind.
    const KIND: Kind;
}

/// A record as it stands.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Held<T> {
    /// Its key.
    pub key: Key,
    /// How often it was changed; from 1.
    pub version: i64,
    /// The number of the journal's entry that last changed it.
    pub seq: i64,
    /// The number of the entry that brought it in. Records stand in this order.
    pub since: i64,
    /// What it says.
    pub value: T,
}

impl Held<String> {
    /// The record as what it is of.
    ///
    /// # Errors
    /// When what is kept isn't that.
    pub fn read<T: Record>(self) -> Result<Held<T>, StoreError> {
        if self.key.kind != T::KIND {
            return Err(StoreError::unreadable(
                &self.key,
                format_args!("it is no {}", T::KIND.name()),
            ));
        }
        match serde_json::from_str(&self.value) {
            Ok(value) => Ok(Held {
                key: self.key,
                version: self.version,
                seq: self.seq,
                since: self.since,
                value,
            }),
            Err(error) => Err(StoreError::unreadable(&self.key, error)),
        }
    }
}

impl Record for Building {
    const KIND: Kind = Kind::Building;
}

impl Record for Judgment {
    const KIND: Kind = Kind::Judgment;
}

/// A rated wall or floor, without what is known of it.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BarrierRecord {
    /// What it is: wall, floor, shaft.
    pub kind: String,
    /// What it separates.
    pub title: String,
}

impl Record for BarrierRecord {
    const KIND: Kind = Kind::Barrier;
}

/// A type of joint, without what is known of it.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MarkRecord {
    /// The type in words.
    pub title: String,
    /// The listing it is to be built to.
    pub listing: Option<String>,
}

impl Record for MarkRecord {
    const KIND: Kind = Kind::Mark;
}

/// A joint, without what is known of it.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct JointRecord {
    /// Its mark.
    pub mark: String,
    /// The listing it is to be built to, where that isn't its mark's.
    pub listing: Option<String>,
    /// The storey.
    pub storey: Option<String>,
    /// The barrier.
    pub barrier: Option<String>,
    /// The place on the grid.
    pub grid: Option<String>,
}

impl Record for JointRecord {
    const KIND: Kind = Kind::Joint;
}

/// What is known of one property.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Known {
    /// A value, with where it comes from; without a cell when a person entered it.
    Fact(Box<Fact>),
    /// That it isn't known here, whatever the mark or barrier says.
    NotKnown,
}

impl Known {
    /// Whether it was read from a table, and not entered by a person. The schedule's "not known" was.
    pub const fn is_from_table(&self) -> bool {
        match self {
            Self::Fact(fact) => fact.cell.is_some(),
            Self::NotKnown => true,
        }
    }
}

impl Record for Known {
    const KIND: Kind = Kind::Fact;
}

/// A listing's document.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ListingRecord {
    /// SHA-256 of its bytes, which are an attachment.
    pub sha256: String,
    /// How many bytes.
    pub bytes: u64,
    /// Its designation, as it was read when it was put here; empty where it has none. None in a record of an earlier version, which
    /// didn't keep it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub designation: Option<String>,
}

impl Record for ListingRecord {
    const KIND: Kind = Kind::Listing;
}

/// A clause that a named person has confirmed or corrected.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ConfirmationRecord {
    /// SHA-256 of the document it was made on.
    pub source_sha256: String,
    /// The document's name then.
    pub source_name: String,
    /// Who, when, which clause, and what is right.
    pub entry: confirm::Entry,
}

impl Record for ConfirmationRecord {
    const KIND: Kind = Kind::Confirmation;
}

/// A document or photograph, kept under its owner's name and its hash.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AttachmentRecord {
    /// The file's name, as its holder called it.
    pub file: String,
    /// SHA-256 of its bytes.
    pub sha256: String,
    /// How many bytes.
    pub bytes: u64,
}

impl Record for AttachmentRecord {
    const KIND: Kind = Kind::Attachment;
}

/// An answer to a question; the facts it became are records of their own, changed with it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AnswerRecord {
    /// The question, as it was asked.
    pub question: String,
    /// The property it was about.
    pub property: String,
    /// The joints it was about.
    pub joints: Vec<String>,
    /// The answer, as written.
    pub value: String,
    /// Where it comes from, as written.
    pub source: String,
}

impl Record for AnswerRecord {
    const KIND: Kind = Kind::Answer;
}

/// What a contractor proposes for some marks: a listing, and products with what is said of them.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SubmittalRecord {
    /// What it is, in words.
    pub title: String,
    /// Who submits it.
    pub from: String,
    /// When it came.
    pub received: Date,
    /// The marks that it is for.
    pub marks: Vec<String>,
    /// The listing that is proposed, by its file.
    pub listing: String,
    /// What is proposed, and said of it: products and their properties.
    pub proposed: Vec<Fact>,
    /// What came of the review, once a reviewer has said so.
    pub outcome: Option<OutcomeRecord>,
}

impl Record for SubmittalRecord {
    const KIND: Kind = Kind::Submittal;
}

/// What came of the review of a submittal: a named reviewer's decision.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct OutcomeRecord {
    /// What came of it.
    pub outcome: Outcome,
    /// What the reviewer adds; may be empty.
    pub note: String,
    /// Who decided.
    pub by: String,
    /// When.
    pub when: Date,
}

/// The outcomes of a review of submittals, as construction contracts commonly name them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Outcome {
    /// The work may go on as submitted.
    NoExceptionsTaken,
    /// The work may go on with the corrections that are noted.
    MakeCorrectionsNoted,
    /// It is to be corrected and submitted again.
    ReviseAndResubmit,
    /// Something else is to be submitted.
    Rejected,
}

impl Outcome {
    /// Every outcome.
    pub const ALL: [Self; 4] = [
        Self::NoExceptionsTaken,
        Self::MakeCorrectionsNoted,
        Self::ReviseAndResubmit,
        Self::Rejected,
    ];

    /// The trade's words for it.
    pub const fn words(self) -> &'static str {
        match self {
            Self::NoExceptionsTaken => "no exceptions taken",
            Self::MakeCorrectionsNoted => "make corrections noted",
            Self::ReviseAndResubmit => "revise and resubmit",
            Self::Rejected => "rejected",
        }
    }
}

/// What a reviewer says of a clause of a submittal at a mark.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CommentRecord {
    /// The mark.
    pub mark: String,
    /// The clause's id; empty for the submittal as a whole.
    pub clause: String,
    /// The clause's words then.
    pub words: String,
    /// What is said.
    pub comment: String,
    /// Who says it.
    pub by: String,
    /// When.
    pub when: Date,
}

impl Record for CommentRecord {
    const KIND: Kind = Kind::Comment;
}

/// The attachment that a record's canonical value stands for, if it stands for one: its hash and size.
pub(crate) fn attachment_of(kind: Kind, value: &str) -> Option<(String, u64)> {
    match kind {
        Kind::Listing => serde_json::from_str(value)
            .ok()
            .map(|record: ListingRecord| (record.sha256, record.bytes)),
        Kind::Attachment => serde_json::from_str(value)
            .ok()
            .map(|record: AttachmentRecord| (record.sha256, record.bytes)),
        _ => None,
    }
}
