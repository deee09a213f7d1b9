//! Columns headed by limits that are no table: whatever was read of their numbers would take a limit from another column. They are left unread.

use crate::clauses::Draft;
use crate::layout::lines;
use crate::model::{Requirement, Span, WarningKind};
use crate::outline::{Outline, Paragraph, limit_columns};

/// Leaves the numbers unread that stand in rows under headings of limits, in no table, where one heading's limit may have gone to another's number.
pub(super) fn leave_unplaced(
    text: &str,
    outline: &Outline,
    drafts: &mut [(String, Draft)],
) -> Vec<(WarningKind, Span, String)> {
    let tables: Vec<Span> = outline
        .items
        .iter()
        .flat_map(|item| &item.paragraphs)
        .filter_map(|paragraph| match paragraph {
            Paragraph::Text(_) => None,
            Paragraph::Table(table) => Some(table.span),
            other => other.pieces().into_iter().reduce(Span::join),
        })
        .collect();

    let unplaced: Vec<Span> = limit_columns(&lines(text))
        .into_iter()
        .filter(|block| !tables.iter().any(|table| table.overlaps(*block)))
        .collect();
    let mut doubts = Vec::new();
    for (item, draft) in drafts {
        let Requirement::Bound(bound) = &draft.requirement else {
            continue;
        };
        let at = bound.at;
        if unplaced.iter().any(|block| block.overlaps(at)) {
            draft.leave_as_words(item);
            let message = "which column it stands in could not be told".to_owned();
            doubts.push((WarningKind::UnreadNumber, at, message));
        }
    }
    doubts
}
