//! Columns of cases under one heading that they share, beside columns of their own: `Rating, minutes` over `60 | 90 | 120`, `Width of joint, mm (in.)`
//! over `25 - 50 (1 - 2) | > 50 - 100 (> 2 - 4)`. Their cells are for these joints, and of what the caption names.
//!
//! Where the shared heading is no width or rating of the joint, or what stands below it is no value in its unit, it heads no cases. One that measures,
//! `Depth of strip, mm` over `60 min | 120 min`, is that of each rating below it.

use std::collections::BTreeMap;

use super::columns::selecting;
use super::heading::{Heading, Selects, heading};
use super::rating::{Rating, split_rating};
use crate::model::Expr;
use crate::phrase::cell;

/// What each column heads that shares a heading with those beside it.
pub(super) fn cases_under_one(headings: &[String]) -> BTreeMap<usize, Heading> {
    const FEWEST: usize = 2;
    let mut found = BTreeMap::new();
    let mut at = 1;
    while at < headings.len() {
        if let Some(rated) = rated_from(headings, at) {
            let step = rated.len();
            found.extend(
                rated
                    .into_iter()
                    .enumerate()
                    .map(|(place, own)| (at + place, own)),
            );
            at += step;
            continue;
        }
        let run = run_from(headings, at).unwrap_or_default();
        // Where all columns share it, the first says what its rows are.
        let apart = run.len() + 1 < headings.len() || selects_rows(headings.first());
        let step = run.len().max(1);
        if run.len() >= FEWEST && apart {
            let cases = run.into_iter().map(Heading::for_case);
            found.extend(cases.enumerate().map(|(place, case)| (at + place, case)));
        }
        at += step;
    }
    found
}

fn selects_rows(first: Option<&String>) -> bool {
    let first = first.map(|words| heading(words));
    first.is_some_and(|first| first.selects.is_some())
}

/// The columns from one on that share a heading which measures in a unit, each for a rating of its own: alone, `60 min` may as well be a limit.
fn rated_from(headings: &[String], at: usize) -> Option<Vec<Heading>> {
    let first = headings.get(at)?;
    let ends = first.match_indices(' ').map(|(end, _)| end);
    let shared: Vec<&str> = ends.filter_map(|end| first.get(..end)).collect();
    shared.into_iter().rev().find_map(|shared| {
        let over = heading(shared);
        let measures = over.unit.is_some() && over.selects.is_none() && over.rating.is_none();
        let columns = headings.get(at..).filter(|_| measures)?.iter();
        let ratings: Vec<Rating> = columns
            .map_while(|words| {
                let (rest, rating) = split_rating(words.strip_prefix(shared)?.strip_prefix(' ')?);
                rating.filter(|_| rest.is_empty())
            })
            .collect();
        let apart = ratings.windows(2).all(|two| two.first() != two.last());
        (apart && ratings.len() > 1).then(|| {
            let of = |rating| Heading {
                rating: Some(rating),
                ..over.clone()
            };
            ratings.into_iter().map(of).collect()
        })
    })
}

/// The cases that the columns from one on are for: as many as share the longest heading of that one.
fn run_from(headings: &[String], at: usize) -> Option<Vec<Rating>> {
    let first = headings.get(at)?;
    let ends = first.match_indices(' ').map(|(end, _)| end);
    let shared: Vec<&str> = ends.filter_map(|end| first.get(..end)).collect();
    let runs = shared.into_iter().rev().filter_map(|shared| {
        let over = heading(shared);
        let selects = over
            .selects
            .filter(|selects| *selects != Selects::Other && over.rating.is_none())?;
        let columns = headings.get(at..)?.iter();
        let cases: Vec<Rating> = columns
            .map_while(|words| case_under(shared, &over, selects, words))
            .collect();
        let mut apart: Vec<&str> = cases.iter().map(|case| case.words.as_str()).collect();
        apart.sort_unstable();
        apart.dedup();
        (apart.len() == cases.len() && cases.len() > 1).then_some(cases)
    });
    runs.max_by_key(Vec::len)
}

/// The case that a column is for under the heading that it shares.
fn case_under(shared: &str, over: &Heading, selects: Selects, words: &str) -> Option<Rating> {
    let value = words.strip_prefix(shared)?.strip_prefix(' ')?.trim();
    let unit = over.unit?;
    let of_unit = |value: &str| {
        cell(value, over.unit, over.second_unit).is_some_and(|cell| {
            let same = cell.unit.map(measure::Unit::dimension) == Some(unit.dimension());
            same && !cell.goes_on
        })
    };
    let plain = [value, without_second(value)]
        .into_iter()
        .find(|value| of_unit(value))?;
    let expr = selecting(selects, over, plain, None);
    matches!(expr, Expr::Test(_)).then(|| Rating {
        words: format!("{shared}: {value}"),
        expr,
    })
}

/// A value without the same in another unit behind it: `> 50 - 100` of `> 50 - 100 (> 2 - 4)`.
fn without_second(value: &str) -> &str {
    let bracketed = value
        .strip_suffix(')')
        .and_then(|rest| rest.split_once(" ("));
    let numbers = |inside: &str| !inside.contains(char::is_alphabetic);
    bracketed
        .filter(|(_, inside)| numbers(inside))
        .map_or(value, |(value, _)| value)
}
