//! The first part of a list that begins on the line of its item: `3. Fill (a) Joints up to 2 in.: ...` over `(b) Joints over 2 in.: ...`.

use super::Builder;
use crate::model::Span;
use crate::outline::marker::{Close, Marker, Part, marker};

/// The marker of a part, and how far in the next part of its list stands.
pub(super) struct FirstPart {
    pub(super) marker: Marker,
    pub(super) indent: usize,
}

impl Builder<'_> {
    /// The part that begins within a stretch of a line, where the next of its list begins one of the lines below. `(1) 5/8 in. board` counts the
    /// boards: only letters are looked for.
    pub(super) fn first_part(&self, at: usize, rest: Span) -> Option<(FirstPart, Span)> {
        const FARTHEST: usize = 12;
        const LONGEST: usize = 200;
        let words = rest.of(self.source);
        if words.len() > LONGEST || !words.contains(" (") {
            return None;
        }
        let mut markers = words.match_indices(" (").filter_map(|(space, _)| {
            let marker = marker(words.get(space + 1..)?)?;
            let lettered = matches!(marker.parts.as_slice(), [Part::Letters(_)]);
            (marker.close == Close::Parens && lettered).then_some((space, marker))
        });
        // Where the next stands on the same line, the list runs on in the text.
        let (space, first) = markers.next().filter(|_| markers.next().is_none())?;
        let begins =
            first.parts.first().is_some_and(Part::is_first) && !is_cited(words.get(..space)?);
        let below = self.lines.iter().skip(at + 1).take(FARTHEST);
        let next = below
            .take_while(|line| !line.is_blank())
            .find_map(|line| Some((marker(line.content().of(self.source))?, line.indent)));
        let (next, indent) = next?;
        let follows = next.close == Close::Parens
            && matches!((first.parts.as_slice(), next.parts.as_slice()), ([one], [two]) if two.follows(one));
        let part = Span::new(rest.start() + space + 1, rest.end());
        (begins && follows).then_some((
            FirstPart {
                marker: first,
                indent,
            },
            part,
        ))
    }
}

/// Whether words end with one that a label may follow: `see Item (1)`.
fn is_cited(before: &str) -> bool {
    const CITING: &[&str] = &[
        "item", "items", "note", "notes", "step", "table", "figure", "fig", "detail", "type",
        "see", "and", "or", "to", "of",
    ];
    let last = before.split_whitespace().next_back().unwrap_or_default();
    CITING.contains(&last.trim_end_matches('.').to_lowercase().as_str())
}
