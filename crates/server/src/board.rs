//! What was found at every joint, brought up to date as the store changes.

use std::collections::BTreeMap;

use conformance::{JointResult, Overall, Standing, Verdict, cautions};

/// What was found at one joint, as far as tables and questions need it.
#[derive(Debug, Clone)]
pub(crate) struct Found {
    /// What it comes to; open without a listing.
    pub(crate) overall: Overall,
    /// Whether the reading of its listing isn't confirmed.
    pub(crate) is_provisional: bool,
    /// How many clauses aren't met.
    pub(crate) not_met: usize,
    /// What must be said before anybody touches it.
    pub(crate) cautions: Vec<&'static str>,
    /// The result with its open findings alone; none without a listing.
    pub(crate) open: Option<JointResult>,
}

impl Found {
    /// What tables and questions need of a result.
    pub(crate) fn of(result: Option<JointResult>) -> Self {
        Self {
            overall: result
                .as_ref()
                .map_or(Overall::Open, |result| result.overall),
            is_provisional: result
                .as_ref()
                .is_some_and(|result| result.standing == Standing::Provisional),
            not_met: result
                .as_ref()
                .map_or(0, |result| result.with(Verdict::NotMet).count()),
            cautions: cautions(&result),
            open: result.map(|mut result| {
                result
                    .findings
                    .retain(|finding| finding.verdict == Verdict::Open);
                // Most of them are gone, and there are as many of these as there are joints.
                result.findings.shrink_to_fit();
                result
            }),
        }
    }
}

/// What was found at the joints, by name.
pub(crate) type Board = BTreeMap<String, Found>;

/// How many joints came to what.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub(crate) struct Tally {
    /// Every clause is met or judged.
    pub(crate) conform: usize,
    /// A clause isn't met.
    pub(crate) do_not: usize,
    /// Something is open.
    pub(crate) open: usize,
    /// Not looked at yet.
    pub(crate) waiting: usize,
    /// Of those looked at: those whose listing's reading isn't confirmed, so that they may change with it.
    pub(crate) provisional: usize,
}

impl Tally {
    /// Counts one joint.
    pub(crate) const fn add(&mut self, found: Option<&Found>) {
        if let Some(Found {
            is_provisional: true,
            ..
        }) = found
        {
            self.provisional += 1;
        }
        match found {
            None => self.waiting += 1,
            Some(found) => match found.overall {
                Overall::Conforms => self.conform += 1,
                Overall::DoesNotConform => self.do_not += 1,
                Overall::Open => self.open += 1,
            },
        }
    }
}
