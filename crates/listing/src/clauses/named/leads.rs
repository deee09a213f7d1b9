//! What the words right before a list of products make of it.
//!
//! A list binds by itself where nothing leads to it, or words that only call it a list of products or name its part. Any other lead denies it, limits
//! it or leaves it open, or isn't understood: the list is then left as words, with its lead.

use super::headed::part_above;
use super::limits::REFUSING;
use super::lines::cells;
use crate::clauses::Around;
use crate::clauses::draft::Yield;
use crate::layout::{LIST_SIGNS, is_rule};
use crate::model::Span;
use crate::naming::components_in;

/// What leads to a list.
#[derive(Debug, PartialEq, Eq)]
pub(super) enum Lead {
    /// Nothing that changes it.
    Plain,
    /// The name of a part, which the list is of.
    Part(String),
    /// Words that only a person can judge, with the list.
    Unclear(Span),
}

/// The lead of a list that begins where the span does.
pub(super) fn lead(source: &str, span: Span, around: &Around, found: &Yield) -> Lead {
    let from = around.heading.end();
    let Some(item) = source.get(from..span.start()) else {
        return Lead::Plain;
    };
    let before = found
        .lists
        .iter()
        .rfind(|list| list.span.end() <= span.start());
    let start = before.map_or(from, |list| list.span.end());
    let between = source.get(start..span.start()).unwrap_or(item);
    if let Some(list) = before
        && !between.contains(char::is_alphanumeric)
    {
        // It goes on with the list before.
        return match &list.part {
            _ if !list.is_taken => Lead::Unclear(span),
            Some(part) => Lead::Part(part.clone()),
            None => Lead::Plain,
        };
    }
    // Behind the list before, a heading inside the item may begin another part of it.
    let part = before.and_then(|_| part_above(source, around.heading, start, span));
    let behind_list = before.is_some() && part.is_none();
    let between = part.as_ref().map_or(between, |part| {
        source.get(part.body..span.start()).unwrap_or_default()
    });
    let plain = || {
        part.as_ref()
            .map_or(Lead::Plain, |part| Lead::Part(part.name.to_owned()))
    };
    let own = own_words(between, behind_list);
    let words = own.trim().trim_start_matches(LIST_SIGNS).trim();
    if !words.contains(char::is_alphanumeric) {
        return plain();
    }
    if before.is_none() && labels_products(span.of(source)) && !denies(between) {
        return plain();
    }
    let unclear = || {
        let words_at = span.start() - own.len();
        let at = words_at + (own.len() - own.trim_start().len());
        Lead::Unclear(Span::new(at, span.start()).join(span))
    };
    let first_line = !between.trim_end().contains('\n') && !behind_list;
    let is_sentence = words.ends_with(['.', ')', '*', ';']) || first_line && !words.ends_with(':');
    if is_sentence && !behind_list {
        return if points(words) && !is_plain(words) {
            unclear()
        } else {
            plain()
        };
    }
    if !is_plain(words) {
        return unclear();
    }
    if names_part(words) {
        Lead::Part(words.trim_end_matches([':', '.', ' ']).to_owned())
    } else {
        plain()
    }
}

/// Whether a list begins with the label of a sheet that calls it one: `Makers   Maker: Product`, `Products : Maker - Product`.
fn labels_products(list: &str) -> bool {
    const LABELS: [&str; 12] = [
        "trade name",
        "product name",
        "brand name",
        "designation",
        "makers",
        "maker",
        "manufacturers",
        "manufacturer",
        "products",
        "product",
        "approved",
        "suppliers",
    ];
    let line = list.lines().next().unwrap_or_default();
    let label = cells(line).first().copied().unwrap_or_default();
    let label = label.split(':').next().unwrap_or_default();
    label.len() < line.len() && LABELS.contains(&label.trim().to_lowercase().as_str())
}

/// Whether what stands before a list may deny it or point at it.
fn denies(between: &str) -> bool {
    let last = between.trim_end().lines().next_back().unwrap_or_default();
    let refuses = last.split(|c: char| !c.is_alphanumeric()).any(|word| {
        let word = word.to_lowercase();
        REFUSING.contains(&word.as_str())
            || ["not", "no", "never", "none", "except", "only"].contains(&word.as_str())
    });
    refuses || points(between) || between.trim_end().ends_with(':')
}

/// The last sentence of what stands before a list, over the lines that it wraps over; all of it behind another list.
fn own_words(between: &str, behind_list: bool) -> &str {
    if behind_list {
        return between;
    }
    let between = behind_rule(between);
    let text = between.trim_end();
    let stops = [". ", ".\n", "; ", ";\n", ")\n", "*\n", "\n\n"];
    let body = text.trim_end_matches(['.', ')', '*', ';']);
    let at = stops
        .iter()
        .filter_map(|stop| body.rfind(stop).map(|at| at + stop.len()))
        .max()
        .unwrap_or(0);
    // A line that ends a heading of few words begins anew.
    let begun = body.get(at..).unwrap_or_default();
    let last = begun.rfind('\n').map(|line| at + line + 1);
    let last = last.filter(|last| {
        let line = body.get(*last..).unwrap_or_default();
        line.trim().starts_with(char::is_uppercase)
    });
    between.get(last.unwrap_or(at)..).unwrap_or_default()
}

/// A text without what stands above its last rule: a table leads to nothing.
fn behind_rule(text: &str) -> &str {
    let mut at = 0;
    let mut behind = 0;
    for line in text.split_inclusive('\n') {
        at += line.len();
        if is_rule(line) {
            behind = at;
        }
    }
    text.get(behind..).unwrap_or_default()
}

/// Whether a sentence speaks of what stands below it, or denies or opens products.
fn points(words: &str) -> bool {
    const POINTING: &[&str] = &["following", "these"];
    const DENYING: &[&str] = &[
        "excluded",
        "not",
        "never",
        "no",
        "except",
        "discontinued",
        "withdrawn",
        "example",
        "such",
        "other",
        "consent",
    ];
    const PRODUCTS: &[&str] = &["product", "products", "makers", "manufacturers"];
    let says = |own: &[&str]| {
        words
            .split(|c: char| !c.is_alphanumeric())
            .any(|word| own.contains(&word.to_lowercase().as_str()))
    };
    // "The coating follows the flutes" points at nothing.
    let end = words.trim_end_matches(['.', ')', ';', '*']);
    let below = [" below", "follows", "follow"]
        .iter()
        .any(|last| end.ends_with(last))
        || words.contains("as follows");
    says(POINTING) || below || says(DENYING) && says(PRODUCTS)
}

/// Whether words only call what follows a list of products, or name its part.
pub(super) fn is_plain(words: &str) -> bool {
    // They close the list, or say where its names are from.
    const SAYING_NO_MORE: [&str; 6] = [
        "and no others",
        "subject to compliance with this section",
        "were used in the tests",
        "were used in the test",
        "proved in the test",
        "found acceptable",
    ];
    const SAYING: &[&str] = &[
        "a",
        "acceptable",
        "accepted",
        "and",
        "any",
        "approved",
        "are",
        "as",
        "be",
        "brand",
        "brands",
        "by",
        "either",
        "fill",
        "firms",
        "follow",
        "following",
        "follows",
        "from",
        "is",
        "list",
        "listed",
        "made",
        "maker",
        "makers",
        "manufacturer",
        "manufacturers",
        "material",
        "materials",
        "mfr",
        "mfrs",
        "name",
        "named",
        "names",
        "of",
        "one",
        "or",
        "permitted",
        "producers",
        "product",
        "products",
        "recognised",
        "recognized",
        "shall",
        "source",
        "sources",
        "supplier",
        "suppliers",
        "the",
        "these",
        "trade",
        "type",
        "types",
        "use",
        "used",
        "their",
        "item",
        "items",
        "marked",
        "eligible",
        "certified",
        "this",
    ];
    let lower = words.to_lowercase();
    if let Some(own) = SAYING_NO_MORE.iter().find(|own| lower.contains(**own)) {
        return is_plain(&lower.replace(own, " "));
    }
    let named = components_in(words);
    let in_part = |at: usize| {
        named.iter().any(|(component, _, part)| {
            component.property("product").is_some() && part.contains(&at)
        })
    };
    let mut at = 0;
    words
        .split_inclusive(|c: char| !c.is_alphanumeric())
        .all(|piece| {
            let start = at;
            at += piece.len();
            let word = piece
                .trim_end_matches(|c: char| !c.is_alphanumeric())
                .to_lowercase();
            word.is_empty() || in_part(start) || SAYING.contains(&word.as_str())
        })
}

/// Whether a plain lead names a part.
pub(super) fn names_part(words: &str) -> bool {
    components_in(words)
        .iter()
        .any(|(component, weak, _)| !weak && component.property("product").is_some())
}
