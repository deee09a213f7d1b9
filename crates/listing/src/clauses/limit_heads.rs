//! Headings of limits within a running text: "Minimum values" over lines of a label and a value each, "Limits (maximum):", "All values are minimums."
//!
//! A heading names no measure of its own, "Minimum depth:" is a label, and reaches to the next. What it would misread: a value in words without a verb
//! behind the list, which the heading no longer means.

use super::carried::{Carried, carried_by_title};
use super::tables::said_of_all;
use crate::layout::{Flow, beginning};
use crate::model::Relation;
use crate::phrase::Amount;
use crate::rules::Sentence;
use crate::sentences::sentences;

/// Words of a heading that name nothing that is measured.
const GENERIC: &[&str] = &[
    "requirement",
    "requirements",
    "required",
    "value",
    "values",
    "limit",
    "limits",
    "dimension",
    "dimensions",
    "size",
    "sizes",
    "figure",
    "figures",
    "property",
    "properties",
    "the",
    "all",
    "these",
    "following",
    "below",
    "are",
    "is",
    "as",
    "follows",
    "given",
    "stated",
    "shown",
    "listed",
    "in",
    "and",
    "of",
    "to",
    "be",
];

/// The limit that words are a heading of, when they name nothing else: "Requirements, minimum".
pub(crate) fn heads(words: &str) -> Option<Relation> {
    const MOST_WORDS: usize = 8;
    if words.contains(|c: char| c.is_ascii_digit()) {
        return None;
    }
    let lower = words.to_lowercase();
    let parts: Vec<&str> = lower
        .split(|c: char| !c.is_alphabetic())
        .filter(|word| !word.is_empty())
        .collect();
    let mut limits = parts.iter().filter_map(|word| limit(word));
    let relation = limits.next().filter(|_| limits.next().is_none())?;
    let generic = parts
        .iter()
        .all(|word| limit(word).is_some() || GENERIC.contains(word));
    (generic && parts.len() <= MOST_WORDS).then_some(relation)
}

/// The limit in brackets that ends a few words without a number: "Wool (min)".
pub(super) fn bracketed(words: &str) -> Option<Relation> {
    const MOST_WORDS: usize = 4;
    let words = words
        .trim()
        .trim_end_matches(':')
        .strip_suffix([')', ']'])?;
    let open = words.rfind(['(', '['])?;
    let (named, inner) = (words.get(..open)?, words.get(open + 1..)?);
    let plain = named
        .chars()
        .all(|c| c.is_alphabetic() || matches!(c, ' ' | '-' | '/'));
    let count = named.split_whitespace().count();
    let relation = limit(inner.trim_end_matches('.').to_lowercase().as_str());
    relation.filter(|_| plain && (1..=MOST_WORDS).contains(&count))
}

fn limit(word: &str) -> Option<Relation> {
    match word {
        "min" | "minimum" | "minimums" | "minima" => Some(Relation::AtLeast),
        "max" | "maximum" | "maximums" | "maxima" => Some(Relation::AtMost),
        _ => None,
    }
}

/// The headings of a running text, each with where its reach begins.
#[derive(Debug, Default)]
pub(super) struct LimitHeads(Vec<(usize, Relation)>);

impl LimitHeads {
    pub(super) fn of(flow: &Flow) -> Self {
        let text = flow.text();
        // Most texts have no limit at all.
        let lower = flow.lower();
        if !lower.contains("min") && !lower.contains("max") {
            return Self::default();
        }
        let mut begins: Vec<usize> = sentences(text)
            .into_iter()
            .map(|range| range.start)
            .chain(flow.lines().iter().copied())
            .chain(labels(lower))
            .collect();
        begins.sort_unstable();
        begins.dedup();
        let mut heads: Vec<(usize, Relation)> =
            begins.iter().filter_map(|at| head_at(flow, *at)).collect();
        let mut of_all = sentences(text)
            .into_iter()
            .filter_map(|range| said_of_all(text.get(range)?));
        if let Some(relation) = of_all.next_back().filter(|_| heads.is_empty()) {
            heads.push((0, relation));
        }
        Self(heads)
    }

    /// What the heading over a number says of it, when it stands in a list of labels and values.
    pub(super) fn over(&self, sentence: &Sentence<'_>, amount: &Amount) -> Option<Carried> {
        let at = sentence.in_flow(amount.at.start());
        let relation = self.0.iter().rev().find(|(from, _)| *from <= at)?.1;
        is_listed(sentence, amount).then(|| Carried::of_any(relation))
    }

    /// What the text ends with, which heads what stands behind it.
    pub(super) fn left_open(&self, flow: &Flow) -> Option<Carried> {
        let (from, relation) = self.0.last()?;
        let rest = flow.text().get(*from..)?;
        rest.trim().is_empty().then(|| Carried::of_any(*relation))
    }
}

/// Where a limit stands as a label behind a stop, in small letters too: "density 4 pcf. maximum: recess 1/2 in."
fn labels(lower: &str) -> impl Iterator<Item = usize> + '_ {
    let all = ["minimum:", "maximum:", "min:", "max:", "min.:", "max.:"]
        .into_iter()
        .flat_map(|label| lower.match_indices(label))
        .map(|(at, _)| at);
    all.filter(|at| {
        let before = lower.get(..*at).unwrap_or_default();
        let before = before.strip_suffix(' ').unwrap_or_default().trim_end();
        // `Joint 1 in. max: packing 3 in. deep` ends no sentence there.
        let unit = ["in.", "ft.", "lb.", "oz.", "no.", "dia.", "o.c."];
        before.ends_with(['.', ';']) && !unit.iter().any(|unit| before.ends_with(unit))
    })
}

/// The heading that begins at a place of a text, and where it ends: at a colon, or with its line or sentence.
fn head_at(flow: &Flow, at: usize) -> Option<(usize, Relation)> {
    const LONGEST: usize = 400;
    let text = flow.text();
    let next_line = flow.lines().iter().copied().find(|line| *line > at);
    let line = text.get(at..next_line.unwrap_or(text.len()))?;
    if let Some(colon) = beginning(line, LONGEST).find(':') {
        return Some((at + colon + 1, heads(line.get(..colon)?)?));
    }
    if line.len() > LONGEST {
        return None;
    }
    // Without a colon a heading has its line to itself, and another word than the limit.
    let words = line.trim_end();
    if let Some(relation) = bracketed(words) {
        return Some((at + line.len(), relation));
    }
    let begins = text.get(..at)?.trim_end();
    let parted = begins.is_empty() || begins.ends_with(['.', ':', ';', ')']);
    let own = words.split_whitespace().count() > 1 && words.starts_with(char::is_uppercase);
    let ended = !words.ends_with(['.', ',', ';']) || words.to_lowercase().contains("below");
    let relation = || heads(words).or_else(|| Some(carried_by_title(words)?.relation));
    (parted && own && ended).then(|| Some((at + line.len(), relation()?)))?
}

/// Whether a number stands in a label with its value, and not in a statement.
pub(super) fn is_listed(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    const VERBS: &[&str] = &[
        "shall", "must", "is", "are", "may", "can", "be", "has", "have", "should", "install",
        "provide", "use", "cut", "fill", "place", "apply", "with", "having",
    ];
    const MOST_WORDS: usize = 7;
    let ends = |at: &usize| sentence.is_stop(*at) || sentence.amount_at(*at).is_some();
    let before = (0..amount.first)
        .rev()
        .take_while(|at| !ends(at) || sentence.is_sign(*at, ':') && *at + 1 == amount.first);
    let words: Vec<usize> = before
        .chain((amount.last..sentence.tokens.len()).take_while(|at| !ends(at)))
        .collect();
    let lead = words.iter().filter(|at| **at < amount.first).count();
    lead <= MOST_WORDS && !words.iter().any(|at| sentence.is_any(*at, VERBS))
}
