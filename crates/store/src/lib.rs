//! Keeps a project so that nothing is lost.
//!
//! A [`Store`] holds *records*: the building, its barriers, marks and joints, each fact known of them, each judgment, each listing, each
//! confirmed clause, each answer. A record has a [`Key`] and a version. Whatever is changed is appended to a *journal*: who, when,
//! what, before and after. Each entry is chained by hash to the one before it, so that what was confirmed, judged or measured can't be
//! changed quietly: [`Store::verify`] finds it.
//!
//! Two people may change one record. Each says which version they saw; the second is told what the first changed, and nothing
//! is overwritten.
//!
//! Documents and photographs are *attachments*, held by the SHA-256 of their bytes. A whole project goes out and comes in as one *archive*.
//!
//! | module | what lives there |
//! |---|---|
//! | [`place`] | where a store is: a file, or the URL of a database |
//! | [`key`], [`records`] | what is kept, and under which key |
//! | [`change`] | what is to be changed, and why it can't be |
//! | [`journal`] | the entries and their chain |
//! | [`database`] | the statements, the same for SQLite and PostgreSQL |
//! | [`people`] | who there is, and what each may do |
//! | [`attachments`] | bytes by their hash, in a folder or a bucket |
//! | [`project`] | from a project's tables to records, and back |
//! | [`archive`] | a whole project as one file |
//! | [`verify`] | whether all of it is as it was written |
//!
//! What is absent: rules of the trade, and a clock. Whoever changes something says when.

pub mod archive;
pub mod attachments;
mod canonical;
pub mod change;
pub mod database;
pub mod error;
pub mod journal;
pub mod key;
pub mod people;
pub mod place;
pub mod project;
pub mod records;
mod store;
pub mod verify;

pub use change::{Change, Conflict, Done, Edit};
pub use error::StoreError;
pub use journal::{Entry, Head, Made};
pub use key::{Key, Kind, Owner};
pub use place::{AttachmentsPlace, Place};
pub use records::{Held, Record};
pub use store::Store;
pub use verify::{Flaw, Verified};
