//! A character on the page.

use crate::model::Rect;

/// A character, or several that are drawn as one.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Glyph {
    /// What it means; nothing when the file doesn't say.
    pub(crate) meaning: Option<Meaning>,
    /// Where its line runs: the angle in degrees, clockwise from level, of one of the four directions where it is near one.
    pub(crate) turn: f64,
    /// Where it begins along its line, in a frame turned so that its line is level.
    pub(crate) x0: f64,
    /// Where it ends.
    pub(crate) x1: f64,
    /// Its base line in that frame, downwards.
    pub(crate) base: f64,
    /// Its size, in points.
    pub(crate) size: f64,
    /// Whether it doesn't show.
    pub(crate) invisible: bool,
    /// Whether its own shape is that of a raised figure, though it is written level.
    pub(crate) raised: bool,
    /// Where it stands on the page.
    pub(crate) rect: Rect,
}

/// What a glyph means.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Meaning {
    /// One character.
    One(char),
    /// Several.
    Many(Box<str>),
}

impl Meaning {
    /// As text, ligatures taken apart: U+FB00 to U+FB06 and no others, as `½` and `²` have a meaning of their own.
    pub(crate) fn spelled(&self) -> &str {
        match self {
            Self::One('\u{fb00}') => "ff",
            Self::One('\u{fb01}') => "fi",
            Self::One('\u{fb02}') => "fl",
            Self::One('\u{fb03}') => "ffi",
            Self::One('\u{fb04}') => "ffl",
            Self::One('\u{fb05}' | '\u{fb06}') => "st",
            Self::One(_) => "",
            Self::Many(text) => text,
        }
    }

    /// Its only character.
    pub(crate) const fn only(&self) -> Option<char> {
        match self {
            Self::One(c) => Some(*c),
            Self::Many(_) => None,
        }
    }

    /// What the file says a character means, when that is something that can stand in a text: no control characters, and none
    /// of those to which nobody but the font's maker gives a meaning.
    pub(crate) fn of(text: &str) -> Option<Self> {
        let meaningless = |c: char| {
            (c.is_control() && !c.is_whitespace())
                || matches!(c, '\u{e000}'..='\u{f8ff}' | '\u{fffd}' | '\u{fff0}'..='\u{ffff}' | '\u{f0000}'..)
        };
        if text.is_empty() || text.chars().any(meaningless) {
            return None;
        }
        let even = |c: char| if c.is_whitespace() { ' ' } else { c };
        let mut chars = text.chars();
        match (chars.next(), chars.next()) {
            (Some(one), None) => Some(Self::One(even(one))),
            _ => Some(Self::Many(text.chars().map(even).collect())),
        }
    }
}

impl Glyph {
    /// Its text; U+FFFD when the file gives it no meaning.
    pub(crate) fn push_to(&self, text: &mut String) {
        match &self.meaning {
            None => text.push('\u{fffd}'),
            Some(meaning) => match (meaning.spelled(), meaning.only()) {
                ("", Some(one)) => text.push(one),
                (spelled, _) => text.push_str(spelled),
            },
        }
    }

    /// Whether it is a blank.
    pub(crate) fn is_blank(&self) -> bool {
        match &self.meaning {
            Some(Meaning::One(c)) => *c == ' ',
            Some(Meaning::Many(text)) => text.chars().all(|c| c == ' '),
            None => false,
        }
    }

    /// Its only character.
    pub(crate) fn only(&self) -> Option<char> {
        self.meaning.as_ref().and_then(Meaning::only)
    }
}
