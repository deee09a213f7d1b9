//! Tables whose rows are labelled: a column says what the cells after it are, and their headings which joints they are for.

use super::columns::{Row, selecting};
use super::heading::{Heading, Selects, heading};
use super::labelled::{heads_numbers, heads_remarks};
use super::rating::Rating;
use super::records::{heads_limits, heads_units};
use crate::model::Span;
use crate::phrase::cell;

/// The column that labels the rows; none where the headings say what the cells are.
pub(super) fn column(headings: &mut [Heading], rows: &[Row]) -> Option<usize> {
    if let Some(label) = named(headings) {
        return Some(label);
    }
    if head_by_value(headings) || share_a_heading(headings) {
        return Some(0);
    }
    if is_labelled(headings, rows) {
        return Some(0);
    }
    behind_numbers(headings)
}

/// The column between those that number the rows and those that are each for a rating: `Ref | Item | 1 hr | 2 hr`.
fn behind_numbers(headings: &[Heading]) -> Option<usize> {
    let is_rating = |heading: &Heading| heading.rating.is_some() && heading.words.is_empty();
    let first = headings.iter().position(is_rating)?;
    let label = first.checked_sub(1).filter(|label| *label > 0)?;
    let numbers = headings.get(..label)?.iter().all(heads_numbers);
    let ratings = headings
        .get(first..)?
        .iter()
        .filter(|heading| !heads_remarks(heading))
        .all(is_rating);
    (numbers && ratings).then_some(label)
}

/// Whether a heading names parts: "Component".
pub(super) fn names_parts(heading: &Heading) -> bool {
    const NAMES: &[&str] = &["part", "component", "element", "material", "item"];
    let words = heading.words.to_lowercase();
    NAMES.contains(&words.as_str())
}

/// Names the part of each row by its cell in a column. One in parentheses goes on with that of the rows above: "Cover strip", "(optional)".
pub(super) fn name_parts(rows: &mut [Row], column: usize) {
    let goes_on = |row: &Row, before: &Row| {
        let own = row.text(column);
        own.starts_with('(') || own == before.text(column)
    };
    for group in rows.chunk_by_mut(|before, row| goes_on(row, before)) {
        let mut cells: Vec<&str> = group.iter().map(|row| row.text(column)).collect();
        cells.dedup();
        let part = cells.join(" ");
        for row in group {
            row.part.clone_from(&part);
        }
    }
}

/// Whether a heading only says that values stand below it, and how they are limited: "Value", "Lower limit".
pub(super) fn heads_values(heading: &Heading) -> bool {
    const NAMES: &[&str] = &[
        "value",
        "values",
        "requirement",
        "requirements",
        "required",
        "req",
        "req.",
        "unit",
        "units",
        "limit",
        "limits",
        "permitted",
        "allowed",
        "range",
        "rule",
        "rules",
        "permitted range",
        "allowed range",
        "permissible range",
        "lower limit",
        "upper limit",
        "lower",
        "upper",
        "min value",
        "max value",
        "minimum",
        "maximum",
        "min",
        "min.",
        "max",
        "max.",
        "at least",
        "at most",
        "not less than",
        "not more than",
        "imperial",
        "metric",
        "si",
        "us customary",
    ];
    let words = heading.words.to_lowercase();
    let named = NAMES.contains(&words.as_str());
    heading.selects.is_none() && heading.rating.is_none() && named
}

/// The column headed "Property" or the like, first or behind those that number the rows or name parts. The columns after it hold values, remarks, or
/// values for the case that their heading names.
fn named(headings: &[Heading]) -> Option<usize> {
    const NAMES: &[&str] = &[
        "property",
        "properties",
        "characteristic",
        "characteristics",
        "parameter",
        "parameters",
        "attribute",
        "quantity",
        "dimension",
        "feature",
        "features",
    ];
    // Beside a column of units, "Requirement" says what is required, too.
    const BESIDE_UNITS: &[&str] = &[
        "requirement",
        "requirements",
        "description",
        "item",
        "subject",
        "what",
    ];
    // `Part | Required | Remark`: no other column says what is required.
    if let Some((first, values)) = headings.split_first()
        && names_parts(first)
        && values.iter().any(heads_values)
        && values
            .iter()
            .all(|heading| heads_values(heading) || heads_remarks(heading))
    {
        return Some(0);
    }
    let among = |names: &[&str]| {
        headings
            .iter()
            .position(|heading| names.contains(&heading.words.to_lowercase().as_str()))
    };
    let label = among(NAMES)
        .or_else(|| among(BESIDE_UNITS).filter(|_| headings.iter().any(heads_units)))?;
    let before = headings.get(..label)?;
    let leads = before
        .iter()
        .all(|heading| heading.words.is_empty() || names_parts(heading) || heads_numbers(heading));
    let values = headings.get(label + 1..)?;
    let describes = values
        .iter()
        .any(|heading| heading.describes() && !heads_values(heading));
    (leads && !values.is_empty() && !describes).then_some(label)
}

/// Whether the first heading is of the joint's rating or width and those after it are its values: `Rating, hr | 1 | 2 | 3`. Each then heads
/// the cells for the joints that it names.
fn head_by_value(headings: &mut [Heading]) -> bool {
    let Some((first, columns)) = headings.split_first_mut() else {
        return false;
    };
    let Some(selects) = first.selects.filter(|selects| *selects != Selects::Other) else {
        return false;
    };
    let is_value = |heading: &Heading| {
        heading.rating.is_none()
            && cell(&heading.words, first.unit, first.second_unit)
                .is_some_and(|cell| cell.unit == first.unit && !cell.goes_on)
    };
    if first.unit.is_none() || columns.len() < 2 || !columns.iter().all(is_value) {
        return false;
    }
    for column in columns {
        let words = core::mem::take(&mut column.words);
        column.rating = Some(Rating {
            expr: selecting(selects, first, &words, None),
            words: format!("{}: {words}", first.words),
        });
        column.relation = None;
        column.unit = None;
    }
    first.selects = None;
    true
}

/// Whether the headings after the first are values of the joint's width or rating under one heading that they share: `Joint width (mm)` over
/// `10 to 25 | 26 to 50`. Each then heads the cells for the joints that it names.
fn share_a_heading(headings: &mut [Heading]) -> bool {
    let Some((first, columns)) = headings.split_first_mut() else {
        return false;
    };
    let Some(shared) = shared_words(columns).filter(|_| !first.describes()) else {
        return false;
    };
    let over = heading(&shared);
    let Some(selects) = over.selects.filter(|selects| *selects != Selects::Other) else {
        return false;
    };
    let own = |column: &Heading| {
        let words = column.words.get(shared.len()..).unwrap_or_default().trim();
        let is_value = cell(words, over.unit, over.second_unit)
            .is_some_and(|cell| cell.unit == over.unit && !cell.goes_on);
        is_value.then(|| words.to_owned())
    };
    let values: Vec<Option<String>> = columns.iter().map(own).collect();
    if over.unit.is_none() || values.iter().any(Option::is_none) {
        return false;
    }
    for (column, words) in columns.iter_mut().zip(values.into_iter().flatten()) {
        column.words.clear();
        column.rating = Some(Rating {
            expr: selecting(selects, &over, &words, None),
            words: format!("{shared}: {words}"),
        });
        column.selects = None;
        column.requires = None;
        column.relation = None;
        column.unit = None;
    }
    first.selects = None;
    true
}

/// The words that all headings begin with, of two headings or more.
fn shared_words(columns: &[Heading]) -> Option<String> {
    let (first, rest) = columns.split_first()?;
    let words: Vec<&str> = first.words.split(' ').collect();
    let shared = (1..words.len()).rev().find_map(|count| {
        let begin = words.get(..count)?.join(" ");
        let all = rest
            .iter()
            .all(|column| column.words.starts_with(&format!("{begin} ")));
        all.then_some(begin)
    });
    shared.filter(|_| !rest.is_empty())
}

/// Names the rows that stand under a line of their own: `FRL -/60/60` over `Packing depth | 50 | 60`. That line is no row; a sentence there,
/// or what has no row below it, stays one. Gives the places of the lines that are none.
pub(super) fn group_rows(rows: &mut Vec<Row>) -> Vec<Span> {
    const MOST_WORDS: usize = 6;
    let heads = |row: &Row| {
        let words = row.text(0);
        row.is_alone() && !words.ends_with('.') && words.split(' ').count() <= MOST_WORDS
    };
    let mut group = String::new();
    let mut kept = Vec::new();
    let mut lines = Vec::new();
    let mut rest = core::mem::take(rows).into_iter().peekable();
    while let Some(mut row) = rest.next() {
        let heads_rows = heads(&row) && rest.peek().is_some_and(|next| !next.is_alone());
        if heads_rows {
            row.text(0).clone_into(&mut group);
            lines.push(row.span);
        } else if names_a_part(&group) {
            row.part.clone_from(&group);
            kept.push(row);
        } else {
            row.group.clone_from(&group);
            kept.push(row);
        }
    }
    *rows = kept;
    lines
}

/// Whether a line over rows only names what they are about: "SEALANT", "Cover plate (optional)", "FIXING". One with a number, or that speaks of the
/// joints, says which joints they are for.
fn names_a_part(words: &str) -> bool {
    const MOST_WORDS: usize = 3;
    const CASES: &[&str] = &[
        "rating", "rated", "where", "when", "over", "under", "only", "wide", "width", "frl", "ei",
    ];
    let name = words.split('(').next().unwrap_or_default().trim();
    let lower = name.to_lowercase();
    let numbered = name.contains(|c: char| c.is_ascii_digit());
    let case = lower.split(' ').any(|word| CASES.contains(&word));
    !numbered && !case && (1..=MOST_WORDS).contains(&name.split_whitespace().count())
}

/// Whether a heading is a rating, and names nothing but what has it: "2 hr", "2 hr wall".
fn heads_a_rating(heading: &Heading) -> bool {
    const RATED: &[&str] = &[
        "",
        "wall",
        "walls",
        "floor",
        "floors",
        "joint",
        "joints",
        "system",
        "systems",
        "assembly",
        "assemblies",
        "partition",
        "partitions",
        "rated",
        "rating",
        "rated wall",
        "rated joint",
        "rated floor",
        "rated assembly",
        "wall rating",
        "assembly rating",
    ];
    let words = heading.words.to_lowercase();
    heading.rating.is_some() && RATED.contains(&words.trim().trim_start_matches('-'))
}

/// Whether each heading but the first is a rating alone, or says nothing of its cells where the first cells of the rows do.
fn is_labelled(headings: &[Heading], rows: &[Row]) -> bool {
    let columns: Vec<&Heading> = headings
        .iter()
        .skip(1)
        .filter(|heading| !heads_remarks(heading) && !heads_limits(heading))
        .collect();
    if columns.is_empty()
        || headings
            .first()
            .is_some_and(|first| first.selects.is_some())
    {
        return false;
    }
    let all_ratings = columns.iter().all(|heading| heads_a_rating(heading));
    let unheaded = headings.first().is_some_and(|first| first.words.is_empty());
    let silent = columns.iter().all(|heading| {
        // `Ref 4a sprayed` over values whose rows have labels names a case.
        let selects = heading
            .selects
            .is_some_and(|selects| !unheaded || selects != Selects::Other);
        !heading.describes() && !selects && heading.rating.is_none()
    });
    let described = rows
        .iter()
        .filter(|row| row.read_label(0).is_some_and(|label| label.describes()))
        .count();
    let most = described * 3 >= rows.len() * 2 || (unheaded && described > 0);
    all_ratings || (silent && columns.len() >= 2 && most)
}
