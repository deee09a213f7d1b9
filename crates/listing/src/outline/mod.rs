//! Step 2: the outline of items, in whatever scheme the document numbers them.

mod build;
mod caption;
mod entry;
mod marker;
mod open_end;
mod path;
mod requirement_rows;
mod schedule;
mod sequence;
mod tables;
mod title;

pub(crate) use build::{Outline, OutlineItem, Paragraph, heads_all, is_case, is_rating, outline};
pub(crate) use entry::{Entry, name_of_label};
pub(crate) use marker::ALTERNATE;
pub(crate) use requirement_rows::{heads_properties, is_code};
pub(crate) use tables::{Table, limit_columns};
pub(crate) use title::heads_what_is_ruled_out;
