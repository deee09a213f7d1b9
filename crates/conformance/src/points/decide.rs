//! Deciding a point, with the code that decides clauses and heads.

use listing::{Accounted, Header, Reading, Source, Test};

use super::{OfClause, Point, What};
use crate::checklist::{Checklist, Entry};
use crate::condition::Circumstances;
use crate::decide;
use crate::evidence::property;
use crate::header;
use crate::instances::Part;
use crate::subject::Case;
use crate::verdict::{Standing, Verdict};

/// A point made ready for any number of joints.
pub struct Ready<'a>(How<'a>);

enum How<'a> {
    Clause {
        entry: Box<Entry<'a>>,
        of: &'a OfClause,
        exact: Vec<&'a Test>,
    },
    Head(super::Topic, Box<Reading>),
}

impl Point {
    /// The point made ready for any number of joints.
    pub fn ready(&self) -> Ready<'_> {
        Ready(match &self.0 {
            What::Clause(of) => How::Clause {
                entry: Box::new(entry(of)),
                of,
                exact: of.exact.iter().collect(),
            },
            What::Head(topic, header) => How::Head(*topic, Box::new(only_head(header))),
        })
    }
}

impl Ready<'_> {
    /// The verdict at a joint where no option, part or person's judgment makes another of it.
    pub fn decide(&self, subject: &Case<'_>) -> Verdict {
        match &self.0 {
            How::Clause { entry, of, exact } => {
                let circumstances = Circumstances::with(&of.ratings_hr, subject, exact);
                decide::clause_if(of.condition.as_ref(), entry, subject, &circumstances).verdict
            }
            How::Head(topic, reading) => {
                let checklist = Checklist::new(reading, Standing::Provisional);
                header::one(*topic, &checklist, subject).found.verdict
            }
        }
    }
}

fn entry(of: &OfClause) -> Entry<'_> {
    Entry {
        clause: &of.clause,
        property: property(&of.clause.property),
        trade: None,
        doubt: of.doubt,
        part: Part {
            item: None,
            names: Vec::new(),
        },
        is_pointer: of.is_pointer,
        memberships: Vec::new(),
        tells_of: Vec::new(),
    }
}

/// A listing of nothing but this head.
fn only_head(header: &Header) -> Reading {
    Reading {
        source: Source {
            name: String::new(),
            sha256: String::new(),
            bytes: 0,
            pages: 0,
        },
        header: header.clone(),
        items: Vec::new(),
        options: Vec::new(),
        clauses: Vec::new(),
        places: Vec::new(),
        accounted: Accounted { bytes: 0, of: 0 },
        warnings: Vec::new(),
    }
}
