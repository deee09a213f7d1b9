//! Step 6: a person confirms a reading, clause by clause or at once.
//!
//! What they decide is an [`Overlay`], a file beside the source: who, when, which clause, and the correction if there is one.
//! An entry holds the words it was made on, not only the clause's number, so that it survives a new reading: it is found again
//! by item and words. An entry whose words are gone is reported, never dropped in silence.
//!
//! Only a [`ConfirmedListing`] can give a final verdict. It can't be made any other way than by [`confirm`], and that only when
//! every clause is covered.

mod overlay;
mod said;

use core::ops::Deref;

pub use overlay::{Applies, Correction, Entry, Overlay, OverlayError};
pub use said::{Said, SaidOf, Wrong};

use measure::Quantity;
use measure::notation::quantity_at;

use crate::model::{
    Bound, Clause, Condition, Confidence, Expr, Reading, Relation, Requirement, Span, Status, Test,
};

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

/// What a person found in the words of a clause besides; each is a clause of its own, after that one.
fn further<'e>(read: &Clause, entry: &'e Entry) -> impl Iterator<Item = Clause> + use<'e> {
    let read = read.clone();
    let found = entry.further.iter().zip(1_usize..);
    found.map(move |(correction, nth)| {
        let mut clause = Clause {
            id: format!("{}{FURTHER}{nth}", read.id),
            requirement: Requirement::Prose,
            read_by: Vec::new(),
            confidence: Confidence::Prose,
            status: Status::Corrected,
            ..read.clone()
        };
        correct(&mut clause, correction);
        clause
    })
}

/// Stands in the id of a clause that a person found in the words of another: `3A/2+1`.
const FURTHER: char = '+';

/// The id of the clause in whose words a clause was found: its own, unless a person found it.
pub fn read_as(id: &str) -> &str {
    id.split_once(FURTHER).map_or(id, |(read, _)| read)
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
    if let Some(applies) = &correction.applies {
        clause.condition = Some(condition(clause, applies));
    }
    if let Some(option) = &correction.option {
        clause.option = (!option.is_empty()).then(|| option.clone());
    }
    if let Some(presence) = correction.presence {
        clause.requirement = Requirement::Presence { presence };
    }
    if !correction.names.is_empty() {
        clause.requirement = Requirement::Named {
            names: correction.names.clone(),
        };
    }
    if let Some(relation) = correction.relation {
        let stated_in_words = correction
            .lo
            .or(correction.hi)
            .and_then(|value| place(clause, value));
        let at = clause.bound().map(|bound| bound.at).or(stated_in_words);
        let at = at.unwrap_or_else(|| Span::new(clause.span.start(), clause.span.start()));
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
    if clause.requirement != Requirement::Prose && clause.confidence == Confidence::Prose {
        clause.confidence = Confidence::ByRule;
    }
}

/// When a clause applies, as a person says it; the words are the clause's own.
fn condition(clause: &Clause, applies: &Applies) -> Condition {
    Condition {
        words: clause.words.clone(),
        span: clause.span,
        expr: Expr::Test(Test {
            property: applies.property.clone(),
            relation: applies.relation,
            lo: applies.lo,
            hi: applies.hi,
            lo_excluded: false,
        }),
    }
}

/// Where a clause's words state a value.
fn place(clause: &Clause, value: Quantity) -> Option<Span> {
    let starts = clause.words.char_indices().map(|(at, _)| at);
    let mut stated = starts.filter_map(|at| quantity_at(&clause.words, at));
    let found = stated
        .find(|stated| stated.quantity().compare(value) == Some(core::cmp::Ordering::Equal))?;
    let start = clause.span.start();
    let span = Span::new(start + found.span.start, start + found.span.end);
    (span.end() <= clause.span.end()).then_some(span)
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
