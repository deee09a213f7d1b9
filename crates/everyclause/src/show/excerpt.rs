//! A few lines cut out of a source, with the words to be marked in them.

use core::ops::Range;

use listing::Span;

use super::words::printable;

/// The most of a line that is shown on either side of the marked words, in bytes.
const AROUND: usize = 160;

/// The most of the marked words themselves that is shown, in bytes.
const MARKED: usize = 320;

/// A few lines of a source and the place of the marked words in them.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Excerpt {
    /// The lines.
    pub(crate) text: String,
    /// The number of the first, from 1.
    pub(crate) line: usize,
    /// The marked words, in bytes of the lines.
    pub(crate) marked: Range<usize>,
}

impl Excerpt {
    /// The lines around a span; of a very long line only what stands near, with `…` for the rest.
    pub(crate) fn of(source: &str, span: Span) -> Self {
        let start = floor(source, span.start());
        let end = floor(source, span.end().min(span.start() + MARKED)).max(start);
        let from = floor(source, start.saturating_sub(AROUND));
        let to = floor(source, end + AROUND);
        let before = source.get(from..start).unwrap_or_default();
        let words = source.get(start..end).unwrap_or_default().trim_end();
        let after = source.get(start + words.len()..to).unwrap_or_default();

        let mut text = String::new();
        let line = before.rsplit_once('\n').map(|(_, line)| line);
        text.push_str(if line.is_none() && from > 0 {
            "…"
        } else {
            ""
        });
        text.push_str(&printable(line.unwrap_or(before)));
        let marked = text.len();
        text.push_str(&printable(words));
        let marked = marked..text.len();
        let line = after.split_once('\n').map(|(line, _)| line);
        text.push_str(&printable(line.unwrap_or(after)));
        text.push_str(if line.is_none() && to < source.len() {
            "…"
        } else {
            ""
        });
        let line = 1 + source
            .get(..start)
            .map_or(0, |above| above.matches('\n').count());
        Self { text, line, marked }
    }

    /// A text that is marked as a whole.
    pub(crate) fn whole(text: &str, line: usize) -> Self {
        let text = printable(text.trim()).replace('\n', " ");
        let marked = 0..text.len();
        Self { text, line, marked }
    }
}

/// The last boundary between characters at or before an offset.
fn floor(text: &str, at: usize) -> usize {
    let mut at = at.min(text.len());
    while !text.is_char_boundary(at) {
        at -= 1;
    }
    at
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cuts_the_line_out_of_a_text() {
        let text = "one\ntwo three four\nfive";
        let excerpt = Excerpt::of(text, Span::new(8, 13));
        assert_eq!((excerpt.text.as_str(), excerpt.line), ("two three four", 2));
        assert_eq!(excerpt.text.get(excerpt.marked), Some("three"));
    }

    #[test]
    fn shortens_a_long_line() {
        let text = "½ ".repeat(100_000);
        let excerpt = Excerpt::of(&text, Span::new(150_001, 150_005));
        assert!(excerpt.text.len() < 400, "{}", excerpt.text.len());
        assert!(excerpt.text.starts_with('…') && excerpt.text.ends_with('…'));
    }

    #[test]
    fn a_span_that_doesnt_fit_marks_the_end() {
        let excerpt = Excerpt::of("one", Span::new(90, 95));
        assert_eq!((excerpt.text.as_str(), excerpt.marked), ("one", 3..3));
    }
}
