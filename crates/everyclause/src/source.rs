//! A listing's file, as plain text or as PDF, read.

use std::path::Path;

use listing::Reading;
use paper::{Note, PagePlace, PageSize, Paper, PaperError};
use schemars::JsonSchema;
use serde::Serialize;
use shelf::{Document, Unread};

use crate::fault::Fault;
use crate::files;

/// The most bytes a listing may have; one has a few pages.
pub(crate) const MOST_BYTES: u64 = 16 << 20;

/// Whether a file's name is that of a listing.
pub(crate) fn is_listing(path: &Path) -> bool {
    path.extension()
        .and_then(|ending| ending.to_str())
        .is_some_and(shelf::is_listing)
}

/// Reads a listing, whatever a person has confirmed of it.
///
/// # Errors
/// When the file can't be read, or is neither text nor a PDF that holds text.
pub(crate) fn read(path: &Path) -> Result<Document, Fault> {
    let bytes = files::read(path, "a listing", MOST_BYTES)?;
    let name = path
        .file_name()
        .map(|name| files::shown(Path::new(name)))
        .unwrap_or_default();
    of_bytes(&name, &bytes, &files::shown(path))
}

/// Reads a listing that somebody holds; `shown` says where, should it be at fault.
///
/// # Errors
/// When it is neither text nor a PDF that holds text.
pub(crate) fn of_bytes(name: &str, bytes: &[u8], shown: &str) -> Result<Document, Fault> {
    Document::read(name, bytes).map_err(|error| match error {
        Unread::Paper(error) => unreadable_pdf(&error, shown),
        other => {
            let help = match &other {
                Unread::OtherSort(_) | Unread::Markup(_) => {
                    "is it the right file? If it is, save it as PDF or as plain text, and give that"
                }
                _ => "give the listing as plain text: a title, then numbered items; or as a PDF",
            };
            Fault::of_file(other.to_string(), shown).help(help)
        }
    })
}

fn unreadable_pdf(error: &PaperError, shown: &str) -> Fault {
    let help = match error {
        PaperError::NoText { .. } => {
            "its text must be supplied: have it recognised or typed, compare it with the pages, and give it as plain text"
        }
        PaperError::Locked => "save it without its password, or save its text as plain text",
        PaperError::TooMuch { .. } => {
            "is it the right file? If it holds several documents, split it"
        }
        PaperError::NotPdf | PaperError::Damaged => {
            "fetch the file again, or save its text as plain text, keeping its layout"
        }
    };
    Fault::of_file(error.to_string(), shown).help(help)
}

/// A reading with the pages that it was taken from.
#[derive(Debug, Serialize, JsonSchema)]
pub(crate) struct ReadFrom<'a> {
    #[serde(flatten)]
    pub(crate) reading: &'a Reading,
    /// Where the clauses stand on the pages, when the file is a PDF.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) paper: Option<OnPaper<'a>>,
}

/// A reading on the pages of a PDF.
#[derive(Debug, Serialize, JsonSchema)]
pub(crate) struct OnPaper<'a> {
    /// The text that was taken from the pages: spans are bytes of it.
    text: &'a str,
    /// How large each page is, in points (1/72 in.).
    pages: &'a [PageSize],
    /// Where each clause stands, in the order of the clauses.
    clauses: Vec<ClauseOnPaper<'a>>,
    /// What a person should know of the pages beside their text.
    notes: &'a [Note],
}

/// Where a clause stands on the pages.
#[derive(Debug, Serialize, JsonSchema)]
struct ClauseOnPaper<'a> {
    /// The clause.
    id: &'a str,
    /// A rectangle for each line that it runs over.
    places: Vec<PagePlace>,
}

impl<'a> ReadFrom<'a> {
    /// A reading, and the pages if there are any.
    pub(crate) fn of(reading: &'a Reading, paper: Option<&'a Paper>) -> Self {
        let paper = paper.map(|paper| OnPaper {
            text: &paper.text,
            pages: &paper.pages,
            clauses: reading
                .clauses
                .iter()
                .map(|clause| ClauseOnPaper {
                    id: &clause.id,
                    places: paper.places(clause.span.start(), clause.span.end()),
                })
                .collect(),
            notes: &paper.notes,
        });
        Self { reading, paper }
    }
}
