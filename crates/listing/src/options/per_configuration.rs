//! Parts that an item gives out to configurations by name: "Use Item 1A for Config A and C or Item 1B for Config B."

use super::cited::cited;
use super::paths::Paths;
use super::reach::configurations;
use crate::layout::Flow;
use crate::outline::{OutlineItem, Paragraph};

/// A part, and the configurations that it is used for.
type Given = (String, Vec<String>);

/// The parts of an item that its own text gives out to configurations, each with its own.
pub(super) fn given_out(source: &str, item: &OutlineItem, parts: &Paths) -> Vec<Given> {
    let texts = item
        .paragraphs
        .iter()
        .filter_map(|paragraph| match paragraph {
            Paragraph::Text(pieces) => Some(Flow::of(source, pieces.iter().copied())),
            _ => None,
        });
    texts
        .into_iter()
        .find_map(|flow| {
            let sentences = crate::sentences::sentences(flow.text());
            sentences
                .into_iter()
                .find_map(|range| of_sentence(item, flow.lower().get(range)?, parts))
        })
        .unwrap_or_default()
}

/// What a sentence gives out, where it says nothing else and no configuration has two parts.
fn of_sentence(item: &OutlineItem, sentence: &str, parts: &Paths) -> Option<Vec<Given>> {
    let body = sentence.trim().strip_prefix("use item ")?;
    let body = body.trim_end_matches(['.', ':', ';']);
    let given: Option<Vec<Given>> = body
        .split(" item ")
        .map(|told| of_part(item, without_joint(told), parts))
        .collect();
    let given = given.filter(|given| given.len() > 1)?;
    let apart = given.iter().enumerate().all(|(at, (part, own))| {
        let mut others = given.iter().skip(at + 1);
        others.all(|(other, names)| other != part && names.iter().all(|name| !own.contains(name)))
    });
    apart.then_some(given)
}

/// `1a for config a and c`
fn of_part(item: &OutlineItem, told: &str, parts: &Paths) -> Option<Given> {
    let (label, of_what) = [" for ", " in ", " with "]
        .iter()
        .find_map(|word| told.split_once(word))?;
    let citation = cited(&item.path, label, 0, parts);
    let [part] = citation.items.as_slice() else {
        return None;
    };
    let whole = citation.end == label.len();
    let (names, says_more) = configurations(of_what)?;
    (whole && !says_more).then(|| (part.clone(), names))
}

/// Words without the "or" that joins them to the next.
fn without_joint(words: &str) -> &str {
    let words = words.trim_end();
    let words = ["or", "and"]
        .iter()
        .find_map(|joint| words.strip_suffix(joint)?.strip_suffix(' '))
        .unwrap_or(words);
    words.trim_end_matches([',', ';', ' '])
}
