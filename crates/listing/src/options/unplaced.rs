//! Words farther on in an item that let something be left out, or built instead of another: `Max 1/16 in. thick (optional).`, `- Clips (optional): 24 in.
//! OC`, `OR` alone on a line, `Any one of the following:` over bullets. What they speak of is no item, so that all of it stays required; a person is told.

use super::ItemOption;
use super::listed::lead;
use crate::layout::{Flow, LIST_SIGNS};
use crate::model::Span;
use crate::outline::{OutlineItem, Paragraph};
use crate::sentences::sentences;

/// Said where words offer what is no item of its own.
const NO_ITEM: &str = "the words let something be left out or built instead, but it is no item of its own; all of it stays required until a person decides";

/// Words in brackets that offer what they stand beside.
const BRACKETED: [&str; 5] = [
    "(optional)",
    "(optional,",
    "(optional with",
    "(alternate)",
    "(alternative)",
];

/// Words that begin a sentence which offers something.
const OPENING: [&str; 4] = ["optional ", "optional:", "optional.", "optionally"];

/// Words that let the whole item be left out in some joints.
const WHEN: [&str; 5] = [
    "optional when ",
    "optional where ",
    "optional if ",
    "optional for ",
    "optional in ",
];

/// Gives a doubt to each item that offers something in its text and is no choice itself.
pub(super) fn doubt_offers(source: &str, items: &[OutlineItem], options: &mut [ItemOption]) {
    for (index, item) in items.iter().enumerate() {
        let parted = items.iter().any(|part| part.parent == Some(index));
        let Some(option) = options.get_mut(index) else {
            continue;
        };
        if option.is_choice() || option.offered.is_some() || option.doubt.is_some() {
            continue;
        }
        option.doubt = offer(source, item, parted).map(|span| (span, NO_ITEM.to_owned()));
    }
}

/// The words in the text of an item that offer something.
fn offer(source: &str, item: &OutlineItem, parted: bool) -> Option<Span> {
    let texts = || item.paragraphs.iter().filter_map(text);
    let said = texts().find_map(|pieces| {
        alone(source, pieces).or_else(|| said(&Flow::of(source, pieces.iter().copied()), parted))
    });
    let bulleted = || {
        let mut below = texts().skip(1);
        below.any(|pieces| begins_bullet(source, pieces))
    };
    said.or_else(|| {
        let (_, span) = lead(source, item).filter(|_| !parted && bulleted())?;
        Some(span)
    })
}

fn text(paragraph: &Paragraph) -> Option<&Vec<Span>> {
    match paragraph {
        Paragraph::Text(pieces) => Some(pieces),
        _ => None,
    }
}

/// `OR` between two lines.
fn alone(source: &str, pieces: &[Span]) -> Option<Span> {
    let is_or = |piece: &&Span| piece.of(source).trim_matches(['-', '–', '—', ' ']) == "OR";
    pieces.iter().find(is_or).copied()
}

fn said(flow: &Flow, parted: bool) -> Option<Span> {
    let lower = flow.lower();
    let bracketed = BRACKETED.iter().find_map(|words| {
        let at = lower.find(words)?;
        Some(flow.span(at, at + words.len()))
    });
    bracketed.or_else(|| {
        sentences(flow.text()).into_iter().find_map(|range| {
            let words = lower.get(range.clone())?;
            let opens = OPENING.iter().any(|opening| words.starts_with(opening));
            // Words that say in which joints it is are the condition of the whole.
            let whole = WHEN.iter().any(|when| words.starts_with(when));
            // `Consists of Item A or Item B:` over both.
            let either = parted
                && words.trim_end().ends_with(':')
                && words.contains("item ")
                && words.contains(" or item ");
            (opens && !whole || either).then(|| flow.span(range.start, range.end))
        })
    })
}

fn begins_bullet(source: &str, pieces: &[Span]) -> bool {
    pieces
        .first()
        .is_some_and(|first| first.of(source).trim_start().starts_with(LIST_SIGNS))
}
