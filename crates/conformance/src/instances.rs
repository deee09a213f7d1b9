//! One property, several parts: a listing with a floor runner and a ceiling runner asks for two gauges, and a gauge that
//! says no more than "runner" is one of them, nobody knows which.
//!
//! A clause speaks of the part that its item describes, or the nearest item around it that does. Where items that hold side by
//! side describe parts of one kind, a fact must name the item: `2A:runner.gauge`. A fact that names none stays for the last
//! part that nobody has named; for two or more it shows nothing.

use std::collections::BTreeMap;

use listing::{Clause, Expr, Item, component_of_title};
use vocabulary::Property;

use crate::assessment::Assessment;
use crate::checklist::{AnyOf, Entry, Membership};
use crate::header::joined;
use crate::verdict::{Reason, Verdict};
use crate::words::capitalised;

/// Parts that go with what they hold, so that each item has its own.
const HELD_BY_EACH: &[&str] = &["fastener"];

/// How far out an item's part is looked for. A reading that a person has edited may nest items in one another.
const DEEPEST: usize = 8;

/// What there is one of, whatever the items are.
const OF_NO_ITEM: &[&str] = &["joint", "barrier"];

/// The part that a clause speaks of.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Part<'a> {
    /// The item that describes it; none where the clause speaks of whatever the listing has.
    pub(crate) item: Option<&'a str>,
    /// The names under which facts of this very part may be kept, nearest first.
    pub(crate) names: Vec<String>,
}

impl<'a> Part<'a> {
    pub(crate) fn of(
        clause: &'a Clause,
        property: Option<&Property>,
        items: &BTreeMap<&str, &'a Item>,
    ) -> Self {
        let Some(property) =
            property.filter(|property| !OF_NO_ITEM.contains(&property.component.as_str()))
        else {
            return Self {
                item: None,
                names: Vec::new(),
            };
        };
        let around = core::iter::successors(items.get(clause.item.as_str()), |item| {
            items.get(item.parent.as_deref()?)
        })
        .take(DEEPEST);
        let described = around
            .clone()
            .find(|item| component_of_title(&item.title) == Some(property.component.as_str()))
            .map(|item| item.path.as_str());
        let held = HELD_BY_EACH
            .contains(&property.component.as_str())
            .then_some(clause.item.as_str());
        // Up to the item that describes the part: a fact of one further out is of no part in particular.
        let reach = described.map_or(1, |path| {
            1 + around.clone().take_while(|item| item.path != path).count()
        });
        let names = around
            .take(reach)
            .map(|item| format!("{}:{}", item.path, property.name));
        Self {
            item: described.or(held),
            names: names.collect(),
        }
    }
}

/// The places of the clauses on properties that several parts of the listing have.
pub(crate) fn parted(entries: &[Entry<'_>]) -> Vec<usize> {
    let mut parts: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
    for entry in entries {
        if let Some(item) = entry.part.item {
            let known = parts.entry(&entry.clause.property).or_default();
            if !known.contains(&item) {
                known.push(item);
            }
        }
    }
    let several = |entry: &Entry<'_>| {
        parts
            .get(entry.clause.property.as_str())
            .is_some_and(|items| items.len() > 1)
    };
    let places = entries.iter().enumerate();
    places
        .filter(|(_, entry)| several(entry))
        .map(|(at, _)| at)
        .collect()
}

/// The properties of which several parts may be asked about at once: not those whose parts stand in place of one another.
pub(crate) fn at_once<'e>(parted: &[usize], entries: &'e [Entry<'_>]) -> Vec<&'e str> {
    let mut parts: BTreeMap<&str, Vec<&Entry<'_>>> = BTreeMap::new();
    for entry in parted.iter().filter_map(|at| entries.get(*at)) {
        parts.entry(&entry.clause.property).or_default().push(entry);
    }
    let are_two = |one: &Entry<'_>, other: &Entry<'_>| {
        one.part.item != other.part.item && !exclude_each_other(one, other)
    };
    let several = |entries: &[&Entry<'_>]| {
        let mut each = entries.iter().enumerate();
        each.any(|(at, one)| entries.iter().skip(at).any(|other| are_two(one, other)))
    };
    parts
        .into_iter()
        .filter(|(_, entries)| several(entries))
        .map(|(property, _)| property)
        .collect()
}

/// Whether two clauses belong to different choices of one group, of which one alone is built.
fn exclude_each_other(one: &Entry<'_>, other: &Entry<'_>) -> bool {
    let only = |entry: &Entry<'_>| -> Vec<Membership> {
        entry.memberships.iter().filter_map(AnyOf::only).collect()
    };
    let theirs = only(other);
    only(one).iter().any(|ours| {
        let mut theirs = theirs.iter();
        theirs.any(|theirs| ours.group == theirs.group && ours.choice != theirs.choice)
    })
}

/// Opens the clauses that rest on a fact which could be of several parts of one kind. Whether the clauses on the other parts are decided
/// makes no difference: the fact doesn't say of which part it is.
pub(crate) fn tell_apart(parted: &[usize], entries: &[Entry<'_>], found: &mut [Assessment<'_>]) {
    let mut parts: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
    for at in parted {
        let (Some(entry), Some(found)) = (entries.get(*at), found.get(*at)) else {
            continue;
        };
        let has_its_own = found
            .fact
            .is_some_and(|fact| entry.part.names.iter().any(|name| name == fact.asked_as()));
        let applies = found.verdict != Verdict::NotApplicable;
        if let Some(item) = entry.part.item.filter(|_| applies && !has_its_own) {
            let known = parts.entry(&entry.clause.property).or_default();
            if !known.contains(&item) {
                known.push(item);
            }
        }
    }
    open_conditions(&parts, entries, found);
    for at in parted {
        let (Some(entry), Some(found)) = (entries.get(*at), found.get_mut(*at)) else {
            continue;
        };
        let Some(items) = parts
            .get(entry.clause.property.as_str())
            .filter(|items| items.len() > 1 && rests_on_any(entry, found))
        else {
            continue;
        };
        let (Some(fact), Some(name)) = (found.fact, entry.part.names.first()) else {
            continue;
        };
        let sentence = format!(
            "{} describe each their own, and `{}` {} doesn't say of which it is known.",
            capitalised(&joined(items.iter().map(|item| format!("item {item}")))),
            entry.clause.property,
            fact.value,
        );
        *found = Assessment::open(Reason::WhichPart)
            .on(fact)
            .saying(format!("a value of its own, as `{name}`"), sentence);
    }
}

/// Opens the clauses whose condition tests such a property: "where two layers are used" is said of one of two boards, and the fact
/// doesn't say of which it is.
fn open_conditions(
    parts: &BTreeMap<&str, Vec<&str>>,
    entries: &[Entry<'_>],
    found: &mut [Assessment<'_>],
) {
    for (entry, found) in entries.iter().zip(found) {
        let Some(condition) = entry
            .clause
            .condition
            .as_ref()
            .filter(|_| found.judgment.is_none())
        else {
            continue;
        };
        let by_condition = matches!(found.verdict, Verdict::Met | Verdict::NotMet)
            || found.reason == Reason::ConditionNotMet;
        let shared = tested(&condition.expr)
            .into_iter()
            .filter_map(|property| Some((property, parts.get(property)?)))
            .find(|(_, items)| by_condition && items.len() > 1);
        let Some((property, items)) = shared else {
            continue;
        };
        let sentence = format!(
            "Whether it applies rests on `{property}`, and {} describe each their own: the value doesn't say of which it is known.",
            joined(items.iter().map(|item| format!("item {item}"))),
        );
        *found = Assessment::open(Reason::WhichPart).saying(
            format!("to know of which part `{property}` is meant"),
            sentence,
        );
    }
}

/// The properties that a condition tests.
pub(crate) fn tested(expr: &Expr) -> Vec<&str> {
    match expr {
        Expr::All(parts) | Expr::Any(parts) => parts.iter().flat_map(tested).collect(),
        Expr::Not(part) => tested(part),
        Expr::Test(test) => vec![&test.property],
        Expr::Words(_) => Vec::new(),
    }
}

/// Whether a verdict rests on a fact that names no item.
fn rests_on_any(entry: &Entry<'_>, found: &Assessment<'_>) -> bool {
    let decided = matches!(found.verdict, Verdict::Met | Verdict::NotMet);
    let plain = found
        .fact
        .is_some_and(|fact| fact.asked_as() == entry.clause.property);
    decided && plain && found.judgment.is_none()
}
