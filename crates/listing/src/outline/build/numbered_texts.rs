//! Headings over texts that stand beside their numbers, `Item   Description` over `1      Walls. Min 6 in. thick.`: what is below is a list like any other.

use super::super::marker::cell_marker;
use super::super::requirement_rows::heads_numbers;
use super::super::tables::{Run, runs};
use super::Builder;
use crate::layout::{Line, is_rule};

impl Builder<'_> {
    /// Leaves such a heading, with the rule below it, as no part of the text.
    pub(super) fn heading_of_numbered_texts(&mut self, at: usize) -> Option<usize> {
        let heading = runs(self.lines.get(at)?);
        let [number, text] = heading.as_slice() else {
            return None;
        };
        let rule = self.lines.get(at + 1).filter(|line| is_rule(line.text))?;
        let below = self.lines.get(at + 2..)?;
        if !heads_numbers(number.words)
            || !heads_texts(text.words)
            || !are_numbered(below, number, text)
        {
            return None;
        }
        let heading = self.lines.get(at)?.content();
        self.outline.furniture.extend([heading, rule.content()]);
        self.gap = true;
        Some(at + 2)
    }
}

/// Whether a heading is of texts.
fn heads_texts(words: &str) -> bool {
    const TEXTS: &[&str] = &[
        "description",
        "descriptions",
        "requirement",
        "requirements",
        "component",
        "components",
        "construction",
        "particulars",
        "details",
        "provision",
        "provisions",
        "specification",
        "text",
    ];
    TEXTS.contains(&words.trim().to_lowercase().as_str())
}

/// Whether the lines below are texts at the second column, the first of them and another beside a number in the first, with nothing beside them.
fn are_numbered(below: &[Line<'_>], number: &Run<'_>, text: &Run<'_>) -> bool {
    /// How many lines are looked at, and how many words the first of a text has at least.
    const LOOKED_AT: usize = 60;
    const FEWEST_WORDS: usize = 4;
    let near = |one: usize, other: usize| one.abs_diff(other) <= 1;
    let begins = |line: &Line<'_>| match runs(line).as_slice() {
        [mark, words] => {
            near(mark.from, number.from)
                && near(words.from, text.from)
                && cell_marker(mark.words).is_some()
                && words.words.split_whitespace().count() >= FEWEST_WORDS
        }
        _ => false,
    };
    let first = below.iter().find(|line| !line.is_blank());
    let numbered = below.iter().take(LOOKED_AT).filter(|line| begins(line));
    first.is_some_and(begins) && numbered.count() >= 2
}
