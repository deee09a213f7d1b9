//! In what kinds of value a property of a listing's own can be answered.
//!
//! The vocabulary says it of its properties. Of one that is local to an item, the clauses that speak of it say it: a bound wants a quantity of
//! its dimension, names want a product, presence wants a yes or a no.

use listing::{Expr, Reading, Requirement, Test};
use measure::Quantity;
use vocabulary::{ValueKind, vocabulary};

/// The kinds of value that answer what a listing asks of a property of its own, those that are told apart surest first; none where the property is
/// the vocabulary's, or the listing asks nothing of it that a value could answer.
pub fn kinds_of_answer(reading: &Reading, property: &str) -> Vec<ValueKind> {
    let mut kinds = Vec::new();
    if vocabulary().property(property).is_some() {
        return kinds;
    }
    for clause in &reading.clauses {
        if clause.property == property {
            match &clause.requirement {
                Requirement::Bound(bound) => {
                    add_quantities(&mut kinds, [bound.low(), bound.high()]);
                }
                Requirement::Named { .. } => add(&mut kinds, ValueKind::Product),
                Requirement::Presence { .. } => add(&mut kinds, ValueKind::Flag),
                Requirement::Reference { .. } | Requirement::Prose => {}
            }
        }
        if let Some(condition) = &clause.condition {
            tests(&condition.expr, &mut |test| {
                if test.property == property {
                    add_quantities(&mut kinds, [test.lo, test.hi]);
                }
            });
        }
    }
    // Any word is a name, so names come last.
    kinds.sort_by_key(|kind| match kind {
        ValueKind::Flag => 0,
        ValueKind::Quantity(_) => 1,
        ValueKind::Text(_) | ValueKind::Product => 2,
    });
    kinds
}

fn add_quantities(kinds: &mut Vec<ValueKind>, quantities: [Option<Quantity>; 2]) {
    let dimensions = quantities.into_iter().flatten().map(Quantity::dimension);
    for dimension in dimensions {
        add(kinds, ValueKind::Quantity(dimension));
    }
}

fn add(kinds: &mut Vec<ValueKind>, kind: ValueKind) {
    if !kinds.contains(&kind) {
        kinds.push(kind);
    }
}

fn tests<'e>(expr: &'e Expr, each: &mut dyn FnMut(&'e Test)) {
    match expr {
        Expr::All(parts) | Expr::Any(parts) => {
            for part in parts {
                tests(part, each);
            }
        }
        Expr::Not(part) => tests(part, each),
        Expr::Test(test) => each(test),
        Expr::Words(_) => {}
    }
}

#[cfg(test)]
mod tests {
    use measure::Dimension;
    use vocabulary::ValueKind;

    use super::kinds_of_answer;

    #[test]
    fn the_clauses_say_in_what_a_property_of_their_own_is_answered() {
        let text = "1. Gnomons - Bronze gnomons, min 8 in. (203 mm) high, kept clear.\n\n\
                    2. Packing - Nominal density 4 pcf. The packing shall be kept dry.\n";
        let reading = listing::read_text("a.txt", text);
        let mut local = 0;
        for clause in &reading.clauses {
            let kinds = kinds_of_answer(&reading, &clause.property);
            let Some(bound) = clause.bound() else {
                assert!(kinds.is_empty(), "words are judged: {clause:?}");
                continue;
            };
            if vocabulary::vocabulary()
                .property(&clause.property)
                .is_some()
            {
                assert!(kinds.is_empty(), "the vocabulary says it: {clause:?}");
            } else {
                let dimension = bound.low().unwrap().dimension();
                assert!(
                    kinds.contains(&ValueKind::Quantity(dimension)),
                    "{clause:?}"
                );
                local += usize::from(dimension == Dimension::Length);
            }
        }
        assert!(local > 0, "{reading:?}");
        assert_eq!(kinds_of_answer(&reading, "1:nothing_asks_this"), []);
    }
}
