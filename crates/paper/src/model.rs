//! What comes of a PDF.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::text::Piece;

/// A rectangle on a page, in points (1/72 in.) from the upper left corner of the page as it is seen, downwards and to the right.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize, JsonSchema)]
pub struct Rect {
    /// Left edge.
    pub x0: f64,
    /// Upper edge.
    pub y0: f64,
    /// Right edge.
    pub x1: f64,
    /// Lower edge.
    pub y1: f64,
}

impl Rect {
    /// The rectangle around both.
    #[must_use]
    pub fn join(self, other: Self) -> Self {
        Self {
            x0: self.x0.min(other.x0),
            y0: self.y0.min(other.y0),
            x1: self.x1.max(other.x1),
            y1: self.y1.max(other.y1),
        }
    }

    /// Its width, in points.
    pub fn width(self) -> f64 {
        self.x1 - self.x0
    }

    /// Its height, in points.
    pub fn height(self) -> f64 {
        self.y1 - self.y0
    }

    /// Whether a point lies in it.
    pub(crate) fn holds(self, x: f64, y: f64) -> bool {
        (self.x0..=self.x1).contains(&x) && (self.y0..=self.y1).contains(&y)
    }

    /// The same to a hundredth of a point.
    #[must_use]
    pub(crate) fn rounded(self) -> Self {
        let round = |length: f64| (length * 100.0).round() / 100.0;
        Self {
            x0: round(self.x0),
            y0: round(self.y0),
            x1: round(self.x1),
            y1: round(self.y1),
        }
    }
}

/// A rectangle and the page that it lies on.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct PagePlace {
    /// The page; the first is 1.
    pub page: usize,
    /// Where on it.
    pub rect: Rect,
}

/// How large a page is as it is seen, in points.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct PageSize {
    /// Width.
    pub width: f64,
    /// Height.
    pub height: f64,
}

/// What a person should know of a page beside its text.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, JsonSchema)]
pub struct Note {
    /// What it is about.
    pub kind: NoteKind,
    /// Where.
    pub place: PagePlace,
    /// In words.
    pub words: String,
}

/// What a note is about.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum NoteKind {
    /// The page is a picture: its text isn't in the file and must be supplied.
    Scanned,
    /// The text was put behind a picture of the page by a machine that read it.
    BehindScan,
    /// The page holds nothing.
    Empty,
    /// A picture or a drawing that a person must look at.
    Figure,
    /// Lettering within a figure, which isn't in the text.
    Lettering,
    /// A picture that stands on several pages alike.
    Emblem,
    /// Characters to which the file gives no meaning.
    UnknownCharacters,
    /// Text that runs in another direction than the rest of its page.
    Turned,
    /// Columns of running text that were read one after the other.
    Columns,
    /// A raised figure after a number, which may be a power or a mark of a footnote.
    RaisedAfterNumber,
    /// A fraction whose whole number can't be told from its numerator.
    UnclearFraction,
    /// Text that doesn't show on the page, and wasn't read.
    Hidden,
    /// A part of the page that couldn't be read.
    Damaged,
}

/// The text of a PDF, each byte of which leads back to its page.
#[derive(Debug, Clone, PartialEq)]
pub struct Paper {
    /// The text: lines as on the page, columns spaced out, a form feed between pages.
    pub text: String,
    /// The pages.
    pub pages: Vec<PageSize>,
    /// What a person should know, in the order of the pages.
    pub notes: Vec<Note>,
    pub(crate) pieces: Vec<Piece>,
}

impl Paper {
    /// The pages that are pictures, of which nothing was read.
    pub fn pictures(&self) -> Vec<usize> {
        let scans = self
            .notes
            .iter()
            .filter(|note| note.kind == NoteKind::Scanned);
        let mut pages: Vec<usize> = scans.map(|note| note.place.page).collect();
        pages.dedup();
        pages
    }

    /// Where a stretch of the text stands: one rectangle for each line that it runs over. White space around it doesn't count.
    pub fn places(&self, start: usize, end: usize) -> Vec<PagePlace> {
        let first = self
            .pieces
            .partition_point(|piece| piece.start <= start)
            .saturating_sub(1);
        let mut found: Vec<(usize, PagePlace)> = Vec::new();
        let within = self.pieces.get(first..).unwrap_or_default();
        for piece in within.iter().take_while(|piece| piece.start < end) {
            if piece.is_space {
                continue;
            }
            match found.last_mut() {
                Some((line, place)) if *line == piece.line => {
                    place.rect = place.rect.join(piece.place.rect);
                }
                _ => found.push((piece.line, piece.place)),
            }
        }
        found
            .into_iter()
            .map(|(_, place)| PagePlace {
                page: place.page,
                rect: place.rect.rounded(),
            })
            .collect()
    }

    /// Where one byte of the text stands; white space stands between what it parts. None past the end.
    pub fn place_at(&self, at: usize) -> Option<PagePlace> {
        if at >= self.text.len() {
            return None;
        }
        let after = self.pieces.partition_point(|piece| piece.start <= at);
        self.pieces
            .get(after.checked_sub(1)?)
            .map(|piece| piece.place)
    }
}
