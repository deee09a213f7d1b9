//! How well documents are read: their clauses, held against those that people expected.
//!
//! A requirement counts as read when a bound stands on its words with the right relation, values and unit; as wrong when value and unit are
//! right and the relation isn't. Of what is read, its option and its condition count as right where clause and person both have one, or
//! neither has: which words they are is for a person to compare.

#![allow(
    clippy::panic,
    clippy::indexing_slicing,
    clippy::string_slice,
    reason = "a document that can't be scored stops the test"
)]

use std::collections::BTreeSet;
use std::fs;
use std::ops::AddAssign;
use std::path::{Path, PathBuf};

use listing::{Bound, Clause, Confidence, Reading, Relation, WidthLimit};
use measure::Number;
use serde_json::Value;

use super::product_names::Names;

/// What became of one expected requirement.
pub(crate) enum Outcome<'a> {
    Right(&'a Clause),
    /// Its value and unit with another relation.
    Wrong(&'a Clause),
    Missed,
}

/// What became of a document's expected requirements, or of several documents'.
#[derive(Debug, Default, Clone, Copy)]
pub(crate) struct Score {
    pub(crate) expected: usize,
    pub(crate) found: usize,
    pub(crate) wrong: usize,
    /// Wrong, and nothing said that it is doubtful.
    pub(crate) wrong_by_rule: usize,
    /// Right, but doubtful to the reader.
    pub(crate) found_in_doubt: usize,
    pub(crate) options: usize,
    pub(crate) conditions: usize,
    pub(crate) head: Head,
    pub(crate) names: Names,
}

/// Of how many documents the head was read as expected.
#[derive(Debug, Default, Clone, Copy)]
pub(crate) struct Head {
    pub(crate) of: usize,
    pub(crate) ratings: usize,
    /// Ratings stated, and others than expected.
    pub(crate) ratings_wrong: usize,
    pub(crate) widths_of: usize,
    pub(crate) widths: usize,
    /// Widths stated, and others than expected.
    pub(crate) widths_wrong: usize,
}

/// The documents of a folder, in order of their names.
pub(crate) fn documents(folder: &Path) -> Vec<PathBuf> {
    let mut files: Vec<PathBuf> = fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|extension| extension == "txt"))
        .collect();
    files.sort();
    files
}

/// A document's text and what people expect of it.
pub(crate) fn expected(path: &Path) -> (String, Value) {
    let text = fs::read_to_string(path).unwrap();
    let gold = fs::read_to_string(path.with_extension("gold.json")).unwrap();
    (text, serde_json::from_str(&gold).unwrap())
}

/// The requirements that people expect, without the numbers that only trigger a condition.
pub(crate) fn requirements(gold: &Value) -> impl Iterator<Item = &Value> {
    let all = gold["requirements"].as_array().into_iter().flatten();
    all.filter(|own| own["is_condition"].as_bool() != Some(true))
}

pub(crate) fn score(reading: &Reading, text: &str, gold: &Value) -> Score {
    let mut own = Score::default();
    for expected in requirements(gold) {
        own.expected += 1;
        match outcome(reading, text, expected) {
            Outcome::Right(clause) => {
                own.found += 1;
                own.found_in_doubt += usize::from(clause.confidence != Confidence::ByRule);
                own.options += usize::from(option_agrees(clause, expected));
                own.conditions += usize::from(condition_agrees(clause, expected));
            }
            Outcome::Wrong(clause) => {
                own.wrong += 1;
                own.wrong_by_rule += usize::from(clause.confidence == Confidence::ByRule);
            }
            Outcome::Missed => {}
        }
    }
    own.head = head(reading, gold);
    own.names = Names::of(reading, gold);
    own
}

/// Whether a clause stands in an option where a person places it in one, and in none where a person says that it always holds.
///
/// What is an option to one person is a case to another ("Type B boards"): either will do for the other.
pub(crate) fn option_agrees(clause: &Clause, expected: &Value) -> bool {
    if expected["option"].is_null() {
        clause.option.is_none() || !expected["when"].is_null()
    } else {
        clause.option.is_some() || clause.condition.is_some()
    }
}

/// Whether a clause has a condition where a person gives it one, and none where a person says that it always holds, or always in its option.
pub(crate) fn condition_agrees(clause: &Clause, expected: &Value) -> bool {
    if expected["when"].is_null() {
        clause.condition.is_none() || !expected["option"].is_null()
    } else {
        clause.condition.is_some() || clause.option.is_some()
    }
}

/// What became of an expected requirement.
pub(crate) fn outcome<'a>(reading: &'a Reading, text: &str, expected: &Value) -> Outcome<'a> {
    let start = text
        .char_indices()
        .nth(usize::try_from(expected["pos"].as_u64().unwrap()).unwrap())
        .unwrap()
        .0;
    let end = start + expected["quote"].as_str().unwrap().len();
    let bounds = reading
        .clauses
        .iter()
        .filter_map(|own| Some((own, own.bound()?)));
    let same: Vec<(&Clause, &Bound)> = bounds
        .filter(|(_, bound)| bound.at.start() < end && start < bound.at.end())
        .filter(|(_, bound)| same_values(bound, expected))
        .collect();
    let allowed = relations(expected);
    let right = same
        .iter()
        .find(|(_, bound)| allowed.contains(&bound.relation) || is_end(bound, expected, &allowed));
    match (right, same.first()) {
        (Some((clause, _)), _) => Outcome::Right(clause),
        (None, Some((clause, _))) => Outcome::Wrong(clause),
        (None, None) => Outcome::Missed,
    }
}

/// Whether a limit is the same end of a range that was read: "min 1/2 in., max 4 in." is one bound to the reader, and two to some people.
fn is_end(bound: &Bound, expected: &Value, allowed: &[Relation]) -> bool {
    let ends = [(bound.lo, Relation::AtLeast), (bound.hi, Relation::AtMost)];
    bound.relation == Relation::Between
        && ends
            .iter()
            .any(|&(end, limit)| near(end, &expected["value"]) && allowed.contains(&limit))
}

fn relations(expected: &Value) -> Vec<Relation> {
    let alternates = expected["relation_alt"].as_array().into_iter().flatten();
    let bare = expected["bare"].as_bool() == Some(true);
    let mut names: BTreeSet<&str> = alternates
        .chain([&expected["relation"]])
        .map(|name| name.as_str().unwrap())
        .collect();
    if bare {
        names.extend(["exact", "nominal"]);
    }
    names
        .into_iter()
        .map(|name| match name {
            "min" => Relation::AtLeast,
            "max" => Relation::AtMost,
            "nominal" => Relation::Nominal,
            "exact" => Relation::Exactly,
            "range" => Relation::Between,
            "approx" => Relation::About,
            "less_than" => Relation::LessThan,
            "greater_than" => Relation::MoreThan,
            other => panic!("unknown relation {other}"),
        })
        .collect()
}

fn same_values(bound: &Bound, expected: &Value) -> bool {
    let unit = match expected["unit"].as_str().unwrap() {
        "inch" | "inches" => "in",
        "hours" | "hour" | "h" => "hr",
        "minutes" => "min",
        "pct" | "%" => "percent",
        "deg F" => "degF",
        "deg C" => "degC",
        unit => unit,
    };
    let value = if expected["hi"].is_null() {
        near(bound.lo, &expected["value"]) || near(bound.hi, &expected["value"])
    } else {
        near(bound.lo, &expected["value"]) && near(bound.hi, &expected["hi"])
    };
    value && bound.unit.symbol() == unit
}

/// Whether a number is one that people wrote down, to what their decimals leave open.
fn near(own: Option<Number>, value: &Value) -> bool {
    own.zip(number(value)).is_some_and(|(own, stated)| {
        let apart = own.minus(stated).unwrap().abs();
        apart.times(Number::whole(2000)).unwrap() <= stated.abs().max(own.abs())
    })
}

fn number(value: &Value) -> Option<Number> {
    let stated = value.as_number()?.to_string();
    // Thirds and the like stand there with sixteen decimals: nine are enough.
    let decimals = stated.find('.').map_or(0, |point| stated.len() - point - 1);
    let kept = &stated[..stated.len() - decimals.saturating_sub(9)];
    Some(kept.parse().unwrap())
}

/// How the head was read.
pub(crate) fn head(reading: &Reading, gold: &Value) -> Head {
    let own = &reading.header;
    let ratings = gold["header"]["ratings_hr"]
        .as_array()
        .into_iter()
        .flatten();
    let expected: BTreeSet<Number> = ratings.filter_map(number).collect();
    let read: BTreeSet<Number> = own.ratings_hr.iter().copied().collect();
    let width = &gold["header"]["width"];
    let same_width = own.width.as_ref().is_some_and(|own| is_width(own, width));
    Head {
        of: 1,
        ratings: usize::from(read == expected),
        ratings_wrong: usize::from(!read.is_subset(&expected)),
        widths_of: usize::from(!width.is_null()),
        widths: usize::from(!width.is_null() && same_width),
        widths_wrong: usize::from(own.width.is_some() && !same_width),
    }
}

/// Whether a joint's width is the one that people expect. A nominal width stands in either end with them, or in both.
fn is_width(own: &WidthLimit, expected: &Value) -> bool {
    let is_point = ["nominal", "exact"]
        .iter()
        .any(|name| expected["relation"] == *name);
    let mut ends = [&expected["lo"], &expected["hi"]]
        .into_iter()
        .filter(|end| !end.is_null());
    if let (true, Some(first)) = (is_point, ends.next())
        && ends.all(|end| end == first)
    {
        return matches!(own.relation, Relation::Nominal | Relation::Exactly)
            && near(own.lo.or(own.hi), first);
    }
    let side = |read: Option<Number>, name: &str| {
        let stated = &expected[name];
        stated.is_null() || near(read, stated)
    };
    !expected.is_null() && side(own.lo, "lo") && side(own.hi, "hi")
}

impl AddAssign for Head {
    fn add_assign(&mut self, other: Self) {
        self.of += other.of;
        self.ratings += other.ratings;
        self.ratings_wrong += other.ratings_wrong;
        self.widths_of += other.widths_of;
        self.widths += other.widths;
        self.widths_wrong += other.widths_wrong;
    }
}

impl AddAssign for Score {
    fn add_assign(&mut self, other: Self) {
        self.expected += other.expected;
        self.found += other.found;
        self.wrong += other.wrong;
        self.wrong_by_rule += other.wrong_by_rule;
        self.found_in_doubt += other.found_in_doubt;
        self.options += other.options;
        self.conditions += other.conditions;
        self.head += other.head;
        self.names += other.names;
    }
}
