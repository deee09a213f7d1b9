//! Bullets that stand under another, or under a line that leads to them: `* Safing insulation:` over `  - density: 4 pcf minimum`.
//!
//! They are about what the line names, and hold where it says that it holds. A line that asks for something itself leads to nothing.

use super::draft::Yield;
use crate::conditions::conditions;
use crate::layout::{Flow, LIST_SIGNS};
use crate::model::{Condition, Span};
use crate::naming::{Subject, components_in};
use crate::rules::Sentence;
use crate::sentences::sentences;

/// A line that leads to bullets.
#[derive(Debug, Clone)]
pub(super) struct Lead {
    titles: Vec<(&'static vocabulary::Component, usize)>,
    words: String,
    condition: Option<Condition>,
    bullet: bool,
    column: usize,
}

impl Lead {
    /// What a paragraph leads to; none where it doesn't end in a colon.
    pub(super) fn of(flow: &Flow, bullet: bool, column: usize) -> Option<Self> {
        let mark = |c: char| c == ' ' || LIST_SIGNS.contains(&c);
        let text = flow.text().trim_end();
        let words = match text.strip_suffix(':') {
            Some(words) => words.trim_start_matches(mark),
            None => name_alone(text.trim_start_matches(mark)).filter(|_| bullet)?,
        };
        if sentences(text).len() != 1 {
            return None;
        }
        let named = named(words);
        let titles: Vec<_> = components_in(named)
            .into_iter()
            .filter(|(_, weak, _)| !weak)
            .map(|(component, ..)| (component, 0))
            .collect();
        let condition = condition(flow, text.len());
        (!titles.is_empty() || condition.is_some()).then(|| Self {
            titles,
            words: named.to_owned(),
            condition,
            bullet,
            column,
        })
    }

    /// Whether it leads to a paragraph: a bullet that stands farther in, or as far where the lead is none itself.
    pub(super) const fn leads(&self, bullet: bool, column: usize) -> bool {
        bullet && (column > self.column || (!self.bullet && column == self.column))
    }

    /// What its bullets are about.
    pub(super) fn subject(&self, around: &Subject) -> Subject {
        if self.titles.is_empty() {
            return around.clone();
        }
        let others = around
            .titles
            .iter()
            .filter(|(outer, _)| self.titles.iter().all(|(own, _)| own.name != outer.name))
            .map(|(component, depth)| (*component, depth + 1));
        Subject {
            titles: self.titles.iter().copied().chain(others).collect(),
            title: self.words.clone(),
            parts: around.parts.clone(),
            before: None,
        }
    }

    /// Puts the clauses of a bullet under its condition.
    pub(super) fn put_over(&self, source: &str, from: usize, found: &mut Yield) {
        if let Some(condition) = &self.condition {
            found.put_under(condition, source, from.., &[]);
        }
    }
}

/// A bullet of a few words that only names a thing: `* Studs`.
fn name_alone(words: &str) -> Option<&str> {
    const MOST_WORDS: usize = 4;
    let plain = words
        .chars()
        .all(|c| c.is_alphabetic() || matches!(c, ' ' | '-' | '/'));
    (plain && words.split_whitespace().count() <= MOST_WORDS).then_some(words)
}

/// The words of a lead that name what its bullets are about: "Z-clips" of "Safing is held with Z-clips where the joint exceeds 6 in." One that begins
/// by saying where they hold, "In joints over 2 in.", names nothing.
fn named(words: &str) -> &str {
    const SHORT: usize = 5;
    const PLACES: &[&str] = &[" where ", " when ", " if ", " in joints ", " for joints "];
    const PLACE_WORDS: &[&str] = &[
        "in", "for", "where", "when", "if", "at", "on", "over", "under", "with", "as", "all",
        "every",
    ];
    let first = words.split(' ').next().unwrap_or_default().to_lowercase();
    if PLACE_WORDS.contains(&first.as_str()) {
        return "";
    }
    let end = PLACES
        .iter()
        .filter_map(|place| words.find(place))
        .min()
        .unwrap_or(words.len());
    let said = words.get(..end).unwrap_or(words);
    match [" with ", " by "].iter().find_map(|by| said.split_once(by)) {
        Some((_, by)) => by,
        None if said.split_whitespace().count() <= SHORT => said,
        None => "",
    }
}

/// The one condition that a lead states.
fn condition(flow: &Flow, length: usize) -> Option<Condition> {
    let sentence = Sentence::new(flow, 0..length);
    let found = conditions(&sentence).found;
    let [only] = found.as_slice() else {
        return None;
    };
    let span: Span = sentence.tokens_span(only.first, only.last);
    Some(Condition {
        also: Vec::new(),
        words: span.of(flow.text()).to_owned(),
        span: sentence.source(span),
        expr: only.expr.clone(),
    })
}
