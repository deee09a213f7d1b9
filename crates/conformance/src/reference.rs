//! What another item, standard or assembly design says.
//!
//! A clause that only points ("see Item 2") asks for nothing itself: the item it points to has clauses of its own. One
//! that asks for the same as another item ("packed as in Item 3A") asks for something, and a person must answer it. So
//! must one that names a standard or an assembly design, unless a fact gives the very design.

use listing::{Clause, Reading, bare_path};
use site::{Fact, Value};

use crate::assessment::Assessment;
use crate::verdict::{Reason, Verdict};
use crate::words::same;

/// Words that point and ask for nothing. What else stands in a clause is a requirement.
const POINTING: &[&str] = &[
    "see",
    "refer",
    "to",
    "item",
    "items",
    "as",
    "described",
    "specified",
    "given",
    "noted",
    "listed",
    "shown",
    "in",
    "by",
    "per",
    "under",
    "above",
    "below",
    "and",
    "or",
    "the",
    "of",
    "for",
    "also",
    "is",
    "are",
    "this",
    "listing",
];

/// Whether a reference only points to items of the same listing.
pub(crate) fn only_points(clause: &Clause, to: &str, reading: &Reading) -> bool {
    let is_item = |path: &str| {
        reading
            .items
            .iter()
            .any(|item| bare_path(&item.path) == path)
    };
    if !is_item(&bare_path(to)) {
        return false;
    }
    let mut words = clause
        .words
        .split(|letter: char| !letter.is_alphanumeric())
        .filter(|word| !word.is_empty());
    words.all(|word| {
        let word = word.to_lowercase();
        POINTING.contains(&word.as_str()) || is_item(&word)
    })
}

/// A reference that only points.
pub(crate) fn pointer<'a>() -> Assessment<'a> {
    Assessment::plain(Verdict::NotApplicable, Reason::AsksNothing)
}

/// A fact against the standard or design that is referred to. One that reads otherwise may still mean the same.
pub(crate) fn against<'a>(fact: &'a Fact, to: &str) -> Assessment<'a> {
    let named = match &fact.value {
        Value::Text(text) => Some(text),
        Value::Product(product) => Some(&product.product),
        Value::Quantity(_) | Value::Flag(_) => None,
    };
    let assessed = if !to.trim().is_empty() && named.is_some_and(|named| same(named, to)) {
        Assessment::plain(Verdict::Met, Reason::Holds)
    } else {
        Assessment::open(Reason::NeedsAPerson)
    };
    assessed.on(fact)
}
