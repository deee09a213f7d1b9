//! Where the last of a list of cases ends: "1 hr: depth 3 in. / 2 hr: depth 4 in. Splices are staggered 12 in." says its second sentence of every joint, for the
//! cases above it have one sentence each.
//!
//! What it would misread: a second sentence that is of the last case alone. Read as said of every joint it asks for too much, and excuses nothing.

use crate::layout::Flow;
use crate::model::Span;
use crate::outline::Paragraph;
use crate::sentences::sentences;

/// The words of a case, and those behind them that are of every joint.
pub(super) fn parted(
    source: &str,
    paragraphs: &[Paragraph],
    own: usize,
    text: &[Span],
) -> (Vec<Span>, Vec<Span>) {
    let whole = || (text.to_vec(), Vec::new());
    let is_last = !matches!(paragraphs.get(own + 1), Some(Paragraph::Case { .. }));
    let above = paragraphs.get(..own).unwrap_or_default();
    let mut above = above.iter().rev().map_while(|paragraph| match paragraph {
        Paragraph::Case { text, .. } => Some(text),
        _ => None,
    });
    let count = |text: &[Span]| sentences(Flow::of(source, text.iter().copied()).text()).len();
    let mut above = above.by_ref().peekable();
    if !is_last || above.peek().is_none() || above.any(|text| count(text) != 1) {
        return whole();
    }
    let flow = Flow::of(source, text.iter().copied());
    let Some(first) = sentences(flow.text()).into_iter().next() else {
        return whole();
    };
    let end = flow.span(first.start, first.end).end();
    let is_of_all = |piece: &Span| !piece.of(source).trim().is_empty();
    let case = text
        .iter()
        .map(|piece| Span::new(piece.start().min(end), piece.end().min(end)));
    let rest = text
        .iter()
        .map(|piece| Span::new(piece.start().max(end), piece.end().max(end)));
    (
        case.filter(is_of_all).collect(),
        rest.filter(is_of_all).collect(),
    )
}
