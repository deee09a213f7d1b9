//! Two captioned tables beside each other: `Table 1  PACKING            Table 2  SEAL` over the columns of both.

use crate::layout::Line;
use crate::model::Span;

use super::super::caption::caption;
use super::super::tables::{Table, captioned_table_at};
use super::super::title::clean;
use super::{Builder, Paragraph};

/// The fewest blanks between two captions.
const APART: &str = "   ";

impl Builder<'_> {
    /// Takes two tables whose captions stand on this line, each as an item of its own; gives the line after them.
    pub(super) fn side_by_side(&mut self, at: usize) -> Option<usize> {
        let line = self.lines.get(at).filter(|_| self.gap)?;
        let edge = second_caption(line.text)?;
        let below = self.lines.get(at + 1..)?;
        let halves = below
            .iter()
            .map_while(|line| halved(line, edge))
            .collect::<Vec<_>>();
        let (left, right): (Vec<Line<'_>>, Vec<Line<'_>>) = halves.into_iter().unzip();
        let (one, end) = captioned_table_at(&left, 0)?;
        let (other, other_end) = captioned_table_at(&right, 0)?;
        let (first, second) = halved(line, edge)?;
        self.push_captioned(&first, one);
        self.push_captioned(&second, other);
        self.gap = true;
        Some(at + 1 + end.max(other_end))
    }

    fn push_captioned(&mut self, line: &Line<'_>, table: Table) {
        let content = line.content();
        let Some((path, title)) = caption(line.text) else {
            return;
        };
        let title = clean(title);
        let index = self.push_item(path, None, content);
        if let Some(item) = self.outline.items.get_mut(index) {
            item.title = title;
            item.paragraphs.push(Paragraph::Table(table));
        }
    }
}

/// The character at which the second of two captions begins.
fn second_caption(text: &str) -> Option<usize> {
    caption(text)?;
    let at = text.match_indices(APART).find_map(|(at, _)| {
        let rest = text.get(at..)?;
        let words = rest.trim_start();
        caption(words)?;
        Some(at + rest.len() - words.len())
    })?;
    Some(text.get(..at)?.chars().count())
}

/// A line as what stands before a character and what stands from it on; none where words stand across it.
fn halved<'l>(line: &Line<'l>, edge: usize) -> Option<(Line<'l>, Line<'l>)> {
    let at = line
        .text
        .char_indices()
        .nth(edge)
        .map_or(line.text.len(), |(at, _)| at);
    let (left, right) = line.text.split_at_checked(at)?;
    let crosses = !right.is_empty() && left.ends_with(|c: char| !c.is_whitespace());
    let start = line.span.start();
    let indent = right.chars().take_while(|c| c.is_whitespace()).count();
    (!crosses).then(|| {
        let own = Line {
            text: left,
            span: Span::new(start, start + at),
            ..*line
        };
        let beside = Line {
            text: right,
            span: Span::new(start + at, line.span.end()),
            indent,
            ..*line
        };
        (own, beside)
    })
}
