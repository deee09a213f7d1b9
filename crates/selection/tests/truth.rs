//! Reading the generated texts gives back what was drawn; what doesn't come back is counted.

#![allow(
    clippy::unwrap_used,
    reason = "what isn't as it should be fails the test"
)]

mod support;

use std::collections::BTreeMap;

use listing::{Clause, Reading, Requirement};
use support::spec::{Product, Spec, Style};
use support::truth::{Came, Tally, returned};

/// So many of each style.
const EACH: usize = 20;

/// Where the number of each statement stands in the text.
type Places = Vec<(usize, usize)>;

fn library() -> Vec<(Spec, Places, Reading)> {
    Spec::library(EACH * Style::ALL.len(), 5)
        .into_iter()
        .map(|spec| {
            let (text, places) = spec.text_with_places();
            let reading = listing::read(&spec.file(), text.as_bytes()).unwrap();
            (spec, places, reading)
        })
        .collect()
}

/// How the bounds came back, style by style. Nothing is read wrong; what is left as words or stands under another name is counted, and the
/// count may only fall: it is the reader's honest score on these texts, and what the measured times rest on.
#[test]
fn drawn_bounds_come_back() {
    let mut tallies: BTreeMap<Style, Tally> = BTreeMap::new();
    for (spec, places, reading) in &library() {
        let tally = tallies.entry(spec.style).or_default();
        let returned = returned(spec, places, reading);
        let drawn: usize = spec
            .all_parts()
            .iter()
            .map(|part| part.statements.len())
            .sum();
        assert_eq!(returned.len(), drawn, "every drawn bound is in the text");
        for one in returned {
            assert_ne!(
                one.came,
                Came::Wrong,
                "{}: {:?} came back as {:?}",
                spec.file(),
                one.statement,
                one.clause
            );
            *tally.entry(one.came).or_default() += 1;
        }
    }
    for (style, tally) in &tallies {
        let of = |came| tally.get(&came).copied().unwrap_or(0);
        let all: usize = tally.values().sum();
        let in_hundred = |count: usize| count * 100 / all;
        assert!(in_hundred(of(Came::AsDrawn)) >= 90, "{style:?}: {tally:?}");
        let astray = of(Came::Unread) + of(Came::ForOtherCases) + of(Came::OnAnotherProperty);
        assert!(in_hundred(astray) <= 3, "{style:?}: {tally:?}");
    }
}

/// How many of the drawn products are read as named ones, with their makers, style by style.
#[test]
fn drawn_products_come_back() {
    let mut tallies: BTreeMap<Style, [usize; 2]> = BTreeMap::new();
    for (spec, _, reading) in &library() {
        let tally = tallies.entry(spec.style).or_default();
        for part in spec.all_parts() {
            let property = format!("{}.product", part.component);
            for product in &part.products {
                tally[usize::from(!is_named(reading, &property, *product))] += 1;
            }
        }
    }
    for (style, [read, not]) in &tallies {
        assert!(not * 100 <= 8 * (read + not), "{style:?}: {tallies:?}");
    }
}

fn is_named(reading: &Reading, property: &str, (maker, product): Product) -> bool {
    let of_it = |clause: &&Clause| clause.property == property;
    let mut names =
        reading
            .clauses
            .iter()
            .filter(of_it)
            .flat_map(|clause| match &clause.requirement {
                Requirement::Named { names } => names.as_slice(),
                _ => &[],
            });
    names.any(|name| {
        name.product.eq_ignore_ascii_case(product) && name.maker.eq_ignore_ascii_case(maker)
    })
}

/// As large as published listings: 3 to 9 KB and 40 to 100 clauses, nearly all of them.
#[test]
fn as_large_as_published_ones() {
    let library = library();
    let sizes: Vec<(usize, usize)> = library
        .iter()
        .map(|(_, _, reading)| (reading.source.bytes, reading.clauses.len()))
        .collect();
    let usual = sizes
        .iter()
        .filter(|(bytes, clauses)| (3_000..=9_500).contains(bytes) && (38..=110).contains(clauses));
    let usual = usual.count();
    assert!(usual * 100 >= sizes.len() * 85, "{usual} of {sizes:?}");
}
