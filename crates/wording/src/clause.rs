//! A clause in words: what it asks for, of what, and the signs beside its name.

use listing::{Bound, Clause, Confidence, Presence, Relation, Requirement, Status};
use measure::{Agreement, Quantity, print};

use crate::text::{on_one_line, printable, shortened};

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

/// What it is about, in plain words; of words left for a person, what they speak of.
pub fn subject(clause: &Clause) -> String {
    if let Some(property) = vocabulary::vocabulary().property(&clause.property) {
        return property.title.clone();
    }
    let (component, attribute) = (meant(&clause.component), meant(&clause.attribute));
    let is_in_words = matches!(
        clause.requirement,
        Requirement::Prose | Requirement::Reference { .. }
    );
    if is_in_words && matches!(attribute.as_str(), "" | "words") {
        return match component.as_str() {
            "" => "in words".to_owned(),
            component => format!("{component}, in words"),
        };
    }
    match (component.as_str(), attribute.as_str()) {
        ("", "") => "not decided".to_owned(),
        // "penetrate the studs" is said of studs already, "joint width" of a width.
        (component, attribute) if says(attribute, component) => attribute.to_owned(),
        (component, attribute) if says(component, attribute) => component.to_owned(),
        (component, attribute) => format!("{component} {attribute}").trim().to_owned(),
    }
}

/// Whether words say others as they stand.
fn says(words: &str, others: &str) -> bool {
    let apart = |text: &str| format!(" {} ", text.to_lowercase().replace(['_', ','], " "));
    !others.is_empty() && apart(words).contains(&apart(others))
}

/// A name as it is shown; nothing where it holds no word but those that only join others.
fn meant(name: &str) -> String {
    const JOINING: &[&str] = &[
        "and", "or", "of", "the", "a", "an", "to", "for", "in", "on", "at", "by", "with", "is",
        "be",
    ];
    let mut words = name
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty());
    let means = words.any(|word| !JOINING.contains(&word.to_lowercase().as_str()));
    if means {
        on_one_line(name)
    } else {
        String::new()
    }
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
        Requirement::Reference { to } => format!("as said in {}", on_one_line(to)),
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

/// Its id with the signs that tell where it needs a person: read with a doubt (!), left as words (¶), confirmed (✓), corrected (✎).
pub fn id(clause: &Clause) -> String {
    let read = match clause.confidence {
        Confidence::ByRule => "",
        Confidence::WithDoubt => " !",
        Confidence::Prose => " ¶",
    };
    let decided = match clause.status {
        Status::Draft => "",
        Status::Confirmed => " ✓",
        Status::Corrected => " ✎",
    };
    format!("{}{read}{decided}", printable(&clause.id))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_a_clause_is_about_is_said_or_said_to_be_undecided() {
        let reading = listing::read_text("a.txt", "1. Packing - Min 4 in. deep. Laid by hand.\n");
        let about = |component: &str, attribute: &str, requirement: &Requirement| {
            let mut clause = reading.clauses[0].clone();
            clause.property = "a:b".to_owned();
            clause.component = component.to_owned();
            clause.attribute = attribute.to_owned();
            clause.requirement = requirement.clone();
            subject(&clause)
        };
        let bound = &reading.clauses[0].requirement;
        assert_eq!(
            about("steel deck", "words", &Requirement::Prose),
            "steel deck, in words"
        );
        assert_eq!(about("", "words", &Requirement::Prose), "in words");
        assert_eq!(about("", "and", bound), "not decided");
        assert_eq!(about("", "", bound), "not decided");
        assert_eq!(about("joint width", "width", bound), "joint width");
        assert_eq!(
            about("studs", "penetrate the studs", bound),
            "penetrate the studs"
        );
    }
}
