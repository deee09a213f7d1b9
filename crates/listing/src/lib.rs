//! Reads a listing into clauses, with no word lost.
//!
//! | step | where |
//! |---|---|
//! | 1 layout: bytes, lines, page furniture, running text | [`layout`] |
//! | 2 outline: items in whatever scheme, boxes, tables | `outline` |
//! | 3 sentences | `sentences` |
//! | 4 quantities: values, ranges, tolerances, pairs, counts | `phrase` |
//! | 5 clauses: how a number is bounded | [`rules`], one file and page a rule |
//! | 5 clauses: when it applies | `conditions`, `options` |
//! | 5 clauses: which property it is | `naming` |
//! | 5 put together, with products, references and prose | `clauses` |
//! | 6 confirmation by a person | [`confirm`] |
//!
//! What is absent: site facts, verdicts, I/O and clocks. Reading never fails on text: what no rule reads stays as words, and
//! every byte of the source is accounted for.

mod clauses;
mod conditions;
pub mod confirm;
mod header;
pub mod layout;
pub mod model;
mod naming;
mod options;
mod outline;
mod phrase;
mod places;
mod reader;
pub mod rules;
mod sentences;

pub use layout::DecodeError;
pub use model::*;
pub use naming::component_of_title;
pub use reader::{read, read_text};
