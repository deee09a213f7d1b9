//! What was answered of a property that one listing has for itself shows nothing to another listing that uses the same words.

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    reason = "what isn't as it should be fails the test"
)]

use conformance::{Checklist, Subject, Verdict, goes_by, kinds_of_answer};
use listing::Reading;
use selection::index::Builder;
use selection::{Asked, Finder, Named, Search, Wanted};
use site::Fact;
use site::import::entered_as;

/// Two listings that differ in nothing but their names: what they call a lug is no part of the vocabulary.
const LISTINGS: [&str; 2] = [
    "System No. HW-D-1\n\n1. Lug - Max 5 in. lug reach.\n",
    "System No. HW-D-2\n\n1. Lug - Max 5 in. lug reach.\n",
];

struct Two<'r>(Vec<Checklist<'r>>);

impl selection::Library for Two<'_> {
    fn checklist(&self, at: usize) -> Option<&Checklist<'_>> {
        self.0.get(at)
    }
}

impl Named for Two<'_> {
    fn stem(&self, at: usize) -> &str {
        ["one", "two"][at]
    }

    fn which(&self, _: &str) -> Option<usize> {
        None
    }
}

#[test]
fn an_answer_to_one_listing_is_none_to_another() {
    let readings: Vec<Reading> = LISTINGS
        .iter()
        .zip(["one.txt", "two.txt"])
        .map(|(text, file)| listing::read_text(file, text))
        .collect();
    let own = readings[0].clauses.iter();
    let own: Vec<_> = own
        .filter(|one| one.bound().is_some() && !one.is_in_vocabulary())
        .collect();
    assert_eq!(own.len(), 1, "{own:?}");
    let property = &own[0].property;
    let kinds = kinds_of_answer(&readings[0], property);
    let bare = entered_as(property, &kinds, "4 in.", "measured: tape, 1/16 in.").unwrap();
    assert!(bare.is_of_one_listing());
    let fact = Fact {
        property: goes_by(&readings[0]).saying(property),
        ..bare.clone()
    };

    // It decides the clause of the listing that it was said of, and of no other.
    let checklists = Two(readings.iter().map(Checklist::of_draft).collect());
    let subject = Subject {
        facts: [&fact].into_iter().collect(),
        ..Subject::default()
    };
    let met = |at: usize| {
        let decided = checklists.0[at].decide(&subject);
        let met = checklists.0[at].findings(&decided, &|one| one == Verdict::Met);
        met.len()
    };
    assert_eq!((met(0), met(1)), (1, 0));

    // So it does where any listing is asked.
    let mut builder = Builder::default();
    for checklist in &checklists.0 {
        builder.add(checklist).unwrap();
    }
    let index = builder.finish();
    let finder = Finder::new(&index);
    let search = Search::of(&checklists, &finder, 1);
    let answer = |fact: Fact| {
        let asked = Asked {
            name: "J-1".to_owned(),
            facts: vec![fact],
            ..Asked::default()
        };
        search.answer(&[asked], &Wanted::ALL).unwrap().remove(0)
    };
    let said = answer(fact);
    let met = said.fits.iter().chain(&said.open).map(|one| {
        let matched = &one.matched;
        (one.listing.as_str(), matched.counts.met)
    });
    let mut met: Vec<_> = met.collect();
    met.sort_unstable();
    assert_eq!(met, [("one", 1), ("two", 0)]);
    assert!(said.notes.is_empty(), "{:?}", said.notes);

    // What doesn't say of which listing it was said shows nothing to any, and is told.
    let unsaid = answer(bare);
    assert_eq!((unsaid.fits.len(), unsaid.open.len()), (0, 2));
    assert!(unsaid.open.iter().all(|one| one.matched.counts.met == 0));
    assert!(unsaid.notes[0].contains("nothing says which listing that is"));
}
