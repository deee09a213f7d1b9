//! Lists whose lead gives them to some joints only: `For floors:`, `2. Caulk (alternate, joints up to 1 in.) ...`.
//!
//! Their names are asked for under these words, which a person judges. A lead that denies or opens what it leads to makes no case of it.

use super::limits::REFUSING;
use super::within::{denies, without_bounds};
use crate::model::Span;

/// The words before a list, where they make a case of it.
pub(super) fn case_of(source: &str, lead: Span) -> Option<Span> {
    let words = lead.of(source).trim_end();
    let tells = says_case(words) && !denies_list(words);
    tells.then(|| Span::new(lead.start(), lead.start() + words.len()))
}

fn says_case(words: &str) -> bool {
    const ANYWHERE: [&str; 18] = [
        "where",
        "when",
        "if",
        "option",
        "options",
        "optional",
        "configuration",
        "alternate",
        "alternative",
        "alternatively",
        "lieu",
        "only",
        "variant",
        "substituted",
        "joints",
        "rating",
        "ratings",
        "hr",
    ];
    let mut each = lower_words(words);
    let leads = each.clone().next().is_some_and(|first| first == "for");
    leads || each.any(|word| ANYWHERE.contains(&word.as_str()))
}

/// Whether a lead may deny its list: in the sentence right before it or in that which begins it, or in any that speaks of products.
fn denies_list(words: &str) -> bool {
    const SPEAKING: [&str; 8] = [
        "product",
        "products",
        "following",
        "these",
        "those",
        "brands",
        "makers",
        "below",
    ];
    let sentences: Vec<&str> = words
        .split([';', '\n'])
        .flat_map(|part| part.split(". "))
        .filter(|part| part.contains(char::is_alphanumeric))
        .collect();
    let speaks = |own: &str| lower_words(own).any(|word| SPEAKING.contains(&word.as_str()));
    let at_end = |at: usize| at == 0 || at + 1 == sentences.len();
    lower_words(words).any(|word| REFUSING.contains(&word.as_str()))
        || speaks(words) && denies(&without_bounds(words))
        || sentences
            .iter()
            .enumerate()
            .any(|(at, own)| at_end(at) && denies(&without_bounds(own)))
}

fn lower_words(words: &str) -> impl Iterator<Item = String> + Clone + '_ {
    words
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .map(str::to_lowercase)
}
