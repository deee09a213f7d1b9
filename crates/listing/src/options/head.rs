//! The head of an item: its title and the first words of its text, as one running text that leads back to the source.

use crate::layout::Flow;
use crate::model::Span;
use crate::outline::{OutlineItem, Paragraph};
use crate::sentences::ends_in_abbreviation;

/// How far behind the title an item may say what it is an option to, in bytes.
const REACH: usize = 240;

/// Dashes that end a part of a head.
const DASHES: [&str; 4] = [" -- ", " — ", " – ", " - "];

/// An item's marker and title, and the first words of its text.
pub(super) struct Head {
    flow: Flow,
    /// Where the marker ends.
    pub(super) title_start: usize,
    /// Where the title ends and the text begins.
    pub(super) title_end: usize,
}

impl Head {
    pub(super) fn of(source: &str, item: &OutlineItem) -> Self {
        let titles = || core::iter::once(item.heading).chain(item.more_heading.iter().copied());
        let opening = match item.paragraphs.first() {
            Some(Paragraph::Text(pieces)) => pieces.get(..pieces.len().min(3)).unwrap_or_default(),
            _ => &[],
        };
        let title = Flow::of(source, titles());
        let flow = Flow::of(source, titles().chain(opening.iter().copied()));
        let first_word = item.title.split(' ').next().unwrap_or_default();
        // A title that demands something stands in the text.
        let in_heading = title.text().find(first_word);
        let title_start = in_heading
            .filter(|_| !first_word.is_empty())
            .unwrap_or(title.text().len());
        Self {
            title_start,
            title_end: title.text().len(),
            flow,
        }
    }

    /// The words, in small letters.
    pub(super) fn words(&self) -> &str {
        let lower = self.flow.lower();
        let most = (self.title_end + REACH).min(lower.len());
        let end = (most..=lower.len()).find(|end| lower.is_char_boundary(*end));
        lower.get(..end.unwrap_or(lower.len())).unwrap_or_default()
    }

    /// The words of a stretch, in small letters.
    pub(super) fn part(&self, from: usize, to: usize) -> &str {
        self.words().get(from..to).unwrap_or_default()
    }

    /// The words as written, for a path that tells `A` from `a`.
    pub(super) fn written(&self) -> &str {
        self.flow
            .text()
            .get(..self.words().len())
            .unwrap_or_default()
    }

    /// The place of a stretch in the source.
    pub(super) fn span(&self, from: usize, to: usize) -> Span {
        self.flow.span(from, to)
    }

    /// The bracket that is still open at a place.
    pub(super) fn bracket(&self, at: usize) -> Option<usize> {
        let mut open = Vec::new();
        for (place, c) in self.part(0, at).char_indices() {
            match c {
                '(' => open.push(place),
                ')' => {
                    open.pop();
                }
                _ => {}
            }
        }
        open.pop()
    }

    /// Whether a sentence ends between two places.
    pub(super) fn sentence_ends(&self, from: usize, to: usize) -> bool {
        let words = self.part(0, to);
        words.match_indices('.').any(|(at, _)| {
            let after = words.get(at + 1..).unwrap_or_default();
            at >= from
                && after.trim_start_matches(['*', '†', '‡']).starts_with(' ')
                && !words.get(..at).is_some_and(ends_in_abbreviation)
        })
    }

    /// Where what is said from a place on ends: at the bracket that closes it, else at a dash, a colon or the end of the sentence.
    pub(super) fn end_of_phrase(&self, from: usize, bracketed: bool) -> usize {
        let words = self.words();
        let mut depth = 0;
        // What is said in a title ends with it.
        let words = match words.get(..self.title_end) {
            Some(title) if from < self.title_end => title,
            _ => words,
        };
        for (at, c) in words.char_indices().filter(|(at, _)| *at >= from) {
            let rest = words.get(at..).unwrap_or_default();
            match c {
                '(' => depth += 1,
                ')' if depth == 0 && bracketed => return at,
                ')' => depth -= 1,
                _ if depth > 0 || bracketed => {}
                ':' if rest.starts_with(": ") || rest.len() == 1 => return at,
                '.' if self.sentence_ends(at, at + 3) || rest.len() == 1 => return at,
                ' ' if DASHES.iter().any(|dash| rest.starts_with(dash)) => return at,
                _ => {}
            }
        }
        words.len()
    }
}
