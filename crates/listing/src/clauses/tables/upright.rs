//! Tables that lie on their side: `Rating, hr | 1 | 2 | 3` over `Plate, ga | 20 | 18 | 16`. Each column is one case and each line a property, so they are
//! read with lines and columns changed over.
//!
//! The first line must say of which rating or width each column is, and every other must be headed with its unit. Where a label has none, or a cell holds
//! words, nobody can be sure which way the table lies.

use super::heading::{Selects, heading};
use super::is_blank_mark;
use crate::layout::Flow;
use crate::model::Span;
use crate::outline::Table;

/// The table with its lines for columns, where it lies on its side.
pub(super) fn upright(source: &str, table: &Table) -> Option<Table> {
    const FEWEST_CELLS: usize = 3;
    let headed = table.headings.iter().any(|heading| !heading.is_empty());
    let heading_line = headed.then_some(&table.headings);
    let rows = table.rows.iter().map(|row| &row.cells);
    let lines: Vec<&Vec<Vec<Span>>> = heading_line.into_iter().chain(rows).collect();
    let (cases, properties) = lines.split_first()?;
    let even = cases.len() >= FEWEST_CELLS && lines.iter().all(|line| line.len() == cases.len());
    let on_its_side = names_cases(source, cases)
        && !properties.is_empty()
        && properties.iter().all(|line| is_of_a_property(source, line));
    (even && on_its_side).then(|| {
        let column = |at: usize| -> Vec<Vec<Span>> {
            let cells = lines.iter().map(|line| line.get(at).cloned());
            cells.map(Option::unwrap_or_default).collect()
        };
        let headings = column(0);
        let headings = headings.into_iter().map(|label| uncoloned(source, label));
        Table::of_columns(
            headings.collect(),
            (1..cases.len()).map(column).collect(),
            table.span,
        )
    })
}

fn text(source: &str, cell: &[Span]) -> String {
    let flow = Flow::of(source, cell.iter().copied());
    flow.text().trim().to_owned()
}

/// Whether a line says which rating or width each column is for.
fn names_cases(source: &str, line: &[Vec<Span>]) -> bool {
    const BEGIN: &[&str] = &["up to", "over", "max", "≤", "<", ">", "to "];
    let Some((label, cells)) = line.split_first() else {
        return false;
    };
    let label = text(source, label);
    let selects = heading(label.trim_end_matches(':')).selects;
    let is_case = |cell: &Vec<Span>| {
        let words = text(source, cell).to_lowercase();
        words.starts_with(|c: char| c.is_ascii_digit())
            || BEGIN.iter().any(|begin| words.starts_with(begin))
                && words.contains(|c: char| c.is_ascii_digit())
    };
    matches!(selects, Some(Selects::Rating | Selects::Width)) && cells.iter().all(is_case)
}

/// Whether a line is headed with a property and its unit, and holds its numbers.
fn is_of_a_property(source: &str, line: &[Vec<Span>]) -> bool {
    let Some((label, cells)) = line.split_first() else {
        return false;
    };
    let label = text(source, label);
    let label = heading(label.trim_end_matches(':'));
    let is_number = |cell: &Vec<Span>| {
        let words = text(source, cell);
        let number = words.starts_with(|c: char| c.is_ascii_digit());
        number && !words.contains(char::is_alphabetic) || is_blank_mark(&words)
    };
    label.unit.is_some() && label.selects.is_none() && cells.iter().all(is_number)
}

/// A label without the colon behind it.
fn uncoloned(source: &str, mut label: Vec<Span>) -> Vec<Span> {
    if let Some(last) = label.last_mut() {
        let words = last.of(source).trim_end();
        let colon = usize::from(words.ends_with(':'));
        *last = Span::new(last.start(), last.start() + words.len() - colon);
    }
    label
}
