//! The answer by the index is the answer by checking every listing in full: the same listings in the same order, near misses and what
//! stands in their way included.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "what isn't as it should be fails the test"
)]

mod support;

use conformance::{Standing, Subject};
use proptest::prelude::*;
use selection::{Finder, Index, Match, Rank, Wanted};
use site::{Decision, Fact, Judgment, Scope};
use support::facts::{ALL_KNOWN, condition, conditions};
use support::judgments::accepting;
use support::plain::{self, Stands};
use support::seed::Seed;
use support::spec::Spec;

fn told(found: &[Match]) -> Vec<Stands> {
    found.iter().map(one).collect()
}

fn one(found: &Match) -> Stands {
    let provisional = found.standing == Standing::Provisional;
    let order = match found.rank {
        Rank::Fits { .. } => (0, 0, 0, 0, provisional),
        Rank::Open { open, .. } => (1, 0, 0, open, provisional),
        Rank::Near {
            cost,
            changes,
            open,
            ..
        } => (2, changes, cost.0, open, provisional),
        Rank::Beyond => panic!("what is beyond isn't told"),
    };
    let mut unmet: Vec<String> = Vec::new();
    for change in &found.changes {
        let clauses = change.findings.iter();
        unmet.extend(clauses.map(|finding| finding.explanation.clause.clone()));
    }
    unmet.sort();
    Stands {
        order,
        at: found.at,
        unmet,
    }
}

fn sorted(mut stands: Vec<Stands>) -> Vec<Stands> {
    for one in &mut stands {
        one.unmet.sort();
    }
    stands
}

const MANY: [Wanted; 4] = [
    Wanted::ALL,
    Wanted {
        open: 5,
        near: 5,
        every_single_change: false,
    },
    Wanted {
        open: 0,
        near: 1,
        every_single_change: true,
    },
    Wanted {
        open: 2,
        near: 0,
        every_single_change: false,
    },
];

fn the_same(size: usize, seed: u64, joints: usize, judgments: &[Judgment]) -> [usize; 3] {
    the_same_of(&Spec::library(size, seed), seed, joints, judgments)
}

fn the_same_of(library: &[Spec], seed: u64, joints: usize, judgments: &[Judgment]) -> [usize; 3] {
    let held = support::read(library);
    let checklists = support::checklists(&held);
    let index = support::index(&checklists);
    let stored = Index::from_bytes(&index.to_bytes().unwrap()).unwrap();
    assert!(index == stored, "what is stored is what was built");
    let finder = Finder::new(&stored);
    let asked: Vec<Vec<Fact>> = conditions(library, joints, seed ^ 0x5bd1);
    let mut totals = [0; 3];
    for facts in &asked {
        let subject = Subject {
            joint: "J-1",
            mark: "M1",
            facts: facts.iter().collect(),
            judgments: judgments.iter().collect(),
        };
        let (all, beyond) = plain::all(&checklists, &subject);
        for wanted in &MANY {
            let found = finder.find(&checklists, &subject, wanted).unwrap();
            let expected = plain::wanted(&all, wanted).map(sorted);
            assert_eq!(
                [told(&found.fits), told(&found.open), told(&found.near)],
                expected,
                "{wanted:?}"
            );
            assert_eq!(found.beyond, beyond);
            let told: usize = expected.iter().map(Vec::len).sum();
            assert_eq!(found.untold, all.len() - told);
        }
        for (total, of_class) in totals.iter_mut().zip(plain::wanted(&all, &Wanted::ALL)) {
            *total += of_class.len();
        }
    }
    totals
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(6))]

    #[test]
    fn the_index_answers_as_checking_every_listing_does(seed in any::<u64>()) {
        the_same(24, seed, 3, &[]);
    }
}

/// Listings, and as many more of each under other numbers, those of one text after those of another.
fn with_copies(size: usize, copies: usize, seed: u64) -> Vec<Spec> {
    let library = Spec::library(size, seed);
    let copies = (0..=copies).flat_map(|copy| {
        library.iter().map(move |spec| Spec {
            // Every third number is confirmed.
            number: spec.number + 3 * size * copy,
            ..spec.clone()
        })
    });
    copies.collect()
}

/// Of listings that differ in their names alone one is checked for all, and the answer is as if each were.
#[test]
fn copies_under_other_numbers_come_to_the_same() {
    let (size, seed) = (12, 19);
    let library = with_copies(size, 2, seed);
    let [_, open, near] = the_same_of(&library, seed, 12, &[]);
    assert!(open > 0 && near > 0, "{open} {near}");
    let held = support::read(&library);
    let checklists = support::checklists(&held);
    let index = support::index(&checklists);
    let finder = Finder::new(&index);
    let mut checked = 0;
    for facts in &conditions(&library, 12, seed) {
        let subject = Subject {
            joint: "J-1",
            mark: "M1",
            facts: facts.iter().collect(),
            judgments: Vec::new(),
        };
        let found = finder.find(&checklists, &subject, &Wanted::ALL).unwrap();
        assert!(found.checked <= size, "{} checked", found.checked);
        checked += found.checked;
    }
    assert!(checked > 0, "nothing was checked");
}

/// What was said of one copy's own counts for it alone; one of the others is still checked for all of them.
#[test]
fn what_is_said_of_one_copy_leaves_the_others_alike() {
    let (size, seed) = (8, 29);
    let library = with_copies(size, 4, seed);
    let held = support::read(&library);
    let checklists = support::checklists(&held);
    let index = support::index(&checklists);
    let finder = Finder::new(&index);
    let asked = conditions(&library, 80, seed);
    let said_of_one = asked
        .iter()
        .filter(|facts| facts.iter().any(Fact::is_of_one_listing));
    let mut most = 0;
    for facts in said_of_one {
        let subject = Subject {
            joint: "J-1",
            mark: "M1",
            facts: facts.iter().collect(),
            judgments: Vec::new(),
        };
        let (all, _) = plain::all(&checklists, &subject);
        let [fits, open, near] = plain::wanted(&all, &Wanted::ALL).map(sorted);
        let found = finder.find(&checklists, &subject, &Wanted::ALL).unwrap();
        assert_eq!(told(&found.fits), fits);
        assert_eq!(told(&found.open), open);
        assert_eq!(told(&found.near), near);
        // One of each and the one that it was said of; where that is the first of its kind, the others of it each by itself.
        assert!(found.checked <= size + 4, "{} checked", found.checked);
        most = most.max(all.len());
    }
    assert!(
        most > size + 4,
        "of no joint more came into question: {most}"
    );
}

/// What was decided of one copy by its name isn't said of the others, whichever of them comes first.
#[test]
fn what_is_decided_of_one_copy_counts_for_it_alone() {
    let (size, seed) = (8, 23);
    let library = with_copies(size, 2, seed);
    for copy in 0..3 {
        let of_copy = library.iter().skip(copy * size).take(size);
        let judgments: Vec<Judgment> = of_copy
            .flat_map(|spec| {
                let of =
                    |words, decision| judgment(Some(spec.designation()), "header", words, decision);
                [
                    of("rating", Decision::Accepted),
                    of("kind", Decision::Rejected),
                ]
            })
            .collect();
        the_same_of(&library, seed, 6, &judgments);
    }
}

/// Some are only open, others need a change.
#[test]
fn something_open_and_something_near_is_found() {
    let [_, open, near] = the_same(60, 7, 20, &[]);
    assert!(open > 0 && near > 0, "{open} {near}");
}

/// Where people have answered what only they can, the listing fits that a joint was built to.
#[test]
fn what_was_built_and_judged_fits() {
    let library = Spec::library(24, 13);
    let held = support::read(&library);
    let checklists = support::checklists(&held);
    let index = support::index(&checklists);
    let finder = Finder::new(&index);
    let mut fitting = 0;
    for (at, (spec, checklist)) in library.iter().zip(&checklists).enumerate() {
        let facts = condition(spec, spec, ALL_KNOWN, &mut Seed(17));
        let mut subject = Subject {
            joint: "J-1",
            mark: "M1",
            facts: facts.iter().collect(),
            judgments: Vec::new(),
        };
        let judgments = accepting(checklist, &subject);
        subject.judgments = judgments.iter().collect();
        let (all, _) = plain::all(&checklists, &subject);
        let found = finder.find(&checklists, &subject, &Wanted::ALL).unwrap();
        let [fits, open, near] = plain::wanted(&all, &Wanted::ALL).map(sorted);
        assert_eq!(told(&found.fits), fits);
        assert_eq!(told(&found.open), open);
        assert_eq!(told(&found.near), near);
        fitting += usize::from(found.fits.iter().any(|one| one.at == at));
    }
    assert!(fitting * 2 > library.len(), "{fitting}");
}

fn judgment(listing: Option<String>, item: &str, words: &str, decision: Decision) -> Judgment {
    Judgment {
        scope: Scope::Mark("M1".to_owned()),
        listing,
        item: item.to_owned(),
        words: words.to_owned(),
        decision,
        by: "Special inspector".to_owned(),
        when: jiff::civil::date(2031, 5, 6),
        basis: "seen".to_owned(),
    }
}

/// A person's decision can turn a verdict either way; the index must not pass over a listing that one bears on.
#[test]
fn what_people_have_decided_counts() {
    let library = Spec::library(24, 11);
    let designation = library.first().map(Spec::designation);
    let on_one = judgment(designation, "header", "width", Decision::Accepted);
    the_same(24, 11, 4, std::slice::from_ref(&on_one));
    let on_all = judgment(None, "header", "kind", Decision::Accepted);
    the_same(24, 11, 4, &[on_one, on_all]);
}
