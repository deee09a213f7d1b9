//! What each column of such a table holds, by its heading.

use measure::notation::unit_at;

use super::super::band::width_band;
use super::super::heading::{Heading, Selects, heading};
use super::super::rating::Rating;
use super::limit;
use crate::model::{Expr, Relation};
use crate::outline::{heads_properties, is_code};

/// What a column holds.
#[derive(Debug, Clone)]
pub(super) enum Role {
    /// The part that a row is of.
    Part,
    /// What is asked of it.
    Property,
    /// How the value is meant.
    Limit,
    /// A value, and what its heading says of it: how it is meant, its unit, the rating or the widths that it is for.
    Value(Box<Heading>),
    /// How far the value may be off.
    Tolerance,
    Unit,
    /// Where the row holds.
    Case,
    Remark,
    /// What numbers the rows.
    Number,
    /// What no list knows.
    Other,
}

const PARTS: &[&str] = &["part", "component", "element", "member", "building part"];
/// Headings of what a row asks in words, where no column is headed as a property.
const LABELS: &[&str] = &[
    "requirement",
    "requirements",
    "description",
    "item",
    "subject",
    "criterion",
    "check",
    "detail",
    "provision",
    "clause",
    "component",
    "part",
    "element",
];
const LIMITS: &[&str] = &[
    "limit",
    "qualifier",
    "sense",
    "relation",
    "bound",
    "min/max",
    "sign",
    "limits",
];
const UNITS: &[&str] = &["unit", "units", "uom", "unit of measure", "u/m"];
const CASES: &[&str] = &[
    "when",
    "where",
    "case",
    "cases",
    "condition",
    "conditions",
    "applies to",
    "applies",
    "for",
    "var",
    "var.",
    "variant",
    "variants",
    "option",
    "use",
    "rating",
    "period",
    "fire period",
];
const REMARKS: &[&str] = &[
    "remark", "remarks", "note", "notes", "comment", "comments", "see",
];
const NUMBERS: &[&str] = &[
    "ref",
    "ref.",
    "reference",
    "no",
    "no.",
    "row",
    "line",
    "#",
    "id",
    "key",
    "pos",
    "pos.",
    "nr",
    "nr.",
];
const TOLERANCES: &[&str] = &["tolerance", "tol", "tol.", "±", "+/-", "tolerance ±"];
/// Words of a heading that only say that values stand below it.
const VALUES: &[&str] = &[
    "value",
    "values",
    "figure",
    "amount",
    "size",
    "requirement",
    "requirements",
    "required",
    "req",
    "req.",
    "reqd",
    "req'd",
    "permitted",
    "allowed",
    "allowable",
    "acceptable",
    "accepted",
    "limit",
    "limits",
    "specified",
    "stated",
    "imperial",
    "metric",
    "si",
];

/// The role of a column by its heading alone.
pub(super) fn role(words: &str) -> Role {
    let lower = words.trim().to_lowercase();
    let named = |names: &[&str]| names.contains(&lower.as_str());
    if named(UNITS) {
        Role::Unit
    } else if named(LIMITS) {
        Role::Limit
    } else if heads_properties(words) {
        Role::Property
    } else if named(PARTS) {
        Role::Part
    } else if named(REMARKS) {
        Role::Remark
    } else if named(TOLERANCES) {
        Role::Tolerance
    } else if let Some(heading) = value(words) {
        Role::Value(Box::new(heading))
    } else if named(NUMBERS) {
        Role::Number
    } else if named(CASES) || is_case(&lower) {
        Role::Case
    } else {
        Role::Other
    }
}

/// Whether a heading may be that of what a row asks.
pub(super) fn heads_labels(words: &str) -> bool {
    LABELS.contains(&words.trim().to_lowercase().as_str())
}

/// Whether all of a heading's words are those of a case, or it is of the joint's width.
fn is_case(lower: &str) -> bool {
    let worded = !lower.is_empty() && lower.split(' ').all(|word| CASES.contains(&word));
    worded
        || heading(lower)
            .selects
            .is_some_and(|selects| selects != Selects::Other)
}

/// What a heading says that says nothing but how the values below it are meant, in which unit, and for which joints: `Min`, `Lower limit, mm`,
/// `Value`, `2 hours`.
fn value(words: &str) -> Option<Heading> {
    if let Some(band) = width_band(words) {
        return Some(band);
    }
    if is_code(words) {
        return Some(Heading::for_case(Rating {
            words: words.to_owned(),
            expr: Expr::Words(words.to_owned()),
        }));
    }
    let mut own = heading(words);
    if own.selects.is_some() {
        return None;
    }
    // `F1 1 hr`
    if own.rating.is_some() && is_code(own.words.trim()) {
        own.words.clear();
        return Some(own);
    }
    let lower = own.words.to_lowercase();
    let mut rest: Vec<&str> = lower
        .split([' ', ',', '(', ')', '[', ']'])
        .filter(|word| !word.is_empty())
        .collect();
    rest.retain(|word| {
        !VALUES.contains(word) && (!is_unit(word) || matches!(*word, "min" | "min."))
    });
    if rest.is_empty() {
        let says = own.rating.is_some() || !lower.is_empty();
        return says.then_some(own);
    }
    own.relation = bound(&rest.join(" "))?;
    Some(own)
}

/// How the values under some words are meant; none where the words aren't known.
#[allow(
    clippy::option_option,
    reason = "that there is no limit and that it isn't known are two things"
)]
fn bound(words: &str) -> Option<Option<Relation>> {
    match words {
        "from" | "not below" | "no less than" => Some(Some(Relation::AtLeast)),
        "to" | "not above" | "no more than" | "not over" => Some(Some(Relation::AtMost)),
        _ => limit(words),
    }
}

/// Whether a word is a unit and nothing besides.
fn is_unit(word: &str) -> bool {
    let text = format!("1 {}", word.trim_end_matches('.'));
    unit_at(&text, 1).is_some_and(|(_, end)| end == text.len())
}
