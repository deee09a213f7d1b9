//! What a document states of all its units: `All dimensions are in millimetres unless noted otherwise. Densities in kg/m3.`

use measure::notation;
use measure::{Dimension, Unit};

use crate::layout::UsualUnits;

/// The units that a document states for all its numbers: `All dimensions are in millimetres unless noted otherwise. Densities in kg/m3.` None where it
/// states none, or two.
pub(crate) fn usual_units(text: &str) -> UsualUnits {
    const LENGTHS: &[&str] = &["dimensions", "measurements", "lengths", "sizes"];
    UsualUnits {
        length: stated(text, LENGTHS, Dimension::Length),
        density: stated(text, &["densities"], Dimension::Density),
        bare: None,
    }
}

fn stated(text: &str, nouns: &[&str], dimension: Dimension) -> Option<Unit> {
    let mut found = None;
    let begins = |c: char| {
        nouns
            .iter()
            .any(|noun| noun.starts_with(c.to_ascii_lowercase()))
    };
    for (at, _) in text.match_indices(begins) {
        let Some(unit) = statement_at(text, at, nouns, dimension) else {
            continue;
        };
        if found.is_some_and(|held| held != unit) {
            return None;
        }
        found = Some(unit);
    }
    found
}

/// The unit of a statement whose noun begins here: `dimensions are in mm`, `dimensions in inches unless`.
fn statement_at(text: &str, at: usize, nouns: &[&str], dimension: Dimension) -> Option<Unit> {
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
    const MOST_WORDS: usize = 8;
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
    for word in rest.get(noun.len()..)?.split_whitespace().take(MOST_WORDS) {
        let bare = word
            .trim_matches(|c: char| !c.is_alphanumeric())
            .to_lowercase();
        // `in` alone is a word here, and no inch.
        let unit = (bare != "in")
            .then(|| notation::unit_at(&format!("1 {bare}"), 1))
            .flatten();
        if let Some((unit, end)) = unit
            && end == bare.len() + 2
            && unit.dimension() == dimension
        {
            return says_in.then_some(unit);
        }
        if !BETWEEN.contains(&bare.as_str()) {
            return None;
        }
        says_in |= ["in", "are", "as"].contains(&bare.as_str());
    }
    None
}
