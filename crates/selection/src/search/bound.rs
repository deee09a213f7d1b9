//! Where a listing stands at best, by what it asks for certain.

use std::collections::BTreeSet;

use conformance::points::{Slot, Tells};
use conformance::{Standing, Subject, Verdict, is_judged};
use site::Fact;

use super::choices::{Counted, InChoice, least_of_choices, least_open};
use crate::cost::Cost;
use crate::index::{About, Asked, Entry, Index};
use crate::rank::Rank;

/// What can be told of a listing at once.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Sort {
    /// It may be in the answer.
    Sought,
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
    /// Whether only what is asked whatever is built was looked at: it may stand farther back, and no nearer.
    is_rough: bool,
}

impl Bound {
    /// Nothing counted yet.
    const fn none(at: usize, entry: &Entry, sort: Sort) -> Self {
        Self {
            at,
            standing: entry.standing,
            sort,
            cost: Cost(0),
            changes: 0,
            open: 0,
            may_be_unmet: entry.may_ask_more,
            is_rough: false,
        }
    }

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
    /// Of which properties a change is counted at the listing in hand.
    counted: Counted,
}

/// How a point stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum State {
    Met,
    /// Nothing of it is in the way, as it doesn't apply.
    Settled,
    Open,
    Unmet,
    /// A fact that was said of one listing, of its own property or of one of its parts, may bear on it: a clause may rest on that, and not
    /// on what the point was decided with.
    OfAPart,
}

/// Which points facts of listings' own properties may bear on.
fn own_points(index: &Index, points: usize, own: &[&str]) -> Vec<bool> {
    let mut bears = vec![false; points];
    if own.is_empty() {
        return bears;
    }
    let parts = own.iter().filter_map(|name| Some(name.split_once(':')?.1));
    let names: BTreeSet<&str> = parts.chain(own.iter().copied()).collect();
    let groups = index.apart.by_facts.iter().filter(|group| {
        let mut properties = group.properties.iter();
        properties.any(|property| names.contains(property.as_str()))
    });
    for at in groups.flat_map(|group| &group.points) {
        if let Some(bears) = bears.get_mut(*at) {
            *bears = true;
        }
    }
    bears
}

impl<'s, 'a> Bounds<'s, 'a> {
    pub(super) fn new(index: &'s Index, subject: &'s Subject<'a>, verdicts: &[Verdict]) -> Self {
        let own: Vec<&str> = subject.facts.of_listings().map(Fact::asked_as).collect();
        let is_own = own_points(index, verdicts.len(), &own);
        let state = |(verdict, is_own): (&Verdict, &bool)| match verdict {
            _ if *is_own => State::OfAPart,
            Verdict::NotMet => State::Unmet,
            Verdict::Open => State::Open,
            Verdict::Met => State::Met,
            _ => State::Settled,
        };
        Self {
            states: verdicts.iter().zip(&is_own).map(state).collect(),
            options_are_stated: own.iter().any(|name| name.starts_with("option.")),
            counted: Counted::new(index.properties.len()),
            index,
            subject,
        }
    }

    /// A rough bound of each listing that the building doesn't rule out.
    pub(super) fn of_each(&mut self) -> Vec<Bound> {
        let mut bounds = Vec::new();
        for gate in &self.index.gates {
            let is_shut = gate
                .points
                .iter()
                .any(|point| self.state(*point) == State::Unmet);
            for at in &gate.listings {
                let Some(entry) = self.index.entries.get(*at) else {
                    continue;
                };
                if self.is_judged(entry) {
                    bounds.push(Bound::none(*at, entry, Sort::Judged));
                } else if !is_shut {
                    bounds.push(self.roughly(*at, entry));
                }
            }
        }
        bounds
    }

    fn is_judged(&self, entry: &Entry) -> bool {
        !self.subject.judgments.is_empty() && is_judged(self.subject, &entry.goes_by())
    }

    /// By what a listing asks whatever is built alone; anything else may be unmet.
    fn roughly(&mut self, at: usize, entry: &Entry) -> Bound {
        let bound = self.by_what_is_always_asked(at, entry);
        Bound {
            may_be_unmet: bound.may_be_unmet || !entry.others.is_empty(),
            is_rough: !entry.others.is_empty(),
            ..bound
        }
    }

    fn by_what_is_always_asked(&mut self, at: usize, entry: &Entry) -> Bound {
        let mut bound = Bound::none(at, entry, Sort::Sought);
        self.counted.begin();
        for point in &entry.always {
            match self.state(*point) {
                State::Settled | State::Met => {}
                State::Open => bound.open += 1,
                State::OfAPart => bound.may_be_unmet = true,
                State::Unmet => {
                    let about = self.about(*point);
                    if let Some(about) = about.filter(|about| self.counted.is_first(*about)) {
                        bound.changes += 1;
                        bound.cost = bound.cost.and(about.cost);
                    }
                }
            }
        }
        bound
    }

    /// A bound by all that can be told of a listing.
    pub(super) fn refined(&mut self, bound: Bound) -> Bound {
        match self.index.entries.get(bound.at) {
            Some(entry) if bound.is_rough => {
                let always = self.by_what_is_always_asked(bound.at, entry);
                self.with_choices(always, entry)
            }
            _ => bound,
        }
    }

    /// With what a listing asks where one thing or another is built.
    fn with_choices(&mut self, mut bound: Bound, entry: &Entry) -> Bound {
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
        let (cost, changes) = least_of_choices(&choices, &in_choices, &mut self.counted);
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
