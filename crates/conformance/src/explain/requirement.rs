//! What a clause asks for, in words that follow "the listing asks for".

use listing::{Bound, Clause, Presence, ProductName, Relation, Requirement};
use measure::{Agreement, Dimension, Number, Quantity, print};

/// What a clause asks for, in words that follow "the listing asks for": "at least 4 in. (102 mm)".
pub fn of_clause(clause: &Clause) -> String {
    match &clause.requirement {
        Requirement::Bound(bound) => of_bound(bound),
        Requirement::Named { names } => names_in_words(names),
        Requirement::Presence {
            presence: Presence::Required,
        } => "required".to_owned(),
        Requirement::Presence {
            presence: Presence::Absent,
        } => "not allowed".to_owned(),
        Requirement::Presence {
            presence: Presence::Optional,
        } => "optional".to_owned(),
        Requirement::Reference { to } => of_reference(to),
        Requirement::Prose => "as the words say".to_owned(),
    }
}

/// What is referred to; the listing's own verb kept where it has one: "as its own Wall Design describes".
fn of_reference(to: &str) -> String {
    let verbs = [
        "describes",
        "describe",
        "requires",
        "require",
        "shows",
        "show",
    ];
    let has_verb = to
        .rsplit(' ')
        .next()
        .is_some_and(|last| verbs.contains(&last));
    if has_verb {
        format!("as {to}")
    } else {
        format!("as {to} has it")
    }
}

/// A bound, each value in both systems: as the listing states them where it states both.
pub(crate) fn of_bound(bound: &Bound) -> String {
    let (second_lo, second_hi) = match bound.in_second_unit() {
        Some(second) => (second.low(), second.high()),
        None => (None, None),
    };
    let conflict = bound
        .second
        .as_ref()
        .is_some_and(|second| second.agreement == Agreement::InConflict);
    let low = bound.low().map(|lo| stated(lo, second_lo, conflict));
    let high = bound.high().map(|hi| stated(hi, second_hi, conflict));
    let one = low.as_deref().or(high.as_deref());
    let heavier = bound.unit.dimension().lower_is_heavier();
    match (bound.relation, one, low.as_deref(), high.as_deref()) {
        (_, None, _, _) => "a value that couldn't be read".to_owned(),
        (Relation::Between, _, Some(lo), Some(hi)) if bound.lo_excluded => {
            format!("over {lo}, up to {hi}")
        }
        (_, _, Some(lo), Some(hi)) if bound.relation == Relation::Between => {
            format!("{lo} to {hi}")
        }
        (relation, _, Some(lo), Some(hi)) => format!("{} {lo} to {hi}", relation.words()),
        (Relation::AtLeast, Some(one), _, _) if heavier => format!("{one} or heavier"),
        (Relation::AtMost, Some(one), _, _) if heavier => format!("{one} or lighter"),
        (Relation::MoreThan, Some(one), _, _) if heavier => format!("heavier than {one}"),
        (Relation::LessThan, Some(one), _, _) if heavier => format!("lighter than {one}"),
        (Relation::Exactly, Some(one), _, _) if bound.bare => one.to_owned(),
        (relation, Some(one), _, _) => format!("{} {one}", relation.words()),
    }
}

fn stated(value: Quantity, second: Option<Quantity>, conflict: bool) -> String {
    match second {
        Some(second) if conflict => format!(
            "{} (stated also as {})",
            print::trade(value),
            print::trade(second)
        ),
        Some(second) => format!("{} ({})", print::trade(value), print::trade(second)),
        None => in_both(value),
    }
}

/// A quantity in both systems; a multiple of the joint's width in words.
pub(crate) fn in_both(value: Quantity) -> String {
    match value.dimension() {
        Dimension::JointWidths if value.number == Number::ONE => "the joint's width".to_owned(),
        Dimension::JointWidths => {
            let times = Quantity::new(value.number, measure::Unit::Count);
            format!("{} times the joint's width", print::trade(times))
        }
        _ => print::both(value),
    }
}

fn names_in_words(names: &[ProductName]) -> String {
    let in_words: Vec<String> = names.iter().map(name_in_words).collect();
    match in_words.as_slice() {
        [] => "a product that couldn't be read".to_owned(),
        [one] => one.clone(),
        several => format!("one of {}", several.join(", ")),
    }
}

/// A product with its maker.
pub(crate) fn name_in_words(name: &ProductName) -> String {
    if name.maker.trim().is_empty() {
        name.product.clone()
    } else {
        name.to_string()
    }
}
