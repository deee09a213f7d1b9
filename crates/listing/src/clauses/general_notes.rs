//! Notes behind the last part of a listing, under a heading of their own: "Notes" and "1. Min 4 in. deep" below it are about what they name, or what cites them,
//! and not about the part that happens to stand before.
//!
//! What it would misread: notes at the margin that are about the part before them after all, and don't name it.

use crate::layout::Flow;
use crate::model::Span;

/// Where in the text of an item notes begin that are none of it: behind a heading that stands no farther in than the item's own.
pub(super) fn begin(source: &str, flow: &Flow, heading: Span) -> Option<usize> {
    let text = flow.text();
    let lines = flow.lines();
    let ends = lines.iter().skip(1).copied().chain([text.len()]);
    let margin = column(source, heading.start());
    lines
        .iter()
        .copied()
        .zip(ends)
        .filter(|(start, end)| heads_notes(text.get(*start..*end).unwrap_or_default()))
        .find(|(start, _)| column(source, flow.span(*start, start + 1).start()) <= margin)
        .map(|(start, _)| start)
}

/// Whether a line is nothing but the heading of notes.
fn heads_notes(line: &str) -> bool {
    let words = line.trim().trim_end_matches([':', '.']);
    ["notes", "general notes"]
        .iter()
        .any(|heading| words.eq_ignore_ascii_case(heading))
}

/// How far from the edge a place stands.
fn column(source: &str, at: usize) -> usize {
    let before = source.get(..at).unwrap_or_default();
    at - before.rfind('\n').map_or(0, |line| line + 1)
}
