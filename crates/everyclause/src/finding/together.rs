//! The few listings that together serve every mark.

use std::collections::BTreeMap;

use schemars::JsonSchema;
use selection::{Answered, Listed, cover};
use serde::Serialize;

/// How long a smallest choice is looked for.
const MOST_STEPS: usize = 200_000;

/// The few listings that together serve every mark. A listing serves a mark that it fits, or at which it has open questions only.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub(crate) struct Together {
    /// The listings chosen, those that serve the most marks first.
    pub(crate) chosen: Vec<Serving>,
    /// The fewest listings that can do it: as many as are chosen, where that is proven.
    pub(crate) at_least: usize,
    /// The marks that no listing serves.
    pub(crate) unserved: Vec<String>,
}

/// A listing and the marks it is chosen for.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub(crate) struct Serving {
    /// The listing, by its file's name without the ending.
    pub(crate) listing: String,
    /// The marks that it fits.
    pub(crate) fits: Vec<String>,
    /// The marks at which it has open questions only.
    pub(crate) open: Vec<String>,
}

/// How far a listing reaches.
#[derive(Default)]
struct Reach<'a> {
    listing: &'a str,
    /// How many marks it fits.
    fits: usize,
    /// How many questions are open at the others.
    open: usize,
    /// The marks, by their places.
    marks: Vec<usize>,
}

impl Together {
    /// The smallest choice. Of two that would do, the one with more fits and fewer open questions is preferred.
    pub(super) fn of(answers: &[Answered]) -> Self {
        let mut reached: BTreeMap<&str, Reach<'_>> = BTreeMap::new();
        for (mark, answer) in answers.iter().enumerate() {
            for one in answer.fits.iter().chain(&answer.open) {
                let reach = reached.entry(&one.listing).or_default();
                reach.listing = &one.listing;
                reach.fits += usize::from(one.matched.counts.open == 0);
                reach.open += one.matched.counts.open;
                reach.marks.push(mark);
            }
        }
        let mut listings: Vec<Reach<'_>> = reached.into_values().collect();
        listings.sort_by_key(|one| (core::cmp::Reverse(one.fits), one.open, one.listing));
        let sets: Vec<Vec<usize>> = listings.iter().map(|one| one.marks.clone()).collect();
        let cover = cover(answers.len(), &sets, MOST_STEPS);
        let mut chosen: Vec<Serving> = cover
            .chosen
            .iter()
            .filter_map(|at| listings.get(*at))
            .map(|one| serving(one.listing, answers))
            .collect();
        chosen.sort_by_key(|one| core::cmp::Reverse(one.fits.len() + one.open.len()));
        let name = |mark: &usize| Some(answers.get(*mark)?.name.clone());
        Self {
            chosen,
            at_least: cover.at_least,
            unserved: cover.unserved.iter().filter_map(name).collect(),
        }
    }

    /// Whether it is proven that fewer won't do.
    pub(crate) fn is_smallest(&self) -> bool {
        self.chosen.len() == self.at_least
    }
}

fn serving(listing: &str, answers: &[Answered]) -> Serving {
    let of = |pick: fn(&Answered) -> &Vec<Listed>| -> Vec<String> {
        let has = |answer: &&Answered| pick(answer).iter().any(|one| one.listing == listing);
        answers
            .iter()
            .filter(has)
            .map(|answer| answer.name.clone())
            .collect()
    };
    Serving {
        listing: listing.to_owned(),
        fits: of(|answer| &answer.fits),
        open: of(|answer| &answer.open),
    }
}
