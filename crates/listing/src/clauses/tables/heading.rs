//! What a heading says of the cells below it, or beside it: unit, qualifier, property, and which joints they are for.

use measure::{Number, Quantity, Unit, notation};

use crate::model::{Expr, Relation, Test};
use crate::phrase::{Token, TokenKind, lex};
use crate::rules::qualifier;

/// What a heading says of its cells.
#[derive(Debug, Clone)]
pub(super) struct Heading {
    pub(super) words: String,
    pub(super) unit: Option<Unit>,
    pub(super) second_unit: Option<Unit>,
    pub(super) relation: Option<Relation>,
    pub(super) selects: Option<Selects>,
    /// The property of the joint that its cells require, where it selects no rows.
    pub(super) requires: Option<&'static str>,
    /// The rating that the whole column is for: `EI 90`, `2 hr`.
    pub(super) rating: Option<Rating>,
}

/// A rating that heads a column.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Rating {
    pub(super) words: String,
    pub(super) expr: Expr,
}

/// What a column that selects rows tests.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Selects {
    Width,
    Rating,
    Other,
}

impl Selects {
    /// The property that it tests.
    pub(super) const fn property(self) -> Option<&'static str> {
        match self {
            Self::Width => Some("joint.width"),
            Self::Rating => Some("joint.rating"),
            Self::Other => None,
        }
    }
}

impl Heading {
    /// Whether it says something of the cells besides which joints they are for.
    pub(super) fn describes(&self) -> bool {
        self.unit.is_some() || self.relation.is_some()
    }

    /// A unit or qualifier that the caption gives holds for every column that has none of its own: "All measures in mm",
    /// "Number of layers (minimum)".
    pub(super) fn take_from_caption(&mut self, caption: &str) {
        let lower = caption.to_lowercase();
        let unit = [
            ("in mm", Unit::Millimetre),
            ("millimetres", Unit::Millimetre),
            ("in inches", Unit::Inch),
            ("in in.", Unit::Inch),
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
            self.relation = lower
                .split(|c: char| !c.is_alphabetic())
                .find_map(qualifier);
        }
        if self.selects.is_none() && self.unit.is_none() && lower.contains("layers") {
            self.words = format!("{caption} {}", self.words);
        }
    }
}

/// Whether a paragraph before a table speaks of the table.
pub(super) fn captions(caption: &str) -> bool {
    let lower = caption.to_lowercase();
    lower.starts_with("table")
        || lower.contains("in mm")
        || lower.contains("in inches")
        || lower.contains("dimensions")
}

pub(super) fn heading(text: &str) -> Heading {
    let (text, rating) = split_rating(text.trim());
    let text = text.as_str();
    let lower = text.to_lowercase();
    let words: Vec<&str> = lower
        .split(|c: char| {
            !(c.is_alphanumeric() || matches!(c, '%' | '/' | '°' | '³' | '²' | '"' | '\''))
        })
        .filter(|word| !word.is_empty())
        .collect();
    let mut units = Vec::new();
    for word in &words {
        // In a heading `h` and `m` are units only when they stand alone, as they do here.
        if qualifier(word).is_none()
            && let Some((unit, end)) = notation::unit_at(&format!("1 {word}"), 1)
            && end == word.len() + 2
            && !units.contains(&unit)
        {
            units.push(unit);
        }
    }
    let says = |list: &[&str]| words.iter().any(|word| list.contains(word));
    let period = says(&["period", "frl", "resistance"]);
    let rates =
        says(&["rating", "hr", "hrs", "hour", "hours"]) || period || (words.as_slice() == ["h"]);
    let width = says(&["width", "widths", "opening", "openings", "gap", "gaps"])
        && words.iter().all(|word| speaks_of_joint_width(word));
    // `Fire period, min` is in minutes, and no minimum.
    if rates && units.is_empty() && says(&["min", "minutes"]) {
        units.push(Unit::Minute);
    }
    let selects = if rates && !width {
        Some(Selects::Rating)
    } else if width {
        Some(Selects::Width)
    } else if says(&[
        "orientation",
        "size",
        "condition",
        "configuration",
        "pipe",
        "case",
        "type",
        "combination",
        "row",
        "no",
        "ref",
        "reference",
        "mark",
        "kit",
        "position",
        "location",
        "application",
    ]) {
        Some(Selects::Other)
    } else {
        None
    };
    let unit = units.first().copied();
    let second_unit = units
        .get(1)
        .copied()
        .filter(|second| unit.is_some_and(|unit| unit.dimension() == second.dimension()));
    let named = || words.iter().find_map(|word| qualifier(word));
    let relation = if units.contains(&Unit::Minute) {
        None
    } else {
        named()
    }
    .or_else(|| {
        let says_pair = |pair: &[&str; 2]| words.windows(2).any(|two| two == pair);
        if says_pair(&["at", "least"])
            || says_pair(&["not", "under"])
            || says_pair(&["less", "than"]) && says(&["not"])
        {
            Some(Relation::AtLeast)
        } else if says_pair(&["at", "most"])
            || says_pair(&["up", "to"])
            || says_pair(&["not", "over"])
        {
            Some(Relation::AtMost)
        } else {
            None
        }
    });
    Heading {
        words: text.trim_end_matches([',', ' ']).to_owned(),
        rating,
        requires: None,
        unit,
        second_unit,
        relation,
        selects,
    }
}

/// A heading's own words, and the rating that stands among them: `Depth, mm (min.) EI 90`, `F = 1 h floor`, `2 hr`.
fn split_rating(text: &str) -> (String, Option<Rating>) {
    let lower = text.to_ascii_lowercase();
    let tokens = lex(text, &lower);
    let Some((at, stated)) = (0..tokens.len()).find_map(|at| Some((at, rating_at(&tokens, at)?)))
    else {
        return (text.to_owned(), None);
    };
    // What leads to the rating goes with it: `EI 90`, `F = 1 h`, `at 2 hr`.
    let leads = |token: &Token<'_>| {
        token.is_sign('=')
            || ["ei", "rei", "e", "f", "t", "frl", "for", "at"]
                .iter()
                .any(|word| token.is_word(word))
    };
    let first = (0..at)
        .rev()
        .take_while(|before| tokens.get(*before).is_some_and(leads))
        .last()
        .unwrap_or(at);
    let start = tokens.get(first).map_or(0, |token| token.span.start());
    let end = tokens.get(at).map_or(text.len(), |token| token.span.end());
    let own = |range: core::ops::Range<usize>| text.get(range).unwrap_or_default().trim();
    let words = format!("{} {}", own(0..start), own(end..text.len()));
    let expr = Expr::Test(Test {
        property: "joint.rating".to_owned(),
        relation: Relation::Exactly,
        lo: Some(stated),
        hi: None,
        lo_excluded: false,
    });
    let rating = Rating {
        words: own(start..end).to_owned(),
        expr,
    };
    (words.trim().to_owned(), Some(rating))
}

/// The rating at a token: hours to four, or the minutes of a class.
fn rating_at(tokens: &[Token<'_>], at: usize) -> Option<Quantity> {
    const MINUTES: [i32; 9] = [15, 20, 30, 45, 60, 90, 120, 180, 240];
    match &tokens.get(at)?.kind {
        TokenKind::Quantity(stated) => (stated.unit == Unit::Hour && stated.number <= 4)
            .then(|| Quantity::new(stated.number, stated.unit)),
        TokenKind::Number(numeral) => {
            let before = tokens.get(at.checked_sub(1)?)?;
            let class = matches!(before.word(), Some("EI" | "REI" | "E"));
            let minutes = MINUTES
                .iter()
                .any(|minutes| numeral.value == Number::whole(*minutes));
            (class && minutes).then(|| Quantity::new(numeral.value, Unit::Minute))
        }
        _ => None,
    }
}

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
        "seal",
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
