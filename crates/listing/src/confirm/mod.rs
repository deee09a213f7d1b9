//! Step 6: a person confirms a reading, clause by clause or at once.
//!
//! What they decide is an [`Overlay`], a file beside the source: who, when, which clause, and the correction if there is one.
//! An entry holds the words it was made on, not only the clause's number, so that it survives a new reading: it is found again
//! by item and words. An entry whose words are gone is reported, never dropped in silence.
//!
//! Only a [`ConfirmedListing`] can give a final verdict. It can't be made any other way than by [`confirm`], and that only when
//! every clause is covered.

mod correct;
mod overlay;
mod said;
mod standing;

use core::ops::Deref;

pub use correct::read_as;
pub(crate) use overlay::evened;
pub use overlay::{Applies, Correction, Entry, Overlay, OverlayError};
pub use said::{Said, SaidOf, Wrong};
pub use standing::{Lost, stands_for};

use correct::{correct, further};

use crate::model::{Clause, Confidence, Reading, Status};

/// A listing whose every clause a named person has confirmed or corrected.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ConfirmedListing {
    reading: Reading,
}

impl Deref for ConfirmedListing {
    type Target = Reading;

    fn deref(&self) -> &Reading {
        &self.reading
    }
}

/// A reading with an overlay laid over it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Overlaid {
    /// The reading, its clauses marked and corrected.
    pub reading: Reading,
    /// Entries whose words the reading doesn't have any more, or has more than once in the item.
    pub lost: Vec<Entry>,
    /// Whether the overlay was made on another edition of the source.
    pub other_source: bool,
}

impl Overlaid {
    /// The ids of clauses that nobody has confirmed.
    pub fn unconfirmed(&self) -> Vec<&str> {
        let drafts = self
            .reading
            .clauses
            .iter()
            .filter(|clause| clause.status == Status::Draft);
        drafts.map(|clause| clause.id.as_str()).collect()
    }

    /// The confirmed listing, when every clause is covered and nothing was lost; else the overlaid draft back.
    ///
    /// # Errors
    /// When a clause is unconfirmed or an entry was lost; the value is unchanged.
    pub fn confirmed(self) -> Result<ConfirmedListing, Box<Self>> {
        if self.unconfirmed().is_empty() && self.lost.is_empty() {
            Ok(ConfirmedListing {
                reading: self.reading,
            })
        } else {
            Err(Box::new(self))
        }
    }
}

/// Lays an overlay over a reading.
pub fn confirm(mut reading: Reading, overlay: &Overlay) -> Overlaid {
    let other_source = overlay.source_sha256 != reading.source.sha256;
    let mut lost = Vec::new();
    let mut found = Vec::new();
    for entry in &overlay.entries {
        match find(&reading.clauses, entry) {
            Some(index) => {
                if let Some(clause) = reading.clauses.get_mut(index) {
                    let read = clause.clone();
                    apply(clause, entry);
                    found.extend(further(&read, entry).map(|clause| (index, clause)));
                }
            }
            None => lost.push(entry.clone()),
        }
    }
    // Not before every entry has found its clause; from the last on, so that places hold.
    found.sort_by_key(|(index, _)| *index);
    for (index, clause) in found.into_iter().rev() {
        reading.clauses.insert(index + 1, clause);
    }
    Overlaid {
        reading,
        lost,
        other_source,
    }
}

/// An overlay in which one person confirms every clause that is still a draft.
pub fn confirm_all(reading: &Reading, by: &str, when: jiff::civil::Date) -> Overlay {
    let entries = reading
        .clauses
        .iter()
        .filter(|clause| clause.status == Status::Draft)
        .map(|clause| Entry::of(clause, by, when, None))
        .collect();
    Overlay {
        source_sha256: reading.source.sha256.clone(),
        source_name: reading.source.name.clone(),
        entries,
    }
}

/// The clause that an entry was made on: the same id with the same words, else the only clause of the item with these words and this
/// number.
fn find(clauses: &[Clause], entry: &Entry) -> Option<usize> {
    let same_words =
        |clause: &Clause| evened(&clause.words) == entry.words && clause.item == entry.item;
    let same_value = |clause: &Clause| overlay::value_of(clause) == entry.value;
    let by_id = clauses
        .iter()
        .position(|clause| clause.id == entry.clause && same_words(clause) && same_value(clause));
    by_id.or_else(|| {
        let mut fitting = clauses
            .iter()
            .enumerate()
            .filter(|(_, clause)| same_words(clause) && same_value(clause));
        let first = fitting.next()?;
        fitting.next().is_none().then_some(first.0)
    })
}

fn apply(clause: &mut Clause, entry: &Entry) {
    match &entry.correction {
        None => clause.status = Status::Confirmed,
        Some(correction) => {
            correct(clause, correction);
            clause.status = Status::Corrected;
        }
    }
    if clause.confidence == Confidence::WithDoubt {
        clause.confidence = Confidence::ByRule;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::{Relation, Requirement};
    use crate::read_text;

    const TEXT: &str = "1. Packing - Min 4 in. (102 mm) deep, nominal density 4 pcf. Fibers run parallel to the wall.\n";

    fn day() -> jiff::civil::Date {
        jiff::civil::date(2026, 3, 14)
    }

    #[test]
    fn a_confirmed_reading_survives_a_new_one() {
        let reading = read_text("a.txt", TEXT);
        let overlay = confirm_all(&reading, "Reviewer", day());
        assert!(confirm(reading, &overlay).confirmed().is_ok());
        // An item put in before moves every number, but the words are found again.
        let moved = read_text(
            "a.txt",
            &TEXT.replace("1. Packing", "1. Floor - Concrete floor.\n\n2. Packing"),
        );
        let overlaid = confirm(moved, &overlay);
        assert!(overlaid.other_source);
        assert_eq!(
            overlaid.lost.len(),
            overlay.entries.len(),
            "another item is another place"
        );
        let spaced = read_text("a.txt", &TEXT.replace("deep, nominal", "deep,\n   nominal"));
        assert!(confirm(spaced, &overlay).lost.is_empty());
    }

    #[test]
    fn changed_words_are_reported() {
        let overlay = confirm_all(&read_text("a.txt", TEXT), "Reviewer", day());
        let changed = confirm(
            read_text("a.txt", &TEXT.replace("4 in. (102 mm)", "5 in. (127 mm)")),
            &overlay,
        );
        assert!(!changed.lost.is_empty());
        assert!(!changed.unconfirmed().is_empty());
        assert!(changed.confirmed().is_err());
    }

    #[test]
    fn a_correction_replaces_the_reading() {
        let reading = read_text("a.txt", TEXT);
        let mut overlay = confirm_all(&reading, "Reviewer", day());
        overlay.entries[1].correction = Some(Correction {
            relation: Some(Relation::AtLeast),
            ..Correction::default()
        });
        let written = overlay.to_toml();
        assert_eq!(Overlay::parse(&written).unwrap(), overlay);
        let confirmed = confirm(reading, &overlay).confirmed().unwrap();
        assert_eq!(confirmed.clauses[1].status, Status::Corrected);
        assert_eq!(
            confirmed.clauses[1].bound().unwrap().relation,
            Relation::AtLeast
        );
    }

    #[test]
    fn words_that_no_rule_could_read_become_clauses() {
        let reading = read_text("a.txt", TEXT);
        let prose = reading
            .clauses
            .iter()
            .position(|clause| clause.requirement == Requirement::Prose)
            .unwrap();
        let mut overlay = confirm_all(&reading, "Reviewer", day());
        let said = |value: &str| Said {
            property: Some("packing.depth".to_owned()),
            relation: Some(Relation::AtMost),
            value: Some(value.to_owned()),
            applies: Some(SaidOf {
                property: "joint.width".to_owned(),
                relation: Relation::MoreThan,
                value: "2 in.".to_owned(),
            }),
            ..Said::default()
        };
        let clause = &reading.clauses[prose];
        let correct = |value: &str| said(value).correction(clause, &reading).unwrap();
        overlay.entries[prose].correction = Some(correct("6 in."));
        overlay.entries[prose].further = vec![correct("7 in."), correct("8 in.")];
        assert_eq!(Overlay::parse(&overlay.to_toml()).unwrap(), overlay);
        let confirmed = confirm(reading.clone(), &overlay).confirmed().unwrap();
        let found: Vec<(&str, String)> = confirmed.clauses[prose..prose + 3]
            .iter()
            .map(|clause| (clause.id.as_str(), clause.bound().unwrap().to_string()))
            .collect();
        let id = clause.id.as_str();
        assert_eq!(found[0], (id, "at most 6 in.".to_owned()));
        assert_eq!(found[1].1, "at most 7 in.");
        assert_eq!(found[2].1, "at most 8 in.");
        assert_eq!(read_as(found[2].0), id);
        for clause in &confirmed.clauses[prose..prose + 3] {
            assert_eq!(clause.words, reading.clauses[prose].words);
            assert_eq!(clause.confidence, Confidence::ByRule);
            let applies = clause.condition.as_ref().unwrap().expr.to_string();
            assert_eq!(applies, "joint.width > 2 in.");
        }
        assert_eq!(confirmed.clauses.len(), reading.clauses.len() + 2);
        assert_eq!(
            confirmed.places, reading.places,
            "words stay where they are"
        );
        assert!(
            Said {
                value: Some("6".to_owned()),
                ..said("6 in.")
            }
            .correction(clause, &reading)
            .is_err()
        );
        assert!(
            Said {
                value: Some("6 pcf".to_owned()),
                ..said("6 in.")
            }
            .correction(clause, &reading)
            .is_err()
        );
        assert!(
            Said {
                option: Some("Z".to_owned()),
                ..said("6 in.")
            }
            .correction(clause, &reading)
            .is_err()
        );
    }

    #[test]
    fn words_that_require_nothing_ask_for_nothing() {
        let reading = read_text("a.txt", TEXT);
        let mut overlay = confirm_all(&reading, "Reviewer", day());
        overlay.entries[0].correction = Some(Correction {
            presence: Some(crate::model::Presence::Optional),
            ..Correction::default()
        });
        let confirmed = confirm(reading, &overlay).confirmed().unwrap();
        let presence = crate::model::Presence::Optional;
        assert_eq!(
            confirmed.clauses[0].requirement,
            Requirement::Presence { presence }
        );
    }
}
