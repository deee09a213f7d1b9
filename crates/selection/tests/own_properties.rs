//! What was answered of a property that one listing has for itself shows nothing to another listing that uses the same words.

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    reason = "what isn't as it should be fails the test"
)]

use conformance::{Checklist, Subject, Verdict, kinds_of_answer};
use listing::Reading;
use selection::index::Builder;
use selection::{Asked, Finder, Named, Search, Wanted};
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
        .map(|text| listing::read_text("a.txt", text))
        .collect();
    let own = readings[0].clauses.iter();
    let own: Vec<_> = own
        .filter(|one| one.bound().is_some() && !one.is_in_vocabulary())
        .collect();
    assert_eq!(own.len(), 1, "{own:?}");
    let property = &own[0].property;
    let kinds = kinds_of_answer(&readings[0], property);
    let fact = entered_as(property, &kinds, "4 in.", "measured: tape, 1/16 in.").unwrap();
    assert!(fact.is_of_one_listing());

    // At the joint that is built to the listing it decides the clause.
    let checklists = Two(readings.iter().map(Checklist::of_draft).collect());
    let subject = Subject {
        facts: [&fact].into_iter().collect(),
        ..Subject::default()
    };
    let decided = checklists.0[0].decide(&subject);
    assert_eq!(
        checklists.0[0]
            .findings(&decided, &|one| one == Verdict::Met)
            .len(),
        1
    );

    // Where any listing is asked, it doesn't.
    let mut builder = Builder::default();
    for checklist in &checklists.0 {
        builder.add(checklist).unwrap();
    }
    let index = builder.finish();
    let finder = Finder::new(&index);
    let search = Search::of(&checklists, &finder, 1);
    let asked = Asked {
        name: "J-1".to_owned(),
        facts: vec![fact],
        ..Asked::default()
    };
    let answer = search.answer(&[asked], &Wanted::ALL).unwrap().remove(0);
    assert_eq!((answer.fits.len(), answer.open.len()), (0, 2));
    assert!(answer.open.iter().all(|one| one.matched.counts.met == 0));
    assert!(answer.notes[0].contains("properties that one listing has for itself"));
}
