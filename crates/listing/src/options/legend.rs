//! A sign that stands at items and that a legend explains: `** 2A. Strap - ...` with `** May be omitted.` below.
//!
//! What it would misread: a sign with two meanings, or with more to say than that the item may be left out ("** Optional for 1 hr"): neither is taken.

use crate::outline::OutlineItem;

const SIGNS: [char; 5] = ['*', '†', '‡', '#', '§'];

/// What a legend says of items that may be left out, and nothing else.
const LEFT_OUT: &[&str] = &[
    "may be omitted",
    "may be left out",
    "optional",
    "optional item",
    "optional items",
    "optional part",
    "optional parts",
    "optional component",
    "optional components",
    "item is optional",
    "items are optional",
    "not mandatory",
    "indicates optional item",
    "indicates an optional item",
    "denotes optional item",
    "denotes an optional item",
    "items so marked are optional",
    "items marked thus are optional",
    "items so marked may be omitted",
    "items marked thus may be omitted",
];

/// The signs whose items may be left out.
pub(super) fn optional_signs(source: &str) -> Vec<&str> {
    let legends: Vec<(&str, &str)> = source.lines().filter_map(legend).collect();
    let says_only_that = |sign: &str| {
        let mut own = legends.iter().filter(|(other, _)| *other == sign);
        own.all(|(_, words)| leaves_out(words))
    };
    let mut signs: Vec<&str> = legends.iter().map(|(sign, _)| *sign).collect();
    signs.sort_unstable();
    signs.dedup();
    signs.retain(|sign| says_only_that(sign));
    signs
}

/// A line that begins with a sign and isn't the first of an item: `** May be omitted.`
fn legend(line: &str) -> Option<(&str, &str)> {
    let line = line.trim();
    let sign = leading_sign(line)?;
    let words = line.get(sign.len()..)?;
    let opened = words.trim_start().trim_start_matches(['-', '–', '=', ':']);
    let worded = opened.trim_start().starts_with(char::is_alphabetic);
    // `*a. Board` is an item's own line.
    let item = words.trim_start().get(1..2) == Some(".");
    (worded && !item).then(|| (sign, opened.trim()))
}

fn leaves_out(words: &str) -> bool {
    let words = words.trim_end_matches(['.', ';']).to_lowercase();
    LEFT_OUT.contains(&words.as_str())
}

fn leading_sign(words: &str) -> Option<&str> {
    let first = words.chars().next().filter(|c| SIGNS.contains(c))?;
    let len = words.len() - words.trim_start_matches(first).len();
    words.get(..len)
}

/// Whether an item's number or title bears one of some signs.
pub(super) fn bears(source: &str, item: &OutlineItem, signs: &[&str]) -> bool {
    let line = source
        .get(item.heading.start()..)
        .and_then(|rest| rest.lines().next());
    let line = line.unwrap_or_default().trim_end();
    let before = leading_sign(line).unwrap_or_default();
    let marked = line.get(before.len()..).unwrap_or_default().trim_start();
    let (number, rest) = marked.split_once(' ').unwrap_or((marked, ""));
    let ends = [" - ", " – ", " — ", ". ", ": "];
    let title = ends.iter().filter_map(|end| rest.find(end)).min();
    let title = title.and_then(|end| rest.get(..end)).unwrap_or(rest);
    // Of "Sealant and primer*" the sign may be the primer's alone.
    let of_title = if names_several(title) {
        ""
    } else {
        closing_sign(title)
    };
    [before, closing_sign(number), of_title]
        .iter()
        .any(|own| signs.contains(own))
}

fn names_several(title: &str) -> bool {
    const JOINS: [&str; 8] = ["and", "or", "with", "plus", "on", "over", "in", "of"];
    title.contains([',', '&', '/', '+', '('])
        || title
            .split(' ')
            .any(|word| JOINS.contains(&word.to_lowercase().as_str()))
}

fn closing_sign(words: &str) -> &str {
    let words = words.trim_end();
    let bare = words.trim_end_matches(SIGNS);
    words.get(bare.len()..).unwrap_or_default()
}
