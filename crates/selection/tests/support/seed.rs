//! Numbers that look like chance and are the same for the same seed (`SplitMix64`, as published by Steele, Lea and Flood, 2014).

/// A source of numbers.
#[derive(Debug, Clone)]
pub struct Seed(pub u64);

impl Seed {
    pub fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// A number below `of`.
    pub fn below(&mut self, of: usize) -> usize {
        usize::try_from(self.next() % u64::try_from(of).unwrap()).unwrap()
    }

    pub fn one<T: Copy>(&mut self, of: &[T]) -> T {
        of[self.below(of.len())]
    }

    /// True so many times in a hundred.
    pub fn percent(&mut self, of_hundred: usize) -> bool {
        self.below(100) < of_hundred
    }
}
