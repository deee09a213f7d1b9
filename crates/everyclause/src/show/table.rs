//! Tables that fit the page.

use comfy_table::{Cell, CellAlignment, ColumnConstraint, ContentArrangement, Table, TableComponent, Width};

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
    table.set_header(headings.iter().map(|heading| Cell::new(*heading).add_attribute(comfy_table::Attribute::Bold)));
    for column in table.column_iter_mut() {
        column.set_padding((0, 2));
    }
    table
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

/// Keeps a column at least so wide.
pub(crate) fn at_least(table: &mut Table, column: usize, width: u16) {
    if let Some(column) = table.column_mut(column) {
        column.set_constraint(ColumnConstraint::LowerBoundary(Width::Fixed(width)));
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
        text.push_str(line.trim_end());
        text.push('\n');
    }
    text
}
