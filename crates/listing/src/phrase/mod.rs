//! Step 4 and the first layer of step 5: which quantities stand in a sentence, and how each is bounded.
//!
//! Nothing here knows what a joint is. The grammar works on any document, whatever its words are about.

mod amounts;
mod cell;
mod counts;
mod lex;
mod names;
mod ratios;
mod seconds;
mod tolerances;
mod usual;
mod values;
mod words;

pub(crate) use amounts::{Amount, Shape, amounts};
pub(crate) use cell::{Cell, cell, leads_to_a_note};
pub(crate) use lex::{Token, TokenKind, lex, lists_behind_unit, measures};
pub(crate) use usual::{is_paired_length, usual_units, with_usual};
pub(crate) use words::count_word;
