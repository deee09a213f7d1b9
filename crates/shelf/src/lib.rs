//! Listings as they are held: a document of text or PDF, read; what people confirmed of it; and which of several a mark means.
//!
//! What is absent: files, and words for what is wrong with them. Bytes come in as an argument.

mod document;
mod packed;
mod sorts;
mod state;
mod which;

pub use document::{Document, Unread, is_listing};
pub use packed::{Packed, READER, digest};
pub use state::{Laid, State};
pub use which::{Named, Which, which};
