//! Numbers of another item, which they call by its number: "the depth of *Item 3* shall be min 6 in.", "*Item 2* may be 4 in. thick".
//!
//! What it would misread: an item's number behind which something else is spoken of after all, "Item 3 shall be tight, sealant 1/2 in. deep".

use crate::phrase::Amount;
use crate::rules::Sentence;

/// The words that may stand between an item's number and a number of it.
const LEADING: &[&str] = &[
    "shall",
    "must",
    "is",
    "are",
    "may",
    "be",
    "also",
    "then",
    "have",
    "has",
    "a",
    "an",
    "only",
    "extend",
    "installed",
    "recessed",
    "compressed",
    "lapped",
    "spaced",
];

/// Words that say which measure a number is.
const MEASURES: &[&str] = &["depth", "thickness", "width", "height", "length", "density"];

/// The number of the item that a number is of.
pub(super) fn cited<'s>(sentence: &Sentence<'s>, amount: &Amount) -> Option<&'s str> {
    let item = (0..amount.first)
        .rev()
        .take_while(|at| {
            sentence
                .amount_at(*at)
                .is_none_or(|other| !sentence.is_bound(other))
        })
        .find(|at| sentence.is_word(*at, "item") && !sentence.in_condition(*at))?;
    let end = label_end(sentence, item + 1)?;
    let subject = opens(sentence, item) || is_measured(sentence, item);
    let leads = |at: usize| {
        let case = at > 0 && (sentence.in_condition(at - 1) || sentence.in_condition(at + 1));
        let sign = sentence.is_sign(at, ':') && at == end || sentence.is_sign(at, ',') && case;
        let bounds =
            super::cues::is_bounding(sentence.word(at)) || super::cues::is_comparing(sentence, at);
        sign || bounds || sentence.in_condition(at) || sentence.is_any(at, LEADING)
    };
    (subject && (end..amount.first).all(leads)).then(|| sentence.words(item + 1, end))
}

/// Where an item's number ends: "3", "3A1".
fn label_end(sentence: &Sentence<'_>, first: usize) -> Option<usize> {
    let begins = sentence.words(first, first + 1);
    let label = begins.starts_with(|c: char| c.is_ascii_digit()) || begins.len() == 1;
    let mut end = first + 1;
    while let (Some(own), Some(next)) = (sentence.token(end - 1), sentence.token(end)) {
        let alphanumeric = sentence
            .words(end, end + 1)
            .chars()
            .all(char::is_alphanumeric);
        if own.span.end() != next.span.start() || !alphanumeric {
            break;
        }
        end += 1;
    }
    label.then_some(end)
}

/// Whether an item's number begins its statement, behind a title or a case too.
fn opens(sentence: &Sentence<'_>, item: usize) -> bool {
    let Some(before) = item.checked_sub(1) else {
        return true;
    };
    let parted = [';', '.', '-', '–', '—', ')']
        .iter()
        .any(|sign| sentence.is_sign(before, *sign));
    let behind_case = sentence.is_sign(before, ',') && item >= 2 && sentence.in_condition(item - 2);
    parted || behind_case
}

/// Whether a measure is said to be that of an item: "the depth of Item 3".
fn is_measured(sentence: &Sentence<'_>, item: usize) -> bool {
    let matched = item >= 3 && sentence.is_any(item - 3, &["to", "as", "by", "match", "matching"]);
    item >= 2 && sentence.is_word(item - 1, "of") && sentence.is_any(item - 2, MEASURES) && !matched
}
