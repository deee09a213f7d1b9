//! The title of an item, taken out of its first paragraph.

use super::super::title::{clean, demands, title_len};
use super::closing::Setting;
use super::{OutlineItem, Paragraph};
use super::{labels, own_line};
use crate::layout::Flow;
use crate::model::Span;

/// Moves an item's title out of its first paragraph.
pub(super) fn take_title(source: &str, item: &mut OutlineItem, is_leaf: bool, setting: Setting) {
    let beside = item.paragraphs.iter().skip(1);
    let beside: Vec<&str> = beside
        .filter_map(|paragraph| Some(paragraph.pieces().first()?.of(source)))
        .collect();
    let Some(Paragraph::Text(pieces)) = item.paragraphs.first_mut() else {
        return;
    };
    let flow = Flow::of(source, pieces.iter().copied());
    let closed = title_len(flow.text());
    let on_own_line = closed == 0;
    let len = if on_own_line {
        own_line::title(source, item.heading, pieces, setting)
    } else {
        closed
    };
    let len = len - labels::configuration_at_end(flow.text(), len, beside);
    if len == 0 {
        return;
    }
    let words = flow.text().get(..len).unwrap_or_default();
    item.title = clean(words);
    // What is all that an item says, or demands something, stays in its text.
    let is_all = words.trim_end().len() == flow.text().trim_end().len()
        && is_leaf
        && words.trim_end().ends_with('.');
    if is_all || demands(words) || on_own_line && own_line::names_material(words) {
        return;
    }
    let end = flow.span(0, len.min(flow.text().trim_end().len())).end();
    item.heading = Span::new(item.heading.start(), end);
    pieces.retain_mut(|piece| {
        *piece = Span::new(piece.start().max(end), piece.end().max(end));
        !piece.of(source).trim().is_empty()
    });
    if pieces.is_empty() {
        item.paragraphs.remove(0);
    }
}
