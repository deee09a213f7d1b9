//! Headings without a number, each an item of a document that numbers none: `CURTAIN WALL`, `## Floor`.

use super::super::tables::is_tabbed;
use super::super::title::clean;
use super::labels::is_bullet;
use super::{Builder, labels};
use crate::layout::Line;
use crate::model::Span;

/// Whether a document marks its headings as such, as plain text made of a page does: `## Floor`.
pub(super) fn are_marked(lines: &[Line<'_>]) -> bool {
    const FEWEST: usize = 2;
    let marked = lines.iter().filter(|line| mark(line.text) > 0);
    marked.count() >= FEWEST
}

/// How many bytes of a line mark it as a heading.
fn mark(text: &str) -> usize {
    let signs = text.bytes().take_while(|byte| *byte == b'#').count();
    let titled = text.get(signs..).is_some_and(|rest| {
        rest.strip_prefix(' ')
            .is_some_and(|title| title.trim_start().starts_with(char::is_alphanumeric))
    });
    if titled { signs } else { 0 }
}

impl Builder<'_> {
    /// Opens an item where a line is a heading; says whether it is.
    pub(super) fn begins_headed(&mut self, at: usize) -> bool {
        let Some(line) = self.lines.get(at) else {
            return false;
        };
        let signs = mark(line.text);
        let apart = self.gap || self.steps_back(at);
        if signs == 0 && !(apart && self.is_heading(at)) {
            return false;
        }
        let content = line.content();
        let title = clean(Span::new(content.start() + signs, content.end()).of(self.source));
        let index = self.push_item(title.clone(), None, content);
        if let Some(item) = self.outline.items.get_mut(index) {
            item.title = title;
        }
        self.open = vec![(line.indent, index)];
        self.gap = true;
        true
    }

    /// Whether a line stands further left than the labels around it: `Packing` between the entries of two parts.
    fn steps_back(&self, at: usize) -> bool {
        let indent = |at: usize| {
            self.lines
                .get(at)
                .filter(|line| !line.is_blank())
                .map(|line| line.indent)
        };
        let (Some(own), Some(before), Some(next)) = (
            indent(at),
            at.checked_sub(1).and_then(indent),
            indent(at + 1),
        ) else {
            return false;
        };
        let labels = labels::begins(self.lines, at - 1) && labels::begins(self.lines, at + 1);
        own < before && own < next && labels
    }

    fn words_at(&self, at: usize) -> &str {
        self.lines
            .get(at)
            .map(|line| line.content().of(self.source))
            .unwrap_or_default()
    }

    /// Whether a line is a heading: short, without a number or a stop, above a paragraph of ten words or more, or right above labels and values,
    /// a list, or a table of cells.
    fn is_heading(&self, at: usize) -> bool {
        const SHORT: usize = 6;
        const LONG: usize = 10;
        let heading = self.words_at(at);
        let plain = heading.starts_with(char::is_uppercase)
            && heading.split_whitespace().count() <= SHORT
            && !heading
                .contains(|c: char| c.is_ascii_digit() || matches!(c, '.' | ',' | ';' | ':' | '|'))
            && !heading.contains("  ");
        let next = (at + 1..self.lines.len()).find(|next| !self.words_at(*next).is_empty());
        let paragraph = next.map_or(0, |next| {
            let lines =
                (next..self.lines.len()).take_while(|line| !self.words_at(*line).is_empty());
            lines
                .map(|line| self.words_at(line).split_whitespace().count())
                .sum()
        });
        // What stands above the first item is the document's head.
        let within = self.current.is_some();
        let capitals = within && !heading.contains(char::is_lowercase);
        let apart = self.lines.get(at + 1).is_some_and(Line::is_blank) || capitals;
        let below = self.words_at(at + 1);
        plain
            && (paragraph >= LONG && apart
                || labels::begins(self.lines, at + 1)
                || within && (is_bullet(below) || is_tabbed(below)))
    }
}
