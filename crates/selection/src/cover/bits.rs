//! A set of places.

/// A set of places, as bits.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Bits(Vec<u64>);

impl Bits {
    pub(super) fn none(of: usize) -> Self {
        Self(vec![0; of.div_ceil(64)])
    }

    pub(super) fn of(of: usize, places: &[usize]) -> Self {
        let mut bits = Self::none(of);
        for place in places {
            bits.add(*place);
        }
        bits
    }

    pub(super) fn add(&mut self, place: usize) {
        if let Some(word) = self.0.get_mut(place / 64) {
            *word |= 1 << (place % 64);
        }
    }

    pub(super) fn has(&self, place: usize) -> bool {
        self.0
            .get(place / 64)
            .is_some_and(|word| word >> (place % 64) & 1 == 1)
    }

    /// How many places there is room for.
    pub(super) const fn room(&self) -> usize {
        self.0.len() * 64
    }

    pub(super) fn is_empty(&self) -> bool {
        self.0.iter().all(|word| *word == 0)
    }

    pub(super) fn is_within(&self, other: &Self) -> bool {
        let mut words = self.0.iter().zip(&other.0);
        words.all(|(one, other)| one & !other == 0)
    }

    pub(super) fn meets(&self, other: &Self) -> bool {
        let mut words = self.0.iter().zip(&other.0);
        words.any(|(one, other)| one & other != 0)
    }

    /// How many places both have.
    pub(super) fn count_in(&self, other: &Self) -> u32 {
        let words = self.0.iter().zip(&other.0);
        words.map(|(one, other)| (one & other).count_ones()).sum()
    }

    fn with(&self, other: &Self, both: impl Fn(u64, u64) -> u64) -> Self {
        let words = self.0.iter().zip(&other.0);
        Self(words.map(|(one, other)| both(*one, *other)).collect())
    }

    pub(super) fn and(&self, other: &Self) -> Self {
        self.with(other, |one, other| one & other)
    }

    pub(super) fn or(&self, other: &Self) -> Self {
        self.with(other, |one, other| one | other)
    }

    pub(super) fn without(&self, other: &Self) -> Self {
        self.with(other, |one, other| one & !other)
    }

    pub(super) fn places(&self) -> impl Iterator<Item = usize> + '_ {
        self.0.iter().enumerate().flat_map(|(at, word)| {
            let bits = (0..64).filter(move |bit| word >> bit & 1 == 1);
            bits.map(move |bit| at * 64 + bit)
        })
    }
}
