//! The options of a listing: which clauses belong to which, and which of them a joint is checked against.
//!
//! A listing's groups of options are independent of each other, so that the best choice is made in each group alone
//! and combinations are never multiplied out ([`choose`]).

mod choose;
mod group;
mod named;
mod stated;
mod tally;

use std::collections::BTreeMap;

use listing::{Clause, Item, Reading};

pub(crate) use choose::{Checked, Selection, State};
pub(crate) use group::{Group, Kind};

use crate::checklist::{AnyOf, Entry, Membership};

/// The groups of options of a listing, in listing order.
pub(crate) struct Options<'a> {
    pub(crate) groups: Vec<Group<'a>>,
    /// The order in which to choose: what lies within another group's choice comes before it.
    order: Vec<usize>,
}

/// Items are nested a handful deep; more than this is a reading gone wrong.
const DEEPEST: usize = 64;

impl<'a> Options<'a> {
    pub(crate) fn of(reading: &'a Reading) -> Self {
        let mut groups: Vec<Group<'a>> = reading.options.iter().flat_map(Group::of).collect();
        let items = reading.items.iter().map(|item| (item.path.as_str(), item));
        let items: BTreeMap<&str, &Item> = items.collect();
        for group in &mut groups {
            group.spares_parts = group.lies_in_replaced(|choice, base| {
                chain(choice, &items).iter().any(|item| item.path == base)
            });
        }
        let order = (0..groups.len()).collect();
        Self { groups, order }
    }

    /// What must be chosen for a clause to apply. In each group: what its own option names; else the nearest item around it
    /// that is, or belongs to, a choice; else, within an item that a group of alternates replaces, the base.
    pub(crate) fn memberships(
        &self,
        clause: &Clause,
        items: &BTreeMap<&str, &'a Item>,
    ) -> Vec<AnyOf> {
        if self.groups.is_empty() {
            return Vec::new();
        }
        let chain = chain(&clause.item, items);
        let named = named::all(&self.groups, &clause.within());
        let mut memberships = named::agreed(&self.groups, named, &chain);
        for (at, group) in self.groups.iter().enumerate() {
            if memberships.iter().any(|one| one.is_of(at)) {
                continue;
            }
            // The item itself, and what is around it: but where the alternate is a part of what it replaces, the other parts stay.
            let replaced = chain.iter().enumerate();
            let by_item = || {
                replaced.clone().find_map(|(at, item)| {
                    let option = item.option.as_deref().and_then(|name| group.choice(name));
                    let choice = option.or_else(|| group.choice(&item.path))?;
                    (at == 0 || !group.spares_parts || group.must_be_told(choice)).then_some(choice)
                })
            };
            let by_base = || {
                let reached = if group.spares_parts { 1 } else { chain.len() };
                let reached = chain.iter().take(reached);
                reached.clone().find_map(|item| group.base_of(&item.path))
            };
            let choice = by_item().or_else(by_base);
            memberships.extend(choice.map(|choice| AnyOf::just(at, choice)));
        }
        memberships
    }

    /// Finds which groups lie wholly within a choice of another, and orders them so.
    pub(crate) fn nest(&mut self, entries: &[Entry<'_>]) {
        let sizes: Vec<usize> = (0..self.groups.len())
            .map(|group| in_group(entries, group).count())
            .collect();
        for inner in 0..self.groups.len() {
            let outer = outer_of(inner, entries, &sizes);
            if let Some(group) = self.groups.get_mut(inner) {
                group.within = outer;
            }
        }
        let mut order: Vec<usize> = (0..self.groups.len()).collect();
        order.sort_by_key(|group| core::cmp::Reverse(self.depth(*group)));
        self.order = order;
    }

    fn depth(&self, group: usize) -> usize {
        let mut depth = 0;
        let mut at = group;
        while let Some(within) = self.groups.get(at).and_then(|group| group.within) {
            at = within.group;
            depth += 1;
            if depth > self.groups.len() {
                break;
            }
        }
        depth
    }
}

/// The items around a clause, from its own outwards.
fn chain<'a>(path: &str, items: &BTreeMap<&str, &'a Item>) -> Vec<&'a Item> {
    let mut chain = Vec::new();
    let mut next = items.get(path).copied();
    while let Some(item) = next {
        chain.push(item);
        if chain.len() >= DEEPEST {
            break;
        }
        next = item
            .parent
            .as_deref()
            .and_then(|parent| items.get(parent).copied());
    }
    chain
}

fn in_group<'e, 'a>(entries: &'e [Entry<'a>], group: usize) -> impl Iterator<Item = &'e Entry<'a>> {
    entries
        .iter()
        .filter(move |entry| entry.memberships.iter().any(|one| one.is_of(group)))
}

/// The choice of another group within which every clause of a group lies; of several the narrowest.
fn outer_of(inner: usize, entries: &[Entry<'_>], sizes: &[usize]) -> Option<Membership> {
    let mut common: Option<Vec<Membership>> = None;
    for entry in in_group(entries, inner) {
        let others = entry
            .memberships
            .iter()
            .filter_map(AnyOf::only)
            .filter(|one| one.group != inner);
        common = Some(match common {
            None => others.collect(),
            Some(known) => known
                .into_iter()
                .filter(|one| {
                    let mut theirs = entry.memberships.iter().filter_map(AnyOf::only);
                    theirs.any(|other| other == *one)
                })
                .collect(),
        });
    }
    let size = |group: usize| sizes.get(group).copied().unwrap_or(0);
    // Two groups on the very same clauses: the later is taken to lie within the earlier, so that nesting has no circle.
    let is_wider = |one: &Membership| (size(one.group), inner) > (size(inner), one.group);
    common?
        .into_iter()
        .filter(is_wider)
        .min_by_key(|one| size(one.group))
}
