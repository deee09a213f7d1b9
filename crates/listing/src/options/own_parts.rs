//! An item whose head labels only the first of several things in it: `Support (Alternate A). Steel angle ...` over `Support (Alternate B). Wire ...` and what
//! holds for both. The label is that of the thing it stands behind and offers no item as a whole.

use super::head::Head;
use crate::layout::Flow;
use crate::outline::{OutlineItem, Paragraph};

/// Words that label one of several in brackets.
const LABELLING: [&str; 8] = [
    "(alternate ",
    "(alternative ",
    "(alt ",
    "(alt. ",
    "(option ",
    "(variant ",
    "(method ",
    "(version ",
];

/// Whether the text of an item, or the head of one of its parts, has another label of the sort that its own head has in brackets.
pub(super) fn labels_another_inside(
    source: &str,
    items: &[OutlineItem],
    index: usize,
    head: &Head,
) -> bool {
    let Some((lead, own)) = labels(head.words()).next() else {
        return false;
    };
    let Some(item) = items.get(index) else {
        return false;
    };
    let is_another =
        |text: &str| labels(text).any(|(other_lead, other)| other_lead == lead && other != own);
    let inside = item.paragraphs.iter().any(|paragraph| {
        let pieces = match paragraph {
            Paragraph::Text(pieces) => pieces.clone(),
            _ => return false,
        };
        is_another(Flow::of(source, pieces).lower())
    });
    let mut parts = items.iter().filter(|part| part.parent == Some(index));
    inside || parts.any(|part| is_another(Head::of(source, part).words()))
}

/// The labels in brackets of a text in small letters, each with the words before it.
fn labels(text: &str) -> impl Iterator<Item = (&'static str, &str)> {
    const LONGEST: usize = 3;
    LABELLING.iter().flat_map(move |lead| {
        text.match_indices(lead).filter_map(move |(at, _)| {
            let behind = text.get(at + lead.len()..)?;
            let label = behind.split([')', ',', ';', ' ']).next()?;
            // "(Option A) Norspray 90" is a product's.
            let after = behind.get(label.len()..)?.strip_prefix(')')?;
            let names =
                after.is_empty() || after.starts_with(['.', ':', ',']) || after.starts_with(" -");
            (names && !label.is_empty() && label.len() <= LONGEST).then_some((*lead, label))
        })
    })
}
