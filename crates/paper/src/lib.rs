//! Reads the pages of a PDF into plain text that knows where each of its bytes stands.
//!
//! | step | where |
//! |---|---|
//! | 1 the file: pages, limits on size and depth | `document`, `limits` |
//! | 2 what a page shows: glyphs, rules, drawings, images | `content` |
//! | 3 lines: glyphs on one baseline, raised and lowered figures, fractions | `layout::lines`, `layout::spelling` |
//! | 4 columns: tables and blocks as columns of text, running columns one after the other | `layout::columns` |
//! | 5 rules, figures, blank lines, pages: the text, with the place of every byte | `layout::page` |
//!
//! The text is what a person would type who has the page before them: heads and feet are kept, columns are spaced out with
//! blanks, lines end where they end on the page, and a form feed parts the pages. Whatever the page shows that is no text
//! (a scan, a figure, a character that the file gives no meaning) leaves a line or a mark in the text and a [`Note`]: nothing
//! is passed over in silence.
//!
//! # What was measured
//!
//! - Words and their order against `pdftotext -layout` and `pypdfium2` (`tests/oracle.py`): on the demo's three PDFs all of 1906
//!   words alike; on `tests/sample.pdf` alike but for raised marks of footnotes and figures after a blank that the others run together, and
//!   for the one that reads a header in two columns down its columns.
//! - 80 000 changed, cut and patched files: each gives a text or an error, none a panic (`PAPER_MUTATIONS`).
//! - Half a millisecond to one for a page, on one core (`benches/pages`).
//!
//! # What it doesn't do
//!
//! - A table without rules whose columns stand closer than half a letter's size is read as running text.
//! - A page of several columns of running text is read column by column only when there are two of them; more are read across.
//! - Lettering on tinted or patterned ground is read; whether it can be seen isn't looked at.
//! - No text is recognised in pictures.
//!
//! What is absent: the sense of the text. Which line is a running head, a clause or a heading is for the crate that reads listings.

mod content;
mod document;
mod error;
mod layout;
mod limits;
mod model;
mod numbers;
mod text;

pub use document::{is_pdf, read};
pub use error::PaperError;
pub use model::{Note, NoteKind, PagePlace, PageSize, Paper, Rect};
