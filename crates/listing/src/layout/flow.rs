//! Wrapped lines joined into running text, each byte of which leads back to the source.

use std::sync::Arc;

use measure::Unit;

use super::plain::{is_disguised, plain};
use crate::model::Span;

/// The units of numbers that have none of their own.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub(crate) struct UsualUnits {
    /// Of one that its neighbours call a length.
    pub(crate) length: Option<Unit>,
    /// Of one in parentheses that repeats a length: `3-5/8 (92)`.
    pub(crate) second_length: Option<Unit>,
    /// Of one that its neighbours call a density.
    pub(crate) density: Option<Unit>,
    /// Of every one that counts nothing.
    pub(crate) bare: Option<Unit>,
    /// Whether a point groups thousands.
    pub(crate) pointed: bool,
}

impl UsualUnits {
    /// Whether there are any.
    pub(crate) fn are_known(self) -> bool {
        self != Self::default()
    }
}

/// Running text made of pieces of the source: lines joined by one space, words that a hyphen broke joined again,
/// white space evened out.
#[derive(Debug, Clone, Default)]
pub(crate) struct Flow {
    text: String,
    /// The same in small letters, byte for byte.
    lower: String,
    /// For each piece: where it starts in the running text, and where in the source.
    pieces: Vec<(usize, usize)>,
    /// The characters that stand for others: where in the running text, and how many bytes each has in the source.
    disguised: Vec<(usize, usize)>,
    /// Where in the running text each piece of the source begins: its lines.
    lines: Vec<usize>,
    /// The units of its numbers that have none of their own.
    usual_units: UsualUnits,
    /// The labels by which tables of the document name variants.
    variants: Arc<[String]>,
}

impl Flow {
    /// Running text from pieces of the source, in order.
    pub(crate) fn of(source: &str, spans: impl IntoIterator<Item = Span>) -> Self {
        let mut flow = Self::default();
        for span in spans {
            flow.add(source, span);
        }
        // Letters beyond ASCII keep their case, so that every byte keeps its place.
        flow.lower = lowered(&flow.text);
        flow
    }

    /// The same, in a document that states units for all its numbers.
    pub(crate) const fn with_usual_units(mut self, units: UsualUnits) -> Self {
        self.usual_units = units;
        self
    }

    /// The same, in a document whose tables name variants by labels: `V1`, `V2`.
    pub(crate) fn with_variants(mut self, labels: Arc<[String]>) -> Self {
        self.variants = labels;
        self
    }

    /// The labels by which tables of the document name variants.
    pub(crate) fn variants(&self) -> &[String] {
        &self.variants
    }

    /// The units of its numbers that have none of their own.
    pub(crate) const fn usual_units(&self) -> UsualUnits {
        self.usual_units
    }

    /// The running text.
    pub(crate) fn text(&self) -> &str {
        &self.text
    }

    /// The running text in small letters, byte for byte.
    pub(crate) fn lower(&self) -> &str {
        &self.lower
    }

    /// Where in the running text the lines begin.
    pub(crate) fn lines(&self) -> &[usize] {
        &self.lines
    }

    /// This text and another after it, parted by a sign.
    pub(crate) fn joined(&self, sign: &str, other: &Self) -> Self {
        let mut both = self.clone();
        both.text.push_str(sign);
        let base = both.text.len();
        both.text.push_str(&other.text);
        both.pieces
            .extend(other.pieces.iter().map(|(at, source)| (base + at, *source)));
        both.disguised
            .extend(other.disguised.iter().map(|(at, len)| (base + at, *len)));
        both.lower = lowered(&both.text);
        both
    }

    /// Adds a piece of the source, joined as a wrapped line is.
    fn add(&mut self, source: &str, span: Span) {
        let words = span.of(source);
        if words.trim().is_empty() {
            return;
        }
        if self.broken_word_continues(words.trim_start()) {
            self.text.pop();
        } else if !self.text.is_empty()
            && !self.text.ends_with(' ')
            && !self.number_continues(words.trim_start())
        {
            self.text.push(' ');
        }
        self.lines.push(self.text.len());
        self.text.reserve(words.len());
        self.pieces.reserve(words.len() / 5);
        if words.is_ascii() {
            self.add_words(words, span.start(), words.split_ascii_whitespace());
        } else {
            self.add_words(words, span.start(), words.split_whitespace());
        }
    }

    fn add_words<'w>(&mut self, words: &str, start: usize, each: impl Iterator<Item = &'w str>) {
        for (count, word) in each.enumerate() {
            if count > 0 {
                self.text.push(' ');
            }
            let offset = word.as_ptr().addr() - words.as_ptr().addr();
            self.pieces.push((self.text.len(), start + offset));
            if is_disguised(word) {
                self.add_plain(word, start + offset);
            } else {
                self.text.push_str(word);
            }
        }
    }

    /// Adds a word as the characters that its own stand for.
    fn add_plain(&mut self, word: &str, start: usize) {
        for plain in plain(word) {
            let Some(c) = plain.c else { continue };
            self.pieces.push((self.text.len(), start + plain.at));
            if c.len_utf8() != plain.len {
                self.disguised.push((self.text.len(), plain.len));
            }
            self.text.push(c);
        }
    }

    /// Whether the text ends in a hyphen that broke a word: `mea-` before `sured`. A hyphen after a digit
    /// (`2-` before `1/2`) or before a capital stays.
    fn broken_word_continues(&self, next: &str) -> bool {
        let mut last = self.text.chars().rev();
        last.next() == Some('-')
            && last.next().is_some_and(char::is_lowercase)
            && next.starts_with(char::is_lowercase)
    }

    /// Whether the text ends in a hyphen or stroke inside a number or unit: `2-` before `1/2`, `cfm/` before `lin ft`.
    fn number_continues(&self, next: &str) -> bool {
        let mut last = self.text.chars().rev();
        let end = last.next();
        let before = last.next();
        match end {
            Some('-') => {
                before.is_some_and(|c| c.is_ascii_digit())
                    && next.starts_with(|c: char| c.is_alphanumeric() || c == '½')
            }
            // `W/` before `2 1/2"` is "with".
            Some('/') if self.ends_in_with() => false,
            Some('/') => {
                before.is_some_and(|c| c.is_ascii_digit())
                    && next.starts_with(char::is_alphanumeric)
                    || before.is_some_and(char::is_alphabetic)
                        && next.starts_with(char::is_alphabetic)
            }
            _ => false,
        }
    }

    fn ends_in_with(&self) -> bool {
        let word = self.text.rsplit([' ', '(', ',']).next().unwrap_or_default();
        ["w/", "c/w/", "c/", "o/"]
            .iter()
            .any(|with| word.eq_ignore_ascii_case(with))
    }

    /// Where a byte of the running text stands in the source.
    fn source_at(&self, at: usize) -> usize {
        let index = self.pieces.partition_point(|(start, _)| *start <= at);
        let piece = index
            .checked_sub(1)
            .and_then(|before| self.pieces.get(before));
        piece.map_or(0, |(start, source)| source + (at - start))
    }

    /// The place in the source of a stretch of the running text.
    pub(crate) fn span(&self, start: usize, end: usize) -> Span {
        if end <= start {
            let at = self.source_at(start);
            return Span::new(at, at);
        }
        Span::new(
            self.source_at(start),
            self.source_at(end - 1) + self.width_at(end - 1),
        )
    }

    /// How many bytes the character that holds this byte goes on for, counted from the byte.
    fn width_at(&self, at: usize) -> usize {
        if let Ok(index) = self.disguised.binary_search_by_key(&at, |(at, _)| *at) {
            return self.disguised.get(index).map_or(1, |(_, len)| *len);
        }
        (at + 1..=self.text.len())
            .find(|end| self.text.is_char_boundary(*end))
            .map_or(1, |end| end - at)
    }
}

/// A text in small letters, byte for byte as long. `upon the slab` is said as `onto the slab`, so that the words for a lap are known by one.
fn lowered(text: &str) -> String {
    let mut lower = text.to_ascii_lowercase();
    if lower.contains(" upon ") {
        for object in ["the", "each", "both", "either"] {
            lower = lower.replace(&format!(" upon {object} "), &format!(" onto {object} "));
        }
    }
    lower
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn with_before_a_number_stays_apart_from_it() {
        let source = "3\" DEEP MAX., W/\n 2 1/2\" MIN. CONC., 8 lb/\n cu ft, Item A/\n 2 1/2 in.";
        let spans = super::super::lines::lines(source)
            .into_iter()
            .map(|line| line.span);
        assert_eq!(
            Flow::of(source, spans).text(),
            "3\" DEEP MAX., W/ 2 1/2\" MIN. CONC., 8 lb/cu ft, Item A/ 2 1/2 in."
        );
    }

    #[test]
    fn joins_lines_and_leads_back() {
        let source = "as mea-\n   sured  from\n   2-\n 1/2 in. cfm/\n lin ft ½";
        let spans = super::super::lines::lines(source)
            .into_iter()
            .map(|line| line.span);
        let flow = Flow::of(source, spans);
        assert_eq!(flow.text(), "as measured from 2-1/2 in. cfm/lin ft ½");
        let at = flow.text().find("measured").unwrap();
        assert_eq!(flow.span(at, at + 8).of(source), "mea-\n   sured");
        let at = flow.text().find('½').unwrap();
        assert_eq!(flow.span(at, at + 2).of(source), "½");
    }

    #[test]
    fn characters_that_stand_for_others_lead_back_to_themselves() {
        let source = "mea\u{ad}sured １０\u{200b}０ mm, 1 ³⁄₁₆ in., 0·5 mm, mea\u{ad}\nsured";
        let spans = super::super::lines::lines(source)
            .into_iter()
            .map(|line| line.span);
        let flow = Flow::of(source, spans);
        assert_eq!(flow.text(), "measured 100 mm, 1 3⁄16 in., 0.5 mm, measured");
        let at = flow.text().find("100").unwrap();
        assert_eq!(flow.span(at, at + 3).of(source), "１０\u{200b}０");
        let at = flow.text().find('3').unwrap();
        assert_eq!(flow.span(at, at + "3⁄16".len()).of(source), "³⁄₁₆");
        assert_eq!(flow.span(0, "measured".len()).of(source), "mea\u{ad}sured");
    }
}
