//! The section of a joint, to scale.
#![allow(missing_docs, unused)]
pub mod callout;
pub mod known;
mod layout;
pub mod plane;
pub mod section;
pub mod sheet;
pub mod svg;

pub use callout::Callout;
pub use known::{Condition, Known, Undrawable};
pub use section::{Scene, State};
pub use sheet::{Heading, compose, sheet};
pub use svg::{Page, svg};
