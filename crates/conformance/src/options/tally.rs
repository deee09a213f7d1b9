//! What the clauses of one choice come to.

use std::collections::BTreeSet;

use listing::Requirement;

use super::choose::{Checked, Chosen, State};
use super::{Group, Options};
use crate::assessment::Assessment;
use crate::checklist::{AnyOf, Entry, Membership};
use crate::verdict::{Counts, Reason, Verdict};

/// What the clauses of one choice come to.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub(crate) struct Tally {
    pub(crate) counts: Counts,
    /// Whether anything known of the joint bears on it.
    pub(crate) has_evidence: bool,
    /// Whether something known tells that it, and not another choice, is built: a value of a property that no clause
    /// outside the choice is about.
    pub(crate) is_told: bool,
}

impl Tally {
    /// The lower, the better.
    pub(crate) const fn rank(&self) -> (bool, bool, usize, usize) {
        (
            !self.is_told,
            !self.has_evidence,
            self.counts.not_met,
            self.counts.open,
        )
    }

    fn add(&mut self, entry: &Entry<'_>, found: &Assessment<'_>, group: usize) {
        self.counts.add(found.verdict);
        self.has_evidence |= found.has_evidence();
        self.is_told |= entry.tells_of.contains(&group) && tells(entry, found);
    }
}

/// Whether what is known of a clause's property tells that the clause's choice is built. A value that fails a bound tells
/// it as well as one that meets it; but another product than those named, or a thing that isn't there, tells nothing.
fn tells(entry: &Entry<'_>, found: &Assessment<'_>) -> bool {
    let by_value = matches!(entry.clause.requirement, Requirement::Bound(_));
    match found.verdict {
        Verdict::Met | Verdict::Judged => true,
        Verdict::NotMet => by_value,
        Verdict::Open => {
            let fits = matches!(found.reason, Reason::MakerUnknown | Reason::NotSeen);
            let is_usable = !matches!(
                found.reason,
                Reason::NoSource | Reason::ConditionUndecided | Reason::Unreadable
            );
            found.fact.is_some() && (fits || (by_value && is_usable))
        }
        Verdict::NotApplicable => false,
    }
}

/// Counts the clauses of each choice of a group, those of choices not taken in groups already settled left out. An inner
/// optional item that is undecided counts as one open question.
pub(super) fn of(
    at: usize,
    group: &Group<'_>,
    options: &Options<'_>,
    checked: &Checked<'_, '_>,
    states: &[Option<Chosen<'_>>],
) -> Vec<Tally> {
    let mut tallies = vec![Tally::default(); group.choices.len()];
    let settled_otherwise = |one: &Membership| {
        let state = states.get(one.group).and_then(Option::as_ref);
        one.group != at && state.is_some_and(|chosen| chosen.state.choice() != Some(one.choice))
    };
    let falls_away = |any_of: &AnyOf| any_of.0.iter().all(settled_otherwise);
    for (place, (entry, found)) in checked.entries.iter().zip(checked.found).enumerate() {
        if entry.memberships.iter().any(falls_away) {
            continue;
        }
        let ours = entry
            .memberships
            .iter()
            .flat_map(|any_of| any_of.of_group(at));
        let ours: BTreeSet<usize> = ours.collect();
        for choice in ours {
            if let Some(tally) = tallies.get_mut(choice) {
                tally.add(entry, found, at);
                tally.counts.open += usize::from(checked.silent.contains(&place));
            }
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
