//! Which headings select rows: those of the joint's width, of its rating and of a case.

use super::Selects;
use super::words::Words;

impl Words {
    /// What its cells would select rows by.
    pub(super) fn selects(&self) -> Option<Selects> {
        let width = self.says(&["width", "widths", "opening", "openings", "gap", "gaps"])
            && self.words.iter().all(|word| speaks_of_joint_width(word));
        if width {
            Some(Selects::Width)
        } else if self.names_rating() {
            Some(Selects::Rating)
        } else if self.names_case() {
            Some(Selects::Other)
        } else {
            None
        }
    }

    /// Whether it names the joint's rating. A time to wait is none, nor is a rating by heat.
    fn names_rating(&self) -> bool {
        const WAITS: &[&str] = &[
            "cure",
            "curing",
            "recoat",
            "drying",
            "dry",
            "tack",
            "time",
            "storage",
            "life",
            "wait",
            "waiting",
            "after",
            "traffic",
            "skin",
            "foot",
            "walk",
            "recoating",
            "overcoating",
            "handling",
            "set",
            "setting",
            "touch",
            "between",
            "pot",
            "shelf",
            "interval",
            "rain",
        ];
        let by_heat = self.says(&["t", "l", "w"]) && self.says(&["rating"]);
        let named = self.says(&[
            "rating",
            "hr",
            "hrs",
            "hour",
            "hours",
            "period",
            "frl",
            "resistance",
        ]) || self.words.len() == 1 && self.says(&["h"]);
        named && !by_heat && !self.says(WAITS)
    }

    /// Whether it names the case that a row is for.
    fn names_case(&self) -> bool {
        const CASES: &[&str] = &[
            "orientation",
            "kind",
            "condition",
            "configuration",
            "pipe",
            "case",
            "type",
            "combination",
            "row",
            "ref",
            "reference",
            "mark",
            "kit",
            "position",
            "location",
            "application",
        ];
        let numbered = self.says(&["size", "no"]) && self.words.len() <= 2 && !self.says(PARTS);
        self.says(CASES) || numbered
    }
}

/// Parts that have a number or a size of their own.
const PARTS: &[&str] = &[
    "coats",
    "coat",
    "layers",
    "screw",
    "screws",
    "clip",
    "clips",
    "runner",
    "packing",
    "stud",
    "fasteners",
    "anchors",
    "pins",
];

/// Whether a word may stand in the heading of the joint's width. "Profile width" is the width of something else.
fn speaks_of_joint_width(word: &str) -> bool {
    const WIDTH: &[&str] = &[
        "width",
        "widths",
        "wide",
        "joint",
        "joints",
        "jt",
        "opening",
        "openings",
        "gap",
        "gaps",
        "linear",
        "nominal",
        "nom",
        "of",
        "the",
        "in",
        "w",
        "b",
        "from",
        "to",
        "up",
        "at",
        "as",
        "range",
        "installed",
        "built",
        "clear",
        "design",
        "between",
        "over",
        "max",
        "maximum",
        "min",
        "minimum",
        "or",
        "and",
        "mm",
        "inch",
        "inches",
        "cm",
        "less",
        "than",
        "more",
        "least",
        "most",
        "not",
        "exceeding",
        "tested",
        "measured",
        "actual",
        "when",
        "is",
        "band",
    ];
    WIDTH.contains(&word) || word.chars().all(|c| !c.is_alphabetic())
}
