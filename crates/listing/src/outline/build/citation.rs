//! Lines that go on in a bracket which the line before has opened, or with the item that it cites.

use super::super::marker::{Close, Marker};
use super::{Builder, Paragraph};
use crate::model::Span;

impl Builder<'_> {
    /// `except as noted in Item` and on the next line `2A1. Stud spacing ...`: what the line before ends in is cited, and begins no item.
    pub(super) fn is_cited(&self) -> bool {
        const CITING: [&str; 8] = [
            "item",
            "items",
            "section",
            "sections",
            "clause",
            "clauses",
            "paragraph",
            "paragraphs",
        ];
        let cites = |piece: &Span| {
            let last = piece.of(self.source).trim_end().rsplit([' ', '(']).next();
            let word = last.unwrap_or_default();
            // In capitals or alone on its line it may be a heading.
            let running =
                piece.of(self.source).trim().contains(' ') && word.chars().any(char::is_lowercase);
            running && CITING.contains(&word.to_lowercase().as_str())
        };
        let item = self.current.and_then(|index| self.outline.items.get(index));
        let last = item.and_then(|item| item.paragraphs.last());
        !self.gap
            && matches!(last, Some(Paragraph::Text(pieces)) if pieces.last().is_some_and(cites))
    }

    /// `fastened to the runner of` and on the next line `Item 2.1.` alone: the sentence above ends in it.
    pub(super) fn ends_sentence(&self, marker: &Marker, words: &str) -> bool {
        marker.introduced
            && marker.len >= words.trim_end().len()
            && !self.gap
            && !self.last_sentence_ended()
    }

    /// `(As an alternate to the runner of Item` and on the next line `2A) -- Channel ...`, `gap (Configuration` and then `A) or`: a bracket that is open
    /// over the end of a line in the middle of its words, which no item begins.
    pub(super) fn ends_bracket(&self, marker: &Marker, words: &str) -> bool {
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
        // `(As an alternate to` and then `Item 2A) -- Channel ...`
        let names_itself = ["item ", "items "].iter().any(|name| {
            words
                .get(..name.len())
                .is_some_and(|word| word.eq_ignore_ascii_case(name))
        });
        let closes = marker.close == Close::Paren && labels;
        !self.gap && open > 0 && (closes || names_itself)
    }
}
