//! Why a file gives no text.

/// Why a file gives no text.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum PaperError {
    /// It doesn't begin as a PDF does.
    #[error("the file isn't a PDF")]
    NotPdf,
    /// It is a PDF that asks for a password, or is locked in a way that isn't known here.
    #[error("the PDF is locked: it can't be read without its password")]
    Locked,
    /// Its structure can't be followed.
    #[error("the PDF is damaged: its pages can't be found")]
    Damaged,
    /// It is larger, once unpacked, than a document of a few pages can be.
    #[error("the PDF holds more than a listing can: {what}")]
    TooMuch {
        /// What there is too much of, and the limit.
        what: String,
    },
    /// No page has text: they are scans, or empty.
    #[error("{}", no_text(*pages))]
    NoText {
        /// How many pages there are.
        pages: usize,
    },
}

fn no_text(pages: usize) -> String {
    if pages == 1 {
        "the page holds no text: it is a picture or empty".to_owned()
    } else {
        format!("none of the {pages} pages holds text: they are pictures or empty")
    }
}
