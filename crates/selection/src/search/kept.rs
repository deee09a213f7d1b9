//! The best listings so far.

use std::collections::BTreeMap;
use std::rc::Rc;

use super::{Looked, Wanted};
use crate::rank::Rank;

type InOrder<'a> = BTreeMap<(Rank, usize), Rc<Looked<'a>>>;
type Listed<'a> = Vec<((Rank, usize), Rc<Looked<'a>>)>;

/// The best listings so far, as many as are wanted.
pub(super) struct Kept<'a> {
    wanted: Wanted,
    fits: InOrder<'a>,
    open: InOrder<'a>,
    near: InOrder<'a>,
    /// Those that need one change, behind the nearest.
    single: InOrder<'a>,
}

impl<'a> Kept<'a> {
    pub(super) const fn new(wanted: &Wanted) -> Self {
        Self {
            wanted: *wanted,
            fits: BTreeMap::new(),
            open: BTreeMap::new(),
            near: BTreeMap::new(),
            single: BTreeMap::new(),
        }
    }

    pub(super) fn keep(&mut self, at: usize, looked: Rc<Looked<'a>>) {
        let place = (looked.rank, at);
        match looked.rank {
            Rank::Fits { .. } => {
                self.fits.insert(place, looked);
            }
            Rank::Open { .. } => {
                self.open.insert(place, looked);
                if self.open.len() > self.wanted.open {
                    self.open.pop_last();
                }
            }
            Rank::Near { .. } => {
                self.near.insert(place, looked);
                if self.near.len() > self.wanted.near {
                    let last = self.near.pop_last();
                    let one_change = |((rank, _), _): &((Rank, usize), _)| rank.changes() == 1;
                    let single =
                        last.filter(|last| self.wants_single_changes() && one_change(last));
                    self.single.extend(single);
                }
            }
            Rank::Beyond => {}
        }
    }

    pub(super) const fn wants_single_changes(&self) -> bool {
        self.wanted.every_single_change
    }

    /// Whether a listing that stands there at best is behind all that is wanted of those with nothing unmet.
    pub(super) fn is_behind_open(&self, best: Rank, at: usize) -> bool {
        let is_full = self.open.len() >= self.wanted.open;
        let worst = self.open.last_key_value().map(|(place, _)| *place);
        matches!(best, Rank::Open { .. }) && is_full && worst.is_none_or(|worst| worst < (best, at))
    }

    /// Whether a listing that stands there at best, as something is unmet, is behind all that is wanted.
    pub(super) fn is_behind_near(&self, best: Rank, at: usize) -> bool {
        let is_full = self.near.len() >= self.wanted.near;
        let worst = self.near.last_key_value().map(|(place, _)| *place);
        let may_be_single = self.wanted.every_single_change && best.changes() <= 1;
        is_full && worst.is_none_or(|worst| worst < (best, at)) && !may_be_single
    }

    /// Those that fit, those with open questions only, and those that need a change.
    pub(super) fn in_order(mut self) -> (Listed<'a>, Listed<'a>, Listed<'a>) {
        self.near.append(&mut self.single);
        let listed = |kept: InOrder<'a>| kept.into_iter().collect();
        (listed(self.fits), listed(self.open), listed(self.near))
    }
}
