//! A clause in words: what it asks for, of what, when, and how it was read.

use listing::{Bound, Clause, Confidence, Presence, Relation, Requirement, Status};
use measure::{Agreement, Quantity, print};

use crate::text::{listed, on_one_line, printable, shortened};

/// The most of a clause's words that is shown, in characters: far more than any listing's clause has.
const MOST_SHOWN: usize = 3000;

/// The clause's words on one line, the number it was read from in ‹ ›.
pub fn words(clause: &Clause) -> String {
    let marked = clause.bound().and_then(|bound| {
        let from = bound.at.start().checked_sub(clause.span.start())?;
        let to = bound.at.end().checked_sub(clause.span.start())?;
        let (before, rest) = clause.words.split_at_checked(from)?;
        let (number, after) = rest.split_at_checked(to.checked_sub(from)?)?;
        (!number.is_empty()).then(|| format!("{before}‹{number}›{after}"))
    });
    shortened(
        &on_one_line(marked.as_deref().unwrap_or(&clause.words)),
        MOST_SHOWN,
    )
}

/// What it is about, in plain words.
pub fn subject(clause: &Clause) -> String {
    if let Some(property) = vocabulary::vocabulary().property(&clause.property) {
        return property.title.clone();
    }
    match (clause.component.trim(), clause.attribute.trim()) {
        ("", "") => "–".to_owned(),
        // "penetrate the studs" is said of studs already.
        (component, attribute) if says(attribute, component) => printable(attribute),
        (component, attribute) => printable(format!("{component} {attribute}").trim()),
    }
}

/// Whether words say others as they stand.
fn says(words: &str, others: &str) -> bool {
    let apart = |text: &str| format!(" {} ", text.to_lowercase().replace(['_', ','], " "));
    !others.is_empty() && apart(words).contains(&apart(others))
}

/// What it asks for, in both systems.
pub fn requirement(clause: &Clause) -> String {
    match &clause.requirement {
        Requirement::Bound(bound) => self::bound(bound),
        Requirement::Named { names } => {
            let names: Vec<String> = names.iter().map(ToString::to_string).collect();
            printable(&match names.as_slice() {
                [one] => one.clone(),
                names => format!("one of: {}", names.join(", ")),
            })
        }
        Requirement::Presence { presence } => match presence {
            Presence::Required => "required".to_owned(),
            Presence::Absent => "not allowed".to_owned(),
            Presence::Optional => "optional".to_owned(),
        },
        Requirement::Reference { to } => format!("what is said elsewhere: {}", on_one_line(to)),
        Requirement::Prose => "for a person to answer".to_owned(),
    }
}

/// A bound, as the listing states it and in the other system.
pub fn bound(bound: &Bound) -> String {
    let words = bound.relation.words();
    match (bound.low(), bound.high()) {
        (Some(lo), Some(hi)) => {
            let range = match &bound.second {
                Some(_) => both_ends(lo, hi) + &second(bound),
                None => range(lo, hi),
            };
            if bound.lo_excluded {
                format!("over {range}")
            } else {
                range
            }
        }
        (Some(one), None) | (None, Some(one)) => {
            let value = if bound.second.is_some() {
                print::trade(one) + &second(bound)
            } else {
                print::both(one)
            };
            match (bound.relation, bound.unit.dimension().lower_is_heavier()) {
                (Relation::AtLeast, true) => format!("{value} or heavier"),
                (Relation::AtMost, true) => format!("{value} or lighter"),
                (Relation::Exactly, _) if bound.bare => value,
                _ => format!("{words} {value}"),
            }
        }
        (None, None) => format!("{words} (no value)"),
    }
}

/// A range, in both systems: `51 to 102 mm (2 to 4 in.)`.
pub fn range(lo: Quantity, hi: Quantity) -> String {
    both_ends(lo, hi) + &converted(lo, hi)
}

fn both_ends(lo: Quantity, hi: Quantity) -> String {
    let (low, high) = (print::trade(lo), print::trade(hi));
    // The unit once, where both end with the same.
    match (low.rsplit_once(' '), high.rsplit_once(' ')) {
        (Some((number, unit)), Some((_, same))) if unit == same => format!("{number} to {high}"),
        _ => format!("{low} to {high}"),
    }
}

fn converted(lo: Quantity, hi: Quantity) -> String {
    let unit = print::other_system(lo.unit);
    match unit.and_then(|unit| Some((lo.to(unit)?, hi.to(unit)?))) {
        Some((lo, hi)) => {
            let (low, high) = (
                print::rounded(lo, print::SIXTEENTH),
                print::rounded(hi, print::SIXTEENTH),
            );
            format!(" ({low} to {high})")
        }
        None => String::new(),
    }
}

/// The value as the second unit states it.
fn second(bound: &Bound) -> String {
    let Some(second) = &bound.second else {
        return String::new();
    };
    let quantity = |number| Quantity::new(number, second.unit);
    let value = match (second.lo, second.hi) {
        (Some(lo), Some(hi)) => both_ends(quantity(lo), quantity(hi)),
        (Some(one), None) | (None, Some(one)) => print::trade(quantity(one)),
        (None, None) => return String::new(),
    };
    match second.agreement {
        Agreement::InConflict => format!(" (but {value}: the two disagree)"),
        _ => format!(" ({value})"),
    }
}

/// When it applies and to which option it belongs; empty when always and to none.
pub fn scope(clause: &Clause) -> Vec<String> {
    let condition = clause
        .condition
        .as_ref()
        .map(|condition| format!("when: {}", on_one_line(&condition.words)));
    let option = clause
        .option
        .as_ref()
        .map(|option| format!("option: {}", printable(option)));
    condition.into_iter().chain(option).collect()
}

/// Its id, with a mark where a person has confirmed (✓) or corrected (✎) it.
pub fn id(clause: &Clause) -> String {
    let id = printable(&clause.id);
    match clause.status {
        Status::Draft => id,
        Status::Confirmed => format!("{id} ✓"),
        Status::Corrected => format!("{id} ✎"),
    }
}

/// How it was read: by which rules, with or without a doubt, or left as words.
pub fn read_by(clause: &Clause) -> String {
    let rules = listed(&clause.read_by);
    match clause.confidence {
        Confidence::ByRule if rules.is_empty() => String::new(),
        Confidence::ByRule => format!("read by {rules}"),
        Confidence::WithDoubt if rules.is_empty() => "! with a doubt".to_owned(),
        Confidence::WithDoubt => format!("! with a doubt, read by {rules}"),
        Confidence::Prose => "¶ left as words".to_owned(),
    }
}
