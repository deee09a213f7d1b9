//! Headings that are items in a document that numbers none.

use super::super::marker::marker;
use super::super::tables::{is_tabbed, table_at};
use super::super::title::clean;
use super::labels::is_bullet;
use super::{Builder, labels};
use crate::layout::{Line, is_rule};
use crate::model::Span;

/// Whether a document marks its headings as such, as plain text made of a page does: `## Floor`.
pub(super) fn are_marked(lines: &[Line<'_>]) -> bool {
    const FEWEST: usize = 2;
    let is_marked = |line: &&Line<'_>| {
        let title = line.text.trim_start_matches('#');
        title.len() < line.text.len()
            && title
                .strip_prefix(' ')
                .is_some_and(|title| title.trim_start().starts_with(char::is_alphanumeric))
    };
    lines.iter().filter(is_marked).count() >= FEWEST
}

impl Builder<'_> {
    /// Takes a heading that is marked as one, `## Floor`, `== Floor ==`, or underlined over its whole length; gives the next line to take.
    pub(super) fn marked_heading(&mut self, at: usize) -> Option<usize> {
        let line = self.lines.get(at).filter(|_| self.headings)?;
        let content = line.content();
        let words = content.of(self.source);
        let hashes = words.len() - words.trim_start_matches('#').len();
        let signs = words.len() - words.trim_start_matches('=').len();
        let sharp = (1..=6).contains(&hashes)
            && words
                .get(hashes..)
                .is_some_and(|rest| rest.starts_with(' '))
            && !(hashes == 1 && self.titles_document(at))
            || (2..=6).contains(&signs)
                && words.ends_with("==")
                && words.contains(char::is_alphabetic);
        let underlined = self.gap && is_plain(words) && self.is_underlined(at);
        if !(sharp || underlined) {
            return None;
        }
        if underlined && let Some(rule) = self.lines.get(at + 1) {
            self.outline.furniture.push(rule.content());
        }
        let title = words.trim_matches(['#', '=', ' ']);
        self.take_heading(line, title, None);
        self.marked = self.current;
        Some(at + 1 + usize::from(underlined))
    }

    /// Whether a heading of the first level is the document's own title: all below it are of the second.
    fn titles_document(&self, at: usize) -> bool {
        let below = self.lines.iter().skip(at + 1);
        let mut headings = below.filter(|line| line.text.starts_with('#')).peekable();
        headings.peek().is_some() && headings.all(|line| line.text.starts_with("##"))
    }

    /// Takes a heading that nothing marks.
    pub(super) fn heading(&mut self, at: usize) -> Option<usize> {
        let line = self.lines.get(at)?;
        let apart = self.gap || self.steps_back(at);
        if !(self.headings && apart && self.is_heading(at)) {
            return None;
        }
        self.take_heading(line, line.content().of(self.source), self.marked);
        Some(at + 1)
    }

    /// Opens the item of a heading, by its number where it has one: `## 2. Wall`.
    fn take_heading(&mut self, line: &Line<'_>, words: &str, parent: Option<usize>) {
        let numbered = marker(words).and_then(|marker| {
            let placement = self.sequence.place(&marker, line.indent)?;
            Some((marker, placement))
        });
        let title = clean(numbered.as_ref().map_or(words, |(marker, _)| {
            words.get(marker.len..).unwrap_or(words)
        }));
        let index = match numbered {
            Some((marker, placement)) => {
                let index = self.push_item(
                    placement.path.clone(),
                    placement.parent.or(parent),
                    line.content(),
                );
                self.sequence.enter(&marker, &placement, line.indent, index);
                index
            }
            None => self.push_item(title.clone(), parent, line.content()),
        };
        if let Some(item) = self.outline.items.get_mut(index) {
            item.title = title;
        }
        self.open = vec![(line.indent, index)];
        self.captioned = None;
        self.gap = true;
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

    /// Whether a line is a heading: short, without a number or a stop, above a paragraph of ten words or more, or right above labels and values,
    /// bullets, or a table.
    fn is_heading(&self, at: usize) -> bool {
        const LONG: usize = 10;
        let words = |at: usize| {
            self.lines
                .get(at)
                .map(|line| line.content().of(self.source))
                .unwrap_or_default()
        };
        let next = (at + 1..self.lines.len()).find(|next| !words(*next).is_empty());
        let paragraph = next.map_or(0, |next| {
            let lines = (next..self.lines.len()).take_while(|line| !words(*line).is_empty());
            lines
                .map(|line| words(line).split_whitespace().count())
                .sum()
        });
        // What stands above the first item is the document's head.
        let capitals = self.current.is_some() && !words(at).contains(char::is_lowercase);
        let apart = self.lines.get(at + 1).is_some_and(Line::is_blank) || capitals;
        let listed = || {
            let below = next.filter(|next| *next <= at + 2);
            below.is_some_and(|next| is_bullet(words(next)) || table_at(self.lines, next).is_some())
        };
        let unbulleted = !is_bullet(words(at)) && !self.lines.get(at).is_some_and(is_tabbed);
        is_plain(words(at))
            && unbulleted
            && (paragraph >= LONG && apart || labels::begins(self.lines, at + 1) || listed())
    }

    /// Whether the line below is a rule as long as the line itself.
    fn is_underlined(&self, at: usize) -> bool {
        const ASIDE: usize = 2;
        let (Some(line), Some(below)) = (self.lines.get(at), self.lines.get(at + 1)) else {
            return false;
        };
        let length = |span: Span| span.of(self.source).chars().count();
        is_rule(below.text)
            && line.indent == below.indent
            && length(line.content()).abs_diff(length(below.content())) <= ASIDE
    }
}

/// Whether words may be a heading: few, begun with a capital, without a number or a stop.
fn is_plain(words: &str) -> bool {
    const SHORT: usize = 6;
    words.starts_with(char::is_uppercase)
        && words.split_whitespace().count() <= SHORT
        && !words.contains(|c: char| c.is_ascii_digit() || matches!(c, '.' | ',' | ';' | ':' | '|'))
        && !words.contains("  ")
}
