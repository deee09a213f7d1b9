//! Which clause of the new edition a clause of the old one became.

use std::collections::BTreeMap;

use listing::{Clause, Reading, Requirement};

use super::items::ItemMap;
use crate::words::normal;

/// Pairs of places among the clauses of two editions.
pub(super) struct Pairs {
    /// For each old clause the new one.
    old: Vec<Option<usize>>,
    /// For each new clause the old one.
    new: Vec<Option<usize>>,
}

/// Something that two clauses may share.
#[derive(Clone, Copy)]
enum Part {
    Item,
    Property,
    Option,
    Condition,
    Kind,
}

/// What two clauses share, in words.
type Key = Vec<String>;

/// Below this likeness of words two clauses of different items aren't taken for one.
const LIKE: f64 = 0.6;
/// Below this likeness words alone don't make two clauses one.
const VERY_LIKE: f64 = 0.8;

/// What two clauses must share to be matched, and how like their words must be: less and less of the one.
const ROUNDS: &[(&[Part], f64)] = &[
    (
        &[
            Part::Item,
            Part::Property,
            Part::Option,
            Part::Condition,
            Part::Kind,
        ],
        0.0,
    ),
    (&[Part::Item, Part::Property, Part::Kind], 0.0),
    (
        &[Part::Property, Part::Option, Part::Condition, Part::Kind],
        LIKE,
    ),
    (&[Part::Item], VERY_LIKE),
    (&[], VERY_LIKE),
];

/// Matches the clauses of two editions, by less and less.
pub(super) fn of(old: &Reading, new: &Reading, items: &ItemMap<'_>) -> Pairs {
    let mut pairs = Pairs {
        old: vec![None; old.clauses.len()],
        new: vec![None; new.clauses.len()],
    };
    let words = |reading: &Reading| -> Vec<String> {
        reading
            .clauses
            .iter()
            .map(|clause| normal(&clause.words))
            .collect()
    };
    let words = (words(old), words(new));
    for (parts, least) in ROUNDS {
        pairs.round(
            old,
            new,
            &words,
            |clause, items| key(clause, parts, items),
            items,
            *least,
        );
    }
    pairs
}

/// What a clause has of some parts; an old one's as the new edition numbers them.
fn key(clause: &Clause, parts: &[Part], items: Option<&ItemMap<'_>>) -> Key {
    let renumbered = |name: &str| match items.and_then(|items| items.new_path(name)) {
        Some(path) => path.to_owned(),
        None => name.to_owned(),
    };
    let part = |part: &Part| match part {
        Part::Item => renumbered(&clause.item),
        Part::Property => clause.property.clone(),
        Part::Option => normal(&renumbered(clause.option.as_deref().unwrap_or_default())),
        Part::Condition => {
            let condition = clause.condition.as_ref();
            condition
                .map(|condition| normal(&condition.words))
                .unwrap_or_default()
        }
        Part::Kind => kind_of(&clause.requirement).to_owned(),
    };
    parts.iter().map(part).collect()
}

const fn kind_of(requirement: &Requirement) -> &'static str {
    match requirement {
        Requirement::Bound(_) => "bound",
        Requirement::Named { .. } => "named",
        Requirement::Presence { .. } => "presence",
        Requirement::Reference { .. } => "reference",
        Requirement::Prose => "prose",
    }
}

impl Pairs {
    /// Matches what is still unmatched and shares a key, the likest words first.
    fn round(
        &mut self,
        old: &Reading,
        new: &Reading,
        words: &(Vec<String>, Vec<String>),
        key: impl Fn(&Clause, Option<&ItemMap<'_>>) -> Key,
        items: &ItemMap<'_>,
        least: f64,
    ) {
        let mut alike: BTreeMap<Key, (Vec<usize>, Vec<usize>)> = BTreeMap::new();
        for (at, clause) in old.clauses.iter().enumerate() {
            if self.old.get(at).is_some_and(Option::is_none) {
                alike
                    .entry(key(clause, Some(items)))
                    .or_default()
                    .0
                    .push(at);
            }
        }
        for (at, clause) in new.clauses.iter().enumerate() {
            if self.new.get(at).is_some_and(Option::is_none) {
                alike.entry(key(clause, None)).or_default().1.push(at);
            }
        }
        for (was, is) in alike.into_values() {
            self.match_within(&was, &is, words, least);
        }
    }

    fn match_within(
        &mut self,
        was: &[usize],
        is: &[usize],
        words: &(Vec<String>, Vec<String>),
        least: f64,
    ) {
        let mut candidates = Vec::new();
        for &before in was {
            for &after in is {
                let (Some(old), Some(new)) = (words.0.get(before), words.1.get(after)) else {
                    continue;
                };
                let likeness = if old == new {
                    1.0
                } else {
                    strsim::sorensen_dice(old, new)
                };
                if likeness >= least {
                    candidates.push((likeness, before, after));
                }
            }
        }
        // The likest first; of those alike, in the order of the listings.
        candidates.sort_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)).then(a.2.cmp(&b.2)));
        for (_, before, after) in candidates {
            if let (Some(old @ None), Some(new @ None)) =
                (self.old.get_mut(before), self.new.get_mut(after))
            {
                *old = Some(after);
                *new = Some(before);
            }
        }
    }
}

/// Old and new places in the order to show: the new edition's, each removed clause after the one that stood before it.
pub(super) fn in_order(pairs: &Pairs) -> Vec<(Option<usize>, Option<usize>)> {
    let mut removed_after: BTreeMap<Option<usize>, Vec<usize>> = BTreeMap::new();
    let mut last = None;
    for (before, after) in pairs.old.iter().enumerate() {
        match after {
            Some(after) => last = Some(*after),
            None => removed_after.entry(last).or_default().push(before),
        }
    }
    let removed = |after: Option<usize>| {
        let gone = removed_after
            .get(&after)
            .map(Vec::as_slice)
            .unwrap_or_default();
        gone.iter().map(|before| (Some(*before), None))
    };
    let mut order: Vec<_> = removed(None).collect();
    for (after, before) in pairs.new.iter().enumerate() {
        order.push((*before, Some(after)));
        order.extend(removed(Some(after)));
    }
    order
}
