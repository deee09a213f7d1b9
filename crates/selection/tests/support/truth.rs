//! What was drawn against what the reader read from the text that was written of it.

use std::collections::BTreeMap;

use listing::{Bound, Clause, Reading, Relation};
use measure::{Number, Quantity, Unit};

use super::spec::{Amount, Ask, Spec, Statement, When};
use super::text::amounts::{First, celsius, kilograms, per_metre, tenths_of_millimetres};

/// How a drawn bound came back.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Came {
    /// Relation, value, property and condition as drawn.
    AsDrawn,
    /// The bound as drawn, under the listing's own words.
    UnderItsOwnWords,
    /// The bound and property as drawn, for other cases than drawn.
    ForOtherCases,
    /// The bound as drawn, taken for one on another property.
    OnAnotherProperty,
    /// Another relation or value.
    Wrong,
    /// No clause stands on the number: it is left as words for a person.
    Unread,
}

/// How many came back in which way.
pub type Tally = BTreeMap<Came, usize>;

/// One drawn bound, with how it came back and from which words.
#[derive(Debug)]
pub struct Returned<'r> {
    pub statement: Statement,
    pub came: Came,
    pub clause: Option<&'r Clause>,
}

/// Every drawn bound of a listing, in the order of the text.
pub fn returned<'r>(
    spec: &Spec,
    places: &[(usize, usize)],
    reading: &'r Reading,
) -> Vec<Returned<'r>> {
    let statements: Vec<Statement> = spec
        .all_parts()
        .iter()
        .flat_map(|part| part.statements.clone())
        .collect();
    let each = places.iter().map(|(id, at)| {
        let statement = statements[*id];
        let clauses: Vec<&Clause> = reading
            .clauses
            .iter()
            .filter(|one| stands_at(one, *at))
            .collect();
        let (came, clause) = clauses
            .iter()
            .map(|clause| (came(spec, &statement, clause), Some(*clause)))
            .min_by_key(|(came, _)| *came)
            .unwrap_or((Came::Unread, None));
        Returned {
            statement,
            came,
            clause,
        }
    });
    each.collect()
}

fn stands_at(clause: &Clause, at: usize) -> bool {
    clause
        .bound()
        .is_some_and(|bound| (bound.at.start()..bound.at.end()).contains(&at))
}

fn came(spec: &Spec, statement: &Statement, clause: &Clause) -> Came {
    let Some(bound) = clause.bound() else {
        return Came::Unread;
    };
    let is_on_it = clause.property == statement.property
        || may_be_said_of(statement.property).contains(&clause.property.as_str());
    if !is_as_drawn(spec.first_unit(), statement.ask, bound) {
        Came::Wrong
    } else if !is_on_it && clause.is_in_vocabulary() {
        Came::OnAnotherProperty
    } else if !is_on_it {
        Came::UnderItsOwnWords
    } else if case_of(clause) == case(spec, statement.when) {
        Came::AsDrawn
    } else {
        Came::ForOtherCases
    }
}

/// "A concrete floor, min 5 in. thick" may be said of the floor or of the concrete.
fn may_be_said_of(property: &str) -> [&'static str; 2] {
    match property {
        "concrete.thickness" => ["floor.thickness", "wall.thickness"],
        "concrete.density" => ["floor.density", "wall.density"],
        _ => ["", ""],
    }
}

fn is_as_drawn(first: First, ask: Ask, bound: &Bound) -> bool {
    let is = |end: Option<Quantity>, amount: Amount| {
        let drawn = quantity(first, amount);
        end.is_some_and(|end| end.compare(drawn) == Some(core::cmp::Ordering::Equal))
    };
    match ask {
        Ask::AtLeast(amount) => bound.relation == Relation::AtLeast && is(bound.low(), amount),
        Ask::AtMost(amount) => bound.relation == Relation::AtMost && is(bound.high(), amount),
        Ask::Nominal(amount) => bound.relation == Relation::Nominal && is(bound.low(), amount),
        Ask::Exactly(amount) => {
            matches!(bound.relation, Relation::Exactly | Relation::Nominal)
                && is(bound.low(), amount)
        }
        Ask::Between(low, high) => {
            bound.relation == Relation::Between && is(bound.low(), low) && is(bound.high(), high)
        }
    }
}

/// The value as the text has it first.
fn quantity(first: First, amount: Amount) -> Quantity {
    let number =
        |top: usize, bottom: i128| Number::new(i128::try_from(top).unwrap(), bottom).unwrap();
    let is_inches = first == First::Inches;
    match amount {
        Amount::Length(length) if is_inches => Quantity::new(number(length, 64), Unit::Inch),
        Amount::Length(length) => {
            Quantity::new(number(tenths_of_millimetres(length), 10), Unit::Millimetre)
        }
        Amount::Percent(percent) => Quantity::new(number(percent, 1), Unit::Percent),
        Amount::Density(pcf) if is_inches => Quantity::new(number(pcf, 1), Unit::PoundPerCubicFoot),
        Amount::Density(pcf) => {
            Quantity::new(number(kilograms(pcf), 1), Unit::KilogramPerCubicMetre)
        }
        Amount::Gauge(gauge) => Quantity::new(number(gauge, 1), Unit::Gauge),
        Amount::Hours(hours) => Quantity::new(number(hours, 1), Unit::Hour),
        Amount::Fahrenheit(degrees) if is_inches => {
            Quantity::new(number(degrees, 1), Unit::Fahrenheit)
        }
        Amount::Fahrenheit(degrees) => Quantity::new(number(celsius(degrees), 1), Unit::Celsius),
        Amount::Count(count) => Quantity::new(number(count, 1), Unit::Count),
        Amount::Weight(pounds) if is_inches => Quantity::new(number(pounds, 1), Unit::PoundPerFoot),
        Amount::Weight(pounds) => {
            Quantity::new(number(per_metre(pounds), 1), Unit::KilogramPerMetre)
        }
    }
}

fn case_of(clause: &Clause) -> String {
    clause
        .condition
        .as_ref()
        .map(|condition| condition.expr.to_string())
        .unwrap_or_default()
}

fn case(spec: &Spec, when: When) -> String {
    let width = |length| quantity(spec.first_unit(), Amount::Length(length));
    match when {
        When::Always => String::new(),
        When::Rating(hours) => format!("joint.rating = {hours} hr"),
        When::UpTo(length) => format!("joint.width <= {}", width(length)),
        When::Over(length) => format!("joint.width > {}", width(length)),
    }
}
