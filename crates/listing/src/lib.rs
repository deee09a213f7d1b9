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
//! | what the reader is held to, and what people have corrected | [`cases`] |
//!
//! # How well it reads
//!
//! Measured on documents by hands that had not seen the code, each scored once before anybody looked into it. Right: the relation, value and
//! unit of a number that requires something; wrong: one of them another than what is written.
//!
//! | documents | numbers | right | wrong |
//! |---|---|---|---|
//! | the last six, as the rules stood then | 323 | 92.6 % | 0.9 % |
//! | the six before them: tables of new layouts, a data sheet with units in its labels | 328 | 72.9 % | 2.4 % |
//! | the six before those: terse tables, a report with columns of limits, articles | 348 | 85.9 % | 6.6 % |
//! | the six before those | 316 | 95.6 % | 0.3 % |
//! | the thirty before those | 1652 | 91.9 % | 1.4 % |
//!
//! Styles that a rule was made for read well on documents that none was made for; a layout that nobody has met may not be read at all. By style,
//! of the last six: a numbered inch listing and a numbered metric one 100 %, drawing notes 100 %, narrative 96 %, a classification report
//! 94 %, tables in columns of text 68 % (rules within a heading; read since).
//!
//! What is missed, most often first: counts that only the sense gives ("the first and the last"), tolerances far from their value, class codes
//! that hold for some walls, rows of a schedule whose cells run over several lines, joints set apart in a subject ("joints above 3 in. and up to
//! 5 in. take two coats"). What is read wrong is mostly a qualifier that reaches over one number too many or too few. Nearly all that is missed
//! is shown all the same: as words for a person, and as an unread number.
//!
//! What is absent: site facts, verdicts, I/O and clocks. Reading never fails on text: what no rule reads stays as words, and
//! every byte of the source is accounted for.

pub mod cases;
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
