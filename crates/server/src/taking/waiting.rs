//! Files that were looked at and not taken yet.

use std::collections::VecDeque;
use std::sync::{Arc, Mutex, PoisonError};

use super::arriving::Arrived;

/// How many lots of files wait at most; the oldest goes when another comes.
const MOST_WAITING: usize = 12;

/// One lot of files, brought at once.
#[derive(Debug)]
pub(crate) struct Lot {
    /// Its number.
    pub(crate) number: u64,
    /// Who brought it; nobody else sees it.
    pub(crate) by: String,
    /// The files.
    pub(crate) arrived: Arrived,
}

/// The lots that wait.
#[derive(Debug, Default)]
pub(crate) struct Waiting {
    lots: Mutex<(u64, VecDeque<Arc<Lot>>)>,
}

impl Waiting {
    /// Lets a lot wait; says its number.
    pub(crate) fn put(&self, by: &str, arrived: Arrived) -> u64 {
        let mut held = self.lots.lock().unwrap_or_else(PoisonError::into_inner);
        let (last, lots) = &mut *held;
        *last += 1;
        lots.push_back(Arc::new(Lot {
            number: *last,
            by: by.to_owned(),
            arrived,
        }));
        while lots.len() > MOST_WAITING {
            lots.pop_front();
        }
        *last
    }

    /// A lot that somebody brought.
    pub(crate) fn get(&self, number: u64, by: &str) -> Option<Arc<Lot>> {
        let held = self.lots.lock().unwrap_or_else(PoisonError::into_inner);
        let mut lots = held.1.iter();
        lots.find(|lot| lot.number == number && lot.by == by)
            .cloned()
    }

    /// A lot that was taken, or isn't wanted.
    pub(crate) fn drop(&self, number: u64) {
        let mut held = self.lots.lock().unwrap_or_else(PoisonError::into_inner);
        held.1.retain(|lot| lot.number != number);
    }
}

#[cfg(test)]
mod tests {
    use super::{MOST_WAITING, Waiting};
    use crate::taking::arriving::Arrived;

    #[test]
    fn a_lot_is_seen_by_whoever_brought_it_and_the_oldest_goes() {
        let waiting = Waiting::default();
        let first = waiting.put("Lee", Arrived::none().unwrap());
        assert!(waiting.get(first, "Lee").is_some());
        assert!(waiting.get(first, "Kim").is_none(), "somebody else's");
        let last = (0..MOST_WAITING)
            .map(|_| waiting.put("Lee", Arrived::none().unwrap()))
            .last();
        assert!(waiting.get(first, "Lee").is_none(), "the oldest is gone");
        let last = last.unwrap();
        assert!(waiting.get(last, "Lee").is_some());
        waiting.drop(last);
        assert!(waiting.get(last, "Lee").is_none());
    }
}
