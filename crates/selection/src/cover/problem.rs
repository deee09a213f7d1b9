//! A covering problem made smaller without losing a smallest answer.

use std::collections::BTreeMap;

use super::bits::Bits;

/// What is left to serve, and the listings that serve some of it.
#[derive(Debug, Clone)]
pub(super) struct Problem {
    /// What is left to serve.
    pub(super) left: Bits,
    /// Each listing's place, with what it serves of that.
    pub(super) sets: Vec<(usize, Bits)>,
}

impl Problem {
    /// Takes what must be taken and leaves out what needn't be looked at; gives what was taken.
    ///
    /// - A listing that serves nothing which another doesn't serve too is left out; of two that serve the same, the later.
    /// - What is served whenever something else is, whatever listing is chosen for that, is left out.
    /// - The only listing that serves something is taken.
    pub(super) fn reduce(&mut self) -> Vec<usize> {
        let mut taken = Vec::new();
        loop {
            self.leave_out_listings();
            let dropped = self.leave_out_implied();
            let took = self.take_the_only(&mut taken);
            if !dropped && !took {
                return taken;
            }
        }
    }

    /// For each place that is left, which of the listings serve it, as bits over their places here.
    fn serving(&self) -> BTreeMap<usize, Bits> {
        let mut serving: BTreeMap<usize, Bits> = BTreeMap::new();
        for (at, (_, set)) in self.sets.iter().enumerate() {
            for place in set.places() {
                let none = || Bits::none(self.sets.len());
                serving.entry(place).or_insert_with(none).add(at);
            }
        }
        serving
    }

    fn leave_out_listings(&mut self) {
        let mut first_of: BTreeMap<Bits, usize> = BTreeMap::new();
        for (listing, set) in &self.sets {
            let set = set.and(&self.left);
            if !set.is_empty() {
                let first = first_of.entry(set).or_insert(*listing);
                *first = (*first).min(*listing);
            }
        }
        self.sets = first_of.into_iter().map(|(set, at)| (at, set)).collect();
        self.sets.sort_by_key(|(listing, _)| *listing);
        let serving = self.serving();
        let is_useful = |at: usize, set: &Bits| {
            // Who serves all of it serves its rarest place.
            let rarest = set.places().filter_map(|place| serving.get(&place));
            let rarest = rarest.min_by_key(|listings| listings.places().count());
            let mut others = rarest.into_iter().flat_map(Bits::places);
            !others.any(|other| {
                let larger = self.sets.get(other).filter(|_| other != at);
                larger.is_some_and(|(_, larger)| set.is_within(larger))
            })
        };
        let useful: Vec<(usize, Bits)> = self
            .sets
            .iter()
            .enumerate()
            .filter(|(at, (_, set))| is_useful(*at, set))
            .map(|(_, one)| one.clone())
            .collect();
        self.sets = useful;
    }

    /// Leaves out what is served whenever something else is; whether there was any.
    fn leave_out_implied(&mut self) -> bool {
        let mut first_of: BTreeMap<Bits, usize> = BTreeMap::new();
        for (place, listings) in self.serving() {
            first_of.entry(listings).or_insert(place);
        }
        let is_implied = |listings: &Bits| {
            let mut others = first_of.keys();
            others.any(|other| other != listings && other.is_within(listings))
        };
        let mut kept = Bits::none(self.left.room());
        for (listings, place) in &first_of {
            if !is_implied(listings) {
                kept.add(*place);
            }
        }
        let dropped = kept != self.left;
        self.left = kept;
        for (_, set) in &mut self.sets {
            *set = set.and(&self.left);
        }
        dropped
    }

    fn take_the_only(&mut self, taken: &mut Vec<usize>) -> bool {
        let mut took = false;
        for (place, listings) in self.serving() {
            let mut listings = listings.places();
            let (Some(only), None) = (listings.next(), listings.next()) else {
                continue;
            };
            if let Some((listing, set)) = self.sets.get(only).filter(|_| self.left.has(place)) {
                taken.push(*listing);
                self.left = self.left.without(set);
                took = true;
            }
        }
        took
    }

    /// The problem in parts that have no listing in common.
    pub(super) fn parts(self) -> Vec<Self> {
        let mut parts: Vec<Self> = Vec::new();
        for (listing, set) in self.sets {
            let (mut joined, apart): (Vec<Self>, Vec<Self>) =
                parts.into_iter().partition(|part| part.left.meets(&set));
            let mut whole = joined.pop().unwrap_or(Self {
                left: Bits::none(self.left.room()),
                sets: Vec::new(),
            });
            for other in joined {
                whole.left = whole.left.or(&other.left);
                whole.sets.extend(other.sets);
            }
            whole.left = whole.left.or(&set);
            whole.sets.push((listing, set));
            parts = apart;
            parts.push(whole);
        }
        for part in &mut parts {
            part.sets.sort_by_key(|(listing, _)| *listing);
        }
        parts
    }
}
