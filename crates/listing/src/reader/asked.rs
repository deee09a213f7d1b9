//! The items that a sentence of another item asks for only in some joints: "Joints wider than 6 in. require the support bars of Item 4A."
//!
//! Only where nothing else cites the item: what another item fastens to it, or asks for it, may be there in every joint.

use core::ops::Range;

use crate::conditions::{asks_for_item, may_ask_for_item};
use crate::layout::{Flow, UsualUnits};
use crate::model::Condition;
use crate::options::{Paths, items_cited};
use crate::outline::{Outline, OutlineItem, Paragraph};
use crate::rules::Sentence;
use crate::sentences::sentences;

/// The items that are asked for only in some joints, each with what the joints have in common.
pub(super) fn asked_for(
    text: &str,
    outline: &Outline,
    units: UsualUnits,
) -> Vec<(String, Condition)> {
    let paragraphs = outline.items.iter().flat_map(|item| &item.paragraphs);
    let flows = paragraphs.filter_map(|paragraph| match paragraph {
        Paragraph::Text(pieces) => {
            Some(Flow::of(text, pieces.iter().copied()).with_usual_units(units))
        }
        _ => None,
    });
    let dotted = |path: &str| path.contains('.');
    let dots = outline.items.iter().any(|item| dotted(&item.path));
    let citing = flows.filter(|flow| dots || flow.lower().contains("item "));
    let asked = citing.flat_map(|flow| {
        let asks = |range: &Range<usize>| {
            let lower = flow.lower().get(range.clone());
            lower.is_some_and(may_ask_for_item)
        };
        let ranges = sentences(flow.text()).into_iter().filter(asks);
        let asked = ranges.filter_map(|range| asks_for_item(&Sentence::new(&flow, range)));
        asked.collect::<Vec<_>>()
    });
    let mut asked = asked.peekable();
    if asked.peek().is_none() {
        return Vec::new();
    }
    let citations = Citations::of(text, &outline.items);
    asked.filter(|(path, _)| citations.are_one(path)).collect()
}

/// Where a document names its items.
struct Citations<'d> {
    text: &'d str,
    items: &'d [OutlineItem],
    /// The places of "Item 4A", each with the items that are cited there.
    named: Vec<(usize, Vec<String>)>,
}

impl<'d> Citations<'d> {
    fn of(text: &'d str, items: &'d [OutlineItem]) -> Self {
        let paths = Paths::of(items.iter().map(|item| item.path.clone()));
        let words = text
            .split(|c: char| !c.is_alphanumeric())
            .filter(|word| word.eq_ignore_ascii_case("item") || word.eq_ignore_ascii_case("items"));
        let named = words
            .map(|word| {
                let at = word.as_ptr().addr() - text.as_ptr().addr();
                (at, items_cited(text, at + word.len(), &paths))
            })
            .collect();
        Self { text, items, named }
    }

    /// Whether an item is named in one place only, its own heading apart.
    fn are_one(&self, path: &str) -> bool {
        let own = self.items.iter().find(|item| item.path == path);
        let heading = own.map(|item| item.heading);
        let heads = |at: usize| heading.is_some_and(|own| own.start() <= at && at < own.end());
        // A clause of a numbered document is cited by its number alone.
        if path.contains('.') {
            let cites = |(at, _): &(usize, &str)| self.is_apart(*at, path.len()) && !heads(*at);
            return self.text.match_indices(path).filter(cites).count() == 1;
        }
        let cites = |(at, items): &&(usize, Vec<String>)| {
            !heads(*at) && items.iter().any(|item| item == path)
        };
        self.named.iter().filter(cites).count() == 1
    }

    /// Whether nothing is written on to the words at a place.
    fn is_apart(&self, at: usize, len: usize) -> bool {
        let beside = |c: Option<char>| c.is_some_and(char::is_alphanumeric);
        let before = self
            .text
            .get(..at)
            .and_then(|text| text.chars().next_back());
        let after = self
            .text
            .get(at + len..)
            .and_then(|text| text.chars().next());
        !beside(before) && !beside(after)
    }
}
