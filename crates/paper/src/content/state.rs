//! The state of drawing: where things go, and how text is written (ISO 32000-1, 8.4 and 9.3).

use hayro_font::Font;
use hayro_font::kurbo::{Affine, Vec2};

use crate::limits::MOST_STATES;

/// The state of drawing.
#[derive(Debug, Clone)]
pub(super) struct State<'a> {
    /// To the page as it is seen.
    pub(super) matrix: Affine,
    /// Where the next character goes.
    pub(super) text: Affine,
    /// Where the line of text began.
    line: Affine,
    pub(super) font: Option<Font<'a>>,
    pub(super) size: f64,
    pub(super) char_space: f64,
    pub(super) word_space: f64,
    /// How much text is stretched along its line; 1 is not at all.
    pub(super) stretch: f64,
    pub(super) leading: f64,
    pub(super) rise: f64,
    /// Whether text doesn't show.
    pub(super) invisible: bool,
}

impl State<'_> {
    /// Places the line of text anew.
    pub(super) fn begin_text(&mut self, matrix: Affine) {
        self.text = matrix;
        self.line = matrix;
    }

    /// Begins the next line of text, so far from where this one began.
    pub(super) fn next_line(&mut self, x: f64, y: f64) {
        let matrix = self.line * Affine::translate((x, y));
        self.begin_text(matrix);
    }

    /// Begins the next line of text, at the distance that is set.
    pub(super) fn next_leading(&mut self) {
        self.next_line(0.0, -self.leading);
    }

    /// Moves on between characters, by thousandths of the size, backwards.
    pub(super) fn shift(&mut self, thousandths: f64) {
        let by = -thousandths / 1000.0 * self.size;
        self.advance(if self.is_level() {
            Vec2::new(by * self.stretch, 0.0)
        } else {
            Vec2::new(0.0, by)
        });
    }

    /// Moves on by so much.
    pub(super) fn advance(&mut self, by: Vec2) {
        self.text *= Affine::translate(by);
    }

    /// Whether the font is written along the line, and not downwards.
    pub(super) fn is_level(&self) -> bool {
        self.font.as_ref().is_none_or(Font::is_horizontal)
    }
}

/// The state in force, and those put aside.
#[derive(Debug)]
pub(super) struct States<'a> {
    now: State<'a>,
    aside: Vec<State<'a>>,
    /// States that were to be put aside beyond the limit.
    beyond: usize,
}

impl<'a> States<'a> {
    pub(super) fn new(matrix: Affine) -> Self {
        Self {
            now: State {
                matrix,
                text: Affine::IDENTITY,
                line: Affine::IDENTITY,
                font: None,
                size: 1.0,
                char_space: 0.0,
                word_space: 0.0,
                stretch: 1.0,
                leading: 0.0,
                rise: 0.0,
                invisible: false,
            },
            aside: Vec::new(),
            beyond: 0,
        }
    }

    pub(super) const fn now(&mut self) -> &mut State<'a> {
        &mut self.now
    }

    pub(super) const fn depth(&self) -> usize {
        self.aside.len()
    }

    /// Puts the state aside.
    pub(super) fn save(&mut self) {
        if self.aside.len() < MOST_STATES {
            self.aside.push(self.now.clone());
        } else {
            self.beyond += 1;
        }
    }

    /// Puts the state aside, limit or not: what lies in what is limited elsewhere.
    pub(super) fn save_always(&mut self) {
        self.aside.push(self.now.clone());
    }

    /// Takes up the state last put aside, none from before a depth.
    pub(super) fn restore(&mut self, depth: usize) {
        if self.beyond > 0 {
            self.beyond -= 1;
        } else if self.aside.len() > depth
            && let Some(state) = self.aside.pop()
        {
            self.now = state;
        }
    }

    /// Takes up the state that was in force at a depth.
    pub(super) fn restore_to(&mut self, depth: usize) {
        self.beyond = 0;
        while self.aside.len() > depth {
            self.restore(depth);
        }
    }
}
