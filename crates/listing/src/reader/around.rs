//! What stands around an item: its titles, its options, the sentence that leads to it.

use std::collections::BTreeMap;
use vocabulary::{Component, vocabulary};

use super::Reader;
use super::standing::{self, names_attribute};
use crate::clauses::{self, Around};
use crate::conditions::letters;
use crate::layout::Flow;
use crate::naming::{Subject, component_of_title, components_in, named_part};
use crate::outline::{Outline, OutlineItem, Paragraph};

impl Reader<'_> {
    /// What stands around an item: its titles' components, innermost first, and the options it lies in.
    pub(super) fn around(&self, index: usize, item: &OutlineItem) -> Around {
        let mut titles: Vec<(&'static Component, usize)> = Vec::new();
        let mut depth = 0;
        let mut options: Vec<(usize, String)> = Vec::new();
        // A footnote speaks of what the item that cites it speaks of.
        let mut above = Some(if item.path.starts_with('[') {
            let citing = self.footnote_marks.citing(&item.path).next();
            citing.unwrap_or(index)
        } else {
            index
        });
        while let Some(index) = above {
            let Some(outer) = self.outline.items.get(index) else {
                break;
            };
            let level = titles.len();
            // Inside "Bridging plates" nothing is about what stands around them.
            if !titles.iter().any(|(component, _)| component.is_other()) {
                for (component, weak, _) in components_in(named_part(&outer.title)) {
                    if !weak && !titles.iter().any(|(held, _)| held.name == component.name) {
                        titles.push((component, depth));
                    }
                }
            }
            depth += match (titles.len() > level, names_attribute(&outer.title)) {
                (true, _) => 1,
                (false, true) => 0,
                // A thing that the vocabulary doesn't know is not the thing that it stands under.
                (false, false) => 3,
            };
            // Notes below an optional part are about the whole, and of none of the options that stand before them.
            let notes = standing::heading_of_notes(self.text, outer)
                .filter(|notes| notes.end() <= item.heading.start());
            if let Some(notes) = notes {
                options.retain(|(start, _)| *start >= notes.end());
            }
            // A note at the end of all may be just about what holds without the option that leads to it.
            let is_footnote = item.path.starts_with('[')
                && item.heading.of(self.text).starts_with('[')
                && self.footnote_marks.citing(&item.path).nth(1).is_none();
            let is_part = is_footnote || item.path.starts_with(&outer.path);
            let option = self.options.get(index);
            if let Some(option) = option.filter(|_| is_part && notes.is_none()) {
                let start = outer.heading.start();
                let own = option.is_choice().then(|| outer.path.clone());
                let named = own.into_iter().chain(option.configuration());
                options.extend(named.map(|name| (start, name)));
            }
            above = outer.parent;
        }
        if let Some(component) = self.cited_component(&item.path) {
            titles.retain(|(held, _)| held.name != component.name);
            titles.insert(0, (component, 0));
        }
        let subject = Subject {
            titles,
            title: item.title.clone(),
            parts: self.parts.clone(),
            before: None,
        };
        let opening = item
            .parent
            .and_then(|parent| self.opening(parent, item.heading.start()))
            .unwrap_or_default();
        Around {
            item: item.path.clone(),
            carried: clauses::carried(&opening).or_else(|| clauses::carried_by_title(&item.title)),
            led_to: led_to(item, &opening),
            denied: clauses::denies_below(&opening),
            subject,
            options: options.into_iter().map(|(_, name)| name).collect(),
            headed: None,
            usual_units: self.usual_units,
            heading: item.heading,
            first_said: self.first_said.clone(),
            column_limits: self.column_limits.clone(),
            table_limits: self.table_limits.clone(),
            ordinary: self.ordinary.clone(),
            configuration_letters: self.configuration_letters.clone(),
            variants: self.variants.clone(),
        }
    }

    /// What an item's words say of the items in it: those before them, if text, or its heading.
    fn opening(&self, index: usize, before: usize) -> Option<String> {
        let item = self.outline.items.get(index)?;
        let last = item
            .paragraphs
            .iter()
            .rev()
            .find_map(|paragraph| match paragraph {
                Paragraph::Text(pieces) => pieces
                    .first()
                    .is_some_and(|piece| piece.start() < before)
                    .then(|| {
                        Some(
                            Flow::of(self.text, pieces.iter().copied())
                                .text()
                                .to_owned(),
                        )
                    }),
                Paragraph::Cell { text, .. } | Paragraph::Case { text, .. } => {
                    (text.first()?.start() < before).then_some(None)
                }
                Paragraph::Table(table) => (table.span.start() < before).then_some(None),
                Paragraph::Entry(entry) => {
                    let opens = entry.pieces().next()?.start() < before;
                    opens.then_some(None)
                }
            });
        match last {
            Some(words) => words,
            None => Some(item.heading.of(self.text).to_owned()),
        }
    }

    /// The component named just before a footnote's mark in the text that cites it: "Sealant [c] at the ends".
    fn cited_component(&self, path: &str) -> Option<&'static Component> {
        if !path.starts_with('[') {
            return None;
        }
        let item = self
            .footnote_marks
            .citing(path)
            .next()
            .and_then(|index| self.outline.items.get(index))?;
        if item.title.contains(path) {
            return None;
        }
        let piece = item
            .paragraphs
            .iter()
            .flat_map(Paragraph::pieces)
            .map(|piece| piece.of(self.text))
            .find(|words| words.contains(path))?;
        let before = piece.get(..piece.find(path)?)?;
        components_in(before)
            .last()
            .map(|(component, ..)| *component)
    }
}

/// The letters by which the head of a document names configurations.
pub(super) fn configuration_letters(text: &str, outline: &Outline) -> Vec<String> {
    let head: Vec<Flow> = outline
        .head
        .iter()
        .map(|pieces| Flow::of(text, pieces.iter().copied()))
        .collect();
    letters(head.iter())
}

/// The part that the title of each item names, by the item's number. Of a number that several items have nobody knows which is meant.
pub(super) fn parts(items: &[OutlineItem]) -> BTreeMap<String, &'static Component> {
    let mut parts = BTreeMap::new();
    for item in items {
        let name = component_of_title(&item.title);
        let part = name.and_then(|name| vocabulary().component(name));
        let several = parts.insert(item.path.clone(), part).is_some();
        if several {
            parts.insert(item.path.clone(), None);
        }
    }
    let known = parts.into_iter();
    known
        .filter_map(|(path, part)| Some((path, part?)))
        .collect()
}

/// The sentence that leads to a table without a title.
fn led_to(item: &OutlineItem, opening: &str) -> String {
    let untitled = item.path.starts_with("Table ") && item.title.is_empty();
    let leading = clauses::leading_sentence(opening);
    let leads = untitled && leading.trim_end().ends_with(':');
    if leads {
        leading.to_owned()
    } else {
        String::new()
    }
}
