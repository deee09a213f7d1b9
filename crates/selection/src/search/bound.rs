//! Where a listing stands at best, by what it asks for certain.

use conformance::points::{Slot, Tells};
use conformance::{Standing, Subject, Verdict, is_judged};

use crate::cost::Cost;
use crate::index::{About, Asked, Entry, Index};
use crate::rank::Rank;

/// What can be told of a listing at once.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Sort {
    /// It may be in the answer.
    Sought,
    /// It isn't for such a joint, whatever else.
    Beyond,
    /// A person's decision may bear on it, so that nothing is certain.
    Judged,
}

/// Where a listing stands at best.
#[derive(Debug, Clone, Copy)]
pub(super) struct Bound {
    pub(super) at: usize,
    standing: Standing,
    pub(super) sort: Sort,
    /// The least that the changes cost which it needs.
    cost: Cost,
    /// The fewest changes that it needs.
    changes: usize,
    /// The fewest clauses that are open.
    open: usize,
    /// Whether something may be unmet that isn't for certain.
    may_be_unmet: bool,
}

impl Bound {
    /// Whether nothing may be unmet.
    pub(super) fn may_be_open(&self) -> bool {
        self.sort == Sort::Sought && self.changes == 0
    }

    /// Whether something may be unmet.
    pub(super) fn may_be_unmet(&self) -> bool {
        self.sort == Sort::Sought && (self.changes > 0 || self.may_be_unmet)
    }

    fn provisional(&self) -> bool {
        self.standing == Standing::Provisional
    }

    /// Its place at best where nothing is unmet.
    pub(super) fn best_unless_unmet(&self) -> (Rank, usize) {
        let provisional = self.provisional();
        let rank = match self.open {
            0 => Rank::Fits { provisional },
            open => Rank::Open { open, provisional },
        };
        (rank, self.at)
    }

    /// Its place at best where something is unmet.
    pub(super) fn best_if_unmet(&self) -> (Rank, usize) {
        let rank = Rank::Near {
            cost: self.cost.max(Cost::LEAST),
            changes: self.changes.max(1),
            open: self.open,
            provisional: self.provisional(),
        };
        (rank, self.at)
    }
}

/// What the bounds are reckoned from.
pub(super) struct Bounds<'s, 'a> {
    index: &'s Index,
    subject: &'s Subject<'a>,
    /// How each point stands.
    states: Vec<State>,
    /// Whether anything says which options are built.
    options_are_stated: bool,
}

/// How a point stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum State {
    Met,
    /// Nothing of it is in the way, as it doesn't apply.
    Settled,
    Open,
    Unmet,
    /// A fact of one part is known of its property: a clause may rest on that, and not on what the point was decided with.
    OfAPart,
}

/// What may be unmet in a choice.
struct InChoice {
    group: usize,
    choice: usize,
    about: About,
}

impl<'s, 'a> Bounds<'s, 'a> {
    pub(super) fn new(index: &'s Index, subject: &'s Subject<'a>, verdicts: &[Verdict]) -> Self {
        let facts = || subject.facts.iter().map(|fact| fact.property.as_str());
        let parts: Vec<&str> = facts()
            .filter_map(|name| Some(name.split_once(':')?.1))
            .collect();
        let is_of_a_part: Vec<bool> = index
            .properties
            .iter()
            .map(|property| parts.contains(&property.as_str()))
            .collect();
        let state = |(verdict, about): (&Verdict, &About)| {
            let property = usize::try_from(about.property).ok();
            let of_a_part = property.and_then(|property| is_of_a_part.get(property));
            match verdict {
                _ if of_a_part == Some(&true) => State::OfAPart,
                Verdict::NotMet => State::Unmet,
                Verdict::Open => State::Open,
                Verdict::Met => State::Met,
                _ => State::Settled,
            }
        };
        Self {
            states: verdicts.iter().zip(&index.about).map(state).collect(),
            options_are_stated: facts().any(|name| name.starts_with("option.")),
            index,
            subject,
        }
    }

    /// The bound of each listing, in their order.
    pub(super) fn of_each(&self) -> Vec<Bound> {
        // When each property was last counted: the place of the listing.
        let mut counted: Vec<usize> = vec![usize::MAX; self.index.properties.len()];
        let entries = self.index.entries.iter().enumerate();
        entries
            .map(|(at, entry)| self.of(at, entry, &mut counted))
            .collect()
    }

    fn of(&self, at: usize, entry: &Entry, counted: &mut [usize]) -> Bound {
        let judged = !self.subject.judgments.is_empty()
            && is_judged(self.subject, &entry.designation, &entry.file);
        let mut bound = Bound {
            at,
            standing: entry.standing,
            sort: if judged { Sort::Judged } else { Sort::Sought },
            cost: Cost(0),
            changes: 0,
            open: 0,
            may_be_unmet: entry.may_ask_more,
        };
        if judged {
            return bound;
        }
        for point in &entry.always {
            match self.state(*point) {
                State::Settled | State::Met => {}
                State::Open => bound.open += 1,
                State::OfAPart => bound.may_be_unmet = true,
                State::Unmet => match self.about(*point) {
                    Some(about) if about.of_the_building => {
                        bound.sort = Sort::Beyond;
                        return bound;
                    }
                    Some(about) if is_first(counted, about, at) => {
                        bound.changes += 1;
                        bound.cost = bound.cost.and(about.cost);
                    }
                    _ => {}
                },
            }
        }
        let mut in_choices: Vec<InChoice> = Vec::new();
        let mut open_in_choices: Vec<(usize, usize)> = Vec::new();
        for asked in &entry.others {
            match (self.state(asked.point), asked.slot) {
                (State::Open, Slot::Always) => bound.open += 1,
                // What is open stays open, whatever it is known of.
                (State::Open, Slot::Choice { group, choice }) => {
                    open_in_choices.push((group, choice));
                }
                (State::Settled | State::Met | State::Open, _) => {}
                (State::Unmet, Slot::Choice { group, choice }) if !asked.is_parted => {
                    bound.may_be_unmet = true;
                    in_choices.extend(self.about(asked.point).map(|about| InChoice {
                        group,
                        choice,
                        about,
                    }));
                }
                (State::Unmet | State::OfAPart, _) => bound.may_be_unmet = true,
            }
        }
        if open_in_choices.is_empty() && in_choices.is_empty() {
            return bound;
        }
        let choices = self.choices_that_may_be_built(entry);
        bound.open += least_open(&choices, &open_in_choices);
        let (cost, changes) = least_of_choices(&choices, &in_choices, counted, at);
        bound.cost = bound.cost.and(cost);
        bound.changes += changes;
        bound
    }

    /// The choices of each group that may be taken for built: where what is known tells that one is, none of which it certainly doesn't.
    fn choices_that_may_be_built(&self, entry: &Entry) -> Vec<Vec<usize>> {
        let all = || entry.choices.iter().map(|choices| (0..*choices).collect());
        let tells_elsewhere = |asked: &Asked| asked.tells == Tells::Something;
        if self.options_are_stated || entry.others.iter().any(tells_elsewhere) {
            return all().collect();
        }
        let mut told: Vec<(usize, usize)> = Vec::new();
        let mut maybe: Vec<(usize, usize)> = Vec::new();
        for asked in &entry.others {
            let Slot::Choice { group, choice } = asked.slot else {
                continue;
            };
            match (asked.tells, self.state(asked.point)) {
                (Tells::Nothing, _) | (_, State::Settled) | (Tells::WhenMet, State::Unmet) => {}
                (_, State::Met) | (Tells::WhenKnown, State::Unmet) => told.push((group, choice)),
                _ => maybe.push((group, choice)),
            }
        }
        let mut choices: Vec<Vec<usize>> = all().collect();
        for (group, choices) in choices.iter_mut().enumerate() {
            if told.iter().any(|one| one.0 == group) {
                choices.retain(|choice| {
                    let one = (group, *choice);
                    told.contains(&one) || maybe.contains(&one)
                });
            }
        }
        choices
    }

    fn state(&self, point: u32) -> State {
        let at = usize::try_from(point).ok();
        // Of a point that isn't there nothing may be concluded.
        at.and_then(|at| self.states.get(at))
            .copied()
            .unwrap_or(State::OfAPart)
    }

    fn about(&self, point: u32) -> Option<About> {
        let point = usize::try_from(point).ok()?;
        self.index.about.get(point).copied()
    }
}

/// Whether a property is counted for the first time at a listing; notes that it was.
fn is_first(counted: &mut [usize], about: About, at: usize) -> bool {
    let property = usize::try_from(about.property).ok();
    let Some(last) = property.and_then(|property| counted.get_mut(property)) else {
        return false;
    };
    core::mem::replace(last, at) != at
}

/// The least that is needed where one choice of each group is built, beside what is counted: the least of any choice, group by
/// group. A property that two groups ask about is counted with the first alone, as one change may serve both.
fn least_of_choices(
    choices: &[Vec<usize>],
    unmet: &[InChoice],
    counted: &mut [usize],
    at: usize,
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
                if !is_counted(counted, about, at) && !properties.contains(&about.property) {
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
            is_first(counted, one.about, at);
        }
    }
    least
}

/// Whether a property is counted at a listing already.
fn is_counted(counted: &[usize], about: About, at: usize) -> bool {
    let property = usize::try_from(about.property).ok();
    property.and_then(|property| counted.get(property)) == Some(&at)
}

/// How many clauses are open at least where one choice of each group is built: the fewest of any choice, group by group. No clause is of
/// two groups here, so that they add up.
fn least_open(choices: &[Vec<usize>], open: &[(usize, usize)]) -> usize {
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
