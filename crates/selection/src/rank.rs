//! The order of the answer.

use conformance::{Standing, Unsettled, Verdict};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::cost::{Cost, is_asked_of_the_building};

/// Where a listing stands in the answer: the lower, the nearer.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum Rank {
    /// Every clause that applies is met or judged. Those on confirmed listings come first.
    Fits {
        /// On a draft.
        provisional: bool,
    },
    /// Nothing is unmet, and something is open: the fewest first.
    Open {
        /// How many clauses and questions are open.
        open: usize,
        /// On a draft.
        provisional: bool,
    },
    /// It would fit, were something built otherwise: the fewest changes first, of as many the cheapest.
    Near {
        /// How many properties must change.
        changes: usize,
        /// What the changes cost together.
        cost: Cost,
        /// How many clauses and questions are open besides.
        open: usize,
        /// On a draft.
        provisional: bool,
    },
    /// It isn't for such a joint: what the building asks, and nobody changes to suit a listing, isn't met.
    Beyond,
}

impl Rank {
    /// The rank of what was decided.
    pub fn of(unsettled: &[Unsettled<'_>], standing: Standing, shows_something: bool) -> Self {
        let provisional = standing == Standing::Provisional;
        let open = unsettled
            .iter()
            .filter(|one| one.verdict == Verdict::Open)
            .count();
        let unmet = || {
            unsettled
                .iter()
                .filter(|one| one.verdict == Verdict::NotMet)
        };
        if unmet().any(|one| is_asked_of_the_building(one.property)) {
            return Self::Beyond;
        }
        let mut properties: Vec<&str> = Vec::new();
        let mut cost = Cost(0);
        for one in unmet() {
            if !properties.contains(&one.property) {
                properties.push(one.property);
                cost = cost.and(Cost::of(one.property, one.trade));
            }
        }
        match (properties.len(), open) {
            (0, 0) if shows_something => Self::Fits { provisional },
            (0, open) => Self::Open { open, provisional },
            (changes, open) => Self::Near {
                cost,
                changes,
                open,
                provisional,
            },
        }
    }

    /// How many changes it would need; none where it fits or is only open.
    pub const fn changes(self) -> usize {
        match self {
            Self::Near { changes, .. } => changes,
            _ => 0,
        }
    }
}
