//! Lists of products at the end: a row is about the item, or the part, that it names in front, wherever it stands.

use std::collections::HashMap;

use super::Reader;
use crate::clauses::{Around, Key, KeyedRow, Ordinary, Yield, keyed_rows, read_row};
use crate::layout::Line;
use crate::model::Requirement;
use crate::naming::{component_of_title, components_in};
use crate::outline::{Outline, OutlineItem, Paragraph, outline};
use vocabulary::vocabulary;

/// The outline of a document without the rows of its lists of products, and these rows.
pub(super) fn outline_and_rows(
    text: &str,
    lines: &[Line<'_>],
    ordinary: &Ordinary,
) -> (Outline, Vec<KeyedRow>) {
    let mut rows = keyed_rows(lines, ordinary);
    if rows.is_empty() {
        return (outline(text, lines), rows);
    }
    if let Some(rest) = outline_without(&rows, text, lines) {
        return (rest, rows);
    }
    // Some rows may be items themselves: those that can't be placed among all items are none.
    let whole = outline(text, lines);
    let placing = Placing::of(text, &whole);
    rows.retain(|row| placing.is_placed(row));
    if rows.is_empty() {
        return (whole, rows);
    }
    match outline_without(&rows, text, lines) {
        Some(rest) => (rest, rows),
        None => (whole, Vec::new()),
    }
}

/// The outline of a document without rows, when they can all be placed in it.
fn outline_without(rows: &[KeyedRow], text: &str, lines: &[Line<'_>]) -> Option<Outline> {
    let mut kept = lines.to_vec();
    for line in rows.iter().flat_map(|row| row.lines.clone()) {
        if let Some(line) = kept.get_mut(line) {
            line.text = "";
        }
    }
    let rest = outline(text, &kept);
    let placing = Placing::of(text, &rest);
    let mut rows = rows.iter();
    rows.all(|row| placing.is_placed(row)).then_some(rest)
}

/// Which item a row may be about: the items by their numbers, by the products that they cite and by the parts that their titles name.
struct Placing<'o> {
    items: &'o [OutlineItem],
    by_number: HashMap<Vec<String>, Vec<usize>>,
    /// The items that say "product 2", where the document cites products by numbers.
    citing: Option<HashMap<String, Vec<usize>>>,
    by_part: HashMap<&'static str, Vec<usize>>,
}

impl<'o> Placing<'o> {
    fn of(text: &str, outline: &'o Outline) -> Self {
        let items = &outline.items;
        let mut by_number: HashMap<Vec<String>, Vec<usize>> = HashMap::new();
        let mut by_part: HashMap<&'static str, Vec<usize>> = HashMap::new();
        for (index, item) in items.iter().enumerate() {
            if !item.path.starts_with('[') {
                by_number.entry(parts(&item.path)).or_default().push(index);
            }
            if let Some(part) = component_of_title(&item.title) {
                by_part.entry(part).or_default().push(index);
            }
        }
        Self {
            items,
            by_number,
            citing: (!cited_products(text).is_empty()).then(|| citing(text, items)),
            by_part,
        }
    }

    /// Whether it can be told what a row is about.
    fn is_placed(&self, row: &KeyedRow) -> bool {
        match &row.key {
            Key::Items(keys) => keys.iter().all(|key| self.item_of(key, row).is_some()),
            // Before the first item a part has no place yet.
            Key::Part(_) => self
                .items
                .iter()
                .any(|item| item.heading.start() < row.span.start()),
        }
    }

    /// The item with a number, which stands before the row.
    fn item_of(&self, key: &str, row: &KeyedRow) -> Option<usize> {
        let is_bare = key.chars().all(|c| c.is_ascii_digit());
        if let Some(citing) = self.citing.as_ref().filter(|_| is_bare) {
            return self.only_before(citing.get(key)?, row);
        }
        let index = self.only_before(self.by_number.get(&parts(key))?, row)?;
        let takes_products = component_of_title(&self.items.get(index)?.title)
            .and_then(|name| vocabulary().component(name))
            .is_none_or(|component| component.property("product").is_some());
        (!is_bare || takes_products).then_some(index)
    }

    /// The one item that is about a part; none where several are.
    fn item_of_part(&self, label: &str, row: &KeyedRow) -> Option<usize> {
        let named = components_in(label);
        let mut about: Vec<usize> = named
            .iter()
            .filter_map(|(component, ..)| self.by_part.get(component.name.as_str()))
            .flatten()
            .copied()
            .collect();
        about.sort_unstable();
        about.dedup();
        self.only_before(&about, row)
    }

    /// The one of some items, in their order, that stands before a row.
    fn only_before(&self, items: &[usize], row: &KeyedRow) -> Option<usize> {
        let mut before = items.iter().copied().filter(|index| {
            let item = self.items.get(*index);
            item.is_some_and(|item| item.heading.end() <= row.span.start())
        });
        let first = before.next()?;
        before.next().is_none().then_some(first)
    }
}

/// The items by the numbers of the products that they cite.
fn citing(text: &str, items: &[OutlineItem]) -> HashMap<String, Vec<usize>> {
    let mut citing: HashMap<String, Vec<usize>> = HashMap::new();
    for (index, item) in items.iter().enumerate() {
        let pieces = item.paragraphs.iter().flat_map(Paragraph::pieces);
        for piece in core::iter::once(item.heading).chain(pieces) {
            for number in cited_products(piece.of(text)) {
                let cited = citing.entry(number).or_default();
                if cited.last() != Some(&index) {
                    cited.push(index);
                }
            }
        }
    }
    citing
}

/// The numbers by which words cite products: "product 2".
fn cited_products(words: &str) -> Vec<String> {
    let lower = words.to_lowercase();
    let behind = lower
        .match_indices("product ")
        .filter_map(|(at, lead)| lower.get(at + lead.len()..));
    behind
        .filter_map(|behind| {
            let end = behind.find(|c: char| !c.is_alphanumeric());
            let word = behind.get(..end.unwrap_or(behind.len()))?;
            word.starts_with(|c: char| c.is_ascii_digit())
                .then(|| word.to_owned())
        })
        .collect()
}

/// The parts of an item's number: `6(c)(i)` and `6.c.i` are one.
fn parts(number: &str) -> Vec<String> {
    let mut parts: Vec<String> = Vec::new();
    let mut kind = None;
    for c in number.chars() {
        let own = c.is_alphanumeric().then(|| c.is_ascii_digit());
        if own.is_some() {
            if own != kind {
                parts.push(String::new());
            }
            if let Some(last) = parts.last_mut() {
                last.extend(c.to_lowercase());
            }
        }
        kind = own;
    }
    parts
}

impl Reader<'_> {
    /// Reads the rows of the lists of products.
    pub(super) fn product_rows(&mut self, rows: &[KeyedRow]) {
        if rows.is_empty() {
            return;
        }
        let placing = Placing::of(self.text, self.outline);
        for row in rows {
            match &row.key {
                Key::Items(keys) => {
                    for key in keys {
                        if let Some(index) = placing.item_of(key, row) {
                            self.product_row(row, index);
                        }
                    }
                }
                Key::Part(label) => match placing.item_of_part(label, row) {
                    Some(index) => self.product_row(row, index),
                    None => self.product_row_of_no_item(row),
                },
            }
        }
    }

    fn product_row(&mut self, row: &KeyedRow, index: usize) {
        let Some(item) = self.outline.items.get(index) else {
            return;
        };
        let around = self.around(index, item);
        let mut found = Yield::default();
        read_row(row, &around, &mut found);
        if let Some(Some(standing)) = self.standing.get(index) {
            found.put_under(standing, self.text, 0..);
        }
        let path = item.path.clone();
        self.take_products(&path, found);
    }

    fn product_row_of_no_item(&mut self, row: &KeyedRow) {
        let mut found = Yield::default();
        let last = self
            .outline
            .items
            .iter()
            .rfind(|item| item.heading.end() <= row.span.start());
        let item = last.map(|item| item.path.clone()).unwrap_or_default();
        let around = Around {
            item: item.clone(),
            ..Around::default()
        };
        read_row(row, &around, &mut found);
        self.take_products(&item, found);
    }

    /// Takes clauses on products: names of a part that is named already go to its clause, so that no two must both be met.
    fn take_products(&mut self, path: &str, mut found: Yield) {
        found.clauses.retain(|own| {
            let Requirement::Named { names } = &own.requirement else {
                return true;
            };
            let held = self.drafts.iter_mut().find(|(item, held)| {
                item == path
                    && held.property == own.property
                    && held.options == own.options
                    && held.condition == own.condition
            });
            let Some((_, held)) = held else {
                return true;
            };
            let Requirement::Named { names: held_names } = &mut held.requirement else {
                return true;
            };
            for name in names {
                if !held_names.contains(name) {
                    held_names.push(name.clone());
                }
            }
            if own.confidence == crate::model::Confidence::WithDoubt {
                held.confidence = own.confidence;
            }
            false
        });
        self.take(path, found);
    }
}
