//! Choosing in each group of options.
//!
//! What a fact or a person's judgment states is chosen. Else, in this order: a choice that something known of the joint bears on before one
//! that nothing does; the fewest clauses not met; the fewest open; the first in the listing. The first of these keeps
//! an alternate that nobody has built from hiding that what was built fails.
//!
//! An optional item is checked as built when a fact says so, or when every clause of it is met or doesn't apply anyhow. While nobody
//! says whether it is built, and it would make a difference, the joint stays open on that one question: its clauses
//! are not asked one by one, since most optional items aren't there, but leaving them out may not make a joint conform.

use site::{Fact, Value};

use super::group::Kind;
use super::{Group, Options};
use crate::assessment::Assessment;
use crate::checklist::{Entry, Membership};
use crate::evidence::{Evidence, evidence};
use crate::judgments::Judgments;
use crate::subject::Subject;
use crate::verdict::Verdict;
use crate::words::normal;

/// What was chosen in each group.
pub(crate) struct Selection<'a> {
    pub(crate) states: Vec<Chosen<'a>>,
}

/// What was chosen in one group.
pub(crate) struct Chosen<'a> {
    pub(crate) state: State,
    /// The fact that says which is built, even where it can't be understood.
    pub(crate) fact: Option<&'a Fact>,
    /// The clauses of every choice, counted.
    pub(crate) tallies: Vec<Tally>,
}

/// How a group was settled.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum State {
    /// A fact or a person says that this choice is built.
    Stated(usize),
    /// A fact or a person says that the optional item isn't built.
    StatedAbsent,
    /// This choice fits best.
    Fits(usize),
    /// This choice comes first, but nothing known bears on any.
    First(usize),
    /// Nobody says whether the optional item is built, and it would make a difference.
    Undecided,
}

/// The verdicts on the clauses of one choice.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub(crate) struct Tally {
    pub(crate) counts: crate::verdict::Counts,
    pub(crate) has_evidence: bool,
}

impl State {
    /// The choice whose clauses are checked, if one is.
    pub(crate) const fn choice(self) -> Option<usize> {
        match self {
            Self::Stated(choice) | Self::Fits(choice) | Self::First(choice) => Some(choice),
            Self::StatedAbsent | Self::Undecided => None,
        }
    }
}

impl Tally {
    fn add(&mut self, assessment: &Assessment<'_>) {
        let counts = &mut self.counts;
        *match assessment.verdict {
            Verdict::Met => &mut counts.met,
            Verdict::NotMet => &mut counts.not_met,
            Verdict::Open => &mut counts.open,
            Verdict::Judged => &mut counts.judged,
            Verdict::NotApplicable => &mut counts.not_applicable,
        } += 1;
        self.has_evidence |= assessment.has_evidence();
    }

    /// The lower, the better.
    pub(crate) const fn rank(&self) -> (bool, usize, usize) {
        (!self.has_evidence, self.counts.not_met, self.counts.open)
    }
}

impl<'a> Selection<'a> {
    /// Chooses in each group, the inner ones first.
    pub(crate) fn of(
        options: &Options<'_>,
        entries: &[Entry<'_>],
        assessments: &[Assessment<'_>],
        subject: &Subject<'a>,
        judgments: &mut Judgments<'_>,
    ) -> Self {
        let mut states: Vec<Option<Chosen<'a>>> = options.groups.iter().map(|_| None).collect();
        for &at in &options.order {
            let Some(group) = options.groups.get(at) else {
                continue;
            };
            let tallies = tally(at, group, options, entries, assessments, &states);
            let fact = stated(group, subject);
            let state = settle(group, fact, &tallies, judgments);
            if let Some(place) = states.get_mut(at) {
                *place = Some(Chosen {
                    state,
                    fact,
                    tallies,
                });
            }
        }
        Self {
            states: states.into_iter().flatten().collect(),
        }
    }

    /// The choice of a group.
    pub(crate) fn state(&self, group: usize) -> Option<State> {
        self.states.get(group).map(|chosen| chosen.state)
    }

    /// The first of a clause's memberships that isn't chosen, if there is one.
    pub(crate) fn unchosen(&self, memberships: &[Membership]) -> Option<Membership> {
        memberships.iter().copied().find(|one| !self.includes(*one))
    }

    /// Whether a group matters: all around it is chosen.
    pub(crate) fn is_reached(&self, group: usize, options: &Options<'_>) -> bool {
        let mut at = group;
        for _ in 0..=options.groups.len() {
            match options.groups.get(at).and_then(|group| group.within) {
                None => return true,
                Some(within) if !self.includes(within) => return false,
                Some(within) => at = within.group,
            }
        }
        true
    }

    fn includes(&self, membership: Membership) -> bool {
        self.state(membership.group)
            .is_some_and(|state| state.choice() == Some(membership.choice))
    }
}

/// Counts the clauses of each choice of a group, those of choices not taken in groups already settled left out. An inner
/// optional item that is undecided counts as one open question.
fn tally(
    at: usize,
    group: &Group<'_>,
    options: &Options<'_>,
    entries: &[Entry<'_>],
    assessments: &[Assessment<'_>],
    states: &[Option<Chosen<'_>>],
) -> Vec<Tally> {
    let mut tallies = vec![Tally::default(); group.choices.len()];
    let settled_otherwise = |one: &Membership| {
        let state = states.get(one.group).and_then(Option::as_ref);
        one.group != at && state.is_some_and(|chosen| chosen.state.choice() != Some(one.choice))
    };
    for (entry, assessment) in entries.iter().zip(assessments) {
        let Some(ours) = entry.memberships.iter().find(|one| one.group == at) else {
            continue;
        };
        if entry.memberships.iter().any(settled_otherwise) {
            continue;
        }
        if let Some(tally) = tallies.get_mut(ours.choice) {
            tally.add(assessment);
        }
    }
    for (inner, state) in options.groups.iter().zip(states) {
        let undecided = state
            .as_ref()
            .is_some_and(|chosen| chosen.state == State::Undecided);
        let ours = inner
            .within
            .filter(|within| undecided && within.group == at);
        if let Some(tally) = ours.and_then(|within| tallies.get_mut(within.choice)) {
            tally.counts.open += 1;
        }
    }
    tallies
}

fn settle(
    group: &Group<'_>,
    fact: Option<&Fact>,
    tallies: &[Tally],
    judgments: &mut Judgments<'_>,
) -> State {
    if let Some(state) = fact.and_then(|fact| read(group, &fact.value)) {
        return state;
    }
    if let Some(state) = judged(group, judgments) {
        return state;
    }
    match group.kind {
        Kind::OrNothing => {
            let makes_no_difference = tallies
                .first()
                .is_some_and(|tally| tally.counts.not_met == 0 && tally.counts.open == 0);
            if makes_no_difference {
                State::Fits(0)
            } else {
                State::Undecided
            }
        }
        Kind::OneOf => {
            let best = tallies
                .iter()
                .enumerate()
                .min_by_key(|(_, tally)| tally.rank());
            match best {
                Some((choice, tally)) if tally.has_evidence => State::Fits(choice),
                Some((choice, _)) => State::First(choice),
                None => State::Undecided,
            }
        }
    }
}

/// What a person has decided of a group.
fn judged(group: &Group<'_>, judgments: &mut Judgments<'_>) -> Option<State> {
    if judgments.is_empty() {
        return None;
    }
    let decided: Vec<Option<bool>> = group
        .choices
        .iter()
        .map(|choice| judgments.is_built(choice))
        .collect();
    match (
        group.kind,
        decided.iter().position(|built| *built == Some(true)),
    ) {
        (_, Some(choice)) => Some(State::Stated(choice)),
        (Kind::OrNothing, None) if decided.contains(&Some(false)) => Some(State::StatedAbsent),
        _ => None,
    }
}

/// The fact that says which option is built: `option.2A`, `option.configuration`, `option.4`.
///
/// A drawing may say it, since every clause of what is chosen is checked all the same; a value that nobody stands for
/// may not.
fn stated<'a>(group: &Group<'_>, subject: &Subject<'a>) -> Option<&'a Fact> {
    let of = |name: &str| match evidence(&format!("option.{name}"), subject) {
        Evidence::Shown(fact) | Evidence::NotSeen(fact) => Some(fact),
        Evidence::None | Evidence::NoSource(_) | Evidence::Unreadable(_) => None,
    };
    of(group.name()).or_else(|| of(&group.source.id))
}

/// What a fact says of a group; none when it names no option of the group.
fn read(group: &Group<'_>, value: &Value) -> Option<State> {
    let text = match (value, group.kind) {
        (Value::Flag(true), Kind::OrNothing) => return Some(State::Stated(0)),
        (Value::Flag(false), Kind::OrNothing) => return Some(State::StatedAbsent),
        (Value::Text(text), _) => text,
        _ => return None,
    };
    if let Some(choice) = group.choice_as_written(text) {
        return Some(State::Stated(choice));
    }
    match (group.kind, normal(text).as_str()) {
        (Kind::OrNothing, "yes" | "built" | "there") => Some(State::Stated(0)),
        (Kind::OrNothing, "no" | "none" | "not built" | "left out" | "not there") => {
            Some(State::StatedAbsent)
        }
        _ => None,
    }
}
