//! The part of an item that a list stands under: `B. Fill Material* - Sealant - Min 1/2 in. deep ...`, where such parts are not items themselves.

use super::entry::JOINTS;
use super::leads::{is_plain, names_part};
use crate::model::Span;

/// A part of an item, as its heading inside the item names it.
#[derive(Debug)]
pub(super) struct Part<'s> {
    pub(super) name: &'s str,
    /// Where what is said of it begins.
    pub(super) body: usize,
}

/// The part whose heading is the last before a list; none where it may be one of several, or hold for some joints only.
/// `start` is where the list before ends, and nothing of a part stands before it.
pub(super) fn part_above(
    source: &str,
    heading: Span,
    start: usize,
    list: Span,
) -> Option<Part<'_>> {
    let item = source.get(heading.start()..list.start())?;
    if offers_choice(item) {
        return None;
    }
    let between = source.get(start..list.start())?;
    let mut at = start;
    let mut begins = true;
    let mut found: Option<(usize, &str)> = None;
    for line in between.split_inclusive('\n') {
        let words = line.trim();
        if begins && marked(words).is_some() {
            found = Some((at, words));
        }
        begins = words.is_empty() || words.ends_with(['.', ';', ')']);
        at += line.len();
    }
    let (at, line) = found?;
    let own = source.get(at..list.start())?;
    let title = marked(line)?;
    let name = name_of(title)?;
    if limits(own, title) {
        return None;
    }
    let body = at + own.find(name)? + name.len();
    Some(Part { name, body })
}

/// What stands behind the mark of a part: `B. `, `A1. `, `4.2 `, `(b) `, `II.C `.
fn marked(line: &str) -> Option<&str> {
    const LONGEST: usize = 6;
    let (mark, title) = line.split_once(' ')?;
    let bare = mark.trim_start_matches('(').trim_end_matches(['.', ')']);
    let stopped = mark.len() > bare.len() || bare.contains('.');
    let tidy = bare.chars().all(|c| c.is_ascii_alphanumeric() || c == '.');
    let sections = bare.split('.').all(|section| {
        let letters = section.chars().filter(|c| c.is_alphabetic()).count();
        let roman = section.chars().all(|c| "IVXivx".contains(c));
        !section.is_empty() && (letters <= 1 || roman)
    });
    let title = title.trim_start();
    let begins = title.starts_with(char::is_uppercase);
    (stopped && tidy && sections && bare.len() <= LONGEST && begins).then_some(title)
}

/// The words of a heading that name its part, by its kind where that is told: `Fill, Void or Cavity Material* - Sealant - Min 1/2 in.`
fn name_of(title: &str) -> Option<&str> {
    let (first, behind) = segment(title);
    let kind = behind.map(|behind| segment(behind).0);
    let names = |words: &str| is_plain(words) && names_part(words);
    kind.filter(|kind| names(kind) && (is_fill(first) || names(first)))
        .or_else(|| Some(first).filter(|first| names(first)))
}

/// The words of a heading up to a sign, and what stands behind a dash.
fn segment(title: &str) -> (&str, Option<&str>) {
    let dashes = JOINTS.iter().filter(|joint| !joint.contains(':'));
    let dash = dashes
        .filter_map(|dash| Some((title.find(dash)?, dash.len())))
        .min();
    let behind = dash.and_then(|(at, len)| title.get(at + len..));
    let own = dash
        .and_then(|(at, _)| title.get(..at))
        .unwrap_or(title)
        .trim_end_matches('*');
    if is_fill(own) {
        return (own, behind);
    }
    match own.find(['*', '.', ',', ':', '(']) {
        Some(end) => (own.get(..end).unwrap_or(own).trim(), None),
        None => (own.trim(), behind),
    }
}

/// Whether words only call a part a fill, as most headings do before they say of what kind it is.
fn is_fill(words: &str) -> bool {
    const SAYING: [&str; 6] = ["fill", "void", "or", "cavity", "material", "materials"];
    let lower = words.to_lowercase();
    let mut words = lower.split(|c: char| !c.is_alphanumeric());
    words.all(|word| word.is_empty() || SAYING.contains(&word))
}

/// Whether what an item says before a list leaves a choice between its parts.
fn offers_choice(item: &str) -> bool {
    const CHOOSING: [&str; 7] = [
        "one of ",
        "any of ",
        "either",
        "whichever",
        "choice",
        "choose",
        "select",
    ];
    const HEADING: [&str; 12] = [
        "option",
        "options",
        "alternate",
        "alternates",
        "alternative",
        "alternatives",
        "method",
        "variant",
        "case",
        "configuration",
        "system",
        "or",
    ];
    let lower = item.to_lowercase();
    let first = |line: &str| {
        let line = marked(line.trim()).unwrap_or(line).to_lowercase();
        let mut words = line.split(|c: char| !c.is_alphanumeric());
        words
            .find(|word| !word.is_empty())
            .is_some_and(|word| HEADING.contains(&word))
    };
    CHOOSING.iter().any(|own| lower.contains(own))
        || item.lines().any(first)
        || item
            .lines()
            .any(|line| line.trim_end_matches([' ', ';', ',']).ends_with(" or"))
}

/// Whether a part is said to stand for another, to be left out or to be for some joints.
fn limits(own: &str, title: &str) -> bool {
    const ANYWHERE: [&str; 16] = [
        "alternat",
        "option",
        "lieu",
        "instead",
        "place of",
        "substitut",
        "replac",
        "omit",
        "may be used",
        "can be used",
        "not required",
        "not needed",
        "used only",
        "used when",
        "used where",
        "as needed",
    ];
    const IN_TITLE: [&str; 14] = [
        "only", "where", "when", "if", "for", "unless", "required", "except", "not", "at", "used",
        "or", "needed", "joints",
    ];
    let lower = own.to_lowercase();
    let lower = lower.split_whitespace().collect::<Vec<_>>().join(" ");
    // `Fill, Void or Cavity Material`
    let title = title.to_lowercase().replace("void or cavity", "");
    let end = title.find(". ").unwrap_or(title.len());
    let mut words = title
        .get(..end)
        .unwrap_or_default()
        .split(|c: char| !c.is_alphanumeric());
    ANYWHERE.iter().any(|own| lower.contains(own)) || words.any(|word| IN_TITLE.contains(&word))
}
