//! The listings of a library in the order of the answer.
//!
//! First every distinct point is decided once for the condition. From that each listing gets a bound: what it asks for certain, its options
//! and parts left aside, puts it at such a place at best. Then listings are checked, the best placed first, each by
//! [`conformance`] with all its options and parts, until the next bound lies behind all that was asked for. So a
//! listing is only passed over when it can't be in the answer.

mod bound;
mod choices;
mod kept;
mod matched;
mod memory;

use core::cmp::Reverse;
use std::collections::BinaryHeap;
use std::collections::btree_map::{BTreeMap, Entry};
use std::rc::Rc;

use conformance::points::Ready;
use conformance::{Decided, Subject};
use thiserror::Error;

use crate::index::{Index, Library};
use crate::rank::Rank;
use bound::{Bound, Bounds, Sort};
use kept::Kept;
use memory::Memory;

pub use matched::{Match, OpenAt};

/// How much of the answer is wanted. Every listing that fits always is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Wanted {
    /// How many of those with open questions only.
    pub open: usize,
    /// How many of those that need a change.
    pub near: usize,
    /// Whether every listing that needs one change and no more is wanted besides.
    pub every_single_change: bool,
}

impl Wanted {
    /// Every listing that fits, or would.
    pub const ALL: Self = Self {
        open: usize::MAX,
        near: usize::MAX,
        every_single_change: true,
    };
}

/// A listing of the index that the library can't give.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
#[error("listing {0} of the index can't be had: build the index anew")]
pub struct NotThere(pub usize);

/// What was found for one condition.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Found {
    /// Every listing that fits.
    pub fits: Vec<Match>,
    /// Listings with open questions only, the fewest first.
    pub open: Vec<Match>,
    /// Listings that would fit but for changes: the fewest first, of as many the cheapest.
    pub near: Vec<Match>,
    /// How many listings aren't for such a joint: of another kind, not rated so long, or not tested for smoke.
    pub beyond: usize,
    /// How many of the others aren't told here, as no more were wanted.
    pub untold: usize,
    /// How many listings had to be checked in full.
    pub checked: usize,
}

impl Found {
    /// Where a listing stands, if it is told.
    pub(crate) fn rank(&self, at: usize) -> Option<Rank> {
        let mut told = self.fits.iter().chain(&self.open).chain(&self.near);
        told.find(|one| one.at == at).map(|one| one.rank)
    }
}

/// An index made ready for any number of conditions.
pub struct Finder<'i> {
    index: &'i Index,
    points: Vec<Ready<'i>>,
    /// What they came to before.
    memory: Memory,
}

impl<'i> Finder<'i> {
    /// Makes an index ready.
    pub fn new(index: &'i Index) -> Self {
        Self {
            index,
            points: index
                .points
                .iter()
                .map(conformance::points::Point::ready)
                .collect(),
            memory: Memory::default(),
        }
    }

    /// The index.
    pub const fn index(&self) -> &'i Index {
        self.index
    }

    /// Finds the listings for one condition.
    ///
    /// # Errors
    /// When the library can't give a listing that must be checked.
    pub fn find(
        &self,
        library: &dyn Library,
        subject: &Subject<'_>,
        wanted: &Wanted,
    ) -> Result<Found, NotThere> {
        let verdicts = self.memory.verdicts(self.index, &self.points, subject);
        let mut bounds = Bounds::new(self.index, subject, &verdicts);
        let of_each = bounds.of_each();
        let mut search = Search {
            index: self.index,
            library,
            subject,
            kept: Kept::new(wanted),
            is_checked: vec![false; self.index.entries.len()],
            beyond: self.index.entries.len() - of_each.len(),
            checked: 0,
            looked: BTreeMap::new(),
            bounds,
            of_each,
        };
        search.check_the_judged()?;
        search.check_for_open()?;
        search.check_for_near()?;
        search.told()
    }

    /// Finds the listings for each of several conditions, on so many threads.
    ///
    /// # Errors
    /// As [`find`](Self::find).
    pub fn find_each(
        &self,
        library: &dyn Library,
        subjects: &[Subject<'_>],
        wanted: &Wanted,
        threads: usize,
    ) -> Result<Vec<Found>, NotThere> {
        let share = subjects.len().div_ceil(threads.max(1)).max(1);
        let one_share = |share: &[Subject<'_>]| -> Result<Vec<Found>, NotThere> {
            let found = share
                .iter()
                .map(|subject| self.find(library, subject, wanted));
            found.collect()
        };
        let shares: Vec<Result<Vec<Found>, NotThere>> = std::thread::scope(|scope| {
            let running: Vec<_> = subjects
                .chunks(share)
                .map(|share| scope.spawn(move || one_share(share)))
                .collect();
            running
                .into_iter()
                .map(|thread| {
                    thread
                        .join()
                        .unwrap_or_else(|panic| std::panic::resume_unwind(panic))
                })
                .collect()
        });
        let mut all = Vec::with_capacity(subjects.len());
        for share in shares {
            all.extend(share?);
        }
        Ok(all)
    }
}

/// The search for one condition.
struct Search<'s, 'a> {
    index: &'s Index,
    library: &'s dyn Library,
    subject: &'s Subject<'a>,
    bounds: Bounds<'s, 'a>,
    /// The bound of each listing that the building doesn't rule out.
    of_each: Vec<Bound>,
    kept: Kept<'s>,
    is_checked: Vec<bool>,
    beyond: usize,
    checked: usize,
    /// What listings came to that others may come to as well, by place.
    looked: BTreeMap<usize, Rc<Looked<'s>>>,
}

/// What a listing came to.
struct Looked<'a> {
    at: usize,
    rank: Rank,
    decided: Decided<'a>,
}

/// Listings, the best placed first: each with its place in the answer at best, and its place among the bounds.
type BestFirst = BinaryHeap<Reverse<((Rank, usize), usize)>>;

impl<'s> Search<'s, '_> {
    /// Listings on which people have decided something are always checked: a decision can turn any verdict.
    fn check_the_judged(&mut self) -> Result<(), NotThere> {
        let judged = self.of_each.iter();
        let judged = judged.filter(|bound| bound.sort == Sort::Judged);
        for at in judged.map(|bound| bound.at).collect::<Vec<usize>>() {
            self.check(at)?;
        }
        Ok(())
    }

    fn check_for_open(&mut self) -> Result<(), NotThere> {
        let mut best_first = self.best_first(Bound::may_be_open, Bound::best_unless_unmet);
        while let Some(Reverse(((best, at), place))) = best_first.pop() {
            if self.kept.is_behind_open(best, at) {
                break;
            }
            let Some(bound) = self.refined(place) else {
                continue;
            };
            let refined = bound.best_unless_unmet();
            if refined > (best, at) {
                best_first.push(Reverse((refined, place)));
            } else if bound.may_be_open() {
                self.check(at)?;
            }
        }
        Ok(())
    }

    fn check_for_near(&mut self) -> Result<(), NotThere> {
        let mut best_first = self.best_first(Bound::may_be_unmet, Bound::best_if_unmet);
        while let Some(Reverse(((best, at), place))) = best_first.pop() {
            // Those behind it need as many changes or more.
            if self.kept.is_behind_near(best, at) {
                break;
            }
            let Some(bound) = self.refined(place) else {
                continue;
            };
            let refined = bound.best_if_unmet();
            if refined > (best, at) {
                best_first.push(Reverse((refined, place)));
            } else if bound.may_be_unmet() {
                self.check(at)?;
            }
        }
        Ok(())
    }

    fn best_first(
        &self,
        may_be: impl Fn(&Bound) -> bool,
        best: impl Fn(&Bound) -> (Rank, usize),
    ) -> BestFirst {
        let each = self.of_each.iter().enumerate();
        let unchecked = each.filter(|(_, bound)| self.is_checked.get(bound.at) == Some(&false));
        unchecked
            .filter(|(_, bound)| may_be(bound))
            .map(|(place, bound)| Reverse((best(bound), place)))
            .collect()
    }

    /// The bound at a place, by all that can be told.
    fn refined(&mut self, place: usize) -> Option<Bound> {
        let bound = self.of_each.get_mut(place)?;
        *bound = self.bounds.refined(*bound);
        Some(*bound)
    }

    fn check(&mut self, at: usize) -> Result<(), NotThere> {
        if let Some(checked) = self.is_checked.get_mut(at) {
            *checked = true;
        }
        let looked = self.looked_at(at)?;
        match looked.rank {
            Rank::Beyond => self.beyond += 1,
            _ => self.kept.keep(at, looked),
        }
        Ok(())
    }

    /// What a listing comes to: that of another that comes to the same, where that is known.
    fn looked_at(&mut self, at: usize) -> Result<Rc<Looked<'s>>, NotThere> {
        let first = self.index.stands_for(at, self.subject);
        if let Some(looked) = self.looked.get(&first) {
            return Ok(looked.clone());
        }
        self.checked += 1;
        let checklist = self.library.checklist(first).ok_or(NotThere(first))?;
        let decided = checklist.decide(self.subject);
        let looked = Rc::new(Looked {
            at: first,
            rank: rank(checklist, &decided),
            decided,
        });
        self.looked.insert(first, looked.clone());
        Ok(looked)
    }

    fn told(self) -> Result<Found, NotThere> {
        let of_all = self.index.entries.len();
        // What is said of one is said of all that come to the same.
        let mut said: BTreeMap<usize, Match> = BTreeMap::new();
        let mut matched = |kept: Vec<((Rank, usize), Rc<Looked<'_>>)>| {
            for (_, looked) in &kept {
                if let Entry::Vacant(unsaid) = said.entry(looked.at) {
                    let checklist = self.library.checklist(looked.at);
                    let checklist = checklist.ok_or(NotThere(looked.at))?;
                    let decided = &looked.decided;
                    unsaid.insert(Match::of(looked.at, looked.rank, checklist, decided));
                }
            }
            let matched = |((_, at), looked): &((Rank, usize), Rc<Looked<'_>>)| {
                let said = said.get(&looked.at)?.clone();
                Some(Match { at: *at, ..said })
            };
            Ok(kept.iter().filter_map(matched).collect::<Vec<Match>>())
        };
        let (fits, open, near) = self.kept.in_order();
        let (fits, open, near) = (matched(fits)?, matched(open)?, matched(near)?);
        let told = fits.len() + open.len() + near.len();
        Ok(Found {
            untold: of_all.saturating_sub(told + self.beyond),
            fits,
            open,
            near,
            beyond: self.beyond,
            checked: self.checked,
        })
    }
}

/// Where a listing stands by what was decided.
pub fn rank(checklist: &conformance::Checklist<'_>, decided: &Decided<'_>) -> Rank {
    let counts = decided.counts();
    let unsettled = checklist.unsettled(decided);
    Rank::of(
        &unsettled,
        checklist.standing(),
        counts.met + counts.judged > 0,
    )
}
