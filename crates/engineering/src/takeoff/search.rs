//! The search for a way of cutting with a given number of stocks.
//!
//! Stock after stock is cut for the longest piece left, the least waste first, as long as the waste so far leaves the
//! number of stocks within reach. Where the search ends before its allowance does, it has seen every way.

use super::cutting::Pattern;

/// What a search came to.
pub(super) enum Found {
    /// A way.
    Way(Vec<(Pattern, u64)>),
    /// There is none.
    None,
    /// The allowance was used up first.
    GaveUp,
}

/// The most steps of one search.
const ALLOWANCE: u32 = 40_000;
/// The most ways of cutting one stock that are looked at in one place.
const WAYS: usize = 4_000;

struct Search {
    stock: u64,
    lengths: Vec<u64>,
    left: Vec<u64>,
    steps: u32,
    gave_up: bool,
    way: Vec<(Vec<u64>, u64)>,
}

/// Looks for a way of cutting the pieces from so many stocks.
pub(super) fn search(stock: u64, pieces: &[(u64, u64)], stocks: u64) -> Found {
    let total: u64 = pieces.iter().map(|(length, count)| length * count).sum();
    let Some(waste) = (stock * stocks).checked_sub(total) else {
        return Found::None;
    };
    let mut search = Search {
        stock,
        lengths: pieces.iter().map(|(length, _)| *length).collect(),
        left: pieces.iter().map(|(_, count)| *count).collect(),
        steps: ALLOWANCE,
        gave_up: false,
        way: Vec::new(),
    };
    if search.cut(stocks, waste) {
        let patterns = search.way.iter().map(|(counts, times)| {
            let pieces = search
                .lengths
                .iter()
                .zip(counts)
                .filter(|(_, count)| **count > 0);
            (
                pieces.map(|(length, count)| (*length, *count)).collect(),
                *times,
            )
        });
        return Found::Way(patterns.collect());
    }
    if search.gave_up {
        Found::GaveUp
    } else {
        Found::None
    }
}

impl Search {
    /// Whether what is left can be cut from so many stocks with so much waste.
    fn cut(&mut self, stocks: u64, waste: u64) -> bool {
        let Some(longest) = self.left.iter().position(|count| *count > 0) else {
            return true;
        };
        if stocks == 0 {
            return false;
        }
        if !self.may_step() {
            return false;
        }
        let mut ways = Vec::new();
        let mut counts = vec![0; self.lengths.len()];
        self.ways(longest, longest, self.stock, waste, &mut counts, &mut ways);
        if self.gave_up {
            return false;
        }
        ways.sort();
        for (lost, counts) in ways {
            let mut most = stocks;
            for (wanted, left) in counts.iter().zip(&self.left) {
                if *wanted > 0 {
                    most = most.min(left / wanted);
                }
            }
            most = most.min(waste.checked_div(lost).unwrap_or(most));
            for times in (1..=most).rev() {
                self.take(&counts, times, true);
                self.way.push((counts.clone(), times));
                if self.cut(stocks - times, waste - lost * times) {
                    return true;
                }
                self.way.pop();
                self.take(&counts, times, false);
                if self.gave_up {
                    return false;
                }
            }
        }
        false
    }

    /// Adds the ways of cutting one stock that hold the longest piece and waste no more than may be.
    fn ways(
        &mut self,
        longest: usize,
        at: usize,
        room: u64,
        waste: u64,
        counts: &mut Vec<u64>,
        found: &mut Vec<(u64, Vec<u64>)>,
    ) {
        if found.len() >= WAYS {
            self.gave_up = true;
        }
        if !self.may_step() {
            return;
        }
        let (Some(length), Some(left)) =
            (self.lengths.get(at).copied(), self.left.get(at).copied())
        else {
            if room <= waste {
                found.push((room, counts.clone()));
            }
            return;
        };
        let fewest = u64::from(at == longest);
        for count in (fewest..=left.min(room / length)).rev() {
            if let Some(slot) = counts.get_mut(at) {
                *slot = count;
            }
            self.ways(longest, at + 1, room - count * length, waste, counts, found);
        }
        if let Some(slot) = counts.get_mut(at) {
            *slot = 0;
        }
    }

    /// Uses up a step of the allowance.
    fn may_step(&mut self) -> bool {
        match self.steps.checked_sub(1) {
            Some(steps) if !self.gave_up => {
                self.steps = steps;
                true
            }
            _ => {
                self.gave_up = true;
                false
            }
        }
    }

    fn take(&mut self, counts: &[u64], times: u64, away: bool) {
        for (left, count) in self.left.iter_mut().zip(counts) {
            *left = if away {
                *left - count * times
            } else {
                *left + count * times
            };
        }
    }
}
