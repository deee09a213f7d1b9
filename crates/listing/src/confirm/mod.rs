//! Step 6: a person confirms a reading, clause by clause or at once.
//!
//! What they decide is an [`Overlay`], a file beside the source: who, when, which clause, and the correction if there is one.
//! An entry holds the words it was made on, not only the clause's number, so that it survives a new reading: it is found again
//! by item and words. An entry whose words are gone is reported, never dropped in silence.
//!
//! Only a [`ConfirmedListing`] can give a final verdict. It can't be made any other way than by [`confirm`], and that only when
//! every clause is covered.

mod overlay;

use core::ops::Deref;

pub use overlay::{Correction, Entry, Overlay, OverlayError};

use crate::model::{Bound, Clause, Confidence, Reading, Relation, Requirement, Span, Status};

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
    for entry in &overlay.entries {
        match find(&reading.clauses, entry) {
            Some(index) => {
                if let Some(clause) = reading.clauses.get_mut(index) {
                    apply(clause, entry);
                }
            }
            None => lost.push(entry.clone()),
        }
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
    let same_words = |clause: &Clause| {
        overlay::evened(&clause.words) == entry.words && clause.item == entry.item
    };
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

/// Replaces what a person has corrected; the words and their place stay the listing's.
fn correct(clause: &mut Clause, correction: &Correction) {
    if let Some(property) = &correction.property {
        clause.property.clone_from(property);
        if let Some(known) = vocabulary::vocabulary().property(property) {
            clause.component.clone_from(&known.component);
            clause.attribute = known.attribute.replace('_', " ");
        }
    }
    if correction.prose {
        clause.requirement = Requirement::Prose;
        clause.confidence = Confidence::Prose;
    }
    if correction.unconditional {
        clause.condition = None;
    }
    if let Some(relation) = correction.relation {
        let at = clause.bound().map_or_else(
            || Span::new(clause.span.start(), clause.span.start()),
            |bound| bound.at,
        );
        let held = clause.bound().cloned();
        let value = |own: Option<measure::Quantity>| own.map(|quantity| quantity.number);
        let unit = correction
            .lo
            .or(correction.hi)
            .map(|quantity| quantity.unit)
            .or(held.as_ref().map(|bound| bound.unit));
        let Some(unit) = unit else { return };
        let stated = correction.lo.is_some() || correction.hi.is_some();
        let (lo, hi) = if stated {
            (value(correction.lo), value(correction.hi))
        } else {
            let one = held.as_ref().and_then(|bound| bound.lo.or(bound.hi));
            match relation {
                Relation::AtMost | Relation::LessThan => (None, one),
                Relation::Between => (
                    held.as_ref().and_then(|bound| bound.lo),
                    held.as_ref().and_then(|bound| bound.hi),
                ),
                _ => (one, None),
            }
        };
        let second = if stated {
            None
        } else {
            held.and_then(|bound| bound.second)
        };
        clause.requirement = Requirement::Bound(Bound {
            relation,
            lo,
            hi,
            unit,
            lo_excluded: false,
            bare: false,
            at,
            second,
        });
    }
}

#[cfg(test)]
mod tests {
    use super::*;
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
}
