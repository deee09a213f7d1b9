//! Limits on the side that nobody limits: "packing less than 4 in. deep", "joints wider than 2 in." without a "not" or a "shall".
//!
//! A joint is kept from being too wide, and its packing from being too thin. Where a sentence compares the other way and demands nothing, it speaks of a
//! fault, a case or what is excluded, however it goes on: "Causes for rejection: ...", "See Item 5 for ...", "Special inspection: ...". Such a number is left
//! unread. What it would misread, as a number that nobody read: a scope in few words, "Joints over 2 in.", that the document means as one.

use measure::{Dimension, Unit};

use super::bounds::Reading;
use crate::model::Relation;
use crate::naming::Name;
use crate::rules::Sentence;

/// What is wanted small: words of an attribute.
const SMALL: &[&str] = &["spacing", "gap", "recess", "movement", "slope", "moisture"];

/// What is wanted large.
const LARGE: &[&str] = &[
    "depth",
    "thickness",
    "density",
    "compression",
    "compress",
    "overlap",
    "lap",
    "embedment",
    "layers",
    "coats",
    "bearing",
    "strength",
];

/// Whether a number is compared on the side that nobody limits, in words that demand nothing.
pub(super) fn is_against_nature(sentence: &Sentence<'_>, reading: &Reading, name: &Name) -> bool {
    let against = match reading.bound.relation {
        Relation::MoreThan => is_wanted_small(reading, name),
        Relation::LessThan => {
            is_wanted_large(name) || is_of_a_film(reading) || is_of_a_solid(reading, name)
        }
        _ => false,
    };
    let first = reading
        .amounts
        .first()
        .and_then(|index| sentence.amount(*index));
    against && first.is_some_and(|amount| !is_demanded(sentence, amount.first))
}

fn is_wanted_small(reading: &Reading, name: &Name) -> bool {
    let length = reading.bound.unit.dimension() == Dimension::Length;
    length && is_of_an_opening(name) && !has_word(name, LARGE) || has_word(name, SMALL)
}

/// Whether what is measured is no part, but the space between two.
fn is_of_an_opening(name: &Name) -> bool {
    ["joint", "gap", "opening"].contains(&name.component.as_str())
        || has_word(name, &["joint", "gap", "opening"])
}

fn is_wanted_large(name: &Name) -> bool {
    let of_part = !is_of_an_opening(name) && has_word(name, &["width", "length"]);
    (of_part || has_word(name, LARGE)) && !has_word(name, SMALL)
}

/// Films are measured in thousandths, and are never too thick.
const fn is_of_a_film(reading: &Reading) -> bool {
    matches!(reading.bound.unit, Unit::Mil | Unit::Micrometre)
}

/// A wall "less than 8 in." is less than 8 in. thick.
fn is_of_a_solid(reading: &Reading, name: &Name) -> bool {
    const SOLIDS: &[&str] = &[
        "wall", "floor", "slab", "concrete", "packing", "board", "sealant",
    ];
    let length = reading.bound.unit.dimension() == Dimension::Length;
    let measured = [
        "height", "high", "span", "recess", "distance", "apart", "splice", "open", "seam",
    ];
    length && SOLIDS.contains(&name.component.as_str()) && !has_word(name, &measured)
}

fn has_word(name: &Name, words: &[&str]) -> bool {
    let attribute = name.attribute.to_lowercase();
    attribute
        .split(|c: char| !c.is_alphabetic())
        .any(|word| words.contains(&word))
}

/// Whether a verb before a number demands it.
fn is_demanded(sentence: &Sentence<'_>, first: usize) -> bool {
    const DEMANDS: &[&str] = &[
        "shall", "must", "should", "will", "required", "require", "requires", "needs", "ensure",
        "maintain", "keep",
    ];
    (0..first).any(|at| {
        sentence.is_any(at, DEMANDS) || sentence.is_word(at, "to") && sentence.is_word(at + 1, "be")
    })
}
