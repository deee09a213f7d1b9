//! The few listings that together serve every mark: a smallest set cover.
//!
//! Exact by branch and bound: branch on the mark that the fewest listings serve; a bound is the number of marks no two of which any
//! listing serves together, since each of them takes a listing of its own. What can't be finished within the steps given says how
//! few it could be at best.

use schemars::JsonSchema;
use serde::Serialize;

/// A choice of listings that together serve every mark that any serves.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Cover {
    /// The listings chosen, by their places, in order.
    pub chosen: Vec<usize>,
    /// The fewest that can do it: as many as are chosen, where that is proven.
    pub at_least: usize,
    /// The marks that no listing serves, by their places.
    pub unserved: Vec<usize>,
}

impl Cover {
    /// Whether it is proven that fewer won't do.
    pub fn is_smallest(&self) -> bool {
        self.chosen.len() == self.at_least
    }
}

/// The smallest choice of listings that together serve every mark; `serves` has the marks of each listing, and of two that would do the earlier is
/// taken. After so many steps the search ends with the best it has.
pub fn cover(marks: usize, serves: &[Vec<usize>], most_steps: usize) -> Cover {
    let sets: Vec<Bits> = serves
        .iter()
        .map(|marks_of| Bits::of(marks, marks_of))
        .collect();
    let servable = sets.iter().fold(Bits::none(marks), |all, one| all.or(one));
    let useful = undominated(&sets);
    let greedy = greedy(&servable, &sets, &useful);
    let at_least = apart(&servable, &sets, &useful).max(usize::from(!servable.is_empty()));
    let mut search = Search {
        sets: &sets,
        useful: &useful,
        best: greedy,
        steps: most_steps,
    };
    if at_least < search.best.len() {
        search.from(&servable, &mut Vec::new());
    }
    let finished = search.steps > 0;
    let mut chosen = search.best;
    chosen.sort_unstable();
    Cover {
        at_least: if finished { chosen.len() } else { at_least },
        unserved: (0..marks).filter(|mark| !servable.has(*mark)).collect(),
        chosen,
    }
}

struct Search<'s> {
    sets: &'s [Bits],
    useful: &'s [usize],
    best: Vec<usize>,
    steps: usize,
}

impl Search<'_> {
    fn from(&mut self, left: &Bits, chosen: &mut Vec<usize>) {
        if left.is_empty() {
            if chosen.len() < self.best.len() {
                self.best.clone_from(chosen);
            }
            return;
        }
        self.steps = self.steps.saturating_sub(1);
        let bound = chosen.len() + apart(left, self.sets, self.useful);
        if self.steps == 0 || bound >= self.best.len() {
            return;
        }
        let Some(mark) = hardest(left, self.sets, self.useful) else {
            return;
        };
        let mut serving: Vec<usize> = serving(mark, self.sets, self.useful).collect();
        serving.sort_by_key(|at| {
            let serves = self.sets.get(*at).map_or(0, |set| set.and(left).count());
            (core::cmp::Reverse(serves), *at)
        });
        for at in serving {
            let Some(set) = self.sets.get(at) else {
                continue;
            };
            chosen.push(at);
            self.from(&left.without(set), chosen);
            chosen.pop();
        }
    }
}

fn serving<'s>(
    mark: usize,
    sets: &'s [Bits],
    useful: &'s [usize],
) -> impl Iterator<Item = usize> + 's {
    let serves = move |at: &usize| sets.get(*at).is_some_and(|set| set.has(mark));
    useful.iter().copied().filter(serves)
}

/// The mark that the fewest listings serve.
fn hardest(left: &Bits, sets: &[Bits], useful: &[usize]) -> Option<usize> {
    left.places()
        .min_by_key(|mark| (serving(*mark, sets, useful).count(), *mark))
}

/// How many marks there are, no two of which one listing serves; chosen greedily, those first that the fewest serve.
fn apart(left: &Bits, sets: &[Bits], useful: &[usize]) -> usize {
    let mut order: Vec<(usize, usize)> = left
        .places()
        .map(|mark| (serving(mark, sets, useful).count(), mark))
        .collect();
    order.sort_unstable();
    let mut left = left.clone();
    let mut count = 0;
    for (_, mark) in order {
        if !left.has(mark) {
            continue;
        }
        count += 1;
        for at in serving(mark, sets, useful) {
            if let Some(set) = sets.get(at) {
                left = left.without(set);
            }
        }
    }
    count
}

/// The listing that serves the most marks still unserved, again and again.
fn greedy(servable: &Bits, sets: &[Bits], useful: &[usize]) -> Vec<usize> {
    let mut left = servable.clone();
    let mut chosen = Vec::new();
    while !left.is_empty() {
        let serves = |at: usize| sets.get(at).map_or(0, |set| set.and(&left).count());
        let best = useful
            .iter()
            .copied()
            .min_by_key(|at| (core::cmp::Reverse(serves(*at)), *at));
        let Some(set) = best.and_then(|at| sets.get(at)) else {
            break;
        };
        if set.and(&left).is_empty() {
            break;
        }
        chosen.extend(best);
        left = left.without(set);
    }
    chosen
}

/// The listings that serve something no other serves all of; of two that serve the same, the earlier.
fn undominated(sets: &[Bits]) -> Vec<usize> {
    let is_dominated = |at: usize, set: &Bits| {
        sets.iter().enumerate().any(|(other_at, other)| {
            other_at != at
                && set.without(other).is_empty()
                && (!other.without(set).is_empty() || other_at < at)
        })
    };
    let mut useful = Vec::new();
    for (at, set) in sets.iter().enumerate() {
        if !set.is_empty() && !is_dominated(at, set) {
            useful.push(at);
        }
    }
    useful
}

/// A set of marks.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Bits(Vec<u64>);

impl Bits {
    fn none(of: usize) -> Self {
        Self(vec![0; of.div_ceil(64)])
    }

    fn of(of: usize, places: &[usize]) -> Self {
        let mut bits = Self::none(of);
        for place in places {
            if let Some(word) = bits.0.get_mut(place / 64) {
                *word |= 1 << (place % 64);
            }
        }
        bits
    }

    fn has(&self, place: usize) -> bool {
        self.0
            .get(place / 64)
            .is_some_and(|word| word >> (place % 64) & 1 == 1)
    }

    fn is_empty(&self) -> bool {
        self.0.iter().all(|word| *word == 0)
    }

    fn count(&self) -> u32 {
        self.0.iter().map(|word| word.count_ones()).sum()
    }

    fn with(&self, other: &Self, both: impl Fn(u64, u64) -> u64) -> Self {
        let words = self.0.iter().zip(&other.0);
        Self(words.map(|(one, other)| both(*one, *other)).collect())
    }

    fn and(&self, other: &Self) -> Self {
        self.with(other, |one, other| one & other)
    }

    fn or(&self, other: &Self) -> Self {
        self.with(other, |one, other| one | other)
    }

    fn without(&self, other: &Self) -> Self {
        self.with(other, |one, other| one & !other)
    }

    fn places(&self) -> impl Iterator<Item = usize> + '_ {
        (0..self.0.len() * 64).filter(|place| self.has(*place))
    }
}
