//! What was found at one joint.

use std::sync::Arc;

use conformance::questions::{Gap, gaps};
use conformance::{JointResult, Overall, Standing, Verdict, cautions};

use super::point::{Point, Points};

/// What was found at one joint, as far as tables and questions need it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Found {
    /// What it comes to; open without a listing.
    pub(crate) overall: Overall,
    /// Whether the reading of its listing isn't confirmed.
    pub(crate) is_provisional: bool,
    /// How many clauses aren't met.
    pub(crate) not_met: u32,
    /// What must be said before anybody touches it.
    pub(crate) cautions: Box<[&'static str]>,
    /// Its open clauses, as far as a question would close them, in the order of the result.
    pub(crate) open: Box<[Arc<Point>]>,
}

/// What was found at one joint, before it is on the board.
#[derive(Debug)]
pub(crate) struct Looked {
    overall: Overall,
    is_provisional: bool,
    not_met: u32,
    cautions: Vec<&'static str>,
    gaps: Vec<Gap>,
    file: String,
}

impl Looked {
    /// What tables and questions need of a result; none without a listing.
    pub(crate) fn of(result: Option<&JointResult>) -> Self {
        let Some(result) = result else {
            return Self {
                overall: Overall::Open,
                is_provisional: false,
                not_met: 0,
                cautions: Vec::new(),
                gaps: Vec::new(),
                file: String::new(),
            };
        };
        let not_met = result.with(Verdict::NotMet).count();
        Self {
            overall: result.overall,
            is_provisional: result.standing == Standing::Provisional,
            not_met: u32::try_from(not_met).unwrap_or(u32::MAX),
            cautions: cautions([result]),
            gaps: gaps(result).collect(),
            file: result.source_name.clone(),
        }
    }

    /// The same with what it shares with other joints held once.
    pub(super) fn kept(self, points: &mut Points) -> Found {
        let file = self.file;
        let open = self.gaps.into_iter().map(|gap| points.one(gap, &file));
        Found {
            overall: self.overall,
            is_provisional: self.is_provisional,
            not_met: self.not_met,
            cautions: self.cautions.into(),
            open: open.collect(),
        }
    }
}
