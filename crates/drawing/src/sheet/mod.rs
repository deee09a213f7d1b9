//! The sheet: views, call-outs, dimensions, title block, all on one page.

mod aside;
mod call_outs;
mod caption;
mod chart;
mod dimensions;
mod heading;
mod key;
mod notes;
mod one_state;
mod profile;
mod reasons;
mod scale;
mod sheet_of;
mod title;
mod troubles;
mod view;

pub use heading::Heading;
pub use one_state::at_one_state;
pub use sheet_of::{compose, sheet};
