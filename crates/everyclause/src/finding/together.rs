//! The few listings that together serve every joint of a schedule.

use std::collections::BTreeMap;

use schemars::JsonSchema;
use selection::{Answered, Listed, cover};
use serde::Serialize;
use site::Project;

/// How many listings are looked at for a smallest choice.
const MOST_STEPS: usize = 5_000_000;

/// The few listings that together serve every joint that any serves. A listing serves a joint that it fits, or at which it has open
/// questions only.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub(crate) struct Together {
    /// The listings chosen, those that serve the most joints first.
    pub(crate) chosen: Vec<Serving>,
    /// The fewest listings that can do it: as many as are chosen, where that is proven.
    pub(crate) at_least: usize,
    /// The joints that no listing serves, mark by mark.
    pub(crate) unserved: Vec<Unserved>,
}

/// A listing, and the marks of which it serves joints.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub(crate) struct Serving {
    /// The listing, by its file's name without the ending.
    pub(crate) listing: String,
    /// The marks, in the order of the schedule.
    pub(crate) marks: Vec<Served>,
}

/// A mark of which a listing serves joints.
#[derive(Debug, Clone, Default, Serialize, JsonSchema)]
pub(crate) struct Served {
    /// The mark.
    pub(crate) mark: String,
    /// Its joints that the listing fits.
    pub(crate) fits: Vec<String>,
    /// Its joints at which the listing has open questions only.
    pub(crate) open: Vec<String>,
    /// Its joints that the listing doesn't hold at.
    pub(crate) not: Vec<String>,
}

/// Joints of a mark that no listing serves.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub(crate) struct Unserved {
    /// The mark.
    pub(crate) mark: String,
    /// The joints.
    pub(crate) joints: Vec<String>,
    /// Whether they are all joints of the mark.
    pub(crate) is_whole_mark: bool,
}

/// Where each joint stands in the schedule.
type Places<'a> = BTreeMap<&'a str, usize>;

/// How far a listing reaches.
#[derive(Default)]
struct Reach<'a> {
    listing: &'a str,
    /// How many joints it fits.
    fits: usize,
    /// How many questions are open at the others.
    open: usize,
    /// The conditions, by their places.
    conditions: Vec<usize>,
}

impl Together {
    /// The smallest choice for the conditions of a schedule, those of a mark one after the other. Of two that would do, the one with more
    /// fits and fewer open questions is preferred.
    pub(super) fn of(project: &Project, answers: &[Answered]) -> Self {
        let places: Places<'_> = project
            .joints
            .iter()
            .enumerate()
            .map(|(place, joint)| (joint.name.as_str(), place))
            .collect();
        let mut reached: BTreeMap<&str, Reach<'_>> = BTreeMap::new();
        for (at, answer) in answers.iter().enumerate() {
            let joints = answer.joints.len();
            let fits = answer.fits.iter().map(|one| (one, joints, 0));
            let open = answer.open.iter();
            let open = open.map(|one| (one, 0, one.matched.counts.open * joints));
            for (one, fits, open) in fits.chain(open) {
                let reach = reached.entry(&one.listing).or_default();
                reach.listing = &one.listing;
                reach.fits += fits;
                reach.open += open;
                reach.conditions.push(at);
            }
        }
        let mut listings: Vec<Reach<'_>> = reached.into_values().collect();
        listings.sort_by_key(|one| (core::cmp::Reverse(one.fits), one.open, one.listing));
        let sets: Vec<Vec<usize>> = listings.iter().map(|one| one.conditions.clone()).collect();
        let cover = cover(answers.len(), &sets, MOST_STEPS);
        let chosen = cover.chosen.iter().filter_map(|at| listings.get(*at));
        let mut chosen: Vec<Serving> = chosen.map(|one| serving(one, answers, &places)).collect();
        chosen.sort_by_key(|one| core::cmp::Reverse(one.joints()));
        Self {
            chosen,
            at_least: cover.at_least,
            unserved: unserved(&cover.unserved, answers, &places),
        }
    }

    /// Whether it is proven that fewer won't do.
    pub(crate) fn is_smallest(&self) -> bool {
        self.chosen.len() == self.at_least
    }
}

impl Serving {
    /// How many joints it serves.
    fn joints(&self) -> usize {
        let marks = self.marks.iter();
        marks.map(|one| one.fits.len() + one.open.len()).sum()
    }
}

fn serving(reach: &Reach<'_>, answers: &[Answered], places: &Places<'_>) -> Serving {
    let holds_at = |at: usize| reach.conditions.binary_search(&at).is_ok();
    let mut marks: Vec<Served> = Vec::new();
    for (at, answer) in answers.iter().enumerate() {
        if marks.last().is_none_or(|last| last.mark != answer.name) {
            marks.push(Served {
                mark: answer.name.clone(),
                ..Served::default()
            });
        }
        let Some(served) = marks.last_mut() else {
            continue;
        };
        let is_it = |one: &Listed| one.listing == reach.listing;
        let joints = if !holds_at(at) {
            &mut served.not
        } else if answer.fits.iter().any(is_it) {
            &mut served.fits
        } else {
            &mut served.open
        };
        joints.extend(answer.joints.iter().cloned());
    }
    marks.retain(|served| !served.fits.is_empty() || !served.open.is_empty());
    for served in &mut marks {
        for joints in [&mut served.fits, &mut served.open, &mut served.not] {
            joints.sort_by_key(|joint| places.get(joint.as_str()).copied());
        }
    }
    Serving {
        listing: reach.listing.to_owned(),
        marks,
    }
}

fn unserved(unserved: &[usize], answers: &[Answered], places: &Places<'_>) -> Vec<Unserved> {
    let mut all: Vec<Unserved> = Vec::new();
    for answer in unserved.iter().filter_map(|at| answers.get(*at)) {
        match all.last_mut().filter(|last| last.mark == answer.name) {
            Some(last) => last.joints.extend(answer.joints.iter().cloned()),
            None => all.push(Unserved {
                mark: answer.name.clone(),
                joints: answer.joints.clone(),
                is_whole_mark: false,
            }),
        }
    }
    for one in &mut all {
        let of_mark = answers.iter().filter(|answer| answer.name == one.mark);
        let joints: usize = of_mark.map(|answer| answer.joints.len()).sum();
        one.is_whole_mark = joints == one.joints.len();
        one.joints
            .sort_by_key(|joint| places.get(joint.as_str()).copied());
    }
    all
}
