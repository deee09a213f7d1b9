//! Drawn tables of the same kind to items: `| Line | Part | What is measured | 1 hr | 2 hr | Unit |`.

use super::heading::{Role, heads_numbers, role};
use super::items::{Content, Item};
use super::{property, settled};
use crate::model::Span;
use crate::outline::marker::{Marker, cell_marker};
use crate::outline::tables::{Row, Table};

/// The items of a table whose rows are numbered requirements; none where it is another, or a row has no item.
pub(in crate::outline) fn items_of(table: &Table, source: &str) -> Option<Vec<Item>> {
    let headings: Vec<String> = table
        .headings
        .iter()
        .map(|pieces| words(pieces, source))
        .collect();
    let numbered = headings.first().is_some_and(|first| heads_numbers(first));
    if !numbered {
        return None;
    }
    let others = headings.iter().skip(1).map(|words| role(words));
    let roles: Option<Vec<Role>> = core::iter::once(Some(Role::Number)).chain(others).collect();
    let headings: Vec<&str> = headings.iter().map(String::as_str).collect();
    let property = property(&settled(roles?, &headings)?)?;
    // Where a row says itself which part it is of, it goes on saying so.
    let first = if property == 2 { 1 } else { property };
    let headings = table.headings.get(first..)?;
    let mut items: Vec<Item> = Vec::new();
    let mut number_above = String::new();
    let mut names_above: Vec<Vec<Span>> = Vec::new();
    for row in &table.rows {
        let (own, _) = row.cells.split_at_checked(property)?;
        let (number, names) = own.split_first()?;
        let again = |name: &Vec<Span>| name.is_empty() || repeats(&words(name, source));
        if !names.iter().all(again) {
            names_above = names.to_vec();
        }
        let label = words(number, source);
        let marker = cell_marker(&label).filter(|_| label != number_above);
        if let Some((marker, place)) = marker.zip(number.first()) {
            number_above = label;
            items.push(opened(marker, *place, &names_above));
        }
        let mut cells = row.cells.get(first..)?.to_vec();
        // A row without a name goes on with the part above, which may not be the first of its number.
        if let Some(name) = cells
            .first_mut()
            .filter(|name| first == 1 && name.is_empty())
        {
            name.clone_from(names_above.first()?);
        }
        let asked = Row {
            cells,
            span: row.span,
        };
        let contents = &mut items.last_mut()?.contents;
        if let Some(Content::Rows(rows)) = contents.last_mut() {
            rows.push_whole(asked);
        } else {
            contents.push(Content::Rows(Table::of_row(headings.to_vec(), asked)));
        }
    }
    Some(items)
}

/// Whether the name of a part is that of the row above.
pub(super) fn repeats(name: &str) -> bool {
    ["do.", "ditto", "\"", "-do-"].contains(&name.to_lowercase().as_str())
}

/// The item that a row opens.
fn opened(marker: Marker, label: Span, names: &[Vec<Span>]) -> Item {
    let product = names.get(1).filter(|product| !product.is_empty());
    Item {
        marker,
        label,
        title: names.first().cloned().unwrap_or_default(),
        contents: product.cloned().map(Content::Product).into_iter().collect(),
    }
}

fn words(pieces: &[Span], source: &str) -> String {
    let words: Vec<&str> = pieces.iter().map(|piece| piece.of(source).trim()).collect();
    words.join(" ")
}
