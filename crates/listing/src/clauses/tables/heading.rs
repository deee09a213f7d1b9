//! What a heading says of the cells below it, or beside it: unit, qualifier, property, and which joints they are for.

use measure::{Dimension, Unit, notation};

use super::rating::{Rating, split_rating};
use crate::model::Relation;
use crate::rules::qualifier;

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
        let of_rating = |rating: &Rating| matches!(&rating.expr, crate::model::Expr::Test(test) if test.property == "joint.rating");
        self.words.is_empty()
            && self
                .rating
                .as_ref()
                .is_some_and(|rating| !of_rating(rating))
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

/// Whether two words are the number of a rating and `min`.
fn is_timed(two: &[String]) -> bool {
    const RATINGS: &[&str] = &["30", "45", "60", "90", "120", "180", "240"];
    let number = two.first().map(String::as_str);
    number.is_some_and(|number| RATINGS.contains(&number))
        && two.last().is_some_and(|word| word == "min")
}

/// The unit that a word is.
pub(super) fn unit_of(word: &str) -> Option<Unit> {
    let (unit, end) = notation::unit_at(&format!("1 {word}"), 1)?;
    (end == word.len() + 2).then_some(unit)
}

/// A heading's words in small letters.
struct Words {
    text: String,
    words: Vec<String>,
}

impl Words {
    fn of(text: &str) -> Self {
        let text = text.to_lowercase();
        let words = text
            .split(|c: char| {
                !(c.is_alphanumeric() || matches!(c, '%' | '/' | '°' | '³' | '²' | '"' | '\''))
            })
            .filter(|word| !word.is_empty())
            .map(str::to_owned)
            .collect();
        Self { text, words }
    }

    fn says(&self, list: &[&str]) -> bool {
        self.words.iter().any(|word| list.contains(&word.as_str()))
    }

    fn says_pair(&self, pair: [&str; 2]) -> bool {
        self.words.windows(2).any(|two| {
            two.first().is_some_and(|one| one == pair[0])
                && two.last().is_some_and(|one| one == pair[1])
        })
    }

    /// The units it names. A unit of one letter is one only where it stands alone, as it does here.
    fn units(&self) -> Vec<Unit> {
        // `deg F` is two words.
        if self.says_pair(["deg", "f"]) {
            return vec![Unit::Fahrenheit];
        }
        if self.says_pair(["deg", "c"]) {
            return vec![Unit::Celsius];
        }
        // `Air temp, F`: a letter alone is a scale only there.
        if self.says(&["temp", "temps", "temperature", "temperatures"]) {
            match (self.says(&["f"]), self.says(&["c"])) {
                (true, false) => return vec![Unit::Fahrenheit],
                (false, true) => return vec![Unit::Celsius],
                _ => {}
            }
        }
        let mut units = Vec::new();
        for (index, word) in self.words.iter().enumerate() {
            // "compression in width, %"
            let preposition = word == "in"
                && self.words.get(index + 1).is_some_and(|next| {
                    [
                        "width", "depth", "place", "the", "a", "an", "any", "each", "every", "all",
                        "one", "service", "use",
                    ]
                    .contains(&next.as_str())
                        && self.text.contains(&format!("in {next}"))
                });
            // "Bond in mm", "movement in % of b"; `Joint width, in. (mm)` names both.
            let preposition = preposition
                || word == "in"
                    && self.words.get(index + 1).is_some_and(|next| {
                        unit_of(next).is_some() && self.text.contains(&format!("in {next}"))
                    });
            // "butts per metre" counts
            let rate = index > 0
                && self
                    .words
                    .get(index - 1)
                    .is_some_and(|before| before == "per");
            // "Strips, joint up to 30 mm" has a number of its own in that unit.
            let numbered = index > 0
                && self
                    .words
                    .get(index - 1)
                    .is_some_and(|before| before.starts_with(|c: char| c.is_ascii_digit()));
            if !preposition
                && !rate
                && !numbered
                && qualifier(word).is_none()
                && let Some(unit) = unit_of(word)
                && !units.contains(&unit)
            {
                units.push(unit);
            }
        }
        units
    }

    /// Whether it names one unit per another that is no unit of its own: `ft2/gal`.
    fn name_unknown_rate(&self) -> bool {
        let is_unit = |word: &str| {
            notation::unit_at(&format!("1 {word}"), 1).is_some_and(|(_, end)| end == word.len() + 2)
        };
        self.words.iter().any(|word| {
            word.split_once('/')
                .is_some_and(|(one, other)| is_unit(one) && is_unit(other))
        })
    }

    /// What its cells would select rows by.
    fn selects(&self) -> Option<Selects> {
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

    /// "lower limit", "or heavier", "or less".
    fn limit(&self) -> Option<Relation> {
        const MORE: [&str; 5] = ["more", "greater", "heavier", "thicker", "over"];
        const LESS: [&str; 3] = ["less", "smaller", "under"];
        let or_any = |words: &[&str]| words.iter().any(|word| self.says_pair(["or", word]));
        if self.says_pair(["lower", "limit"]) || or_any(&MORE) {
            Some(Relation::AtLeast)
        } else if self.says_pair(["upper", "limit"]) || or_any(&LESS) {
            Some(Relation::AtMost)
        } else {
            None
        }
    }

    /// Whether it ends in "over", units and numbers apart: `Width over, mm`. "Slab above, thickness" and "Depth over flutes" name a place.
    fn ends_over(&self) -> bool {
        let is_unit = |word: &str| {
            word.starts_with(|c: char| c.is_ascii_digit())
                || notation::unit_at(&format!("1 {word}"), 1)
                    .is_some_and(|(_, end)| end == word.len() + 2)
        };
        let last = self.words.iter().rev().find(|word| !is_unit(word));
        last.is_some_and(|word| ["over", "above"].contains(&word.as_str()))
    }

    /// Whether a `min` in it stands behind the number of a rating, `Depth, mm 60 min`, and may be of minutes or a minimum.
    fn may_be_timed(&self) -> bool {
        self.words.windows(2).any(is_timed)
    }

    /// How it bounds its cells; in minutes, "min" is no minimum.
    fn relation(&self, in_minutes: bool) -> Option<Relation> {
        let in_minutes = in_minutes || self.may_be_timed();
        let named = self.words.iter().find_map(|word| qualifier(word));
        if let Some(relation) = named.filter(|_| !in_minutes) {
            return Some(relation);
        }
        let denied = self.says(&["not", "no"]);
        let not_less = self.says_pair(["less", "than"]) && denied;
        let not_more = denied
            && [["more", "than"], ["greater", "than"]]
                .into_iter()
                .any(|pair| self.says_pair(pair))
            || self.says_pair(["not", "exceeding"])
            || self.says_pair(["not", "above"]);
        if let Some(relation) = self.limit() {
            return Some(relation);
        }
        if self.says_pair(["at", "least"]) || self.says_pair(["not", "under"]) || not_less {
            Some(Relation::AtLeast)
        } else if not_more
            || [["at", "most"], ["up", "to"], ["not", "over"]]
                .into_iter()
                .any(|pair| self.says_pair(pair))
        {
            Some(Relation::AtMost)
        } else if self.ends_over() {
            Some(Relation::MoreThan)
        } else {
            None
        }
    }
}
