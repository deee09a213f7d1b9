//! Tables that fit the page.

use comfy_table::{
    Cell, CellAlignment, ColumnConstraint, ContentArrangement, Table, TableComponent, Width,
};

use super::page;

/// A table with these headings, as wide as the page at most.
pub(crate) fn table(headings: &[&str]) -> Table {
    let mut table = Table::new();
    table.load_preset(comfy_table::presets::NOTHING);
    table.set_style(TableComponent::HeaderLines, '─');
    table.set_content_arrangement(ContentArrangement::Dynamic);
    table.set_width(page::width());
    // Where it is printed, not here, it is decided whether colour is shown.
    table.enforce_styling();
    table.set_header(
        headings
            .iter()
            .map(|heading| Cell::new(*heading).add_attribute(comfy_table::Attribute::Bold)),
    );
    for column in table.column_iter_mut() {
        column.set_padding((0, 2));
    }
    table
}

/// A table of those columns that something stands in, the first kept at its content's width.
pub(crate) fn of_used_columns<const N: usize>(headings: &[&str; N], rows: &[[String; N]]) -> Table {
    let is_used = |column: usize| {
        rows.iter()
            .any(|row| row.get(column).is_some_and(|cell| !cell.is_empty()))
    };
    let used: Vec<usize> = (0..N).filter(|column| is_used(*column)).collect();
    let titles: Vec<&str> = used
        .iter()
        .filter_map(|column| headings.get(*column).copied())
        .collect();
    let mut made = table(&titles);
    for row in rows {
        let cells = used.iter().filter_map(|column| row.get(*column));
        made.add_row(cells.map(Cell::new));
    }
    unwrapped(&mut made, 0);
    made
}

/// Sets a column's numbers to the right.
pub(crate) fn to_the_right(table: &mut Table, column: usize) {
    if let Some(column) = table.column_mut(column) {
        column.set_cell_alignment(CellAlignment::Right);
    }
}

/// Keeps a column at its content's width.
pub(crate) fn unwrapped(table: &mut Table, column: usize) {
    if let Some(column) = table.column_mut(column) {
        column.set_constraint(ColumnConstraint::ContentWidth);
    }
}

/// Keeps a column at most so wide.
pub(crate) fn at_most(table: &mut Table, column: usize, width: u16) {
    if let Some(column) = table.column_mut(column) {
        column.set_constraint(ColumnConstraint::UpperBoundary(Width::Fixed(width)));
    }
}

/// The table as text, without blanks at the ends of its lines.
pub(crate) fn set(table: &Table) -> String {
    let mut text = String::new();
    for line in table.lines() {
        text.push_str(&without_blanks(&line));
        text.push('\n');
    }
    text
}

/// The line without the blanks at its end, those before the end of a colour included.
fn without_blanks(line: &str) -> String {
    let mut kept = line.trim_end();
    let mut ends = String::new();
    while let Some((before, end)) = end_of_colour(kept) {
        kept = before.trim_end();
        ends.insert_str(0, end);
    }
    kept.to_owned() + &ends
}

/// Splits off an escape sequence at the end of a line, if one stands there.
fn end_of_colour(line: &str) -> Option<(&str, &str)> {
    let (before, end) = line.split_at_checked(line.rfind('\u{1b}')?)?;
    let codes = end.strip_prefix("\u{1b}[")?.strip_suffix('m')?;
    codes
        .chars()
        .all(|c| c.is_ascii_digit() || c == ';')
        .then_some((before, end))
}
