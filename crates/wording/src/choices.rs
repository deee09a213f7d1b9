//! With which of a listing's choices a clause is built.

use std::collections::BTreeMap;

use listing::{Clause, Item, OptionGroup, OptionGroupKind, Reading, bare_path};

use crate::text::printable;

/// The deepest that items lie in one another.
const DEEPEST: usize = 64;

/// What a listing's choices come to for each of its items.
#[derive(Debug, Clone)]
pub struct Choices {
    /// By item: with which choices it is built, for a clause that names none itself.
    by_item: BTreeMap<String, Vec<Said>>,
}

/// What a choice comes to for an item.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Said {
    /// The choices that the group offers.
    group: Vec<String>,
    /// In words: "unless 3B1 is built".
    words: String,
}

impl Choices {
    /// The choices of a listing.
    pub fn of(reading: &Reading) -> Self {
        let items: BTreeMap<&str, &Item> = reading
            .items
            .iter()
            .map(|item| (item.path.as_str(), item))
            .collect();
        let mut by_item: BTreeMap<String, Vec<Said>> = BTreeMap::new();
        for group in &reading.options {
            let replaced = Replaced::of(group, &items);
            for item in &reading.items {
                let words = replaced
                    .by_alternates_of(item, &items)
                    .or_else(|| chosen(group, item, &items));
                if let Some(words) = words {
                    let group = group.choices.clone();
                    by_item
                        .entry(item.path.clone())
                        .or_default()
                        .push(Said { group, words });
                }
            }
        }
        Self { by_item }
    }

    /// With which choices a clause is built: "only with Configuration B", "unless 3B1 is built"; nothing when it always is.
    pub fn in_words(&self, clause: &Clause) -> Option<String> {
        let within = clause.within();
        let entries: Vec<String> = within
            .iter()
            .map(|names| printable(&names.join(" or ")))
            .collect();
        let own = (!entries.is_empty()).then(|| format!("only with {}", entries.join(" and ")));
        let is_named = |said: &&Said| {
            let mut names = within.iter().flatten();
            names.any(|name| {
                said.group
                    .iter()
                    .any(|choice| bare_path(choice) == bare_path(name))
            })
        };
        let of_item = self.by_item.get(&clause.item).into_iter().flatten();
        let of_item = of_item
            .filter(|said| !is_named(said))
            .map(|said| said.words.clone());
        let all: Vec<String> = own.into_iter().chain(of_item).collect();
        (!all.is_empty()).then(|| all.join("; "))
    }
}

/// The items that the alternates of a group replace.
struct Replaced<'a> {
    /// The items.
    items: Vec<&'a str>,
    /// What replaces them.
    alternates: Vec<&'a str>,
    /// Whether an alternate is itself a part of what it replaces; then the other parts stay.
    spares_parts: bool,
}

impl<'a> Replaced<'a> {
    fn of(group: &'a OptionGroup, items: &BTreeMap<&str, &Item>) -> Self {
        let is_alternates = group.kind == OptionGroupKind::Alternates;
        let base = group.base_item.iter().filter(|_| is_alternates);
        let replaced: Vec<&str> = base
            .chain(&group.also_replaced)
            .map(String::as_str)
            .collect();
        let is_base = |choice: &str| {
            replaced
                .iter()
                .any(|item| bare_path(item) == bare_path(choice))
        };
        let choices = group.choices.iter().map(String::as_str);
        let alternates: Vec<&str> = choices.filter(|choice| !is_base(choice)).collect();
        let mut around = alternates
            .iter()
            .flat_map(|alternate| around(alternate, items));
        let spares_parts = around.any(|item| replaced.contains(&item.path.as_str()));
        Self {
            items: replaced,
            alternates,
            spares_parts,
        }
    }

    /// "unless 3B1 is built", of an item that alternates replace.
    fn by_alternates_of(&self, item: &Item, items: &BTreeMap<&str, &Item>) -> Option<String> {
        let reached = if self.spares_parts { 1 } else { DEEPEST };
        let is_alternate = |item: &Item| {
            self.alternates
                .iter()
                .any(|one| bare_path(one) == bare_path(&item.path))
        };
        let mut chain = around(&item.path, items)
            .take(reached)
            .take_while(|item| !is_alternate(item));
        let is_replaced = chain.any(|item| self.items.contains(&item.path.as_str()));
        (is_replaced && !self.alternates.is_empty()).then(|| {
            let alternates: Vec<String> =
                self.alternates.iter().map(|one| printable(one)).collect();
            format!("unless {} is built", alternates.join(" or "))
        })
    }
}

/// "only with 2A1", of an item that is a choice or lies in one.
fn chosen(group: &OptionGroup, item: &Item, items: &BTreeMap<&str, &Item>) -> Option<String> {
    let is_base = |choice: &str| {
        group
            .base_item
            .as_deref()
            .is_some_and(|base| bare_path(base) == bare_path(choice))
    };
    let choice = around(&item.path, items).find_map(|item| {
        let names = |choice: &&String| {
            item.option.as_deref() == Some(choice.as_str())
                || bare_path(choice) == bare_path(&item.path)
        };
        group.choices.iter().find(names)
    })?;
    (!is_base(choice)).then(|| format!("only with {}", printable(choice)))
}

/// The item of a path and those that it lies in, from its own outwards.
fn around<'i>(path: &str, items: &BTreeMap<&str, &'i Item>) -> impl Iterator<Item = &'i Item> {
    let first = items.get(path).copied();
    core::iter::successors(first, |item| items.get(item.parent.as_deref()?).copied()).take(DEEPEST)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn said(text: &str) -> Vec<(String, Option<String>)> {
        let reading = listing::read_text("a.txt", text);
        let choices = Choices::of(&reading);
        let clauses = reading.clauses.iter();
        clauses
            .map(|clause| (clause.item.clone(), choices.in_words(clause)))
            .collect()
    }

    #[test]
    fn what_an_alternate_replaces_is_not_asked_always() {
        let found = said(
            "1. Wall - Min 4 in. thick.\n2. Packing - Min 4 in. deep.\n   2A. Packing - As an alternate to Item 2, min 3 in. deep.\n",
        );
        let of = |item: &str| {
            found
                .iter()
                .find(|(of, _)| of == item)
                .and_then(|(_, said)| said.clone())
        };
        assert_eq!(of("1"), None);
        assert_eq!(of("2").as_deref(), Some("unless 2A is built"));
        assert_eq!(of("2A").as_deref(), Some("only with 2A"));
    }
}
