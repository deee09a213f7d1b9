//! The items that a sentence of another item asks for only in some joints: "Joints wider than 6 in. require the support bars of Item 4A."
//!
//! Only where nothing else cites the item: what another item fastens to it, or asks for it, may be there in every joint.

use crate::conditions::asks_for_item;
use crate::layout::{Flow, UsualUnits};
use crate::model::Condition;
use crate::options::items_cited;
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
        let ranges = sentences(flow.text()).into_iter();
        let asked = ranges.filter_map(|range| asks_for_item(&Sentence::new(&flow, range)));
        asked.collect::<Vec<_>>()
    });
    asked
        .filter(|(path, _)| is_cited_once(text, &outline.items, path))
        .collect()
}

/// Whether a document names an item in one place only, its own heading apart.
fn is_cited_once(text: &str, items: &[OutlineItem], path: &str) -> bool {
    let paths: Vec<String> = items.iter().map(|item| item.path.clone()).collect();
    let own = items.iter().find(|item| item.path == path);
    let own_heading = own.map(|item| item.heading);
    // A clause of a numbered document is cited by its number alone.
    if path.contains('.') {
        let cites = |(at, cited): &(usize, &str)| {
            let beside = |c: Option<char>| c.is_some_and(char::is_alphanumeric);
            let before = text.get(..*at).and_then(|text| text.chars().next_back());
            let after = text
                .get(at + cited.len()..)
                .and_then(|text| text.chars().next());
            let heads = own_heading.is_some_and(|own| own.start() <= *at && *at < own.end());
            !beside(before) && !beside(after) && !heads
        };
        return text.match_indices(path).filter(cites).count() == 1;
    }
    let names = |(at, word): (usize, &str)| {
        let citing = ["item", "items"]
            .iter()
            .any(|item| word.eq_ignore_ascii_case(item));
        let heads = own_heading.is_some_and(|own| own.start() <= at && at < own.end());
        citing
            && !heads
            && items_cited(text, at + word.len(), &paths)
                .iter()
                .any(|item| item == path)
    };
    let words = text
        .split(|c: char| !c.is_alphanumeric())
        .map(|word| (word.as_ptr().addr() - text.as_ptr().addr(), word));
    words.filter(|word| names(*word)).count() == 1
}
