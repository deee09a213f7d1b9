//! The sheet: views, call-outs, dimensions, title block, all on one page.

mod chart;
mod conventions;
mod heading;
mod profile;
mod scale;
mod sheet_of;
mod title;
mod view;

pub use heading::Heading;
pub use sheet_of::{compose, sheet};
