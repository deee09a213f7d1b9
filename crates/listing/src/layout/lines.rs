//! The lines of a document.

use crate::model::Span;

/// A line, without its ending.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Line<'a> {
    /// Its text.
    pub(crate) text: &'a str,
    /// Where it stands.
    pub(crate) span: Span,
    /// How many columns of white space it begins with; a tab counts to the next multiple of eight.
    pub(crate) indent: usize,
    /// Whether a form feed stands before it.
    pub(crate) after_page_break: bool,
}

impl Line<'_> {
    /// Whether nothing but white space stands on it.
    pub(crate) fn is_blank(&self) -> bool {
        self.text.trim().is_empty()
    }

    /// Where its first visible character stands.
    pub(crate) fn content_start(&self) -> usize {
        self.span.start() + (self.text.len() - self.text.trim_start().len())
    }

    /// The span of its visible characters.
    pub(crate) fn content(&self) -> Span {
        let end = self.span.start() + self.text.trim_end().len();
        Span::new(self.content_start(), end)
    }
}

/// Splits a text into lines at line feeds, carriage returns and form feeds.
pub(crate) fn lines(text: &str) -> Vec<Line<'_>> {
    let mut lines = Vec::new();
    let mut after_page_break = false;
    let mut start = 0;
    for piece in text.split_inclusive(['\n', '\r', '\x0c']) {
        let body = piece.trim_end_matches(['\n', '\r', '\x0c']);
        let span = Span::new(start, start + body.len());
        let line_feed_of_pair = body.is_empty()
            && piece == "\n"
            && text.get(..start).is_some_and(|t| t.ends_with('\r'));
        if !line_feed_of_pair {
            lines.push(Line {
                text: body,
                span,
                indent: indent(body),
                after_page_break,
            });
            after_page_break = piece.ends_with('\x0c');
        }
        start += piece.len();
    }
    lines
}

fn indent(text: &str) -> usize {
    let mut columns = 0;
    for c in text.chars() {
        match c {
            ' ' | '\u{a0}' => columns += 1,
            '\t' => columns = (columns / 8 + 1) * 8,
            _ => break,
        }
    }
    columns
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_keep_their_place() {
        let text = "one\r\n  two\x0cthree\n\nfour";
        let lines = lines(text);
        let found: Vec<_> = lines
            .iter()
            .map(|line| (line.text, line.indent, line.after_page_break))
            .collect();
        assert_eq!(
            found,
            [
                ("one", 0, false),
                ("  two", 2, false),
                ("three", 0, true),
                ("", 0, false),
                ("four", 0, false)
            ]
        );
        assert!(lines.iter().all(|line| line.span.of(text) == line.text));
    }
}
