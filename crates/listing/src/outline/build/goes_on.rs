//! Text that goes on with an item: which item it is of, and whether it begins a paragraph.

use super::super::tables::is_tabbed;
use super::labels;
use super::labels::{heads_all, is_bullet, is_labelled};
use super::{Builder, Paragraph};
use crate::layout::Line;
use crate::model::Span;

impl Builder<'_> {
    pub(super) fn continue_text(&mut self, at: usize, line: &Line<'_>, content: Span) {
        let words = content.of(self.source);
        self.leave_rows(line);
        // After a gap, a line that stands further left than the item's marker belongs to an item around it.
        let falls_back = !self.gap
            && (self.falls_back(at, line, words) || self.leaves_option(at, line, words))
            || self.speaks_of_all_parts(at, line, words);
        let closes = self.leaves_outermost_option(at, line, words);
        if closes {
            self.outline.closing.push(content);
        }
        if (self.gap || falls_back) && !self.page_turned {
            while self.open.len() > 1
                && self
                    .open
                    .last()
                    .is_some_and(|(indent, _)| *indent >= line.indent)
            {
                self.open.pop();
            }
            self.current = self.open.last().map(|(_, index)| *index).or(self.current);
        }
        if self.headed_case(at, content) {
            return;
        }
        let case = self.case_lines.get(&at).filter(|_| self.current.is_some());
        if let Some(parts) = case.cloned() {
            return self.add_case(content, &parts);
        }
        let unfinished = self.page_turned && !self.last_sentence_ended();
        let begins = (self.gap && !unfinished)
            || falls_back
            || closes
            || self.leaves_note(at, line, words)
            || self.bands.contains(&at)
            || at
                .checked_sub(1)
                .is_some_and(|above| self.bands.contains(&above))
            || is_bullet(words) && !labels::goes_on_a_range(self.lines, at)
            || is_labelled(words)
            || self.leaves_bullets(at, line, words)
            || self.leaves_case(line, words)
            || self.heads_case(at, words)
            || heads_all(words)
            || labels::heads_limit(words)
            || labels::heads_variant(words) && self.last_sentence_ended()
            || self.variant_lines.contains(at)
            || self.stands_under_variant()
            || labels::begins(self.lines, at)
            || is_tabbed(line);
        for (number, (from, to)) in labels::side_by_side(words)
            .unwrap_or_else(|| vec![(0, words.len())])
            .into_iter()
            .enumerate()
        {
            let piece = Span::new(content.start() + from, content.start() + to);
            self.add_text(piece, begins || number > 0);
        }
    }

    /// Whether a line stands no farther in than the bullet above it, whose sentence has ended: it begins anew, "In joints up to 2 in.:".
    fn leaves_bullets(&self, at: usize, line: &Line<'_>, words: &str) -> bool {
        let item = self.current.and_then(|index| self.outline.items.get(index));
        let Some(Paragraph::Text(pieces)) = item.and_then(|item| item.paragraphs.last()) else {
            return false;
        };
        let bullet = pieces
            .first()
            .filter(|piece| is_bullet(piece.of(self.source).trim_start()));
        let column = bullet.map(|bullet| bullet.column(self.source));
        let above = at.checked_sub(1).and_then(|above| self.lines.get(above));
        column.is_some_and(|column| line.indent <= column)
            && words.starts_with(char::is_uppercase)
            && (self.last_sentence_ended()
                || above.is_some_and(|above| self.setting.breaks_off(above, words)))
    }

    /// Whether the line before is the name of a variant and nothing more.
    fn stands_under_variant(&self) -> bool {
        let item = self.current.and_then(|index| self.outline.items.get(index));
        let above = item.and_then(|item| item.paragraphs.last());
        matches!(above, Some(Paragraph::Text(pieces)) if matches!(pieces.as_slice(), [line] if labels::is_variant(line.of(self.source).trim())))
    }

    pub(super) fn last_sentence_ended(&self) -> bool {
        let item = self.current.and_then(|index| self.outline.items.get(index));
        match item.and_then(|item| item.paragraphs.last()) {
            Some(Paragraph::Text(pieces)) => pieces
                .last()
                .is_none_or(|piece| piece.of(self.source).trim_end().ends_with(['.', ':', ';'])),
            _ => true,
        }
    }

    pub(super) fn add_text(&mut self, span: Span, begins: bool) {
        let Some(item) = self
            .current
            .and_then(|index| self.outline.items.get_mut(index))
        else {
            match self.outline.head.last_mut().filter(|_| !begins) {
                Some(pieces) => pieces.push(span),
                None => self.outline.head.push(vec![span]),
            }
            return;
        };
        match item.paragraphs.last_mut().filter(|_| !begins) {
            Some(Paragraph::Text(text) | Paragraph::Case { text, .. }) => text.push(span),
            _ => item.paragraphs.push(Paragraph::Text(vec![span])),
        }
    }
}
