//! What a table's caption says of its columns: units and a qualifier.

mod limit;
mod size;
mod unit;

pub(in crate::clauses) use self::limit::said_of_all;
pub(super) use self::limit::{caption_qualifier, sets_a_limit, suits};
pub(super) use self::size::{ATTRIBUTES, sizes_another};

use measure::Unit;

use self::limit::{each_is_limited, limit_of_all};
use self::size::{size_in_brackets, size_of_a_piece};
use self::unit::{in_percent, named_unit, units_at_the_end};
use super::heading::Heading;
use super::statements::Stated;

impl Heading {
    /// A unit or qualifier that the caption gives holds for every column that has none of its own: "All measures in mm",
    /// "Number of layers (minimum)".
    pub(super) fn take_from_caption(&mut self, caption: &str) {
        let lower = caption.to_lowercase();
        let unit = [
            ("in mm", Unit::Millimetre),
            ("millimetres", Unit::Millimetre),
            ("in inches", Unit::Inch),
            ("in in.", Unit::Inch),
            (", in.", Unit::Inch),
            ("(in.)", Unit::Inch),
            ("(mm)", Unit::Millimetre),
            (", mm", Unit::Millimetre),
        ];
        let measures = |words: &str| {
            [
                "width",
                "depth",
                "thickness",
                "wall",
                "height",
                "lap",
                "length",
                "spacing",
                "overlap",
                "recess",
                "slab",
                "floor",
                "diameter",
                "film",
                "wet",
                "dry",
                "clearance",
            ]
            .iter()
            .any(|word| words.contains(word))
        };
        let one_system = !((lower.contains("mm") || lower.contains("millimetres"))
            && (lower.contains("inches") || lower.contains("in in.")));
        if self.unit.is_none() && one_system && measures(&self.words.to_lowercase()) {
            self.unit = unit
                .iter()
                .find(|(words, _)| lower.contains(words))
                .map(|(_, unit)| *unit);
        }
        self.unit = self
            .unit
            .or_else(|| named_unit(&lower, &self.words.to_lowercase()));
        self.take_percent(&lower);
        self.measure_as(caption, &lower);
        self.take_limit_of_all(&lower);
        // What is excepted is said of none of the names beside it.
        let excepts = ["except", "other than", "but not", "apart from"]
            .iter()
            .any(|word| lower.contains(word));
        if self.selects.is_none() && self.relation.is_none() && !excepts {
            let heading = self.words.to_lowercase();
            let stated = Stated::of(&lower);
            let of_each =
                || caption_qualifier(&lower, &heading).filter(|_| each_is_limited(&lower));
            self.relation = stated
                .by_name(&heading)
                .or_else(of_each)
                .or_else(|| stated.beside(&heading));
        }
        let sized =
            super::labelled::names_size(&self.words) || self.words.to_lowercase().contains("per ");
        if self.selects.is_none() && self.unit.is_none() && !sized && lower.contains("layers") {
            self.words = format!("{caption} {}", self.words);
        }
    }
}

impl Heading {
    /// A row's label that only names a part, under "Minimum lap of joint spray": what is measured there stands in the caption. `column` is what
    /// the labels are headed with: "Onto".
    pub(super) fn named_by(&mut self, caption: &str, column: &str) {
        const ONTO: &[&str] = &[
            "onto",
            "on",
            "over",
            "to",
            "surface",
            "substrate",
            "lap onto",
            "laps onto",
            "against",
        ];
        let lower = caption.to_lowercase();
        let onto = ONTO.contains(&column.trim().to_lowercase().as_str());
        let measures = captions(caption) && count(ATTRIBUTES, &lower) == 1;
        if measures && self.names_no_measure() && (onto || !self.names_another_part(caption)) {
            let joint = if onto { " onto " } else { ", " };
            self.words = format!("{caption}{joint}{}", self.words);
        }
    }
}

/// How many of a text's words are among others.
fn count(among: &[&str], text: &str) -> usize {
    text.split(|c: char| !c.is_alphabetic())
        .filter(|word| among.contains(word))
        .count()
}

/// Whether a paragraph before a table speaks of the table.
pub(super) fn captions(caption: &str) -> bool {
    let lower = caption.to_lowercase();
    lower.starts_with("table")
        || lower.contains("in mm")
        || lower.contains("in inches")
        || lower.contains("dimensions")
        || lower.contains("all dims in ")
        || lower.starts_with("min")
        || lower.starts_with("max")
        || units_at_the_end(&lower).is_some()
        || size_in_brackets(&lower).is_some()
        || size_of_a_piece(&lower).is_some()
        || in_percent(&lower)
        || limit_of_all(&lower).is_some()
        || !Stated::of(&lower).is_nothing()
}
