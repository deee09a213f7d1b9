//! Notes to the cells of a table: "25 (a)" and below "(a) 40 % in core-filled block". What a note says holds only of the cells that lead to it, and what
//! it leaves of them a person must say: each names the other.

use super::columns::line_of;
use super::notes::{Note, Says, mark_behind};
use super::{draft_bound, note_of};
use crate::clauses::Draft;
use crate::model::{Condition, Confidence, Expr, Span};

/// Puts the numbers of notes under the cells that lead to them, and leaves a doubt on those.
pub(super) fn tie(text: &str, notes: &[Note], drafts: &mut [(String, Draft)]) {
    for (index, note) in notes.iter().enumerate() {
        let next = notes.get(index + 1).map_or(text.len(), |next| next.at);
        let extent = Span::new(note.at, next.min(end_of_text(text, note.at)));
        let is_own = |draft: &Draft| {
            draft_bound(draft).is_some_and(|bound| extent.contains(bound.at.start()))
        };
        if note.says != Says::Other || !drafts.iter().any(|(_, draft)| is_own(draft)) {
            continue;
        }
        let mut cells: Vec<Span> = Vec::new();
        for (_, draft) in drafts.iter_mut() {
            let cell =
                draft_bound(draft).and_then(|bound| marked_cell(text, notes, note, bound.at));
            if let Some(cell) = cell {
                draft.confidence = Confidence::WithDoubt;
                cells.push(cell);
            }
        }
        let Some(condition) = of_cells(text, &cells) else {
            continue;
        };
        for (_, draft) in drafts.iter_mut().filter(|(_, draft)| is_own(draft)) {
            draft.under(&condition, None);
        }
    }
}

/// A value in a row of a table, with the mark behind it, where that leads to the note.
fn marked_cell(text: &str, notes: &[Note], note: &Note, at: Span) -> Option<Span> {
    let (mark, end) = mark_behind(text, at.end())?;
    let bracketed = !mark.starts_with(char::is_alphanumeric);
    let row = line_of(text, at.start()).of(text).trim();
    let in_row = row.contains('|') || row.contains("   ");
    let leads = note.at > end && note_of(notes, &mark, end) == Some(note);
    (bracketed && in_row && leads).then(|| Span::new(at.start(), end))
}

/// Where the text that a note stands in ends: at an empty line.
fn end_of_text(text: &str, at: usize) -> usize {
    let rest = text.get(at..).unwrap_or_default();
    rest.find("\n\n").map_or(text.len(), |end| at + end)
}

/// That the cells are meant, for a person to say of each joint.
fn of_cells(text: &str, cells: &[Span]) -> Option<Condition> {
    let (first, also) = cells.split_first()?;
    let words: Vec<&str> = cells.iter().map(|cell| cell.of(text)).collect();
    let words = words.join("; ");
    Some(Condition {
        expr: Expr::Words(words.clone()),
        words,
        span: *first,
        also: also.to_vec(),
    })
}
