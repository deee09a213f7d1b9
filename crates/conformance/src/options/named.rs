//! Which choices a clause's own option names: "4 & Configuration B", "Configuration A or Configuration B".
//!
//! What can't be told makes a clause apply more often, never less: a clause that falls away asks nothing, and a joint
//! might conform by that.

use listing::Item;

use super::Group;
use crate::checklist::{AnyOf, Membership};

/// What all of the entries ask to be chosen, each entry being any one of its names. An entry with a name that no group
/// knows restricts nothing.
pub(super) fn all(groups: &[Group<'_>], within: &[Vec<&str>]) -> Vec<AnyOf> {
    within
        .iter()
        .flat_map(|names| entry(groups, names))
        .collect()
}

/// What one entry asks for: in each group that knows all of its names, one of them; else, with names of different
/// groups, any of those.
fn entry(groups: &[Group<'_>], names: &[&str]) -> Vec<AnyOf> {
    let mut within_one = Vec::new();
    let mut across: Vec<Membership> = Vec::new();
    for (at, group) in groups.iter().enumerate() {
        let known: Vec<Membership> = names
            .iter()
            .filter_map(|name| group.named(name))
            .map(|choice| Membership { group: at, choice })
            .collect();
        across.extend(&known);
        if known.len() == names.len() && !known.is_empty() {
            within_one.push(AnyOf(known));
        }
    }
    if !within_one.is_empty() {
        return within_one;
    }
    let is_known = |name: &&str| groups.iter().any(|group| group.named(name).is_some());
    if across.is_empty() || !names.iter().all(is_known) {
        return Vec::new();
    }
    vec![AnyOf(across)]
}

/// Several entries on one group made one: what they have in common. Entries that have nothing in common can't all hold
/// as they stand: an alternate within an alternate is cited with both paths, and the nearest item around the clause is
/// meant; otherwise any of them will do.
pub(super) fn agreed(groups: &[Group<'_>], named: Vec<AnyOf>, chain: &[&Item]) -> Vec<AnyOf> {
    let mut agreed: Vec<AnyOf> = Vec::new();
    for one in named {
        let Some(group) = group_of(&one) else {
            agreed.push(one);
            continue;
        };
        match agreed
            .iter_mut()
            .find(|other| group_of(other) == Some(group))
        {
            Some(other) => *other = both(other, &one, group, groups, chain),
            None => agreed.push(one),
        }
    }
    agreed
}

fn both(one: &AnyOf, other: &AnyOf, group: usize, groups: &[Group<'_>], chain: &[&Item]) -> AnyOf {
    let is_in = |choices: &AnyOf, one: &Membership| choices.0.contains(one);
    let common: Vec<Membership> = one
        .0
        .iter()
        .copied()
        .filter(|it| is_in(other, it))
        .collect();
    if !common.is_empty() {
        return AnyOf(common);
    }
    let nearest = groups
        .get(group)
        .and_then(|known| chain.iter().find_map(|item| known.choice(&item.path)));
    match nearest {
        Some(choice) => AnyOf::just(group, choice),
        None => AnyOf(one.0.iter().chain(&other.0).copied().collect()),
    }
}

/// The group that all of its choices are of, if it is one.
fn group_of(any_of: &AnyOf) -> Option<usize> {
    let first = any_of.0.first()?.group;
    any_of
        .0
        .iter()
        .all(|one| one.group == first)
        .then_some(first)
}
