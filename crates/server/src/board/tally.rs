//! How many joints came to what.

use conformance::Overall;

use super::Found;

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
    /// How many joints there are.
    pub(crate) const fn joints(self) -> usize {
        self.conform + self.do_not + self.open + self.waiting
    }

    /// Counts one joint.
    pub(crate) fn add(&mut self, found: Option<&Found>) {
        *self.of(found) += 1;
        self.provisional += usize::from(is_provisional(found));
    }

    /// Counts one joint no more.
    pub(super) fn remove(&mut self, found: Option<&Found>) {
        *self.of(found) -= 1;
        self.provisional -= usize::from(is_provisional(found));
    }

    const fn of(&mut self, found: Option<&Found>) -> &mut usize {
        match state(found) {
            None => &mut self.waiting,
            Some(Overall::Conforms) => &mut self.conform,
            Some(Overall::DoesNotConform) => &mut self.do_not,
            Some(Overall::Open) => &mut self.open,
        }
    }
}

/// What a joint came to; none when it wasn't looked at yet.
pub(crate) const fn state(found: Option<&Found>) -> Option<Overall> {
    match found {
        Some(found) => Some(found.overall),
        None => None,
    }
}

fn is_provisional(found: Option<&Found>) -> bool {
    found.is_some_and(|found| found.is_provisional)
}
