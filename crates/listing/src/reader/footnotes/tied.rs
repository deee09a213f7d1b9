//! Notes to the cells of a table: "25 (a)" and below "(a) 40 % in core-filled block". What a note says holds only of the cells that lead to it, and what
//! it leaves of them a person must say: each names the other.

use super::columns::line_of;
use super::notes::{Note, Says, mark_behind};
use super::{draft_bound, note_of};
use crate::clauses::Draft;
use crate::model::{Condition, Confidence, Expr, Span};

/// Puts the numbers of notes under the cells that lead to them, and leaves a doubt on those.
pub(super) fn tie(text: &str, notes: &[Note], drafts: &mut [(String, Draft)]) {
    let leading: Vec<Leading<'_>> = drafts
        .iter()
        .enumerate()
        .filter_map(|(index, (_, draft))| leading(text, notes, index, draft_bound(draft)?.at))
        .collect();
    for (index, note) in notes.iter().enumerate() {
        let own = leading.iter().filter(|cell| cell.note == note);
        let (places, cells): (Vec<usize>, Vec<Span>) =
            own.map(|cell| (cell.draft, cell.cell)).unzip();
        let Some(condition) = of_cells(text, &cells).filter(|_| note.says == Says::Other) else {
            continue;
        };
        let sure = places.iter().all(|place| {
            let mut own = leading.iter().filter(|cell| cell.draft == *place);
            own.all(|cell| cell.sure)
        });
        let next = notes.get(index + 1).map_or(text.len(), |next| next.at);
        let extent = Span::new(note.at, next.min(end_of_text(text, note.at)));
        let is_own = |draft: &Draft| {
            draft_bound(draft).is_some_and(|bound| extent.contains(bound.at.start()))
        };
        if !drafts.iter().any(|(_, draft)| is_own(draft)) {
            continue;
        }
        for place in places {
            if let Some((_, draft)) = drafts.get_mut(place) {
                draft.confidence = Confidence::WithDoubt;
            }
        }
        for (_, draft) in drafts.iter_mut().filter(|(_, draft)| is_own(draft)) {
            if sure {
                draft.under(&condition, None);
            }
        }
    }
}

/// A cell that leads to a note.
struct Leading<'n> {
    note: &'n Note,
    /// The place of its clause among the others.
    draft: usize,
    cell: Span,
    /// Whether the mark can't be a number of its own: the `(3)` of `100 (3)` may be one, and then the note holds of all.
    sure: bool,
}

/// A value in a row of a table, with the mark behind it, and the note that it leads to.
fn leading<'n>(text: &str, notes: &'n [Note], draft: usize, at: Span) -> Option<Leading<'n>> {
    let (mark, end) = mark_behind(text, at.end())?;
    let bracketed = !mark.starts_with(char::is_alphanumeric);
    let behind_number = text
        .get(at.end()..end)
        .is_some_and(|behind| behind.trim() == mark);
    let numbered = mark.contains(|c: char| c.is_ascii_digit());
    if behind_number && is_second_value(at.of(text), &mark) {
        return None;
    }
    let row = line_of(text, at.start()).of(text).trim();
    let in_row = row.contains('|') || row.contains("   ");
    let note = note_of(notes, &mark, end).filter(|note| note.at > end)?;
    (bracketed && in_row).then(|| Leading {
        note,
        draft,
        cell: Span::new(at.start(), end),
        sure: !(behind_number && numbered && at.of(text).ends_with(|c: char| c.is_ascii_digit())),
    })
}

/// Whether the number in brackets behind a value is the same length in the other unit, `25 (1)` or `2 (50)`, and no note's mark.
fn is_second_value(value: &str, mark: &str) -> bool {
    /// An inch in millimetres, as far as both may be rounded.
    const RATIO: core::ops::RangeInclusive<u32> = 20..=32;
    let number = |words: &str| words.parse::<u32>().ok();
    let inside = mark.trim_start_matches('(').trim_end_matches(')');
    let Some((value, second)) = number(value).zip(number(inside)) else {
        return false;
    };
    let (small, large) = (value.min(second), value.max(second));
    large
        .checked_div(small)
        .is_some_and(|ratio| RATIO.contains(&ratio))
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
