//! Cells of words: those with a number among them are read as any text is, the others are for a person.

use measure::Dimension;

use super::super::Around;
use super::super::draft::{Draft, Yield, limit, local_property};
use super::heading::Heading;
use crate::layout::Flow;
use crate::model::{Condition, Confidence, Relation, Requirement};
use crate::naming::name_heading;

/// A cell of several words with a number among them is read as any text is, under the condition of its row.
pub(super) fn read_words(
    flow: &Flow,
    condition: Option<&Condition>,
    around: &Around,
    found: &mut Yield,
) {
    let mut own = Yield::default();
    let mut subject = around.subject.clone();
    super::super::read_sentences(flow, around, &mut subject, &mut own);
    for draft in &mut own.clauses {
        let held = draft.condition.take();
        draft.condition = match (condition.cloned(), held) {
            (Some(row), Some(held)) if row.expr == held.expr => Some(row),
            (Some(row), Some(held)) => Some(row.and(held)),
            (row, held) => row.or(held),
        };
    }
    found.clauses.append(&mut own.clauses);
    found.warnings.append(&mut own.warnings);
    found.configurations.append(&mut own.configurations);
}

/// Limits the bare value of a cell as its column's heading has it. Of several values nobody can say which are meant.
fn limit_bare(drafts: &mut [Draft], relation: Relation) {
    let mut bare: Vec<&mut Draft> = drafts
        .iter_mut()
        .filter(|draft| matches!(&draft.requirement, Requirement::Bound(bound) if bound.bare))
        .collect();
    if let [only] = bare.as_mut_slice()
        && let Requirement::Bound(bound) = &mut only.requirement
    {
        limit(bound, relation);
        return;
    }
    for draft in bare {
        draft.confidence = Confidence::WithDoubt;
    }
}

/// A cell that is words: a person must say what it asks for.
pub(super) fn push_words(
    heading: &Heading,
    flow: &Flow,
    condition: Option<&Condition>,
    around: &Around,
    found: &mut Yield,
) {
    let holds_number = flow.text().contains(|c: char| c.is_ascii_digit());
    if holds_number && flow.text().split_whitespace().count() > 1 {
        let from = found.clauses.len();
        read_words(flow, condition, around, found);
        let drafts = found.clauses.get_mut(from..).unwrap_or_default();
        if let Some(relation) = heading.relation {
            limit_bare(drafts, relation);
        }
        return;
    }
    left_as_words(heading, flow, condition, around, found);
}

/// A cell that no rule dares to read.
pub(super) fn left_as_words(
    heading: &Heading,
    flow: &Flow,
    condition: Option<&Condition>,
    around: &Around,
    found: &mut Yield,
) {
    let name = name_heading(&heading.words, Dimension::Count, &around.subject);
    found.clauses.push(Draft {
        span: flow.span(0, flow.text().len()),
        property: local_property(&around.item, &heading.words),
        component: name.component,
        attribute: heading.words.to_lowercase(),
        requirement: Requirement::Prose,
        condition: condition.cloned(),
        options: around.options.clone(),
        read_by: vec!["left as words".to_owned()],
        confidence: Confidence::Prose,
    });
}
