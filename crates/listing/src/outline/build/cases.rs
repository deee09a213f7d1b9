//! Lines between the parts of a list that say for which case the next of them are: `When wall is gypsum:` between `A.` and `B.`, `otherwise:` between two
//! bullets. They are of none of the parts.

use super::Builder;
use super::labels::is_bullet;
use crate::layout::Line;
use crate::model::Span;
use crate::outline::build::Paragraph;
use crate::outline::marker::marker;
use crate::sentences::sentences;

/// A line that says for which case the next parts of an item are.
#[derive(Debug, Clone, Copy)]
pub(crate) struct CaseLine {
    /// The item whose parts they are.
    pub(crate) item: usize,
    pub(crate) line: Span,
}

impl Builder<'_> {
    /// Takes a line that heads the next parts of a list with their case.
    pub(super) fn case_line(&mut self, at: usize, line: &Line<'_>, content: Span) -> bool {
        let words = content.of(self.source);
        let item = self
            .listing_item(line)
            .filter(|_| is_case(words) && self.begins_case(words));
        let Some((item, column)) = item else {
            return false;
        };
        let mut below = self.lines.iter().skip(at + 1);
        let next = below.find(|below| !below.is_blank());
        let listed = next.is_some_and(|next| {
            let marker = marker(next.content().of(self.source));
            let placed = marker.and_then(|marker| self.sequence.place(&marker, next.indent));
            next.indent == column && placed.is_some_and(|placed| placed.parent == Some(item))
        });
        if listed {
            self.outline.cases.push(CaseLine {
                item,
                line: content,
            });
        }
        listed
    }

    /// Whether a line heads with their case the bullets below it, or a part that its number doesn't make one.
    pub(super) fn heads_case(&self, at: usize, words: &str) -> bool {
        let mut below = self.lines.iter().skip(at + 1);
        let next = below.find(|below| !below.is_blank());
        let next = next.map_or("", |next| next.content().of(self.source));
        is_case(words) && (is_bullet(next) || marker(next).is_some() && self.begins_case(words))
    }

    /// Whether words go on with nothing that stands before them: a capital behind the end of a sentence, or behind a title.
    fn begins_case(&self, words: &str) -> bool {
        const LONGEST_TITLE: usize = 6;
        let item = self.current.and_then(|index| self.outline.items.get(index));
        let titled = item.is_none_or(|item| match item.paragraphs.as_slice() {
            [Paragraph::Text(pieces)] => matches!(pieces.as_slice(), [title]
                if title.of(self.source).split_whitespace().count() <= LONGEST_TITLE && !title.of(self.source).ends_with(',')),
            paragraphs => paragraphs.is_empty(),
        });
        let alone = !words.trim().contains(' ');
        alone || self.last_sentence_ended() || words.starts_with(char::is_uppercase) && titled
    }

    /// The item among whose parts a line stands, or before the first of them, and how far in they begin.
    fn listing_item(&self, line: &Line<'_>) -> Option<(usize, usize)> {
        let own = self.current?;
        let around = self.outline.items.get(own)?;
        let first = around.heading.column(self.source) < line.indent;
        let mut found = first.then_some((own, line.indent));
        let mut above = self.current;
        while let Some(item) = above.and_then(|index| self.outline.items.get(index)) {
            let column = item.heading.column(self.source);
            if let Some(parent) = item.parent.filter(|_| column >= line.indent) {
                found = Some((parent, column));
            }
            above = item.parent;
        }
        found
    }
}

/// Whether a line is a case, and nothing besides, that leads to what follows.
pub(crate) fn is_case(line: &str) -> bool {
    const OPENERS: &[&str] = &[
        "when",
        "where",
        "wherever",
        "if",
        "unless",
        "for",
        "in",
        "at",
        "on",
        "with",
        "otherwise",
        "elsewhere",
        "always",
        "else",
    ];
    const LEADING: &[&str] = &[
        "following",
        "follows",
        "accordance",
        "addition",
        "lieu",
        "order",
        "particular",
        "general",
        "place",
    ];
    const LONGEST: usize = 12;
    let lower = line.trim().to_lowercase();
    let Some(case) = lower.strip_suffix(':') else {
        return false;
    };
    let mut words = case.split([' ', ',']).filter(|word| !word.is_empty());
    let opens = words
        .clone()
        .next()
        .is_some_and(|word| OPENERS.contains(&word));
    opens
        && words.clone().count() <= LONGEST
        && !case.contains([':', ';'])
        && sentences(line).len() == 1
        && !words.any(|word| LEADING.contains(&word))
}
