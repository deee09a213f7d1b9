//! The items that words cite one after another: `Item 2A`, `Items 2A and 2B`, `4.1`, `§ 3(d)`, `(a)`, `2 c)`, `4.1 to 4.3`.

use super::paths::Paths;
use measure::Unit;
use measure::notation::quantity_at;

/// Words that may stand before or between items' numbers, beside those that announce one.
const BETWEEN: [&str; 6] = ["and", "or", "the", "base", "of", "&"];

/// Words that say that an item's number follows.
const NAMES: [&str; 16] = [
    "item",
    "items",
    "note",
    "notes",
    "keynote",
    "keynotes",
    "step",
    "steps",
    "paragraph",
    "article",
    "art",
    "para",
    "clause",
    "section",
    "part",
    "§",
];

/// What words cite.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(super) struct Citation {
    pub(super) items: Vec<String>,
    /// Where the last of them ends.
    pub(super) end: usize,
}

/// What the words of the item `own` cite from a place on.
pub(super) fn cited(own: &str, text: &str, from: usize, paths: &Paths) -> Citation {
    let words = words(text, from);
    let mut found = Citation::default();
    let mut through = false;
    let mut announced = false;
    let mut at = 0;
    while let Some((place, word)) = words.get(at).copied() {
        at += 1;
        let letter = words.get(at).and_then(|(_, next)| letter_of(word, next));
        let last = if letter.is_some() { at } else { at - 1 };
        at += usize::from(letter.is_some());
        let path = match letter {
            // `2 c)` that isn't found may not be taken for the whole of 2.
            Some(letter) => lettered(word, letter, paths),
            None if !announced && is_measure(text, place, word, found.items.is_empty()) => None,
            None => named(own, word, paths).or_else(|| beside(own, text, place, word, paths)),
        };
        let lower = bare(word).to_lowercase();
        announced = NAMES.contains(&lower.as_str());
        let Some(path) = path else {
            let is_through = matches!(lower.as_str(), "to" | "through" | "thru");
            through |= is_through;
            if is_through || announced || BETWEEN.contains(&lower.as_str()) {
                continue;
            }
            break;
        };
        // `4.1 to 4.3` cites those between, too.
        if through && let Some(last) = found.items.last() {
            let between = paths.between(last, path);
            found.items.extend_from_slice(between);
        }
        found.items.push(path.clone());
        through = false;
        if let Some((place, word)) = words.get(last) {
            found.end = place + whole(word).len();
        }
    }
    found
}

/// The words from a place on, each with its place, commas and the like left out.
fn words(text: &str, from: usize) -> Vec<(usize, &str)> {
    const MOST: usize = 9;
    text.get(from..)
        .unwrap_or_default()
        .split(|c: char| c.is_whitespace() || matches!(c, ',' | ';' | ':'))
        .filter(|word| !word.is_empty())
        .take(MOST)
        .map(|word| (word.as_ptr().addr() - text.as_ptr().addr(), word))
        .collect()
}

/// A word without the stop or the bracket that closes what it stands in.
fn whole(word: &str) -> &str {
    let word = word.trim_end_matches(['.', '*']);
    let open = word.matches('(').count();
    let closed = word.matches(')').count();
    match word.strip_suffix(')') {
        Some(rest) if closed > open => rest,
        _ => word,
    }
}

fn bare(word: &str) -> &str {
    word.trim_end_matches(['.', ')', '*', '>'])
        .trim_start_matches(['(', '<'])
}

/// Whether a bare number measures something: `Item 3C, 2 and 3 hr ratings only` cites one item. Of the first number only its own unit tells.
fn is_measure(text: &str, place: usize, word: &str, first: bool) -> bool {
    const MOST: usize = 4;
    let is_number = bare(word)
        .chars()
        .all(|c| c.is_ascii_digit() || matches!(c, '/' | '-' | '.'));
    let mut at = place;
    // `5, 1 hr only` is 5, and then a rating; `4 in joints` is 4.
    let ends_here = |unit: &str| {
        let own = text.get(place + word.len()..).unwrap_or_default();
        own.starts_with([',', ';', ')']) || own.starts_with(unit)
    };
    if first && ends_here(" in joints") {
        return false;
    }
    for _ in 0..MOST {
        if !is_number {
            return false;
        }
        if quantity_at(text, at).is_some_and(|stated| stated.unit != Unit::Count) {
            return true;
        }
        let rest = text.get(at..).unwrap_or_default();
        let after = rest
            .trim_start_matches(|c: char| c.is_ascii_digit() || matches!(c, '/' | '-' | '.'))
            .trim_start_matches([' ', ',']);
        let joined = ["and ", "or ", "to ", "& "];
        let after = joined
            .iter()
            .find_map(|word| after.strip_prefix(word))
            .unwrap_or(after);
        if !after.starts_with(|c: char| c.is_ascii_digit()) {
            return false;
        }
        at = text.len() - after.len();
    }
    false
}

/// The item that a word names.
fn named<'p>(own: &str, word: &str, paths: &'p Paths) -> Option<&'p String> {
    let bare = bare(word);
    // Within `2A(3)`, `(1)` is `2A(1)`, and never item 1.
    if word.starts_with('(') && own.contains('(') {
        let sibling = sibling(own, bare)?;
        return paths.exactly(&sibling);
    }
    let unbalanced = if bare.contains('(') && !bare.contains(')') {
        format!("{bare})")
    } else {
        bare.to_owned()
    };
    // Within `System B-2A`, `Item 2` is that of System B, where it has one.
    let part = own.split_once('-').filter(|(part, _)| part.contains(' '));
    let in_part = part.map(|(part, _)| format!("{part}-{unbalanced}"));
    let own_part = in_part.and_then(|label| paths.exactly(&label));
    own_part
        .or_else(|| paths.named(&unbalanced))
        .or_else(|| paths.loosely(bare))
}

/// The letter in brackets that stands apart from the number before it: `2 c)`, `2 (c)`. A letter without one may be the word "a".
fn letter_of<'w>(number: &str, word: &'w str) -> Option<&'w str> {
    let number = number.trim_start_matches(['(', '§']);
    let is_number = number.starts_with(|c: char| c.is_ascii_digit())
        && number.ends_with(|c: char| c.is_ascii_alphanumeric());
    let word = word.trim_end_matches(['.', '*']);
    let letter = word.trim_end_matches(')').trim_start_matches('(');
    let is_letter = word.ends_with(')')
        && letter.chars().count() == 1
        && letter.starts_with(char::is_alphabetic);
    (is_number && is_letter).then_some(letter)
}

/// The item of a number and a letter.
fn lettered<'p>(number: &str, letter: &str, paths: &'p Paths) -> Option<&'p String> {
    let number = number.trim_start_matches(['(', '§']);
    paths.lettered(number, letter)
}

/// The part of the same item that a capital alone cites: `B` within `2C` and `2B1`. With a name behind it, it may be the word "a".
fn beside<'p>(
    own: &str,
    text: &str,
    place: usize,
    word: &str,
    paths: &'p Paths,
) -> Option<&'p String> {
    let letter = bare(word);
    let capital = letter.len() == 1 && letter.starts_with(|c: char| c.is_ascii_uppercase());
    let behind = text.get(place + letter.len()..)?.trim_start_matches('*');
    let ends = [":", ",", ";", ".", ")", " -", " –", " —"];
    let alone = behind.is_empty() || ends.iter().any(|end| behind.starts_with(end));
    let number = own
        .find(|c: char| !c.is_ascii_digit())
        .filter(|end| *end > 0)?;
    let label = format!("{}{letter}", own.get(..number)?);
    (capital && alone && label != own).then(|| paths.exactly(&label))?
}

/// The item beside another that a letter or number in brackets cites: `(a)` within `3(b)` is `3(a)`.
fn sibling(own: &str, label: &str) -> Option<String> {
    let around = own.get(..own.rfind('(')?)?;
    let sibling = format!("{around}({label})");
    (sibling != own).then_some(sibling)
}
