//! What a heading says of the cells below it, or beside it: unit, qualifier, property, and which joints they are for.

mod selects;
mod words;

pub(super) use self::words::unit_of;

use measure::{Dimension, Unit};

use self::words::Words;
use super::rating::{Rating, split_rating};
use crate::model::Relation;

/// What a heading says of its cells.
#[derive(Debug, Clone)]
pub(in crate::clauses) struct Heading {
    pub(super) words: String,
    pub(in crate::clauses) unit: Option<Unit>,
    pub(in crate::clauses) second_unit: Option<Unit>,
    pub(super) relation: Option<Relation>,
    pub(in crate::clauses) selects: Option<Selects>,
    /// The property of the joint that its cells require, where it selects no rows.
    pub(in crate::clauses) requires: Option<&'static str>,
    /// The rating that the whole column is for: `EI 90`, `2 hr`.
    pub(super) rating: Option<Rating>,
    /// Whether it names a unit that isn't known, `ft2/gal`: its bare numbers are no counts.
    pub(super) unit_unknown: bool,
    /// Whether a limit was set that nobody knows how to place: its bare numbers may be limited.
    pub(super) limit_unknown: bool,
    /// What its cells are of.
    pub(super) sense: Sense,
}

/// What the numbers below a heading are.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Sense {
    /// Values of what it names.
    Value,
    /// Meant both ways where they are bare: `Movement, % (+/-)`.
    BothWays,
    /// Measured where it says, and the caption what: `Flange tips` under "thicknesses in inches".
    AtPlace,
}

/// What a column that selects rows tests.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::clauses) enum Selects {
    Width,
    Rating,
    Other,
}

impl Selects {
    /// The property that it tests.
    pub(in crate::clauses) const fn property(self) -> Option<&'static str> {
        match self {
            Self::Width => Some("joint.width"),
            Self::Rating => Some("joint.rating"),
            Self::Other => None,
        }
    }
}

impl Heading {
    /// Whether its column holds classes: `Classification`, `FRL`.
    pub(super) fn names_a_class(&self) -> bool {
        const CLASSES: &[&str] = &["class", "classes", "classification", "frl", "frr"];
        let words = self.words.split(|c: char| !c.is_alphabetic());
        let mut words = words.map(str::to_lowercase);
        words.any(|word| CLASSES.contains(&word.as_str()))
    }

    /// A heading that only says for which joints its cells are.
    pub(super) const fn for_case(case: Rating) -> Self {
        Self {
            words: String::new(),
            unit: None,
            second_unit: None,
            relation: None,
            selects: None,
            requires: None,
            rating: Some(case),
            unit_unknown: false,
            limit_unknown: false,
            sense: Sense::Value,
        }
    }

    /// Whether it only says for which widths its cells are.
    pub(super) fn is_band(&self) -> bool {
        self.words.is_empty()
            && self
                .rating
                .as_ref()
                .is_some_and(|rating| !rating.expr.is_of_rating())
    }

    /// Whether it only says for which joints its cells are.
    pub(super) fn is_case_alone(&self) -> bool {
        self.words.is_empty() && self.rating.is_some()
    }

    /// What a row's label says of a cell, limited as the column's heading has it: "Lower limit". Where the two say different things, neither
    /// is taken.
    pub(super) fn limited_by(&self, column: &Self) -> Self {
        let relation = match (self.relation, column.relation) {
            (Some(own), Some(limit)) if own != limit => None,
            (own, limit) => own.or(limit),
        };
        Self {
            relation,
            ..self.clone()
        }
    }

    /// The same for a cell that isn't in a table of cases: what would select rows requires.
    pub(in crate::clauses) fn requiring(&self) -> Self {
        let mut heading = self.clone();
        heading.requires = heading.selects.take().and_then(Selects::property);
        heading
    }

    /// The same with the limit that what leads to its values sets, where it sets none itself.
    pub(in crate::clauses) fn led_by(mut self, relation: Option<Relation>) -> Self {
        self.relation = self.relation.or(relation);
        self
    }

    /// Whether it says what is measured: "Depth", "Thickness, in."
    pub(in crate::clauses) fn measures(&self) -> bool {
        let named = |word: &str| vocabulary::vocabulary().attribute(word).is_some();
        let lower = self.words.to_lowercase();
        self.unit.is_some() || lower.split(|c: char| !c.is_alphabetic()).any(named)
    }

    /// Whether it sets a limit.
    pub(super) const fn is_limited(&self) -> bool {
        matches!(self.relation, Some(Relation::AtLeast | Relation::AtMost))
    }

    /// Whether what it names is measured in other units than this one: a depth in no pcf, a density in no inches.
    pub(super) fn is_of_another_measure(&self, unit: Unit) -> bool {
        const DENSITIES: &[&str] = &["density", "weight"];
        const SIZES: &[&str] = &[
            "depth",
            "thickness",
            "width",
            "spacing",
            "overlap",
            "lap",
            "recess",
            "gap",
        ];
        // What is measured, too, but not in lengths alone.
        const MEASURED: &[&str] = &[
            "thk",
            "height",
            "length",
            "diameter",
            "compression",
            "extension",
            "shear",
            "movement",
        ];
        const COUNTED: &[&str] = &[
            "no",
            "nos",
            "number",
            "qty",
            "quantity",
            "count",
            "layers",
            "layer",
            "coats",
            "coat",
            "plies",
            "pieces",
            "strips",
            "screws",
            "clips",
            "pins",
            "anchors",
            "fasteners",
            "rows",
            "sides",
            "faces",
            "passes",
            "beads",
            "sheets",
            "boards",
            "cycles",
            "per",
        ];
        let lower = self.words.to_lowercase();
        let names = |names: &[&str]| {
            lower
                .split(|c: char| !c.is_alphabetic())
                .any(|word| names.contains(&word))
        };
        match unit.dimension() {
            // "Wool depth" over 4 counts nothing, whatever its unit is.
            Dimension::Count => {
                (names(SIZES) || names(MEASURED) || names(DENSITIES)) && !names(COUNTED)
            }
            Dimension::Density => (names(SIZES) || names(&["joint"])) && !names(DENSITIES),
            Dimension::Length => names(DENSITIES) && !(names(SIZES) || names(&["joint"])),
            _ => false,
        }
    }

    /// Whether it says something of the cells besides which joints they are for.
    pub(super) fn describes(&self) -> bool {
        self.unit.is_some() || self.relation.is_some()
    }
}

/// Reads a heading.
pub(in crate::clauses) fn heading(text: &str) -> Heading {
    let (text, rating) = split_rating(text.trim());
    let words = Words::of(&text);
    let selects = words.selects();
    let mut units = words.units();
    // `Fire period, min` is in minutes, and no minimum.
    if selects == Some(Selects::Rating) && units.is_empty() && words.says(&["min", "minutes"]) {
        units.push(Unit::Minute);
    }
    // `Cycles | 500`
    if units.is_empty() && words.says(&["cycles"]) && words.words.len() <= 3 {
        units.push(Unit::Count);
    }
    let unit = units.first().copied();
    let second_unit = units
        .get(1)
        .copied()
        .filter(|second| unit.is_some_and(|unit| unit.dimension() == second.dimension()));
    Heading {
        words: text.trim_end_matches([',', ' ']).to_owned(),
        rating,
        requires: None,
        unit_unknown: unit.is_none() && words.name_unknown_rate(),
        limit_unknown: words.may_be_timed(),
        sense: if signs_both_ways(&text) {
            Sense::BothWays
        } else {
            Sense::Value
        },
        unit,
        second_unit,
        relation: words.relation(units.contains(&Unit::Minute)),
        selects,
    }
}

/// Whether a heading says that its numbers are meant both ways, and gives none of its own: `± 5 mm`.
fn signs_both_ways(text: &str) -> bool {
    const SIGNS: &[&str] = &["±", "+/-", "+/−", "+/–", "plus or minus"];
    let lower = text.to_lowercase();
    let signed = |sign: &&str| {
        let behind = lower.split(*sign).nth(1);
        behind.is_some_and(|behind| !behind.contains(|c: char| c.is_ascii_digit()))
    };
    SIGNS.iter().any(signed)
}
