//! From a project's tables and listings to records, and back.

mod give;
mod keys;
mod take;

pub use give::fill;
pub use keys::judgment_key;
pub use take::{Proposal, ToKeep};
