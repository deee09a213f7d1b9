//! Which columns say for which joints a row is, and what their cells test.

use measure::{Quantity, Unit};

use super::super::cell::holds_a_class_alone;
use super::super::heading::{Heading, Selects};
use super::super::inequality::spelled;
use super::super::labelled::{heads_numbers, heads_remarks};
use super::super::labels;
use super::row::Row;
use crate::model::{Expr, Relation, Test};
use crate::phrase::{Cell, cell};

/// Keeps as selecting the columns from the first on that say which joints a row is for. A width that stands behind others which tell the
/// rows apart already is what they require; so is a rating behind the row's own mark.
pub(super) fn choose_selecting(headings: &mut [Heading], rows: &[Row], labelled: bool) {
    let mut selecting = true;
    let mut by_mark = true;
    let by_parts = headings
        .get(1)
        .is_some_and(|second| second.selects.is_none() && second.unit.is_none());
    let of_parts = headings.first().is_some_and(labels::names_parts);
    let one_row = rows.len() == 1;
    // `Sealant depth, min` before a class asks for the depth that the class needs.
    let classed = headings.last().is_some_and(Heading::names_a_class);
    for index in 0..headings.len() {
        let told_apart = index > 0 && are_told_apart(rows, index);
        let Some(heading) = headings.get_mut(index) else {
            break;
        };
        // What names the row's part neither tells the rows apart nor asks anything.
        let names_part = labels::names_parts(heading) && index > 0;
        selecting &= heading.selects.is_some() || index == 0 || names_part;
        let required = match heading.selects {
            Some(Selects::Width) => told_apart,
            Some(Selects::Rating) => told_apart && by_mark,
            // Each part has its own size, `Clip | 20 ga, 1 in. wide`: no case tells it.
            Some(Selects::Other) => {
                told_apart && of_parts && heading.words.to_lowercase() == "size"
            }
            None => false,
        };
        // One row tells nothing of a gap or a width that isn't called the joint's.
        let of_joint = !one_row || heading.words.to_lowercase().contains("joint");
        if required && of_joint {
            heading.requires = heading.selects.and_then(Selects::property);
        }
        // What limits the values of one row alone tells no case.
        let asks = (one_row || classed) && heading.is_limited() && index == 0;
        if !selecting || labelled || required || asks && heading.selects.is_none() {
            heading.selects = None;
            selecting &= !asks;
        } else if index == 0 && !(by_parts && numbers_parts(heading, rows)) {
            heading.selects.get_or_insert(Selects::Other);
        }
        by_mark &= heading.selects == Some(Selects::Other);
    }
}

/// Whether each row is for the class in its first cell: `Class | Element | Depth of strip` over `EI 120 - V - X - F | rigid wall | min. 110 mm`.
pub(super) fn leads_with_classes(headings: &[Heading], rows: &[Row]) -> bool {
    let classed = |row: &Row| row.cells.first().is_some_and(holds_a_class_alone);
    headings.first().is_some_and(Heading::names_a_class)
        && rows.len() >= 2
        && rows.iter().all(classed)
}

/// Takes the names that tell the rows apart for what the rows are for, where the first column only numbers them: `Clause | Construction` over
/// `1.1 | Rigid wall`.
pub(super) fn select_by_name(headings: &mut [Heading], rows: &[Row]) {
    let is_number = |row: &Row| {
        let mark = row.text(0);
        !mark.is_empty() && mark.chars().all(|c| c.is_ascii_digit() || c == '.')
    };
    let mut names: Vec<&str> = rows.iter().map(|row| row.text(1)).collect();
    let is_name = |name: &&str| {
        name.starts_with(char::is_alphabetic) && !name.contains(|c: char| c.is_ascii_digit())
    };
    let all_names = names.len() >= 2 && names.iter().all(is_name);
    names.sort_unstable();
    let apart = names.windows(2).all(|pair| pair.first() != pair.last());
    let [first, second, _, ..] = headings else {
        return;
    };
    let plain = second.selects.is_none()
        && !second.describes()
        && second.rating.is_none()
        && !heads_remarks(second);
    let by_number = first.selects == Some(Selects::Other);
    let numbers = heads_numbers(first) && by_number && rows.iter().all(is_number);
    if numbers && all_names && apart && plain {
        first.selects = None;
        second.selects = Some(Selects::Other);
    }
}

/// Takes all columns before the last for what the rows are for, where that one alone says what is reached: `System | Element | FRL` over
/// `2 | Slab, 150 mm | -/180/180`.
pub(super) fn select_before_classes(headings: &mut [Heading], rows: &[Row]) {
    let Some((last, before)) = headings.split_last_mut() else {
        return;
    };
    let column = before.len();
    let classed = |row: &Row| row.cells.get(column).is_some_and(holds_a_class_alone);
    let told = before.first().is_some_and(|first| first.selects.is_some());
    // What the joint is in, or where fire comes from. How it is sealed is asked for.
    let names_case = |heading: &Heading| {
        const CASES: &[&str] = &[
            "element",
            "elements",
            "construction",
            "constructions",
            "situation",
            "exposure",
            "exposed",
            "use",
            "building",
            "separating",
            "supporting",
        ];
        let lower = heading.words.to_lowercase();
        let mut words = lower.split(|c: char| !c.is_alphabetic());
        heading.selects == Some(Selects::Other)
            || !heading.describes()
                && heading.rating.is_none()
                && words.any(|word| CASES.contains(&word))
    };
    let whole = last.names_a_class() && rows.len() >= 2 && rows.iter().all(classed);
    if whole && told && (1..=2).contains(&column) && before.iter().all(names_case) {
        for heading in before.iter_mut() {
            heading.selects.get_or_insert(Selects::Other);
        }
        last.selects = None;
    }
}

/// Whether a first column only numbers the parts that its rows describe, `Part | Description` over `B1 | Steel beam`: a mark says no case.
fn numbers_parts(heading: &Heading, rows: &[Row]) -> bool {
    const LONGEST: usize = 4;
    let is_mark = |row: &Row| {
        let mark = row.text(0);
        mark.len() <= LONGEST && !mark.contains(' ') && mark.contains(|c: char| c.is_ascii_digit())
    };
    let names = |row: &Row| row.text(1).starts_with(char::is_alphabetic);
    labels::names_parts(heading) && rows.iter().all(|row| is_mark(row) && names(row))
}

/// Whether the first columns alone tell every row from every other.
fn are_told_apart(rows: &[Row], columns: usize) -> bool {
    let key = |row: &Row| -> Vec<String> {
        (0..columns)
            .map(|column| row.text(column).to_owned())
            .collect()
    };
    let mut keys: Vec<Vec<String>> = rows.iter().map(key).collect();
    keys.sort_unstable();
    keys.windows(2).all(|pair| pair.first() != pair.last())
}

/// What a selecting cell tests.
pub(in crate::clauses::tables) fn selecting(
    selects: Selects,
    heading: &Heading,
    text: &str,
    usual_unit: Option<Unit>,
) -> Expr {
    let usual_unit = usual_unit.filter(|_| selects == Selects::Width);
    let spelled = spelled(text).filter(|_| selects == Selects::Width);
    let value = spelled.as_deref().unwrap_or(text);
    selects
        .property()
        .zip(
            cell(value, heading.unit.or(usual_unit), heading.second_unit)
                .filter(|cell| !cell.goes_on),
        )
        .and_then(|(property, cell)| test(property, &cell, heading.relation))
        .unwrap_or_else(|| Expr::Words(under(heading, text)))
}

/// What a cell's amount asks of a property.
pub(in crate::clauses::tables) fn test(
    property: &str,
    cell: &Cell,
    heading: Option<Relation>,
) -> Option<Expr> {
    let unit = cell.unit?;
    let quantity = |number| Quantity::new(number, unit);
    let (relation, lo, hi) = match (cell.relation.or(heading), cell.hi) {
        (_, Some(hi)) => (
            Relation::Between,
            Some(quantity(cell.lo)),
            Some(quantity(hi)),
        ),
        (Some(relation @ (Relation::AtMost | Relation::LessThan)), None) => {
            (relation, None, Some(quantity(cell.lo)))
        }
        (Some(relation @ (Relation::AtLeast | Relation::MoreThan)), None) => {
            (relation, Some(quantity(cell.lo)), None)
        }
        _ => (Relation::Exactly, Some(quantity(cell.lo)), None),
    };
    Some(Expr::Test(Test {
        property: property.to_owned(),
        relation,
        lo,
        hi,
        lo_excluded: cell.lo_excluded,
    }))
}

/// What a cell says under its heading: `Rating: 1 hr`.
pub(super) fn under(heading: &Heading, text: &str) -> String {
    if heading.words.is_empty() {
        text.to_owned()
    } else {
        format!("{}: {text}", heading.words)
    }
}
