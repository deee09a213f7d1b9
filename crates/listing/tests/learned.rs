//! From a correction to a case and back: what a person corrects fails as a case until the reader agrees.

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    reason = "a test may stop where it fails"
)]

use listing::cases::{Cases, failures, of_corrections};
use listing::confirm::{Correction, Entry, Overlay, confirm};
use listing::{Clause, Reading, Relation, Requirement, read_text};
use measure::Quantity;

fn demo() -> String {
    let path = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../everyclause/demo/listings/hw-d-0412-ed4.txt"
    );
    std::fs::read_to_string(path).unwrap()
}

fn corrected(text: &str, corrections: &[(&Clause, Correction)]) -> Cases {
    let as_read = read_text("a.txt", text);
    let day = jiff::civil::date(2026, 3, 14);
    let entries = corrections
        .iter()
        .map(|(clause, correction)| Entry::of(clause, "A. Reader", day, Some(correction.clone())))
        .collect();
    let overlay = Overlay {
        source_sha256: as_read.source.sha256.clone(),
        source_name: "a.txt".to_owned(),
        entries,
    };
    let overlaid = confirm(as_read.clone(), &overlay);
    assert!(overlaid.lost.is_empty());
    of_corrections(text, &as_read, &overlaid.reading)
}

fn bounds(reading: &Reading) -> impl Iterator<Item = &Clause> {
    reading
        .clauses
        .iter()
        .filter(|clause| clause.bound().is_some())
}

#[test]
fn what_the_reader_reads_already_passes() {
    let text = demo();
    let reading = read_text("a.txt", &text);
    // Every bound of the listing, corrected to what it is.
    let corrections: Vec<(&Clause, Correction)> = bounds(&reading)
        .map(|clause| {
            (
                clause,
                Correction {
                    property: Some(clause.property.clone()),
                    ..Correction::default()
                },
            )
        })
        .collect();
    assert!(corrections.len() > 20);
    let cases = corrected(&text, &corrections);
    assert_eq!(cases.held, corrections.len());
    assert!(cases.left.is_empty());
    assert_eq!(failures(&cases.page), Vec::<String>::new());
}

#[test]
fn what_the_reader_reads_otherwise_fails() {
    let text = demo();
    let reading = read_text("a.txt", &text);
    // Each of them corrected to something else, in every way in which it can be.
    for clause in bounds(&reading) {
        let bound = clause.bound().unwrap();
        let relation = if bound.relation == Relation::MoreThan {
            Relation::LessThan
        } else {
            Relation::MoreThan
        };
        let value = Quantity::new(measure::Number::whole(7), bound.unit);
        let wrong = [
            Correction {
                relation: Some(relation),
                lo: Some(value),
                ..Correction::default()
            },
            Correction {
                property: Some("firestop.colour".to_owned()),
                ..Correction::default()
            },
            Correction {
                prose: true,
                ..Correction::default()
            },
        ];
        for correction in wrong {
            let cases = corrected(&text, &[(clause, correction)]);
            assert_eq!(cases.held, 1, "{}", clause.id);
            assert_eq!(failures(&cases.page).len(), 1, "{}", cases.page);
        }
        if clause.condition.is_some() {
            let correction = Correction {
                unconditional: true,
                ..Correction::default()
            };
            let cases = corrected(&text, &[(clause, correction)]);
            assert_eq!(failures(&cases.page).len(), 1, "{}", cases.page);
        }
    }
}

#[test]
fn a_number_that_was_left_as_words_can_be_taught() {
    let text = "1. Packing - Wool is packed hand over hand.\n";
    let reading = read_text("a.txt", text);
    let clause = reading
        .clauses
        .iter()
        .find(|clause| clause.requirement == Requirement::Prose)
        .unwrap();
    let correction = Correction {
        property: Some("packing.depth".to_owned()),
        relation: Some(Relation::AtLeast),
        lo: Some(Quantity::parse("4 in.").unwrap()),
        ..Correction::default()
    };
    let cases = corrected(text, &[(clause, correction)]);
    assert!(
        cases.page.contains("\n- at least 4 in of packing.depth\n"),
        "{}",
        cases.page
    );
    assert_eq!(failures(&cases.page).len(), 1);
}
