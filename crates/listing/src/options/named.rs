//! What an alternative is offered for by a name: "sealant, in place of the coating".

use super::head::Head;
use crate::outline::OutlineItem;

/// The one item beside it that words name from a place on, and where the name ends. More than one, or none, is no answer.
pub(super) fn named<'i>(
    head: &Head,
    from: usize,
    bases: impl Iterator<Item = &'i OutlineItem>,
) -> Option<(String, usize)> {
    let (name, end) = name(head, from)?;
    let mut fitting = bases.filter(|item| holds(&item.title, &name));
    let first = fitting.next()?;
    fitting.next().is_none().then(|| (first.path.clone(), end))
}

/// The words of the name, and where it ends.
fn name(head: &Head, from: usize) -> Option<(Vec<String>, usize)> {
    const MOST: usize = 3;
    const ENDS: [&str; 14] = [
        "for", "where", "when", "in", "at", "on", "if", "with", "over", "may", "is", "shall", "a",
        "an",
    ];
    let words = head.words();
    let mut name = Vec::new();
    let mut end = from;
    for word in words
        .get(from..)?
        .split(' ')
        .filter(|word| !word.is_empty())
    {
        let place = word.as_ptr().addr() - words.as_ptr().addr();
        let letters = word.trim_end_matches(|c: char| !c.is_alphanumeric());
        if name.is_empty() && matches!(letters, "the" | "that") {
            continue;
        }
        if ENDS.contains(&letters) {
            break;
        }
        // "the batts of Item 3A" is a part, and a number no name.
        let is_name = !letters.is_empty() && letters.chars().all(|c| c.is_alphabetic() || c == '-');
        if letters == "of" || !is_name || name.len() >= MOST {
            return None;
        }
        name.push(singular(letters));
        end = place + letters.len();
        if letters.len() < word.len() {
            break;
        }
    }
    (!name.is_empty()).then_some((name, end))
}

fn holds(title: &str, name: &[String]) -> bool {
    // What stands in brackets or behind a comma is a remark.
    let lower = title.to_lowercase();
    let name_of_it = lower.split(['(', ',']).next().unwrap_or_default();
    let words: Vec<String> = name_of_it
        .split(|c: char| !(c.is_alphanumeric() || c == '-'))
        .filter(|word| !word.is_empty())
        .map(singular)
        .collect();
    let is_whole = words.last().is_some_and(|last| name.last() == Some(last));
    is_whole && name.iter().all(|word| words.contains(word))
}

fn singular(word: &str) -> String {
    word.strip_suffix('s')
        .filter(|rest| rest.len() > 2 && !rest.ends_with('s'))
        .unwrap_or(word)
        .to_owned()
}
