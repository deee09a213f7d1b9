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
use support::facts::conditions;
use support::plain::{self, Stands};
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
    let library = Spec::library(size, seed);
    let held = support::read(&library);
    let checklists = support::checklists(&held);
    let index = support::index(&checklists);
    let stored = Index::from_bytes(&index.to_bytes().unwrap()).unwrap();
    assert!(index == stored, "what is stored is what was built");
    let finder = Finder::new(&stored);
    let asked: Vec<Vec<Fact>> = conditions(&library, joints, seed ^ 0x5bd1);
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
    #![proptest_config(ProptestConfig::with_cases(12))]

    #[test]
    fn the_index_answers_as_checking_every_listing_does(seed in any::<u64>()) {
        the_same(40, seed, 4, &[]);
    }
}

/// A library large enough that something of every sort is found.
#[test]
fn something_of_every_sort_is_found() {
    let [fits, open, near] = the_same(120, 7, 40, &[]);
    assert!(fits > 0 && open > 0 && near > 0, "{fits} {open} {near}");
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
    let library = Spec::library(60, 11);
    let designation = library.first().map(Spec::designation);
    let on_one = judgment(designation, "header", "width", Decision::Accepted);
    the_same(60, 11, 6, std::slice::from_ref(&on_one));
    let on_all = judgment(None, "header", "kind", Decision::Accepted);
    the_same(60, 11, 6, &[on_one, on_all]);
}
