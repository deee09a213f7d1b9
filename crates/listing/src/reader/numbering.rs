//! Drafts to clauses with ids, and outline items to items.

use std::collections::BTreeMap;

use crate::clauses::Draft;
use crate::model::{Clause, Condition, Item, Span, Status};
use crate::options::ItemOption;
use crate::outline::{OutlineItem, Paragraph};

/// Gives each clause its id: the item's path and the clause's place in it.
pub(super) fn number(text: &str, drafts: Vec<(String, Draft)>) -> Vec<Clause> {
    let mut counts: BTreeMap<String, usize> = BTreeMap::new();
    drafts
        .into_iter()
        .map(|(item, draft)| {
            let count = counts.entry(item.clone()).or_default();
            *count += 1;
            let id = if item.is_empty() {
                format!("head/{count}")
            } else {
                format!("{item}/{count}")
            };
            Clause {
                id,
                item,
                span: draft.span,
                words: draft.span.of(text).to_owned(),
                property: draft.property,
                component: draft.component,
                attribute: draft.attribute,
                requirement: draft.requirement,
                condition: draft.condition.map(Condition::without_open_brackets),
                option: (!draft.options.is_empty()).then(|| draft.options.join(" & ")),
                read_by: draft.read_by,
                confidence: draft.confidence,
                status: Status::Draft,
            }
        })
        .collect()
}

pub(super) fn items(items: &[OutlineItem], options: &[ItemOption]) -> Vec<Item> {
    items
        .iter()
        .zip(options)
        .map(|(item, option)| {
            let end = item
                .paragraphs
                .iter()
                .map(|paragraph| match paragraph {
                    Paragraph::Text(pieces)
                    | Paragraph::Cell { text: pieces, .. }
                    | Paragraph::Case { text: pieces, .. } => {
                        pieces.last().map_or(0, |span| span.end())
                    }
                    Paragraph::Table(table) => table.span.end(),
                    Paragraph::Entry(entry) => entry.pieces().map(Span::end).max().unwrap_or(0),
                })
                .max()
                .unwrap_or(0);
            let own = option.is_choice().then(|| item.path.clone());
            let configuration = option.configurations.first().cloned();
            Item {
                path: item.path.clone(),
                title: item.title.clone(),
                span: Span::new(item.heading.start(), end.max(item.heading.end())),
                option: own.or(configuration),
                parent: item
                    .parent
                    .and_then(|parent| items.get(parent))
                    .map(|parent| parent.path.clone()),
            }
        })
        .collect()
}
