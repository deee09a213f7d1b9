//! What is found out once for all clauses of a page.

use std::collections::BTreeMap;

use listing::confirm::{Entry, read_as};
use listing::{Clause, Confidence};
use wording::choices::Choices;

use crate::Marked;

/// A page's clauses, with what was decided of each.
pub(crate) struct Known<'a> {
    pub(crate) marked: &'a Marked<'a>,
    /// With which choices each is built.
    pub(crate) choices: Choices,
    /// The clauses as the reader left them, by their ids.
    as_read: BTreeMap<&'a str, &'a Clause>,
    /// What people have decided, by the clause's id.
    decisions: BTreeMap<&'a str, &'a Entry>,
}

impl<'a> Known<'a> {
    pub(crate) fn of(marked: &'a Marked<'a>) -> Self {
        let as_read = marked.as_read.clauses.iter();
        let decisions = marked.decisions.iter();
        Self {
            marked,
            choices: Choices::of(marked.reading),
            as_read: as_read.map(|clause| (clause.id.as_str(), clause)).collect(),
            decisions: decisions
                .map(|entry| (entry.clause.as_str(), entry))
                .collect(),
        }
    }

    /// The clause as the reader left it.
    pub(crate) fn as_read(&self, clause: &Clause) -> Option<&'a Clause> {
        self.as_read.get(read_as(&clause.id)).copied()
    }

    /// What people have decided of it.
    pub(crate) fn decision(&self, clause: &Clause) -> Option<&'a Entry> {
        self.decisions.get(read_as(&clause.id)).copied()
    }

    /// Whether the reader was in doubt of it, whatever people have decided since.
    pub(crate) fn was_doubtful(&self, clause: &Clause) -> bool {
        self.as_read(clause)
            .is_some_and(|read| read.confidence == Confidence::WithDoubt)
    }
}
