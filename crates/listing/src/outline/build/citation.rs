//! Lines that go on in a bracket which the line before has opened.

use super::super::marker::{Close, Marker};
use super::{Builder, Paragraph};

impl Builder<'_> {
    /// `(As an alternate to the runner of Item` and on the next line `2A) -- Channel ...`, `gap (Configuration` and then `A) or`: a bracket that is open
    /// over the end of a line in the middle of its words, which no item begins.
    pub(super) fn ends_bracket(&self, marker: &Marker) -> bool {
        const LABELLED: [&str; 17] = [
            "item",
            "items",
            "note",
            "notes",
            "section",
            "clause",
            "step",
            "and",
            "or",
            "configuration",
            "configurations",
            "config",
            "option",
            "options",
            "detail",
            "type",
            "case",
        ];
        let item = self.current.and_then(|index| self.outline.items.get(index));
        let Some(Paragraph::Text(pieces)) = item.and_then(|item| item.paragraphs.last()) else {
            return false;
        };
        let open = pieces
            .iter()
            .flat_map(|piece| piece.of(self.source).chars());
        let open = open.fold(0_usize, |depth, c| match c {
            '(' => depth + 1,
            ')' => depth.saturating_sub(1),
            _ => depth,
        });
        let labels = pieces.last().is_some_and(|last| {
            let last = last.of(self.source).trim_end().rsplit([' ', '(']).next();
            last.is_some_and(|word| LABELLED.contains(&word.to_lowercase().as_str()))
        });
        marker.close == Close::Paren && !self.gap && open > 0 && labels
    }
}
