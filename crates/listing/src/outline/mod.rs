//! Step 2: the outline of items, in whatever scheme the document numbers them.

mod boxes;
mod build;
mod caption;
mod columns;
mod marker;
mod schedule;
mod sequence;
mod title;

pub(crate) use build::{Outline, OutlineItem, Paragraph, outline};
pub(crate) use columns::Table;
