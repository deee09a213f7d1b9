//! Numbers that were read across the gap between two columns: `up to 1            1/4 in.` is no inch and a quarter. They are left unread.

use crate::clauses::Draft;
use crate::model::{Requirement, Span, WarningKind};

/// Leaves the values unread whose whole number and fraction stand in two columns.
pub(super) fn leave_parted(
    text: &str,
    drafts: &mut [(String, Draft)],
) -> Vec<(WarningKind, Span, String)> {
    let mut doubts = Vec::new();
    for (item, draft) in drafts {
        let Requirement::Bound(bound) = &draft.requirement else {
            continue;
        };
        let at = bound.at;
        if spans_a_gap(at.of(text)) {
            draft.leave_as_words(item);
            let message = "it may be two numbers that stand in two columns".to_owned();
            doubts.push((WarningKind::UnreadNumber, at, message));
        }
    }
    doubts
}

/// Whether a fraction stands far behind a number on one line.
fn spans_a_gap(words: &str) -> bool {
    const GAP: &str = "   ";
    words.match_indices(GAP).any(|(at, _)| {
        let (before, behind) = words.split_at(at);
        let behind = behind.trim_start_matches(' ');
        let figures = behind.len()
            - behind
                .trim_start_matches(|c: char| c.is_ascii_digit())
                .len();
        let fraction = figures > 0
            && behind
                .get(figures..)
                .is_some_and(|rest| rest.starts_with('/'));
        before.ends_with(|c: char| c.is_ascii_digit()) && fraction
    })
}
