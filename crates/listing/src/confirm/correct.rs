//! What a person has corrected, put in place of what was read.

use measure::Quantity;
use measure::notation::quantity_at;

use super::overlay::{Applies, Correction, Entry};
use crate::model::{
    Bound, Clause, Condition, Confidence, Expr, Relation, Requirement, Span, Status, Test,
};

/// What a person found in the words of a clause besides; each is a clause of its own, after that one.
pub(super) fn further<'e>(
    read: &Clause,
    entry: &'e Entry,
) -> impl Iterator<Item = Clause> + use<'e> {
    let read = read.clone();
    let found = entry.further.iter().zip(1_usize..);
    found.map(move |(correction, nth)| {
        let mut clause = Clause {
            id: format!("{}{FURTHER}{nth}", read.id),
            requirement: Requirement::Prose,
            read_by: Vec::new(),
            confidence: Confidence::Prose,
            status: Status::Corrected,
            ..read.clone()
        };
        correct(&mut clause, correction);
        clause
    })
}

/// Stands in the id of a clause that a person found in the words of another: `3A/2+1`.
const FURTHER: char = '+';

/// The id of the clause in whose words a clause was found: its own, unless a person found it.
pub fn read_as(id: &str) -> &str {
    id.split_once(FURTHER).map_or(id, |(read, _)| read)
}

/// Replaces what a person has corrected; the words and their place stay the listing's.
pub(super) fn correct(clause: &mut Clause, correction: &Correction) {
    if let Some(property) = &correction.property {
        clause.property.clone_from(property);
        if let Some(known) = vocabulary::vocabulary().property(property) {
            clause.component.clone_from(&known.component);
            clause.attribute = known.attribute.replace('_', " ");
        }
    }
    if correction.prose {
        clause.requirement = Requirement::Prose;
        clause.confidence = Confidence::Prose;
    }
    if correction.unconditional {
        clause.condition = None;
    }
    if let Some(applies) = &correction.applies {
        clause.condition = Some(condition(clause, applies));
    }
    if let Some(option) = &correction.option {
        clause.option = (!option.is_empty()).then(|| option.clone());
    }
    if let Some(presence) = correction.presence {
        clause.requirement = Requirement::Presence { presence };
    }
    if !correction.names.is_empty() {
        clause.requirement = Requirement::Named {
            names: correction.names.clone(),
        };
    }
    if let Some(relation) = correction.relation {
        let stated_in_words = correction
            .lo
            .or(correction.hi)
            .and_then(|value| place(clause, value));
        let at = clause.bound().map(|bound| bound.at).or(stated_in_words);
        let at = at.unwrap_or_else(|| Span::new(clause.span.start(), clause.span.start()));
        let held = clause.bound().cloned();
        let value = |own: Option<measure::Quantity>| own.map(|quantity| quantity.number);
        let unit = correction
            .lo
            .or(correction.hi)
            .map(|quantity| quantity.unit)
            .or(held.as_ref().map(|bound| bound.unit));
        let Some(unit) = unit else { return };
        let stated = correction.lo.is_some() || correction.hi.is_some();
        let (lo, hi) = if stated {
            (value(correction.lo), value(correction.hi))
        } else {
            let one = held.as_ref().and_then(|bound| bound.lo.or(bound.hi));
            match relation {
                Relation::AtMost | Relation::LessThan => (None, one),
                Relation::Between => (
                    held.as_ref().and_then(|bound| bound.lo),
                    held.as_ref().and_then(|bound| bound.hi),
                ),
                _ => (one, None),
            }
        };
        let second = if stated {
            None
        } else {
            held.and_then(|bound| bound.second)
        };
        clause.requirement = Requirement::Bound(Bound {
            relation,
            lo,
            hi,
            unit,
            lo_excluded: false,
            bare: false,
            at,
            second,
        });
    }
    if clause.requirement != Requirement::Prose && clause.confidence == Confidence::Prose {
        clause.confidence = Confidence::ByRule;
    }
}

/// When a clause applies, as a person says it; the words are the clause's own.
fn condition(clause: &Clause, applies: &Applies) -> Condition {
    Condition {
        also: Vec::new(),
        words: clause.words.clone(),
        span: clause.span,
        expr: Expr::Test(Test {
            property: applies.property.clone(),
            relation: applies.relation,
            lo: applies.lo,
            hi: applies.hi,
            lo_excluded: false,
        }),
    }
}

/// Where a clause's words state a value.
fn place(clause: &Clause, value: Quantity) -> Option<Span> {
    let starts = clause.words.char_indices().map(|(at, _)| at);
    let mut stated = starts.filter_map(|at| quantity_at(&clause.words, at));
    let found = stated
        .find(|stated| stated.quantity().compare(value) == Some(core::cmp::Ordering::Equal))?;
    let start = clause.span.start();
    let span = Span::new(start + found.span.start, start + found.span.end);
    (span.end() <= clause.span.end()).then_some(span)
}
