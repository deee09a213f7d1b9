//! A cell read under its heading: its value, its limit, and what it is called.

use measure::Unit;
use vocabulary::vocabulary;

use super::super::Around;
use super::super::classes::{class_alone, class_numbers};
use super::super::draft::{Draft, Yield, local_property};
use super::heading::{Heading, Sense};
use super::marks::{is_bare_number, says_number};
use super::worded::{left_as_words, push_words};
use super::{labelled, lies_beside_others};
use crate::layout::Flow;
use crate::model::{Bound, Condition, Confidence, Relation, Requirement, SecondValue};
use crate::naming::{Name, is_plausible, name_heading};
use crate::phrase::{Cell, cell, is_paired_length, leads_to_a_note};
use crate::rules::Sentence;

/// Whether a cell is a class and nothing else.
pub(super) fn holds_a_class_alone(flow: &Flow) -> bool {
    !class_alone(&Sentence::new(flow, 0..flow.text().len())).is_empty()
}

/// Reads the class that a cell is, and nothing else.
pub(super) fn push_class(
    flow: &Flow,
    condition: Option<&Condition>,
    around: &Around,
    found: &mut Yield,
) {
    let sentence = Sentence::new(flow, 0..flow.text().len());
    for class in class_alone(&sentence) {
        let bound = class.bound(&sentence);
        push(
            flow,
            bound,
            &class.name(),
            condition,
            around,
            "class code",
            found,
        );
    }
}

/// Reads a cell under its heading.
pub(in crate::clauses) fn read_cell(
    heading: &Heading,
    flow: &Flow,
    condition: Option<&Condition>,
    around: &Around,
    found: &mut Yield,
) {
    let sentence = Sentence::new(flow, 0..flow.text().len());
    let mut classes = class_numbers(&sentence);
    if classes.is_empty() && heading.selects.is_none() && heading.names_a_class() {
        classes = class_alone(&sentence);
    }
    if !classes.is_empty() {
        for class in classes {
            push(
                flow,
                class.bound(&sentence),
                &class.name(),
                condition,
                around,
                "class code",
                found,
            );
        }
        return;
    }
    if heading.selects.is_some() {
        return;
    }
    let text = flow.text();
    let usual = flow.usual_units();
    let paired = heading.unit.is_none() && is_paired_length(text, usual);
    let (column_unit, second_unit) = if paired {
        (usual.length, usual.second_length)
    } else {
        let unit = heading.unit.or_else(|| usual_unit(heading, flow));
        (unit, heading.second_unit)
    };
    let Some(cell) = cell(text, column_unit, second_unit).filter(|cell| cell.unit.is_some()) else {
        push_words(heading, flow, condition, around, found);
        return;
    };
    let unit = cell.unit.unwrap_or(Unit::Count);
    if heading.is_of_another_measure(unit) {
        left_as_words(heading, flow, condition, around, found);
        return;
    }
    // A column for a rating alone doesn't say what its numbers are of.
    let bare = text.starts_with(|c: char| c.is_ascii_digit());
    let unnamed = bare && heading.words.is_empty() && heading.rating.is_some();
    // `50 (2)` is one number in two units that nobody names, and no count.
    let in_two_units = text
        .split_once(" (")
        .is_some_and(|(_, second)| second.starts_with(|c: char| c.is_ascii_digit()));
    if (heading.unit_unknown || unnamed || in_two_units) && unit == Unit::Count {
        left_as_words(heading, flow, condition, around, found);
        return;
    }
    let said = limit_of(cell.relation, heading.relation);
    if heading.sense == Sense::BothWays {
        read_both_ways(heading, flow, &cell, unit, condition, around, found);
        return;
    }
    if heading.limit_unknown && said.is_none() && cell.hi.is_none() {
        left_as_words(heading, flow, condition, around, found);
        return;
    }
    let relation = match (cell.hi, said) {
        (Some(_), _) => Relation::Between,
        (None, Some(relation)) => relation,
        (None, None) if unit == Unit::Count => Relation::Exactly,
        (None, None) => Relation::Nominal,
    };
    let (lo, hi) = match (relation, cell.hi) {
        (Relation::AtMost | Relation::LessThan, None) => (None, Some(cell.lo)),
        (_, hi) => (Some(cell.lo), hi),
    };
    let bound = Bound {
        relation,
        lo,
        hi,
        unit,
        lo_excluded: cell.lo_excluded,
        bare: said.is_none() && cell.hi.is_none(),
        at: flow.span(cell.span.start(), cell.span.end()),
        second: cell.second.as_ref().map(|second| SecondValue {
            lo: Some(second.lo),
            hi: second.hi,
            unit: second.unit,
            agreement: second.agreement,
        }),
    };
    let name = name_of_cell(heading, &cell, unit, around);
    let name = Name {
        doubtful: name.doubtful
            || said != cell.relation.or(heading.relation)
            || leads_to_a_note(text),
        ..name
    };
    push(flow, bound, &name, condition, around, "table cell", found);
    let rest = text.get(cell.span.end()..).unwrap_or_default();
    match cell.goes_on {
        // `16 ga, galv`: the number is read already.
        true if !says_number(rest) => left_as_words(heading, flow, condition, around, found),
        true => push_words(heading, flow, condition, around, found),
        false => {}
    }
}

/// What a cell is called: by its heading, without a property where the heading only says where, or where no building has such a number.
fn name_of_cell(heading: &Heading, cell: &Cell, unit: Unit, around: &Around) -> Name {
    let name = heading
        .requires
        .and_then(name_of)
        .unwrap_or_else(|| name_heading(&heading.words, unit.dimension(), &around.subject));
    let implausible = name
        .property
        .is_some_and(|property| !is_plausible(cell.lo, cell.hi, unit, property));
    let unnamed = labelled::is_distance(&heading.words)
        || labelled::is_rate(&heading.words)
        || heading.sense == Sense::AtPlace
        || implausible;
    if unnamed {
        Name {
            property: None,
            attribute: heading.words.to_lowercase(),
            ..name
        }
    } else {
        name
    }
}

/// Reads a number that is meant both ways, `25` under `Movement, % (+/-)`. Under another heading it is how far the value may be off, and not the value.
fn read_both_ways(
    heading: &Heading,
    flow: &Flow,
    cell: &Cell,
    unit: Unit,
    condition: Option<&Condition>,
    around: &Around,
    found: &mut Yield,
) {
    let moves = heading.words.to_lowercase().contains("movement");
    let bare = is_bare_number(flow.text().trim_start_matches(['±', ' ']));
    let limited = heading.relation.is_some() || heading.limit_unknown;
    if !moves || !bare || limited || cell.hi.is_some() || unit == Unit::Count {
        left_as_words(heading, flow, condition, around, found);
        return;
    }
    let bound = Bound {
        relation: Relation::Between,
        lo: Some(-cell.lo),
        hi: Some(cell.lo),
        unit,
        lo_excluded: false,
        bare: false,
        at: flow.span(cell.span.start(), cell.span.end()),
        second: None,
    };
    let name = name_heading(&heading.words, unit.dimension(), &around.subject);
    push(flow, bound, &name, condition, around, "table cell", found);
}

/// What a cell and its heading say of a value together: the cell's own word, but of "about 3" under a limit the limit.
fn limit_of(own: Option<Relation>, of_heading: Option<Relation>) -> Option<Relation> {
    let limit =
        of_heading.filter(|relation| matches!(relation, Relation::AtLeast | Relation::AtMost));
    match own {
        Some(Relation::About) => limit.or(own),
        _ => own.or(of_heading),
    }
}

/// The unit that the document states for all its lengths or densities, where the column is of one: it names a size, or a part and a limit alone.
fn usual_unit(heading: &Heading, flow: &Flow) -> Option<Unit> {
    let usual = flow.usual_units();
    if heading.words.to_lowercase().contains("density") {
        return usual.density;
    }
    usual
        .length
        .filter(|_| labelled::names_size(&heading.words) || names_part_and_limit(heading))
}

/// `WALL min`: a part, whose thickness is meant, and how it is limited.
fn names_part_and_limit(heading: &Heading) -> bool {
    const MOST_WORDS: usize = 2;
    const PARTS: &[&str] = &["wall", "slab", "floor", "board", "deck"];
    let lower = heading.words.to_lowercase();
    let mut words = lower
        .split(|c: char| !c.is_alphabetic())
        .filter(|word| !word.is_empty());
    let limited = matches!(heading.relation, Some(Relation::AtLeast | Relation::AtMost));
    limited
        && lower.split_whitespace().count() <= MOST_WORDS
        && words.any(|word| PARTS.contains(&word))
}

/// The name of a property of the vocabulary.
fn name_of(property: &str) -> Option<Name> {
    let property = vocabulary().property(property)?;
    Some(Name {
        property: Some(property),
        also: None,
        component: "joint".to_owned(),
        attribute: property.attribute.replace('_', " "),
        doubtful: false,
    })
}

fn push(
    flow: &Flow,
    bound: Bound,
    name: &Name,
    condition: Option<&Condition>,
    around: &Around,
    rule: &str,
    found: &mut Yield,
) {
    let property = name.property.map_or_else(
        || {
            local_property(
                &around.item,
                &format!("{} {}", name.component, name.attribute),
            )
        },
        |property| property.name.clone(),
    );
    found.clauses.push(Draft {
        span: flow.span(0, flow.text().len()),
        property,
        component: name.component.clone(),
        attribute: name.attribute.clone(),
        requirement: Requirement::Bound(bound),
        condition: condition.cloned(),
        options: around.options.clone(),
        read_by: vec![rule.to_owned()],
        confidence: if name.doubtful || condition.is_some_and(lies_beside_others) {
            Confidence::WithDoubt
        } else {
            Confidence::ByRule
        },
    });
}
