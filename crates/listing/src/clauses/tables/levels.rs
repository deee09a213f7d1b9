//! Columns of minutes, `Integrity (min)   Insulation (min)`: how long the joint keeps fire off, and no least value of anything.
//!
//! Only where one column is headed with integrity, and each cell below is a time that fire resistance is classified for, or none. "Insulation" alone may be
//! the depth of a part.

use measure::Unit;

use super::columns::Row;
use super::heading::Heading;
use super::marks::is_blank_mark;
use crate::clauses::MINUTES;

/// Takes such columns for those of the joint's integrity and insulation.
pub(super) fn name(headings: &mut [Heading], rows: &[Row]) {
    let integral = headings
        .iter()
        .any(|heading| level(heading) == Some("joint.integrity"));
    if !integral {
        return;
    }
    for (column, heading) in headings.iter_mut().enumerate().skip(1) {
        let timed = |row: &Row| is_time(row.text(column)) || row.is_alone();
        let Some(property) = level(heading).filter(|_| rows.iter().all(timed)) else {
            continue;
        };
        heading.unit = Some(Unit::Minute);
        heading.relation = None;
        heading.limit_unknown = false;
        heading.selects = None;
        heading.requires = Some(property);
    }
}

/// The property that a heading of minutes names, and nothing besides.
fn level(heading: &Heading) -> Option<&'static str> {
    const AROUND: &[&str] = &["min", "mins", "minutes", "in", "fire", "period", "e", "i"];
    let lower = heading.words.to_lowercase();
    let mut words = lower
        .split(|c: char| !c.is_alphabetic())
        .filter(|word| !word.is_empty() && !AROUND.contains(word));
    let named = words.next().filter(|_| words.next().is_none())?;
    let in_minutes = heading
        .unit
        .is_none_or(|unit| matches!(unit, Unit::Minute | Unit::Count));
    match named {
        "integrity" if in_minutes => Some("joint.integrity"),
        "insulation" if in_minutes => Some("joint.rating"),
        _ => None,
    }
}

/// Whether a cell is a time of fire resistance, with at most the mark of a note, or none.
fn is_time(cell: &str) -> bool {
    let mut words = cell.split_whitespace();
    let first = words.next().unwrap_or_default();
    let rated = first
        .parse::<i32>()
        .is_ok_and(|minutes| MINUTES.contains(&minutes));
    let noted = words.all(|word| word.starts_with(['(', '[', '*']) || matches!(word, "min"));
    is_blank_mark(cell) || cell.trim().is_empty() || rated && noted
}
