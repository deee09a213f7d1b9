//! What a table's caption says of its columns: units and a qualifier.

use measure::Unit;

use super::heading::Heading;
use crate::model::Relation;
use crate::rules::qualifier;

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
        if self.unit.is_none() && measures(&self.words.to_lowercase()) {
            self.unit = unit
                .iter()
                .find(|(words, _)| lower.contains(words))
                .map(|(_, unit)| *unit);
        }
        if self.selects.is_none() && self.relation.is_none() {
            self.relation = caption_qualifier(&lower, &self.words.to_lowercase());
        }
        let sized =
            super::labelled::names_size(&self.words) || self.words.to_lowercase().contains("per ");
        if self.selects.is_none() && self.unit.is_none() && !sized && lower.contains("layers") {
            self.words = format!("{caption} {}", self.words);
        }
    }
}

/// Attributes as captions name them.
const ATTRIBUTES: &[&str] = &[
    "depth",
    "thickness",
    "width",
    "spacing",
    "lap",
    "overlap",
    "layers",
    "recess",
    "compression",
    "density",
    "length",
    "coats",
    "number",
];

/// The qualifier that a caption gives a column: "Minimum packing depth", "Number of layers (minimum)". A caption that names several attributes
/// says it of one of them, nobody knows which.
fn caption_qualifier(caption: &str, heading: &str) -> Option<Relation> {
    const LONGEST: usize = 12;
    let words = || {
        caption
            .split(|c: char| !c.is_alphabetic())
            .filter(|word| !word.is_empty())
    };
    let attributes: Vec<&str> = words().filter(|word| ATTRIBUTES.contains(word)).collect();
    let short = (each_is_limited(caption) || words().count() <= LONGEST)
        && !caption.contains(" shall ")
        && !caption.contains(" applies ");
    let of_another = ATTRIBUTES
        .iter()
        .any(|attribute| heading.contains(attribute) && !attributes.contains(attribute));
    let one =
        each_is_limited(caption) || attributes.len() <= 1 || attributes == ["number", "layers"];
    (short && one && !of_another)
        .then(|| words().find_map(qualifier))
        .flatten()
}

/// "thickness and depth are minimum values" says it of each.
fn each_is_limited(caption: &str) -> bool {
    ["minimum values", "maximum values"]
        .iter()
        .any(|words| caption.contains(words))
}

/// Whether a paragraph before a table speaks of the table.
pub(super) fn captions(caption: &str) -> bool {
    let lower = caption.to_lowercase();
    lower.starts_with("table")
        || lower.contains("in mm")
        || lower.contains("in inches")
        || lower.contains("dimensions")
        || lower.starts_with("min")
        || lower.starts_with("max")
}
