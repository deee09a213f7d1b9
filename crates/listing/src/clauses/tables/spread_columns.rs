//! A range over two columns, `Joint width, mm` over `from | to`, or a value and its tolerance: the two cells are one amount.

use super::columns::Row;
use super::heading::{Heading, heading};

/// How the first and the second column of a range are headed, behind what they are of.
const ENDS: &[(&str, &str)] = &[
    ("from", "to"),
    ("from", "up to"),
    ("over", "to"),
    ("over", "up to"),
    ("above", "to"),
    ("above", "up to"),
    ("min", "max"),
    ("min.", "max."),
    ("minimum", "maximum"),
];

/// Joins columns of widths or ratings that are the ends of a range; what they are of says which joints a row is for.
pub(super) fn join(headings: &mut Vec<Heading>, rows: &mut [Row]) {
    let Some((at, over, sign)) = (0..headings.len()).find_map(|at| {
        let (over, sign) = ends(headings.get(at)?, headings.get(at + 1)?)?;
        Some((at, over, sign))
    }) else {
        return;
    };
    headings.remove(at + 1);
    if let Some(first) = headings.get_mut(at) {
        *first = over;
    }
    for row in rows {
        if row.cells.len() <= at + 1 {
            continue;
        }
        let second = row.cells.remove(at + 1);
        if let Some(first) = row.cells.get_mut(at) {
            *first = first.joined(sign, &second);
        }
    }
}

/// Puts the tolerances of a column behind the values that they are of.
pub(super) fn join_tolerances(headings: &mut Vec<Heading>, rows: &mut [Row]) {
    const NAMES: &[&str] = &["tolerance", "tolerances", "tol", "tol.", "±", "+/-"];
    let named = |heading: &Heading| NAMES.contains(&heading.words.to_lowercase().as_str());
    let Some(at) = headings.iter().position(named).filter(|at| *at > 1) else {
        return;
    };
    headings.remove(at);
    for row in rows.iter_mut().filter(|row| row.cells.len() > at) {
        let tolerance = row.cells.remove(at);
        let says = tolerance.text().contains(|c: char| c.is_ascii_digit());
        if let Some(value) = row.cells.get_mut(at - 1).filter(|_| says) {
            *value = value.joined(" ", &tolerance);
        }
    }
}

/// What two headings are the ends of.
fn ends(first: &Heading, second: &Heading) -> Option<(Heading, &'static str)> {
    let (low, high) = (first.words.to_lowercase(), second.words.to_lowercase());
    ENDS.iter().find_map(|(from, to)| {
        let of = low.strip_suffix(from)?.trim_end_matches([' ', ',', ':']);
        let same = high.strip_suffix(to)?.trim_end_matches([' ', ',', ':']);
        let over = heading(first.words.get(..of.len())?);
        let of_joint = over
            .selects
            .is_some_and(|selects| selects.property().is_some());
        (of == same && of_joint).then_some((over, " to "))
    })
}
