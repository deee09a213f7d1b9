//! A listing of the answer, with what stands in its way.

use conformance::{Checklist, Counts, Decided, Standing, Verdict};
use schemars::JsonSchema;
use serde::Serialize;
use vocabulary::Trade;

use crate::change::Change;
use crate::rank::Rank;

/// A listing of the answer, with what stands in its way.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Match {
    /// The listing's place in the index.
    pub at: usize,
    /// Where it stands in the answer.
    pub rank: Rank,
    /// Whether its reading is confirmed.
    pub standing: Standing,
    /// How many clauses have which verdict.
    pub counts: Counts,
    /// What would have to change, the cheapest first.
    pub changes: Vec<Change>,
    /// Who can answer what is open, in the order of the work.
    pub open: Vec<OpenAt>,
}

/// How much one trade can answer.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct OpenAt {
    /// Whose property it is; none where the vocabulary doesn't know.
    pub trade: Option<Trade>,
    /// How many clauses and questions are open.
    pub open: usize,
}

impl Match {
    pub(super) fn of(
        at: usize,
        rank: Rank,
        checklist: &Checklist<'_>,
        decided: &Decided<'_>,
    ) -> Self {
        let unsettled = checklist.unsettled(decided);
        let findings = checklist.findings(decided, &|verdict| verdict == Verdict::NotMet);
        let unmet = unsettled
            .iter()
            .filter(|one| one.verdict == Verdict::NotMet);
        let mut open: Vec<OpenAt> = Vec::new();
        for one in unsettled.iter().filter(|one| one.verdict == Verdict::Open) {
            match open.iter_mut().find(|known| known.trade == one.trade) {
                Some(known) => known.open += 1,
                None => open.push(OpenAt {
                    trade: one.trade,
                    open: 1,
                }),
            }
        }
        open.sort_by_key(|one| (one.trade.is_none(), one.trade));
        Self {
            at,
            rank,
            standing: checklist.standing(),
            counts: decided.counts(),
            changes: Change::of_each(unmet.zip(findings)),
            open,
        }
    }
}
