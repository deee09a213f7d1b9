//! What is doubtful about a clause, in plain words.

use listing::{Clause, Confidence, Reading, WarningKind};
use measure::Agreement;

use crate::text::{listed, on_one_line};

/// What a person should look at before confirming a clause that was read with a doubt, a sentence each; empty for any other clause.
pub fn reasons(reading: &Reading, clause: &Clause) -> Vec<String> {
    if clause.confidence != Confidence::WithDoubt {
        return Vec::new();
    }
    let known: Vec<String> = [units(clause), twice(reading, clause)]
        .into_iter()
        .flatten()
        .collect();
    if !known.is_empty() {
        return known;
    }
    match clause.read_by.first().map(String::as_str) {
        Some("kind beside a number") => {
            vec!["the kinds named here hold in different cases, which the reading joins; look which holds when".to_owned()]
        }
        Some("closing qualifier") => vec![
            "the qualifier ends a list, and may mean fewer of the values before it than all"
                .to_owned(),
            about_what(clause),
        ],
        _ => vec![about_what(clause)],
    }
}

/// What is doubtful about a clause, in a few words; nothing when nothing is.
pub fn in_short(reading: &Reading, clause: &Clause) -> Option<String> {
    if clause.confidence != Confidence::WithDoubt {
        return None;
    }
    if units(clause).is_some() {
        return Some("its two units disagree".to_owned());
    }
    if let Some(others) = others(reading, clause) {
        return Some(format!("another value in {}", listed(&others)));
    }
    let words = match clause.read_by.first().map(String::as_str) {
        Some("kind beside a number") => "kinds that hold in different cases",
        Some("closing qualifier") => "its qualifier may mean fewer values",
        _ if clause.is_in_vocabulary() => "it may be about something else",
        _ => "what it is about is not decided",
    };
    Some(words.to_owned())
}

/// The two units of one value disagree.
fn units(clause: &Clause) -> Option<String> {
    let second = clause.bound()?.second.as_ref()?;
    (second.agreement == Agreement::InConflict).then(|| {
        "the value is stated in two units that disagree; say which of them holds".to_owned()
    })
}

/// Another clause of the item bounds the same.
fn twice(reading: &Reading, clause: &Clause) -> Option<String> {
    others(reading, clause).map(|others| {
        format!(
            "{} {} for another value of the same thing; look for what tells them apart, such as a place, a case or another part",
            listed(&others),
            if others.len() == 1 { "asks" } else { "ask" }
        )
    })
}

/// The other clauses of the item that bound the same.
fn others(reading: &Reading, clause: &Clause) -> Option<Vec<String>> {
    let is_named_with = |other: &Clause| {
        reading.warnings.iter().any(|warning| {
            let names = |id: &str| {
                let mut words = warning
                    .message
                    .split(|c: char| c.is_whitespace() || "();,".contains(c));
                words.any(|word| word == id)
            };
            warning.kind == WarningKind::Contradiction && names(&clause.id) && names(&other.id)
        })
    };
    let others: Vec<String> = reading
        .clauses
        .iter()
        .filter(|other| other.id != clause.id && other.item == clause.item)
        .filter(|other| other.property == clause.property && other.bound().is_some())
        .filter(|other| !clause.is_in_vocabulary() || is_named_with(other))
        .map(|other| on_one_line(&other.id))
        .collect();
    (!others.is_empty()).then_some(others)
}

/// No other reason is left than what the number was taken to be about.
fn about_what(clause: &Clause) -> String {
    match vocabulary::vocabulary().property(&clause.property) {
        Some(property) => format!(
            "the number may be about something else than “{}”: another property fits these words nearly as well",
            property.title
        ),
        None => "what the number is about is not decided: two properties fit these words equally well, so the listing's own words stand"
            .to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn doubts(text: &str) -> Vec<(String, Vec<String>)> {
        let reading = listing::read_text("a.txt", text);
        let doubtful = reading
            .clauses
            .iter()
            .filter(|clause| clause.confidence == Confidence::WithDoubt);
        doubtful
            .map(|clause| (clause.id.clone(), reasons(&reading, clause)))
            .collect()
    }

    #[test]
    fn two_values_of_one_thing_name_each_other() {
        let found = doubts("1. Packing - Nominal density 4 pcf. Nominal density 6 pcf.\n");
        assert_eq!(found.len(), 2, "{found:?}");
        for ((id, reasons), other) in found.iter().zip(["1/2", "1/1"]) {
            assert!(
                reasons
                    .iter()
                    .any(|reason| reason.starts_with(&format!("{other} asks"))),
                "{id}: {reasons:?}"
            );
        }
    }

    #[test]
    fn units_that_disagree_are_told() {
        let found = doubts("1. Packing - Min 4 in. (202 mm) deep.\n");
        let told = found
            .iter()
            .flat_map(|(_, reasons)| reasons)
            .any(|reason| reason.contains("two units that disagree"));
        assert!(told, "{found:?}");
    }

    #[test]
    fn no_doubt_is_without_its_reason() {
        let reading = listing::read_text(
            "a.txt",
            "1. Wall - Gypsum board, density \u{2265} 550 kg/m\u{b3}, min 4 in. deep.\n",
        );
        for clause in &reading.clauses {
            let is_doubtful = clause.confidence == Confidence::WithDoubt;
            assert_eq!(!reasons(&reading, clause).is_empty(), is_doubtful);
        }
    }
}
