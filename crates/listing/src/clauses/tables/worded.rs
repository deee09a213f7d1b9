//! Cells of words: those with a number among them are read as any text is, the others are for a person.

use measure::{Dimension, Unit};

use super::super::Around;
use super::super::draft::{Draft, Yield, limit, local_property};
use super::heading::Heading;
use crate::layout::{Flow, UsualUnits};
use crate::model::{Condition, Confidence, Relation, Requirement, WarningKind};
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
    // What a cell holds has no lead: nothing before it is asked for.
    super::super::read_sentences("", flow, around, &mut subject, &mut own);
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
    if is_several(heading, flow.text()) {
        left_as_words(heading, flow, condition, around, found);
        return;
    }
    let holds_number = flow.text().contains(|c: char| c.is_ascii_digit());
    if holds_number && flow.text().split_whitespace().count() > 1 {
        let from = found.clauses.len();
        match pair_unit(heading, flow) {
            Some(unit) => {
                let units = UsualUnits {
                    bare: Some(unit),
                    ..flow.usual_units()
                };
                let sized = flow.clone().with_usual_units(units);
                read_words(&sized, condition, around, found);
                name_sides(
                    heading,
                    around,
                    found.clauses.get_mut(from..).unwrap_or_default(),
                );
            }
            None => read_words(flow, condition, around, found),
        }
        let drafts = found.clauses.get_mut(from..).unwrap_or_default();
        if let Some(relation) = heading.relation {
            limit_bare(drafts, relation);
        }
        return;
    }
    left_as_words(heading, flow, condition, around, found);
}

/// Whether a cell is several pieces, `2 x 75`, of what its column measures in one direction: no size has a depth of two sides.
fn is_several(heading: &Heading, text: &str) -> bool {
    const ONE_WAY: &[&str] = &["depth", "thickness", "height"];
    let lower = heading.words.to_lowercase();
    let one_way = lower
        .split(|c: char| !c.is_alphabetic())
        .any(|word| ONE_WAY.contains(&word));
    let several = text.trim().split_once(" x ").is_some_and(|(count, size)| {
        count
            .parse::<u8>()
            .is_ok_and(|count| (2..=4).contains(&count))
            && size.starts_with(|c: char| c.is_ascii_digit())
            && !size.contains(" x ")
    });
    one_way && several
}

/// The unit of both sides of a size, `1-1/2 x 2` under `Angle, in. x in.` or `Angle, in.`; none where a cell is more than a size.
fn pair_unit(heading: &Heading, flow: &Flow) -> Option<Unit> {
    const BOTH: [(&str, Unit); 3] = [
        ("in. x in.", Unit::Inch),
        ("in x in", Unit::Inch),
        ("mm x mm", Unit::Millimetre),
    ];
    let text = flow.text().trim();
    let sides: Vec<&str> = text.split(" x ").collect();
    let is_size = sides.len() > 1
        && sides.iter().all(|side| {
            side.starts_with(|c: char| c.is_ascii_digit())
                && side
                    .chars()
                    .all(|c| c.is_ascii_digit() || matches!(c, '.' | '/' | '-'))
        });
    let words = heading.words.to_lowercase();
    let said = BOTH.iter().find(|(said, _)| words.contains(said));
    let of_both = said.map(|(_, unit)| *unit);
    let of_column = heading
        .unit
        .filter(|unit| unit.dimension() == Dimension::Length);
    of_both.or(of_column).filter(|_| is_size)
}

/// The sides of a size are those of what its column is of, and of nothing that the table is about.
fn name_sides(heading: &Heading, around: &Around, sides: &mut [Draft]) {
    const ORDER: [&str; 3] = ["first", "second", "third"];
    let name = name_heading(&heading.words, Dimension::Length, &around.subject);
    for (which, side) in ORDER.iter().zip(sides) {
        let words = format!("{which} side of {}", heading.words);
        side.property = local_property(&around.item, &words);
        side.component.clone_from(&name.component);
        side.attribute = words.to_lowercase();
    }
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
    let span = flow.span(0, flow.text().len());
    if is_unread(heading, flow, found) {
        let message = "what this number of its column bounds could not be told".to_owned();
        found
            .warnings
            .push((WarningKind::UnreadNumber, span, message));
    }
    found.clauses.push(Draft {
        span,
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

/// Whether a cell begins with a number that nothing is read of: the condition of its row reaches over it, and would hide it. `1.2` and `1.2(a)` under
/// "Construction" are the numbers of clauses.
fn is_unread(heading: &Heading, flow: &Flow, found: &Yield) -> bool {
    const REFERRING: &[&str] = &[
        "clause",
        "construction",
        "item",
        "reference",
        "ref",
        "element",
        "detail",
    ];
    let text = flow.text();
    let span = flow.span(0, text.len());
    let is_read = found.clauses.iter().rev().take(2).any(
        |draft| matches!(&draft.requirement, Requirement::Bound(bound) if span.covers(bound.at)),
    );
    let number = text.split('(').next().unwrap_or_default();
    let refers = number.contains('.')
        && REFERRING.contains(&heading.words.to_lowercase().as_str())
        && number.chars().all(|c| c.is_ascii_digit() || c == '.');
    text.starts_with(|c: char| c.is_ascii_digit()) && !is_read && !refers
}
