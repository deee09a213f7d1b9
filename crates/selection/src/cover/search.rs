//! A smallest choice by branch and bound.

use core::cmp::Reverse;
use std::collections::BTreeMap;

use super::bits::Bits;
use super::problem::Problem;

/// The best choice found for a problem, with the fewest that are proven to be needed.
pub(super) struct Solved {
    /// The listings chosen.
    pub(super) chosen: Vec<usize>,
    /// The fewest that can do it.
    pub(super) at_least: usize,
}

/// Solves a problem, looking at so many listings at most.
pub(super) fn solve(problem: &Problem, most_steps: &mut usize) -> Solved {
    let mut serving: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
    for (at, (_, set)) in problem.sets.iter().enumerate() {
        for place in set.places() {
            serving.entry(place).or_default().push(at);
        }
    }
    let mut search = Search {
        sets: &problem.sets,
        serving,
        best: greedy(problem),
        steps: most_steps,
    };
    let at_least = search.apart(&problem.left);
    if at_least < search.best.len() {
        search.from(&problem.left, &mut Vec::new());
    }
    let finished = *search.steps > 0 || at_least == search.best.len();
    let best = search.best;
    let listing = |at: &usize| problem.sets.get(*at).map(|(listing, _)| *listing);
    Solved {
        at_least: if finished { best.len() } else { at_least },
        chosen: best.iter().filter_map(listing).collect(),
    }
}

struct Search<'p> {
    sets: &'p [(usize, Bits)],
    /// The listings that serve each place.
    serving: BTreeMap<usize, Vec<usize>>,
    best: Vec<usize>,
    steps: &'p mut usize,
}

impl Search<'_> {
    fn from(&mut self, left: &Bits, chosen: &mut Vec<usize>) {
        if left.is_empty() {
            if chosen.len() < self.best.len() {
                self.best.clone_from(chosen);
            }
            return;
        }
        let bound = chosen.len() + self.apart(left);
        if *self.steps == 0 || bound >= self.best.len() {
            return;
        }
        // Branch where the fewest listings serve.
        let hardest = left.places().min_by_key(|place| self.at(*place).len());
        let mut serving = hardest.map_or_else(Vec::new, |place| self.at(place).to_vec());
        *self.steps = self.steps.saturating_sub(serving.len());
        serving.sort_by_key(|at| {
            (
                Reverse(self.set(*at).map_or(0, |set| set.count_in(left))),
                *at,
            )
        });
        for at in serving {
            let Some(set) = self.set(at) else {
                continue;
            };
            let rest = left.without(set);
            chosen.push(at);
            self.from(&rest, chosen);
            chosen.pop();
        }
    }

    fn at(&self, place: usize) -> &[usize] {
        self.serving.get(&place).map_or(&[], Vec::as_slice)
    }

    fn set(&self, at: usize) -> Option<&Bits> {
        self.sets.get(at).map(|(_, set)| set)
    }

    /// How many places there are, no two of which one listing serves; chosen greedily, those first that the fewest serve.
    fn apart(&mut self, left: &Bits) -> usize {
        let mut order: Vec<(usize, usize)> = left
            .places()
            .map(|place| (self.at(place).len(), place))
            .collect();
        order.sort_unstable();
        let mut left = left.clone();
        let mut count = 0;
        let mut looked_at = 0;
        for (_, place) in order {
            if !left.has(place) {
                continue;
            }
            count += 1;
            for at in self.at(place) {
                looked_at += 1;
                if let Some(set) = self.set(*at) {
                    left = left.without(set);
                }
            }
        }
        *self.steps = self.steps.saturating_sub(looked_at);
        count
    }
}

/// The listing that serves the most of what is still unserved, again and again.
fn greedy(problem: &Problem) -> Vec<usize> {
    let mut left = problem.left.clone();
    let mut chosen = Vec::new();
    while !left.is_empty() {
        let sets = problem.sets.iter().enumerate();
        let best = sets
            .map(|(at, (_, set))| (Reverse(set.count_in(&left)), at, set))
            .min_by_key(|(serves, at, _)| (*serves, *at));
        let Some((_, at, set)) = best.filter(|(Reverse(serves), _, _)| *serves > 0) else {
            break;
        };
        chosen.push(at);
        left = left.without(set);
    }
    chosen
}
