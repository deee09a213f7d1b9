//! The points that clauses make.

use listing::{Clause, Confidence, Expr, Requirement, Span, Status, Test};

use super::{OfClause, Placed, Point, Slot, Tells, What};
use crate::checklist::{AnyOf, Checklist, Doubt, Entry, Membership};
use crate::condition::exact_tests;
use crate::instances::{self, tested};
use crate::options::Kind;
use crate::rating::JOINT_RATING;

pub(super) fn all<'c>(checklist: &'c Checklist<'_>) -> impl Iterator<Item = Placed> + 'c {
    let parted = instances::at_once(&checklist.parted, &checklist.entries);
    let placed = move |entry: &Entry<'_>| {
        let of = of(checklist, entry);
        Placed {
            slot: slot(checklist, &entry.memberships),
            tells: tells(entry, slot(checklist, &entry.memberships)),
            is_parted: is_parted(entry, &parted),
            property: of.clause.property.clone(),
            trade: entry.trade,
            point: Point(What::Clause(Box::new(of))),
        }
    };
    checklist.entries.iter().map(placed)
}

fn slot(checklist: &Checklist<'_>, memberships: &[AnyOf]) -> Slot {
    let outermost_of_one = |one: &Membership| {
        let group = checklist.options.groups.get(one.group);
        group.is_some_and(|group| group.kind == Kind::OneOf && group.within.is_none())
    };
    match memberships {
        [] => Slot::Always,
        [one] => match one.only().filter(outermost_of_one) {
            Some(Membership { group, choice }) => Slot::Choice { group, choice },
            None => Slot::Sometimes,
        },
        _ => Slot::Sometimes,
    }
}

/// What it tells of the choice it belongs to, as the tally of choices has it.
fn tells(entry: &Entry<'_>, slot: Slot) -> Tells {
    match slot {
        _ if entry.tells_of.is_empty() => Tells::Nothing,
        Slot::Choice { group, .. } if entry.tells_of == [group] => match entry.clause.requirement {
            Requirement::Bound(_) => Tells::WhenKnown,
            _ => Tells::WhenMet,
        },
        _ => Tells::Something,
    }
}

/// Whether its property, or one that its condition tests, is of several parts.
fn is_parted(entry: &Entry<'_>, parted: &[&str]) -> bool {
    let condition = entry.clause.condition.as_ref();
    let tests = condition.map(|condition| tested(&condition.expr));
    let mut about = tests.into_iter().flatten();
    parted.contains(&entry.clause.property.as_str())
        || about.any(|property| parted.contains(&property))
}

fn of(checklist: &Checklist<'_>, entry: &Entry<'_>) -> OfClause {
    let clause = entry.clause;
    let is_words = entry.doubt == Doubt::OnlyWords || clause.requirement == Requirement::Prose;
    let tests = clause.condition.as_ref().map(|one| tests_of(&one.expr));
    let tests = tests.unwrap_or_default();
    let on_rating = tests.iter().any(|test| test.property == JOINT_RATING);
    let mut own_exact = Vec::new();
    if let Some(condition) = &clause.condition {
        exact_tests(&condition.expr, &mut own_exact);
    }
    OfClause {
        clause: Clause {
            id: String::new(),
            item: String::new(),
            span: Span::default(),
            words: String::new(),
            property: if is_words {
                String::new()
            } else {
                clause.property.clone()
            },
            component: String::new(),
            attribute: String::new(),
            requirement: if is_words {
                Requirement::Prose
            } else {
                without_place(&clause.requirement)
            },
            condition: None,
            option: None,
            read_by: Vec::new(),
            confidence: Confidence::ByRule,
            status: Status::Draft,
        },
        condition: clause.condition.as_ref().map(|one| one.expr.clone()),
        doubt: entry.doubt,
        is_pointer: entry.is_pointer,
        ratings_hr: if on_rating {
            checklist.reading.header.ratings_hr.clone()
        } else {
            Vec::new()
        },
        exact: exact_of(checklist, &own_exact),
    }
}

/// The requirement without its place in the text.
fn without_place(requirement: &Requirement) -> Requirement {
    let mut bare = requirement.clone();
    if let Requirement::Bound(bound) = &mut bare {
        bound.at = Span::default();
    }
    bare
}

fn tests_of(expr: &Expr) -> Vec<&Test> {
    match expr {
        Expr::All(parts) | Expr::Any(parts) => parts.iter().flat_map(tests_of).collect(),
        Expr::Not(part) => tests_of(part),
        Expr::Test(test) => vec![test],
        Expr::Words(_) => Vec::new(),
    }
}

/// The listing's exact tests on the properties of some, each once.
fn exact_of(checklist: &Checklist<'_>, own: &[&Test]) -> Vec<Test> {
    let mut found: Vec<Test> = Vec::new();
    for test in &checklist.exact_tests {
        let is_about = own.iter().any(|one| one.property == test.property);
        if is_about && test.property != JOINT_RATING && !found.contains(test) {
            found.push((*test).clone());
        }
    }
    found
}
