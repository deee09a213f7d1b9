//! Text put together piece by piece, each with its place.

use crate::model::{PagePlace, Rect};

/// Some bytes of the text that stand in one place, up to where the next piece starts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Piece {
    /// The first byte.
    pub(crate) start: usize,
    /// The line that it stands on, counted through the document.
    pub(crate) line: usize,
    /// Whether it is white space.
    pub(crate) is_space: bool,
    /// Where.
    pub(crate) place: PagePlace,
}

/// The text so far.
#[derive(Debug, Default)]
pub(crate) struct Text {
    pub(crate) written: String,
    pub(crate) pieces: Vec<Piece>,
    page: usize,
    line: usize,
    /// How many characters the line has.
    column: usize,
    /// Where the last visible thing stood.
    last: Rect,
}

impl Text {
    /// Begins a page: a form feed ends the line before it.
    pub(crate) fn begin_page(&mut self, page: usize) {
        if page > 1 {
            if self.written.ends_with('\n') {
                self.written.pop();
                let end = self.written.len();
                while self.pieces.last().is_some_and(|piece| piece.start >= end) {
                    self.pieces.pop();
                }
            }
            self.space('\u{c}');
        }
        self.page = page;
        self.line += 1;
        self.column = 0;
        self.last = Rect::default();
    }

    /// Adds what is seen at a place.
    pub(crate) fn add(&mut self, words: &str, rect: Rect) {
        if words.is_empty() {
            return;
        }
        self.piece(false, rect);
        self.written.push_str(words);
        self.column += words.chars().count();
        self.last = rect;
    }

    /// Blanks up to a column, at least so many where the line has begun.
    pub(crate) fn blanks_to(&mut self, column: usize, least: usize, next: Rect) {
        let least = if self.column == 0 { 0 } else { least };
        let blanks = column.saturating_sub(self.column).max(least);
        if blanks == 0 {
            return;
        }
        let from = if self.column == 0 {
            next.x0
        } else {
            self.last.x1
        };
        let between = Rect {
            x0: from.min(next.x0),
            x1: next.x0.max(from),
            ..next
        };
        self.piece(true, between);
        self.written.extend(core::iter::repeat_n(' ', blanks));
        self.column += blanks;
    }

    /// One blank between words.
    pub(crate) fn blank(&mut self, rect: Rect) {
        self.piece(true, rect);
        self.written.push(' ');
        self.column += 1;
    }

    /// Ends the line.
    pub(crate) fn end_line(&mut self) {
        self.space('\n');
        self.line += 1;
        self.column = 0;
    }

    /// The whole, its last line ended.
    pub(crate) fn finish(mut self) -> (String, Vec<Piece>) {
        if !self.written.is_empty() && !self.written.ends_with('\n') {
            self.space('\n');
        }
        (self.written, self.pieces)
    }

    fn space(&mut self, space: char) {
        let end = Rect {
            x0: self.last.x1,
            ..self.last
        };
        self.piece(true, end);
        self.written.push(space);
    }

    fn piece(&mut self, is_space: bool, rect: Rect) {
        self.pieces.push(Piece {
            start: self.written.len(),
            line: self.line,
            is_space,
            place: PagePlace {
                page: self.page.max(1),
                rect: rect.rounded(),
            },
        });
    }
}
