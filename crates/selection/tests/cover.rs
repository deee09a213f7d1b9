//! The smallest cover against trying every choice; and against numbers that a text-book gives.

#![allow(
    clippy::unwrap_used,
    reason = "what isn't as it should be fails the test"
)]

use microlp::{ComparisonOp, OptimizationDirection, Problem};
use proptest::prelude::*;
use selection::cover;

/// The size of the smallest choice that serves all that any serves, by trying every one.
fn by_trying_all(marks: usize, serves: &[Vec<usize>]) -> usize {
    let bits = |marks: &Vec<usize>| marks.iter().fold(0u32, |bits, mark| bits | 1 << mark);
    let sets: Vec<u32> = serves.iter().map(bits).collect();
    let all = sets.iter().fold(0, |all, one| all | one);
    assert!(marks <= 32);
    (0u32..1 << sets.len())
        .filter(|choice| {
            let chosen = sets
                .iter()
                .enumerate()
                .filter(|(at, _)| choice >> at & 1 == 1);
            chosen.fold(0, |served, (_, one)| served | one) == all
        })
        .map(u32::count_ones)
        .min()
        .map_or(0, |least| usize::try_from(least).unwrap())
}

fn is_a_cover(chosen: &[usize], serves: &[Vec<usize>], mark: usize) -> bool {
    chosen
        .iter()
        .any(|at| serves.get(*at).is_some_and(|marks| marks.contains(&mark)))
}

proptest! {
    #[test]
    fn as_few_as_by_trying_all(
        serves in prop::collection::vec(prop::collection::vec(0usize..10, 0..6), 0..12),
    ) {
        let found = cover(10, &serves, 100_000);
        prop_assert_eq!(found.chosen.len(), by_trying_all(10, &serves));
        prop_assert!(found.is_smallest());
        for mark in 0..10 {
            let served = serves.iter().any(|marks| marks.contains(&mark));
            prop_assert_eq!(served, is_a_cover(&found.chosen, &serves, mark));
            prop_assert_eq!(served, !found.unserved.contains(&mark));
        }
    }

    /// What can't be finished says no more than is proven.
    #[test]
    fn a_search_cut_short_proves_no_more_than_it_may(
        serves in prop::collection::vec(prop::collection::vec(0usize..12, 1..5), 1..12),
        steps in 0usize..4,
    ) {
        let found = cover(12, &serves, steps);
        let fewest = by_trying_all(12, &serves);
        prop_assert!(found.at_least <= fewest);
        prop_assert!(found.chosen.len() >= fewest);
        for mark in serves.iter().flatten() {
            prop_assert!(is_a_cover(&found.chosen, &serves, *mark));
        }
    }
}

/// The size of the smallest choice by a general solver of mixed-integer programmes (the crate `microlp`): one variable a listing, taken or
/// not; each mark that any serves is served once at least.
fn by_integer_programme(marks: usize, serves: &[Vec<usize>]) -> usize {
    let mut problem = Problem::new(OptimizationDirection::Minimize);
    let taken: Vec<_> = serves.iter().map(|_| problem.add_binary_var(1.0)).collect();
    for mark in 0..marks {
        let serving = taken.iter().zip(serves);
        let serving = serving.filter(|(_, marks)| marks.contains(&mark));
        let sum: Vec<_> = serving.map(|(taken, _)| (*taken, 1.0)).collect();
        if !sum.is_empty() {
            problem.add_constraint(&sum, ComparisonOp::Ge, 1.0);
        }
    }
    let fewest = problem.solve().unwrap().objective().round();
    format!("{fewest:.0}").parse().unwrap()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn as_few_as_by_an_integer_programme(
        serves in prop::collection::vec(prop::collection::vec(0usize..24, 1..8), 10..36),
    ) {
        let found = cover(24, &serves, 1_000_000);
        prop_assert!(found.is_smallest());
        prop_assert_eq!(found.chosen.len(), by_integer_programme(24, &serves));
    }
}

/// Taking the largest set first is misled here: it takes three where two do (from memory, the usual text-book example; Chvatal 1979 has its kind).
#[test]
fn taking_the_largest_first_is_not_enough() {
    let serves = [
        vec![0, 1, 2, 3],
        vec![0, 2, 4],
        vec![1, 3, 5],
        vec![4],
        vec![5],
    ];
    let found = cover(6, &serves, 1000);
    assert_eq!((found.chosen, found.at_least), (vec![1, 2], 2));
}

#[test]
fn nothing_to_serve_takes_nothing() {
    let found = cover(2, &[], 1000);
    assert_eq!(
        (found.chosen, found.at_least, found.unserved),
        (vec![], 0, vec![0, 1])
    );
}
