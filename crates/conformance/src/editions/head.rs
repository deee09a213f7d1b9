//! The heads of two editions: ratings, width, movement, leakage.

use listing::{
    Bound, Leakage, LeakageRelation, LeakageTemperature, Movement, MovementDirection, Reading,
    Relation, Span,
};
use measure::{Quantity, Unit, print};

use super::{Change, ChangeKind, Side, bounds, sentence};
use crate::explain::SubjectMatter;
use crate::header::{joined, width_bound, width_requirement};

/// One statement of a head.
struct Statement {
    id: String,
    property: &'static str,
    span: Option<Span>,
    requirement: String,
    bound: Option<Bound>,
}

/// What became of every statement of the head.
pub(super) fn compare(old: &Reading, new: &Reading) -> Vec<Change> {
    let (was, is) = (statements(old), statements(new));
    let named = |all: &[Statement], id: &str| all.iter().position(|one| one.id == id);
    let mut changes = Vec::new();
    for statement in &is {
        let before = named(&was, &statement.id).and_then(|at| was.get(at));
        changes.push(change(before, Some(statement)));
    }
    let gone = was
        .iter()
        .filter(|statement| named(&is, &statement.id).is_none());
    changes.extend(gone.map(|statement| change(Some(statement), None)));
    changes.into_iter().flatten().collect()
}

fn change(was: Option<&Statement>, is: Option<&Statement>) -> Option<Change> {
    let shown = is.or(was)?;
    let kind = match (was, is) {
        (None, _) => ChangeKind::Added,
        (_, None) => ChangeKind::Removed,
        (Some(was), Some(is)) => match (&was.bound, &is.bound) {
            (Some(was), Some(is)) => bounds::kind(was, is),
            _ if was.requirement == is.requirement => ChangeKind::Unchanged,
            _ => ChangeKind::Changed,
        },
    };
    let side = |statement: &Statement| Side {
        clause: statement.id.clone(),
        item: String::new(),
        span: statement.span,
        words: String::new(),
        requirement: statement.requirement.clone(),
        condition: None,
        option: None,
    };
    let title = SubjectMatter::of_property(shown.property).title;
    let (old, new) = (was.map(side), is.map(side));
    let sentence = sentence(kind, &title, old.as_ref(), new.as_ref());
    Some(Change {
        kind,
        property: shown.property.to_owned(),
        title,
        moved: false,
        old,
        new,
        sentence,
    })
}

/// Every statement of a head, in the order in which a head is read; of several with one name the first counts.
fn statements(reading: &Reading) -> Vec<Statement> {
    let header = &reading.header;
    let mut all = Vec::new();
    if !header.ratings_hr.is_empty() {
        let hours = header
            .ratings_hr
            .iter()
            .map(|hours| print::trade(Quantity::new(*hours, Unit::Hour)));
        all.push(Statement {
            id: "header/rating".to_owned(),
            property: "joint.rating",
            span: None,
            requirement: joined(hours),
            bound: None,
        });
    }
    if let Some(width) = &header.width {
        let bound = width_bound(width);
        all.push(Statement {
            id: "header/width".to_owned(),
            property: "joint.width",
            span: Some(width.span),
            requirement: width_requirement(width),
            // Several widths aren't one bound that could be called stricter or looser.
            bound: width.strictest_hi.is_none().then_some(bound),
        });
    }
    all.extend(header.movement.iter().map(movement));
    for at in [LeakageTemperature::Ambient, LeakageTemperature::Elevated] {
        let stated: Vec<&Leakage> = header.leakage.iter().filter(|one| one.at == at).collect();
        all.extend(leakage(at, &stated));
    }
    all
}

/// A tested movement: the joint may move by at most that, so that a greater one allows more.
fn movement(movement: &Movement) -> Statement {
    let (direction, property) = match movement.direction {
        MovementDirection::Compression => ("compression", "joint.movement_compression"),
        MovementDirection::Extension => ("extension", "joint.movement_extension"),
        MovementDirection::CompressionOrExtension => {
            ("compression or extension", "joint.movement_compression")
        }
        MovementDirection::Shear => ("shear", "joint.movement_shear"),
    };
    let classes = joined(movement.classes.iter().cloned());
    let option = movement
        .option
        .as_deref()
        .map(|option| format!(" ({option})"))
        .unwrap_or_default();
    let percent = print::trade(Quantity::new(movement.percent, Unit::Percent));
    Statement {
        id: format!("header/movement: Class {classes}, {direction}{option}"),
        property,
        span: Some(movement.span),
        requirement: format!("{percent} {direction}, Class {classes}{option}"),
        bound: Some(Bound {
            relation: Relation::AtMost,
            lo: None,
            hi: Some(movement.percent),
            unit: Unit::Percent,
            lo_excluded: false,
            bare: false,
            at: movement.span,
            second: None,
        }),
    }
}

/// Everything that is stated of leakage at one temperature.
fn leakage(at: LeakageTemperature, stated: &[&Leakage]) -> Option<Statement> {
    let (at, property) = match at {
        LeakageTemperature::Ambient => ("ambient", "joint.leakage_ambient"),
        LeakageTemperature::Elevated => ("elevated", "joint.leakage_elevated"),
    };
    let values = stated.iter().map(|leakage| {
        let relation = match leakage.relation {
            LeakageRelation::LessThan => "less than ",
            LeakageRelation::Equal => "",
            LeakageRelation::AtMost => "at most ",
        };
        let value = print::both(Quantity::new(leakage.value, leakage.unit));
        format!("{relation}{value}")
    });
    Some(Statement {
        id: format!("header/leakage-{at}"),
        property,
        span: Some(stated.first()?.span),
        requirement: format!("{} at {at} temperature", joined(values)),
        bound: None,
    })
}
