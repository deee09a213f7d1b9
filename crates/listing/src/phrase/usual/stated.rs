//! What a document states of all its units: `All dimensions are in millimetres unless noted otherwise. Densities in kg/m3.`

use measure::notation;
use measure::{Dimension, Unit};

use super::pointed::are_pointed;
use crate::layout::UsualUnits;

/// The units that a document states for all its numbers: `All dimensions are in millimetres unless noted otherwise. Densities in kg/m3.` None where it
/// states none, or two.
pub(crate) fn usual_units(text: &str) -> UsualUnits {
    const LENGTHS: &[&str] = &["dimensions", "measurements", "lengths", "sizes"];
    UsualUnits {
        length: stated(text, LENGTHS, Dimension::Length).map(|(unit, _)| unit),
        second_length: second_stated(text, LENGTHS),
        density: stated(text, &["densities"], Dimension::Density).map(|(unit, _)| unit),
        bare: None,
        pointed: are_pointed(text),
    }
}

/// The unit of the lengths that stand in parentheses behind others: `Dimensions are inches with (mm)`.
fn second_stated(text: &str, nouns: &[&str]) -> Option<Unit> {
    const JOINS: &[&str] = &["with", "and", "the", "equivalents", "values"];
    const MOST_WORDS: usize = 4;
    let (first, end) = stated(text, nouns, Dimension::Length)?;
    let rest = text.get(end..)?;
    if text.get(..end)?.ends_with(['.', ';']) {
        return None;
    }
    for (index, word) in rest.split_whitespace().take(MOST_WORDS).enumerate() {
        let bare = word
            .trim_matches(|c: char| !c.is_alphanumeric())
            .to_lowercase();
        let unit = notation::unit_at(&format!("1 {bare}"), 1)
            .filter(|(unit, _)| unit.dimension() == Dimension::Length && *unit != first);
        let Some((unit, _)) = unit.filter(|_| bare != "in") else {
            let joins = JOINS.contains(&bare.as_str());
            if !joins || word.ends_with(['.', ';']) {
                return None;
            }
            continue;
        };
        let after = rest.split_whitespace().skip(index + 1).take(2);
        let says_so = after
            .map(|word| word.trim_matches(|c: char| !c.is_alphanumeric()))
            .any(|word| ["parentheses", "brackets"].contains(&word));
        return (word.starts_with('(') || says_so).then_some(unit);
    }
    None
}

/// The unit that a statement gives, and where the statement ends.
fn stated(text: &str, nouns: &[&str], dimension: Dimension) -> Option<(Unit, usize)> {
    let mut found: Option<(Unit, usize)> = None;
    let begins = |c: char| {
        nouns
            .iter()
            .any(|noun| noun.starts_with(c.to_ascii_lowercase()))
    };
    for (at, _) in text.match_indices(begins) {
        let Some(unit) = statement_at(text, at, nouns, dimension) else {
            continue;
        };
        if found.is_some_and(|(held, _)| held != unit.0) {
            return None;
        }
        found = found.or(Some(unit));
    }
    found
}

/// The unit of a statement whose noun begins here: `dimensions are in mm`, `dimensions in inches unless`.
fn statement_at(
    text: &str,
    at: usize,
    nouns: &[&str],
    dimension: Dimension,
) -> Option<(Unit, usize)> {
    const BETWEEN: &[&str] = &[
        "are",
        "is",
        "given",
        "stated",
        "shown",
        "quoted",
        "expressed",
        "as",
        "and",
        "in",
        "card",
        "document",
        "drawing",
        "listing",
        "report",
        "schedule",
        "table",
        "entry",
        "on",
        "this",
        "sheet",
        "thicknesses",
        "lengths",
        "widths",
        "all",
        "herein",
        "listed",
    ];
    /// The space after the noun counts as one.
    const MOST_WORDS: usize = 9;
    let starts_word = !text.get(..at)?.ends_with(char::is_alphanumeric);
    let rest = text.get(at..)?;
    let noun = nouns.iter().find(|noun| {
        rest.get(..noun.len())
            .is_some_and(|head| head.eq_ignore_ascii_case(noun))
    })?;
    if !starts_word {
        return None;
    }
    let mut says_in = false;
    let mut end = at + noun.len();
    let pieces = rest.get(noun.len()..)?.split_inclusive(char::is_whitespace);
    for piece in pieces.take(MOST_WORDS) {
        let word = piece.trim_end();
        let after = end + word.len();
        end += piece.len();
        if word.is_empty() {
            continue;
        }
        let bare = word
            .trim_matches(|c: char| !c.is_alphanumeric())
            .to_lowercase();
        // `in` alone is a word here, and no inch.
        let unit = (bare != "in")
            .then(|| notation::unit_at(&format!("1 {bare}"), 1))
            .flatten();
        if let Some((unit, read)) = unit
            && read == bare.len() + 2
            && unit.dimension() == dimension
        {
            return says_in.then_some((unit, after));
        }
        if !BETWEEN.contains(&bare.as_str()) {
            return None;
        }
        says_in |= ["in", "are", "as"].contains(&bare.as_str());
    }
    None
}
