//! What `benches/side_by_side.py` compares: the bounds and named sets of an invented library that hold without condition or option, asked
//! by the index here and by a query there. `side_by_side FOLDER LISTINGS CONDITIONS` writes the tables and this side's answer,
//! and prints this side's times in seconds.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    reason = "a tool for benchmarks ends where it fails"
)]

use std::fmt::Write as _;
use std::path::PathBuf;
use std::time::Instant;

use conformance::{Checklist, Subject};
use listing::{Bound, Clause, Reading, Relation, Requirement};
use measure::{Dimension, Number, Quantity, Unit};
use selection::{Finder, Wanted};
use site::{Fact, Value};
use support::spec::Spec;
use vocabulary::{Nature, vocabulary};

#[path = "../tests/support/mod.rs"]
mod support;

fn main() {
    let mut args = std::env::args().skip(1);
    let folder = PathBuf::from(args.next().expect("the folder to write to"));
    let size: usize = args
        .next()
        .expect("how many listings")
        .parse()
        .expect("a number");
    let joints: usize = args
        .next()
        .expect("how many conditions")
        .parse()
        .expect("a number");
    std::fs::create_dir_all(&folder).unwrap();
    let library = Spec::library(size, 1);
    let readings: Vec<Reading> = library.iter().map(plain).collect();
    let asked: Vec<Vec<Fact>> = support::facts::conditions(&library, joints, 3)
        .into_iter()
        .map(|facts| facts.into_iter().filter(is_plain).collect())
        .collect();
    std::fs::write(folder.join("heads.csv"), heads(&readings)).unwrap();
    std::fs::write(folder.join("asks.csv"), asks(&readings)).unwrap();
    std::fs::write(folder.join("facts.csv"), facts(&asked)).unwrap();

    let checklists: Vec<Checklist<'_>> = readings.iter().map(Checklist::of_draft).collect();
    let index = support::index(&checklists);
    let finder = Finder::new(&index);
    let subjects: Vec<Subject<'_>> = asked
        .iter()
        .map(|facts| Subject {
            joint: "J-1",
            mark: "M1",
            facts: facts.iter().collect(),
            judgments: Vec::new(),
        })
        .collect();
    let five = Wanted {
        open: 5,
        near: 5,
        every_single_change: false,
    };
    for threads in [1, 2] {
        let since = Instant::now();
        finder
            .find_each(&checklists, &subjects, &five, threads)
            .unwrap();
        println!("{threads} {:.6}", since.elapsed().as_secs_f64());
    }
    let all = finder
        .find_each(&checklists, &subjects, &Wanted::ALL, 2)
        .unwrap();
    let mut ours = String::from("condition,listing,unmet\n");
    for (condition, found) in all.iter().enumerate() {
        for one in found.fits.iter().chain(&found.open).chain(&found.near) {
            let _ = writeln!(ours, "{condition},{},{}", one.at, one.rank.changes());
        }
    }
    std::fs::write(folder.join("ours.csv"), ours).unwrap();
}

/// The listing with nothing but what both sides can ask.
fn plain(spec: &Spec) -> Reading {
    let mut reading = listing::read(&spec.file(), spec.text().as_bytes()).unwrap();
    reading.options.clear();
    // Without items there are no parts of one kind that a fact would have to be told apart by.
    reading.items.clear();
    reading.header.movement.clear();
    reading.header.differs.clear();
    reading.clauses.retain(is_asked);
    reading
}

fn is_asked(clause: &Clause) -> bool {
    let nature = vocabulary()
        .property(&clause.property)
        .map(|known| known.nature);
    let is_bound = |bound: &Bound| match bound.relation {
        Relation::AtLeast | Relation::AtMost | Relation::Between => true,
        // A nominal length is met within tolerances that the query knows nothing of, and a nominal value in one unit alone is near enough to
        // the rounded one of the other to be left open.
        Relation::Nominal => {
            nature == Some(Nature::Product)
                && bound.unit.dimension() == Dimension::Density
                && bound.second.is_some()
        }
        _ => false,
    };
    let can_be_asked = match &clause.requirement {
        Requirement::Bound(bound) => bound.unit != Unit::Gauge && is_bound(bound),
        Requirement::Named { .. } => clause.property.ends_with(".product"),
        _ => false,
    };
    can_be_asked && clause.condition.is_none() && clause.option.is_none()
}

/// Facts that both sides can use: no movement, and none of a single part or option.
fn is_plain(fact: &Fact) -> bool {
    let name = &fact.property;
    !name.contains(':') && !name.starts_with("option.") && !name.contains("movement")
}

/// A quantity as a number of its dimension's first unit.
fn number(quantity: Quantity) -> f64 {
    let base = match quantity.dimension() {
        Dimension::Length => Unit::Millimetre,
        Dimension::Density => Unit::KilogramPerCubicMetre,
        Dimension::MassPerLength => Unit::KilogramPerMetre,
        Dimension::Temperature => Unit::Celsius,
        Dimension::Time => Unit::Hour,
        _ => quantity.unit,
    };
    let number = quantity
        .to(base)
        .map_or(quantity.number, |converted| converted.number);
    as_float(&number)
}

#[expect(clippy::cast_precision_loss, reason = "the other side has floats")]
fn as_float(number: &Number) -> f64 {
    number.numerator() as f64 / number.denominator() as f64
}

fn heads(readings: &[Reading]) -> String {
    let mut table = String::from("listing,kind,rating,width\n");
    for (at, reading) in readings.iter().enumerate() {
        let header = &reading.header;
        let kind = header.designation.get(..2).unwrap_or_default();
        let rating = header.ratings_hr.iter().max().map_or(0.0, as_float);
        let width = header
            .width
            .as_ref()
            .and_then(|width| Some(Quantity::new(width.hi?, width.unit)));
        let width = width.map_or(f64::MAX, number);
        let _ = writeln!(table, "{at},{kind},{rating},{width}");
    }
    table
}

/// One row a clause: its limits as stated first and, where it is, again; or one of its names a row.
fn asks(readings: &[Reading]) -> String {
    let mut table = String::from("listing,clause,property,lo,hi,lo2,hi2,name\n");
    for (at, reading) in readings.iter().enumerate() {
        for (place, clause) in reading.clauses.iter().enumerate() {
            let property = &clause.property;
            match &clause.requirement {
                Requirement::Bound(bound) => {
                    let (lo, hi) = ends(bound);
                    let (lo2, hi2) = bound
                        .in_second_unit()
                        .as_ref()
                        .map_or((lo.clone(), hi.clone()), ends);
                    let _ = writeln!(table, "{at},{place},{property},{lo},{hi},{lo2},{hi2},");
                }
                Requirement::Named { names } => {
                    for name in names {
                        let name = format!("{} | {}", name.maker, name.product).to_lowercase();
                        let _ = writeln!(table, "{at},{place},{property},,,,,{name}");
                    }
                }
                _ => {}
            }
        }
    }
    table
}

fn ends(bound: &Bound) -> (String, String) {
    let text = |end: Option<Quantity>| end.map_or_else(String::new, |end| number(end).to_string());
    match bound.relation {
        Relation::Nominal => (text(bound.low()), text(bound.low())),
        _ => (text(bound.low()), text(bound.high())),
    }
}

fn facts(asked: &[Vec<Fact>]) -> String {
    let mut table = String::from("condition,property,number,name\n");
    for (at, facts) in asked.iter().enumerate() {
        for fact in facts {
            let property = &fact.property;
            let _ = match &fact.value {
                Value::Quantity(quantity) => {
                    writeln!(table, "{at},{property},{},", number(*quantity))
                }
                Value::Flag(flag) => writeln!(table, "{at},{property},{},", u8::from(*flag)),
                other => writeln!(
                    table,
                    "{at},{property},,{}",
                    other.to_string().to_lowercase()
                ),
            };
        }
    }
    table
}
