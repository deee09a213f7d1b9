//! The few listings that together serve every condition: a smallest set cover.
//!
//! Exact by reduction and by branch and bound: what must be taken is taken, what can't matter is left out, and what then falls into parts
//! that have no listing in common is solved part by part. A part branches on what the fewest listings serve; its bound is the number of
//! conditions no two of which any listing serves together, since each of them takes a listing of its own. What can't be finished
//! within the steps given says how few it could be at best.

mod bits;
mod problem;
mod search;

use bits::Bits;
use problem::Problem;
use schemars::JsonSchema;
use serde::Serialize;

/// A choice of listings that together serve everything that any serves.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Cover {
    /// The listings chosen, by their places, in order.
    pub chosen: Vec<usize>,
    /// The fewest that can do it: as many as are chosen, where that is proven.
    pub at_least: usize,
    /// What no listing serves, by its places.
    pub unserved: Vec<usize>,
}

impl Cover {
    /// Whether it is proven that fewer won't do.
    pub fn is_smallest(&self) -> bool {
        self.chosen.len() == self.at_least
    }
}

/// The smallest choice of listings that together serve so many conditions; `serves` has what each listing serves, and of two that
/// would do the earlier is taken. After looking at so many listings the search ends with the best it has.
pub fn cover(conditions: usize, serves: &[Vec<usize>], most_steps: usize) -> Cover {
    let sets = serves.iter().map(|places| Bits::of(conditions, places));
    let sets: Vec<(usize, Bits)> = sets.enumerate().collect();
    let none = Bits::none(conditions);
    let servable = sets.iter().fold(none, |all, (_, one)| all.or(one));
    let mut problem = Problem {
        left: servable.clone(),
        sets,
    };
    let mut chosen = problem.reduce();
    let mut at_least = chosen.len();
    let mut steps = most_steps;
    for part in problem.parts() {
        let solved = search::solve(&part, &mut steps);
        at_least += solved.at_least;
        chosen.extend(solved.chosen);
    }
    chosen.sort_unstable();
    Cover {
        chosen,
        at_least,
        unserved: (0..conditions)
            .filter(|place| !servable.has(*place))
            .collect(),
    }
}
