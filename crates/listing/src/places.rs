//! What every byte of the source is.

use crate::model::{Place, PlaceKind, Span};

/// Marks stretches of a text, the later over the earlier, and gives back consecutive places that cover all of it.
pub(crate) struct Places<'a> {
    text: &'a str,
    marks: Vec<Option<PlaceKind>>,
}

impl<'a> Places<'a> {
    pub(crate) fn new(text: &'a str) -> Self {
        Self {
            text,
            marks: vec![None; text.len()],
        }
    }

    pub(crate) fn mark(&mut self, span: Span, kind: PlaceKind) {
        for mark in self
            .marks
            .get_mut(span.start()..span.end())
            .unwrap_or_default()
        {
            *mark = Some(kind);
        }
    }

    /// Stretches of visible text that nothing has marked.
    pub(crate) fn unmarked(&self) -> Vec<Span> {
        let mut found = Vec::new();
        let mut open: Option<usize> = None;
        for (at, c) in self.text.char_indices() {
            let free = !c.is_whitespace() && self.marks.get(at).is_some_and(Option::is_none);
            match (open, free) {
                (None, true) => open = Some(at),
                (Some(start), false) if !c.is_whitespace() || c == '\n' => {
                    found.push(Span::new(start, at));
                    open = None;
                }
                _ => {}
            }
        }
        if let Some(start) = open {
            found.push(Span::new(start, self.text.len()));
        }
        found
    }

    /// Consecutive places from the first byte to the last; white space between marks is a place of its own.
    pub(crate) fn finish(self) -> Vec<Place> {
        let kind = |mark: Option<PlaceKind>| mark.unwrap_or(PlaceKind::Space);
        let mut start = 0;
        self.marks
            .chunk_by(|one, next| kind(*one) == kind(*next))
            .map(|run| {
                let span = Span::new(start, start + run.len());
                start += run.len();
                let kind = kind(run.first().copied().flatten());
                Place { kind, span }
            })
            .collect()
    }
}
