//! A listing made ready for checking: what depends on the listing alone is looked up once.

use std::collections::BTreeMap;

use listing::{Clause, Confidence, Item, Reading, Requirement, Status, Test};
use serde::{Deserialize, Serialize};
use vocabulary::{Property, Trade};

use crate::cases::{self, Cases};
use crate::condition::exact_tests;
use crate::evidence::property;
use crate::explain::trade_of;
use crate::instances::{self, Part};
use crate::options::Options;
use crate::reference::only_points;
use crate::verdict::Standing;

/// A listing made ready for checking any number of joints against it.
pub struct Checklist<'a> {
    pub(crate) reading: &'a Reading,
    pub(crate) standing: Standing,
    /// Its clauses, in listing order.
    pub(crate) entries: Vec<Entry<'a>>,
    /// Its options, with what belongs to each.
    pub(crate) options: Options<'a>,
    /// The places of the clauses on properties that several of its parts have.
    pub(crate) parted: Vec<usize>,
    /// The series of clauses that speak case by case.
    pub(crate) cases: Vec<Cases>,
    /// Every test for one exact value among its conditions.
    pub(crate) exact_tests: Vec<&'a Test>,
}

/// A clause with what is known of it before any joint.
pub(crate) struct Entry<'a> {
    pub(crate) clause: &'a Clause,
    pub(crate) property: Option<&'static Property>,
    /// How sure its reading is.
    pub(crate) doubt: Doubt,
    /// Who owns its property.
    pub(crate) trade: Option<Trade>,
    /// The part that it speaks of.
    pub(crate) part: Part<'a>,
    /// Whether it only points to another item.
    pub(crate) is_pointer: bool,
    /// The options it belongs to: one of each must be chosen for it to apply.
    pub(crate) memberships: Vec<AnyOf>,
    /// The groups of which a value of its property tells what is built: those in which no clause outside its choice is
    /// about the same property.
    pub(crate) tells_of: Vec<usize>,
}

/// How sure the reading of a clause is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub(crate) enum Doubt {
    /// Sure enough, or confirmed by a person.
    None,
    /// Read, but doubtfully, and nobody has confirmed it.
    Doubtful,
    /// Left as words, whatever else was read from it.
    OnlyWords,
    /// Of a confirmed listing, yet this clause isn't confirmed.
    Unconfirmed,
}

/// That a clause belongs to a choice of a group.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Membership {
    pub(crate) group: usize,
    pub(crate) choice: usize,
}

/// Choices of which any one will do: "Configuration A or Configuration B". Never empty.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct AnyOf(pub(crate) Vec<Membership>);

impl AnyOf {
    /// One choice and no other.
    pub(crate) fn just(group: usize, choice: usize) -> Self {
        Self(vec![Membership { group, choice }])
    }

    /// The only choice, where there is no other.
    pub(crate) fn only(&self) -> Option<Membership> {
        match self.0.as_slice() {
            [only] => Some(*only),
            _ => None,
        }
    }

    /// Its choices of one group.
    pub(crate) fn of_group(&self, group: usize) -> impl Iterator<Item = usize> + '_ {
        let ours = self.0.iter().filter(move |one| one.group == group);
        ours.map(|one| one.choice)
    }

    /// Whether it has a choice of a group.
    pub(crate) fn is_of(&self, group: usize) -> bool {
        self.of_group(group).next().is_some()
    }
}

impl<'a> Checklist<'a> {
    pub(crate) fn new(reading: &'a Reading, standing: Standing) -> Self {
        let items: BTreeMap<&str, &Item> = reading
            .items
            .iter()
            .map(|item| (item.path.as_str(), item))
            .collect();
        let mut options = Options::of(reading);
        let mut entries: Vec<Entry<'a>> = reading
            .clauses
            .iter()
            .map(|clause| Entry {
                clause,
                property: property(&clause.property),
                trade: trade_of(clause, property(&clause.property)),
                part: Part::of(clause, property(&clause.property), &items),
                doubt: Doubt::of(clause, standing),
                is_pointer: match &clause.requirement {
                    Requirement::Reference { to } => only_points(clause, to, reading),
                    _ => false,
                },
                memberships: options.memberships(clause, &items),
                tells_of: Vec::new(),
            })
            .collect();
        options.nest(&entries);
        note_what_tells(&mut entries);
        let mut tests = Vec::new();
        for condition in reading
            .clauses
            .iter()
            .filter_map(|clause| clause.condition.as_ref())
        {
            exact_tests(&condition.expr, &mut tests);
        }
        Self {
            reading,
            standing,
            cases: cases::of(&entries),
            parted: instances::parted(&entries),
            entries,
            options,
            exact_tests: tests,
        }
    }
}

/// Notes which clauses are about a property that only their own choice is about.
fn note_what_tells(entries: &mut [Entry<'_>]) {
    let mut common: BTreeMap<&str, Vec<AnyOf>> = BTreeMap::new();
    for entry in entries.iter() {
        common
            .entry(&entry.clause.property)
            .and_modify(|shared| shared.retain(|one| entry.memberships.contains(one)))
            .or_insert_with(|| entry.memberships.clone());
    }
    for entry in entries.iter_mut() {
        let shared = common.get(entry.clause.property.as_str());
        let told = shared.into_iter().flatten().filter_map(AnyOf::only);
        entry.tells_of = told.map(|one| one.group).collect();
    }
}

impl Doubt {
    fn of(clause: &Clause, standing: Standing) -> Self {
        match (clause.status, clause.confidence) {
            (Status::Draft, Confidence::Prose) => Self::OnlyWords,
            (Status::Draft, _) if standing == Standing::Final => Self::Unconfirmed,
            (Status::Draft, Confidence::WithDoubt) => Self::Doubtful,
            (Status::Confirmed | Status::Corrected, _) | (Status::Draft, Confidence::ByRule) => {
                Self::None
            }
        }
    }
}
