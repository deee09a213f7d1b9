//! A listing's document, as plain text or as PDF, read.

use listing::{DecodeError, Reading, layout};
use paper::{Paper, PaperError};
use sha2::{Digest, Sha256};

use crate::sorts;

/// What the names of listings end with.
const ENDINGS: [&str; 3] = ["txt", "text", "pdf"];

/// Whether a file's name, by its ending, is that of a listing.
pub fn is_listing(ending: &str) -> bool {
    ENDINGS.iter().any(|one| ending.eq_ignore_ascii_case(one))
}

/// The most bytes of a listing's text. One has a few pages of some 4 kB each; read, it takes more than a hundred times its text.
pub(crate) const MOST_TEXT: usize = 512 << 10;

/// A listing as read, with the text that it was read from.
#[derive(Debug, Clone)]
pub struct Document {
    /// The reading, whatever a person has confirmed of it.
    pub reading: Reading,
    /// The text, into which spans point.
    pub text: String,
    /// The pages that the text was taken from, when the document is a PDF.
    pub paper: Option<Paper>,
}

/// Why bytes are no listing.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum Unread {
    /// There are none.
    #[error("the file is empty")]
    Empty,
    /// They are a file of another sort.
    #[error("the file is no text: it looks like {0}")]
    OtherSort(&'static str),
    /// They aren't text.
    #[error("the file isn't text: byte {at} is {byte:#04x}, which no text holds")]
    Binary {
        /// The place of the first byte that no text holds.
        at: usize,
        /// That byte.
        byte: u8,
    },
    /// They are text with the marks of another program all through it.
    #[error("the file is {0}, whose marks would be read as words")]
    Markup(&'static str),
    /// They are white space.
    #[error("the file holds nothing but white space")]
    Blank,
    /// They are text of more than half a megabyte.
    #[error("the file holds {} kB of text, and a listing has at most {} kB", bytes >> 10, MOST_TEXT >> 10)]
    TooLong {
        /// How many bytes of text there are.
        bytes: usize,
    },
    /// They are a PDF without text that can be read.
    #[error("{0}")]
    Paper(PaperError),
}

impl From<DecodeError> for Unread {
    fn from(error: DecodeError) -> Self {
        match error {
            DecodeError::Empty => Self::Empty,
            DecodeError::Binary { at, byte } => Self::Binary { at, byte },
        }
    }
}

impl Document {
    /// Reads a document; its name is that of its file.
    ///
    /// # Errors
    /// When it is neither text nor a PDF that holds text.
    pub fn read(name: &str, bytes: &[u8]) -> Result<Self, Unread> {
        if paper::is_pdf(bytes) {
            of_pdf(name, bytes)
        } else {
            of_text(name, bytes)
        }
    }
}

fn of_text(name: &str, bytes: &[u8]) -> Result<Document, Unread> {
    if let Some(sort) = sorts::of_bytes(bytes) {
        return Err(Unread::OtherSort(sort));
    }
    let text = layout::decode(bytes)?.text;
    if text.trim().is_empty() {
        return Err(Unread::Blank);
    }
    if let Some(markup) = sorts::of_markup(&text) {
        return Err(Unread::Markup(markup));
    }
    within(&text)?;
    Ok(Document {
        reading: listing::read(name, bytes)?,
        text,
        paper: None,
    })
}

/// The text of a PDF is read; the document stays the PDF, so that what is confirmed is bound to the file that people hold.
fn of_pdf(name: &str, bytes: &[u8]) -> Result<Document, Unread> {
    let paper = paper::read(bytes).map_err(Unread::Paper)?;
    within(&paper.text)?;
    let mut reading = listing::read_text(name, &paper.text);
    reading.source.sha256 = sha256(bytes);
    reading.source.pages = paper.pages.len();
    Ok(Document {
        reading,
        text: paper.text.clone(),
        paper: Some(paper),
    })
}

/// Whether a text can be a listing's by its size, asked before it is read.
fn within(text: &str) -> Result<(), Unread> {
    if text.len() > MOST_TEXT {
        return Err(Unread::TooLong { bytes: text.len() });
    }
    Ok(())
}

fn sha256(bytes: &[u8]) -> String {
    Sha256::digest(bytes)
        .iter()
        .flat_map(|byte| [byte >> 4, byte & 0xf])
        .filter_map(|digit| char::from_digit(u32::from(digit), 16))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::{Document, Unread};

    #[test]
    fn what_is_no_listing_is_told() {
        let why = |bytes: &[u8]| Document::read("a.txt", bytes).unwrap_err();
        assert_eq!(why(b""), Unread::Empty);
        assert_eq!(why(b" \n"), Unread::Blank);
        assert!(matches!(why(b"1. Packing\0"), Unread::Binary { .. }));
        assert!(matches!(why(b"%PDF-1.7\nnothing"), Unread::Paper(_)));
        let long = "1. Packing - Min 4 pcf mineral wool.\n".repeat(15_000);
        let too_long = why(long.as_bytes());
        assert_eq!(too_long, Unread::TooLong { bytes: long.len() });
        assert!(
            too_long.to_string().contains("at most 512 kB"),
            "{too_long}"
        );
    }
}
