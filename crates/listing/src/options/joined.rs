//! Items that stand in the place of another because their words go on from it with "or", or because they are its own part and an alternate: `A1 Concrete
//! slab`, `A2 Or: steel sheet`; `C. SPRAY SEAL`, `C1. ALTERNATE - CAULK`.

use super::ItemOption;
use super::head::Head;
use crate::outline::{OutlineItem, Paragraph};

/// Signs that part "or" from the name of what may be built.
const SIGNS: [char; 5] = [':', ',', '-', '–', '—'];

/// Words behind "or" that confine what follows to some joints, or offer its like: for a person.
const CONFINING: [&str; 17] = [
    "for",
    "where",
    "when",
    "if",
    "in",
    "at",
    "on",
    "with",
    "under",
    "over",
    "as",
    "only",
    "up",
    "to",
    "by",
    "equal",
    "equivalent",
];

/// What an item stands in the place of.
pub(super) fn joined(
    source: &str,
    head: &Head,
    items: &[OutlineItem],
    found: &[ItemOption],
    index: usize,
    before: &[usize],
) -> Option<Vec<String>> {
    let of_parent = || first_of_parts(items, found, index, before).map(|parent| vec![parent]);
    of_parent()
        .or_else(|| alternate_to_parent(head, items, index, before).map(|parent| vec![parent]))
        .or_else(|| with_the_one_before(source, head, items, found, before))
}

/// The item that another stands in the place of, because its name begins with "or" and it is the first of that one's parts, or stands behind such parts:
/// `W1 CONCRETE WALL`, `W1.a or CONCRETE BLOCK`. Words that would confine it are for a person.
fn first_of_parts(
    items: &[OutlineItem],
    found: &[ItemOption],
    index: usize,
    before: &[usize],
) -> Option<String> {
    let item = items.get(index)?;
    let parent = items.get(item.parent?)?;
    let title = item.title.to_lowercase();
    let plain = title
        .chars()
        .all(|c| c.is_alphabetic() || matches!(c, ' ' | '-' | '*'));
    let says_itself = |item: &OutlineItem| !item.title.is_empty() && !item.paragraphs.is_empty();
    let named = title
        .strip_prefix("or ")
        .is_some_and(|name| !name.starts_with("equ") && !name.trim().is_empty());
    if !(named && plain && says_itself(item) && says_itself(parent)) {
        return None;
    }
    let mut beside = before.iter().filter_map(|other| found.get(*other));
    let follows = beside.all(|option| option.replaces == [parent.path.clone()]);
    follows.then(|| parent.path.clone())
}

/// The item of which another is a part by its label, and the first one, and which its first words offer an alternate to: `C1. ALTERNATE - CAULK`.
fn alternate_to_parent(
    head: &Head,
    items: &[OutlineItem],
    index: usize,
    before: &[usize],
) -> Option<String> {
    let item = items.get(index)?;
    let parent = items.get(item.parent?)?;
    let words = head.words().get(head.title_start..)?.trim_start();
    let rest = words
        .strip_prefix("alternate")
        .or_else(|| words.strip_prefix("alternative"))?;
    let parted = [" - ", " – ", " — ", ": "]
        .iter()
        .any(|sign| rest.starts_with(sign));
    let printed = head.part(0, head.title_start);
    let own = printed.trim_matches(|c: char| !c.is_alphanumeric());
    let letters = own.trim_end_matches(|c: char| c.is_ascii_digit());
    let numbered = !letters.is_empty() && letters.len() < own.len();
    let of_parent = parent.path.to_lowercase().ends_with(letters);
    (parted && before.is_empty() && numbered && of_parent && !parent.paragraphs.is_empty())
        .then(|| parent.path.clone())
}

/// What an item that begins with "or" and a sign stands in the place of: the one before it, or what that one itself does.
///
/// A list that goes on from part to part, "a) ...; b) ...; c) or, ...", offers all of them, and is for a person.
fn with_the_one_before(
    source: &str,
    head: &Head,
    items: &[OutlineItem],
    found: &[ItemOption],
    before: &[usize],
) -> Option<Vec<String>> {
    if !begins_with_or(head) {
        return None;
    }
    let last = *before.last()?;
    let (option, item) = (found.get(last)?, items.get(last)?);
    if option.optional || option.choice_of.is_some() {
        return None;
    }
    if !option.replaces.is_empty() {
        return Some(option.replaces.clone());
    }
    (before.len() == 1 || !goes_on(source, item)).then(|| vec![item.path.clone()])
}

/// Whether the text of an item goes on into the next.
fn goes_on(source: &str, item: &OutlineItem) -> bool {
    let Some(Paragraph::Text(pieces)) = item.paragraphs.last() else {
        return false;
    };
    let last = pieces.last().map(|piece| piece.of(source).trim_end());
    last.is_some_and(|last| last.ends_with([',', ';']))
}

/// `Or: steel sheet`, `OR - CAULK`.
fn begins_with_or(head: &Head) -> bool {
    let words = head.words().get(head.title_start..).unwrap_or_default();
    let Some(rest) = words.trim_start().strip_prefix("or") else {
        return false;
    };
    let rest = rest.trim_start();
    let name = rest.trim_start_matches(SIGNS).trim_start();
    let first = name
        .split(|c: char| !c.is_alphanumeric())
        .next()
        .unwrap_or_default();
    rest.starts_with(SIGNS) && first.len() > 1 && !CONFINING.contains(&first)
}
