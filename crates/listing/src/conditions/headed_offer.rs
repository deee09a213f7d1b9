//! Paragraphs of an item that are headed as an offer: "Spray option -- in lieu of the sealant, ...", "Support (Alternate A). In joints over 4 in. wide ...". Whether
//! it is taken, a person says; what such a paragraph asks for is asked where it is.
//!
//! What it would misread: a paragraph headed so that goes on to something else than what it offers; a person is asked of that, too.

use crate::layout::Flow;
use crate::model::{Condition, Expr};

/// What parts a heading from its text.
const SIGNS: [&str; 6] = [" -- ", " - ", " – ", " — ", ": ", ". "];

/// The offer that a paragraph is headed with.
pub(crate) fn headed_offer(flow: &Flow) -> Option<Condition> {
    const MOST_WORDS: usize = 6;
    let text = flow.text();
    let end = SIGNS.iter().filter_map(|sign| text.find(sign)).min()?;
    // "Spray option [c]": the mark of a note is no part of it.
    let heading = text.get(..end)?;
    let heading = match heading.rsplit_once(" [") {
        Some((name, mark)) if mark.len() <= 3 && mark.ends_with(']') => name,
        _ => heading,
    };
    let end = heading.len();
    let few = heading.split_whitespace().count() <= MOST_WORDS;
    let begins = heading.starts_with(char::is_uppercase);
    if !(few && begins && offers(heading)) || is_asked_for(flow.lower()) {
        return None;
    }
    let words = heading.to_owned();
    Some(Condition {
        span: flow.span(0, end),
        also: Vec::new(),
        expr: Expr::Words(words.clone()),
        words,
    })
}

/// Whether a text says that what it offers is asked for in some joints: "Required where the joint is exposed to traffic".
fn is_asked_for(text: &str) -> bool {
    let mut asks = ["required", "mandatory", "obligatory"]
        .iter()
        .flat_map(|word| text.match_indices(word));
    asks.any(|(at, _)| {
        let before = text.get(..at).unwrap_or_default().trim_end();
        !before.ends_with("not")
    })
}

/// Whether a heading names an option of something: `Spray option`, `Support (Alternate A)`, `Cover strip (optional)`.
fn offers(heading: &str) -> bool {
    const SORTS: [&str; 4] = ["option", "optional", "alternate", "alternative"];
    // "Sealant is an option." is a sentence.
    const VERBS: [&str; 6] = ["is", "are", "may", "shall", "must", "can"];
    let lower = heading.to_lowercase();
    if lower.split(' ').any(|word| VERBS.contains(&word)) {
        return false;
    }
    let is_sort = |word: &str| SORTS.contains(&word);
    let Some((thing, bracket)) = lower
        .strip_suffix(')')
        .and_then(|lower| lower.split_once(" ("))
    else {
        return lower
            .rsplit_once(' ')
            .is_some_and(|(_, last)| is_sort(last));
    };
    let mut words = bracket.split(' ');
    let sort = words.next().is_some_and(is_sort);
    let label = words.next().is_none_or(|label| label.len() <= 2);
    !thing.is_empty() && sort && label && words.next().is_none()
}
