//! The least that is needed where one choice of each group of options is built.

use crate::cost::Cost;
use crate::index::About;

/// What is unmet in a choice.
pub(super) struct InChoice {
    pub(super) group: usize,
    pub(super) choice: usize,
    pub(super) about: About,
}

/// The properties of which a change is counted at a listing.
pub(super) struct Counted {
    /// How many listings were looked at so far.
    turn: usize,
    /// The turn in which each property was last counted.
    last: Vec<usize>,
}

impl Counted {
    /// None is counted of so many properties.
    pub(super) fn new(properties: usize) -> Self {
        Self {
            turn: 0,
            last: vec![0; properties],
        }
    }

    /// Turns to a listing: none is counted there.
    pub(super) const fn begin(&mut self) {
        self.turn += 1;
    }

    /// Whether a property is counted for the first time; notes that it was.
    pub(super) fn is_first(&mut self, about: About) -> bool {
        let property = usize::try_from(about.property).ok();
        let Some(last) = property.and_then(|property| self.last.get_mut(property)) else {
            return false;
        };
        core::mem::replace(last, self.turn) != self.turn
    }

    /// Whether a property is counted already.
    fn has(&self, about: About) -> bool {
        let property = usize::try_from(about.property).ok();
        property.and_then(|property| self.last.get(property)) == Some(&self.turn)
    }
}

/// The least that is needed where one choice of each group is built, beside what is counted: the least of any choice, group by
/// group. A property that two groups ask about is counted with the first alone, as one change may serve both.
pub(super) fn least_of_choices(
    choices: &[Vec<usize>],
    unmet: &[InChoice],
    counted: &mut Counted,
) -> (Cost, usize) {
    let mut least = (Cost(0), 0);
    for (group, choices) in choices.iter().enumerate() {
        let ours = || unmet.iter().filter(|one| one.group == group);
        if ours().next().is_none() {
            continue;
        }
        let needs = |choice: &usize| {
            let mut properties: Vec<u32> = Vec::new();
            let mut cost = Cost(0);
            for one in ours().filter(|one| one.choice == *choice) {
                let about = one.about;
                if !counted.has(about) && !properties.contains(&about.property) {
                    properties.push(about.property);
                    cost = cost.and(about.cost);
                }
            }
            (cost, properties.len())
        };
        let each: Vec<(Cost, usize)> = choices.iter().map(needs).collect();
        let cost = each.iter().map(|one| one.0).min().unwrap_or_default();
        let changes = each.iter().map(|one| one.1).min().unwrap_or_default();
        least = (least.0.and(cost), least.1 + changes);
        for one in ours() {
            counted.is_first(one.about);
        }
    }
    least
}

/// How many clauses are open at least where one choice of each group is built: the fewest of any choice, group by group. No clause is of
/// two groups here, so that they add up.
pub(super) fn least_open(choices: &[Vec<usize>], open: &[(usize, usize)]) -> usize {
    if open.is_empty() {
        return 0;
    }
    let of = |group: usize, choice: usize| {
        let ours = open.iter().filter(|one| **one == (group, choice));
        ours.count()
    };
    let groups = choices.iter().enumerate();
    groups
        .map(|(group, choices)| {
            let each = choices.iter().map(|choice| of(group, *choice));
            each.min().unwrap_or(0)
        })
        .sum()
}
