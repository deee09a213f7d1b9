//! A listing beside the clauses it was read into, as one page that needs nothing but a browser.
//!
//! The words stand whole and as written, cut into rows; beside each row stand the clauses that begin in it. The page fetches nothing and
//! runs nothing but its own script, whose digest its policy names; without the script it shows the same and lights the same.
//!
//! | module | what it makes |
//! |---|---|
//! | `rows` | the text cut into rows, and what stands beside each |
//! | `stretches` | a row's words cut where anything begins or ends |
//! | `paragraphs` | a row's stretches put together to paragraphs, which flow where the page is narrow |
//! | `words` | the words, every byte of them once |
//! | `clauses` | the clauses and warnings beside them |
//! | `known` | what is found out once for all clauses |
//! | `head` | what the head states, how the words are marked |
//! | `todo` | what there is to look at, and how to confirm |
//! | `pages` | where the clauses stand on the pages of a PDF |
//! | `sheet` | the whole page, its style, script and policy |
//!
//! [`page`] is the whole page; [`content`], [`STYLE`] and [`SCRIPT`] are its parts, for a program that has a frame of its own.
//!
//! What is absent: files, verdicts, and words of its own about a clause, which come from `wording`.

mod clauses;
mod head;
mod known;
mod pages;
mod paragraphs;
mod rows;
mod sheet;
mod stretches;
mod todo;
mod words;

use listing::Reading;
use listing::confirm::Entry;
use paper::Paper;

pub use sheet::{SCRIPT, STYLE, content, page};

/// What a page shows.
#[derive(Debug, Clone, Copy)]
pub struct Marked<'a> {
    /// The source's file, as shown.
    pub file: &'a str,
    /// The source's text, into which the reading's spans point.
    pub text: &'a str,
    /// The reading, with what people have confirmed laid over it.
    pub reading: &'a Reading,
    /// The reading as the reader left it, whatever people have decided.
    pub as_read: &'a Reading,
    /// Whether every clause is confirmed.
    pub is_confirmed: bool,
    /// What people have decided of the clauses.
    pub decisions: &'a [Entry],
    /// The pages that the text was taken from, when the source is a PDF.
    pub paper: Option<&'a Paper>,
}
