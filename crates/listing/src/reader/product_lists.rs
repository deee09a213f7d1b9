//! Lists of products at the end: a row is about the item, or the part, that it names in front, wherever it stands.

use super::Reader;
use crate::clauses::{Around, Key, KeyedRow, Ordinary, Yield, keyed_rows, read_row};
use crate::layout::Line;
use crate::model::{Requirement, Span};
use crate::naming::{component_of_title, components_in};
use crate::outline::{Outline, OutlineItem, outline};
use vocabulary::vocabulary;

/// The outline of a document without the rows of its lists of products, and these rows.
pub(super) fn outline_and_rows(
    text: &str,
    lines: &[Line<'_>],
    ordinary: &Ordinary,
) -> (Outline, Vec<KeyedRow>) {
    let whole = outline(text, lines);
    let mut rows = keyed_rows(lines, ordinary);
    rows.retain(|row| is_placed(text, row, &whole));
    if rows.is_empty() {
        return (whole, rows);
    }
    let kept: Vec<Line<'_>> = lines
        .iter()
        .enumerate()
        .map(|(at, line)| {
            if rows.iter().any(|row| row.lines.contains(&at)) {
                Line { text: "", ..*line }
            } else {
                *line
            }
        })
        .collect();
    let rest = outline(text, &kept);
    if rows.iter().all(|row| is_placed(text, row, &rest)) {
        (rest, rows)
    } else {
        (whole, Vec::new())
    }
}

/// Whether it can be told what a row is about.
fn is_placed(text: &str, row: &KeyedRow, outline: &Outline) -> bool {
    match &row.key {
        Key::Items(keys) => keys
            .iter()
            .all(|key| item_of(text, key, row, outline).is_some()),
        // Before the first item a part has no place yet.
        Key::Part(_) => outline
            .items
            .iter()
            .any(|item| item.heading.start() < row.span.start()),
    }
}

/// The item with a number, which stands before the row.
fn item_of(text: &str, key: &str, row: &KeyedRow, outline: &Outline) -> Option<usize> {
    let before = |item: &OutlineItem| item.heading.end() <= row.span.start();
    let cites_products = cites(text, "product");
    if cites_products && key.chars().all(|c| c.is_ascii_digit()) {
        let cited = format!("product {key}");
        let mut citing = outline
            .items
            .iter()
            .enumerate()
            .filter(|(_, item)| before(item) && says(text, item, &cited));
        let (index, _) = citing.next()?;
        return citing.next().is_none().then_some(index);
    }
    let own = parts(key);
    let mut named = outline.items.iter().enumerate().filter(|(_, item)| {
        before(item) && !item.path.starts_with('[') && parts(&item.path) == own
    });
    let (index, item) = named.next()?;
    let is_bare = key.chars().all(|c| c.is_ascii_digit());
    let takes_products = component_of_title(&item.title)
        .and_then(|name| vocabulary().component(name))
        .is_none_or(|component| component.property("product").is_some());
    (named.next().is_none() && (!is_bare || takes_products)).then_some(index)
}

/// Whether a text cites things by a word and a number: "product 2".
fn cites(text: &str, word: &str) -> bool {
    let lower = text.to_lowercase();
    lower.match_indices(word).any(|(at, _)| {
        let behind = lower.get(at + word.len()..).unwrap_or_default();
        behind
            .strip_prefix(' ')
            .is_some_and(|rest| rest.starts_with(|c: char| c.is_ascii_digit()))
    })
}

/// Whether an item says words, whole.
fn says(text: &str, item: &OutlineItem, words: &str) -> bool {
    let pieces = item
        .paragraphs
        .iter()
        .flat_map(crate::outline::Paragraph::pieces);
    core::iter::once(item.heading)
        .chain(pieces)
        .any(|piece: Span| {
            let lower = piece.of(text).to_lowercase();
            lower.match_indices(words).any(|(at, _)| {
                let behind = lower.get(at + words.len()..).unwrap_or_default();
                !behind.starts_with(|c: char| c.is_alphanumeric())
            })
        })
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
        for row in rows {
            match &row.key {
                Key::Items(keys) => {
                    for key in keys {
                        if let Some(index) = item_of(self.text, key, row, self.outline) {
                            self.product_row(row, index);
                        }
                    }
                }
                Key::Part(label) => match self.item_of_part(label, row) {
                    Some(index) => self.product_row(row, index),
                    None => self.product_row_of_no_item(row),
                },
            }
        }
    }

    /// The one item that is about a part; none where several are.
    fn item_of_part(&self, label: &str, row: &KeyedRow) -> Option<usize> {
        let named = components_in(label);
        let named = || named.iter().map(|(component, ..)| component.name.as_str());
        let items = self.outline.items.iter().enumerate();
        let mut about = items.filter(|(_, item)| {
            item.heading.end() <= row.span.start()
                && component_of_title(&item.title)
                    .is_some_and(|own| named().any(|name| name == own))
        });
        let (index, _) = about.next()?;
        about.next().is_none().then_some(index)
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
