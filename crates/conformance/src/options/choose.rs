//! Choosing in each group of options.
//!
//! What a fact or a person's judgment states is chosen. Else, in this order: a choice that something known tells to be
//! built (a value of a property that only its clauses are about) before one that nothing does; one that anything known
//! bears on before one that nothing does; the fewest clauses not met; the fewest open; the first in the listing. The
//! first two keep an alternate that nobody has built from hiding that what was built fails or is open.
//!
//! An optional item is checked as built when a fact says so, or when every clause of it is met or doesn't apply anyhow.
//! While nobody says whether it is built, and it would make a difference, the joint stays open on that one question: its
//! clauses are not asked one by one, since most optional items aren't there, but leaving them out may not make a joint
//! conform.

use site::Fact;

use super::group::Kind;
use super::tally::{self, Tally};
use super::{Group, Options, stated};
use crate::assessment::Assessment;
use crate::checklist::{AnyOf, Entry, Membership};
use crate::judgments::Judgments;
use crate::subject::Case;

/// The clauses of a listing with what was found of each.
pub(crate) struct Checked<'a, 'b> {
    pub(crate) entries: &'b [Entry<'a>],
    pub(crate) found: &'b [Assessment<'a>],
    /// The first clauses of the series that say nothing of this case: each counts as one open clause more.
    pub(crate) silent: Vec<usize>,
}

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

impl State {
    /// The choice whose clauses are checked, if one is.
    pub(crate) const fn choice(self) -> Option<usize> {
        match self {
            Self::Stated(choice) | Self::Fits(choice) | Self::First(choice) => Some(choice),
            Self::StatedAbsent | Self::Undecided => None,
        }
    }
}

impl Chosen<'_> {
    /// Whether the joint could conform by this choice alone, though nothing shows that it is the one built.
    pub(crate) fn is_unfounded(&self, group: &Group<'_>) -> bool {
        let closes = |choice: usize| {
            self.tallies
                .get(choice)
                .is_none_or(|tally| tally.counts.open + tally.counts.not_met == 0)
        };
        match self.state {
            State::Undecided => true,
            State::First(choice) => closes(choice),
            State::Fits(choice) => {
                let is_told = self.tallies.get(choice).is_some_and(|tally| tally.is_told);
                let unfounded = group.must_be_told(choice) && !is_told;
                (unfounded || group.is_of_equals() && self.tells_of_several()) && closes(choice)
            }
            State::Stated(choice) => group.must_be_told(choice) && self.asks_nothing(choice),
            State::StatedAbsent => false,
        }
    }

    /// Whether what is known tells that more than one choice is built: then it may be that all of them are required, and nobody knows it.
    pub(crate) fn tells_of_several(&self) -> bool {
        self.tallies.iter().filter(|tally| tally.is_told).count() > 1
    }

    /// Whether no clause of a choice applies, while clauses of another do: what stands in the place of something may not let all of it fall away.
    fn asks_nothing(&self, choice: usize) -> bool {
        let asks = |tally: &Tally| {
            let counts = tally.counts;
            counts.met + counts.not_met + counts.open + counts.judged > 0
        };
        self.tallies.get(choice).is_some_and(|tally| !asks(tally)) && self.tallies.iter().any(asks)
    }

    /// Whether what is said to be built asks nothing of this joint.
    pub(crate) fn is_stated_in_vain(&self) -> bool {
        matches!(self.state, State::Stated(choice) if self.asks_nothing(choice))
    }
}

impl<'a> Selection<'a> {
    /// Chooses in each group, the inner ones first.
    pub(crate) fn of(
        options: &Options<'_>,
        checked: &Checked<'_, '_>,
        subject: &Case<'a>,
        judgments: &mut Judgments<'_>,
    ) -> Self {
        let mut states: Vec<Option<Chosen<'a>>> = options.groups.iter().map(|_| None).collect();
        for &at in &options.order {
            let Some(group) = options.groups.get(at) else {
                continue;
            };
            let tallies = tally::of(at, group, options, checked, &states);
            let fact = stated::fact(group, subject);
            let said = fact
                .and_then(|fact| stated::by_value(group, &fact.value))
                .or_else(|| stated::by_judgment(group, judgments));
            let state = said.unwrap_or_else(|| best(group, &tallies));
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

    /// A choice that a clause belongs to, and that isn't chosen nor any other that would do, if there is one.
    pub(crate) fn unchosen(&self, memberships: &[AnyOf]) -> Option<Membership> {
        let is_chosen = |any_of: &AnyOf| any_of.0.iter().any(|one| self.includes(*one));
        let unchosen = memberships.iter().find(|any_of| !is_chosen(any_of));
        unchosen.and_then(|any_of| any_of.0.first().copied())
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

/// The choice that fits best what is known.
fn best(group: &Group<'_>, tallies: &[Tally]) -> State {
    let best = tallies
        .iter()
        .enumerate()
        .min_by_key(|(_, tally)| tally.rank());
    match (group.kind, best) {
        (_, None) => State::Undecided,
        (Kind::OneOf, Some((choice, tally))) if tally.has_evidence => State::Fits(choice),
        (Kind::OneOf, Some((choice, _))) => State::First(choice),
        (Kind::OrNothing, Some((choice, tally))) => {
            let makes_no_difference = tally.counts.not_met + tally.counts.open == 0;
            if makes_no_difference {
                State::Fits(choice)
            } else {
                State::Undecided
            }
        }
    }
}
