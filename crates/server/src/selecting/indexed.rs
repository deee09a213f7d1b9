//! The listings packed small, and the index of what they ask, made ready.

use std::fmt;
use std::sync::Arc;
use std::sync::atomic::{AtomicU64, Ordering};

use listing::confirm::Overlay;
use selection::{Finder, Index};
use self_cell::self_cell;
use shelf::Packed;

use super::remembered::Answers;
use crate::listings::{Heading, Headings};

self_cell!(
    struct Prepared {
        owner: Index,
        #[covariant]
        dependent: Finder,
    }
);

/// The listings of the index, and the index.
#[derive(Debug)]
pub(super) struct Indexed {
    /// Those there were when it was made.
    pub(super) of: Arc<Headings>,
    /// In the order of the index, which is that of their files.
    pub(super) listings: Vec<One>,
    index: Prepared,
    /// Listings that can't be read, and aren't in it.
    pub(super) unread: Vec<String>,
    /// What was found in it before.
    pub(super) answers: Answers,
}

/// A listing of the index.
#[derive(Debug, Clone)]
pub(super) struct One {
    pub(super) heading: Heading,
    pub(super) packed: Arc<Packed>,
    /// What people confirmed of it.
    pub(super) overlay: Option<Arc<Overlay>>,
    /// The same for the same document with the same confirmation, and for nothing else.
    pub(super) number: u64,
}

impl Indexed {
    pub(super) fn new(
        of: Arc<Headings>,
        listings: Vec<One>,
        index: Index,
        unread: Vec<String>,
    ) -> Self {
        Self {
            of,
            listings,
            index: Prepared::new(index, |index| Finder::new(index)),
            unread,
            answers: Answers::default(),
        }
    }

    /// Whether it is of these listings, and no others.
    pub(super) fn is_of(&self, headings: &Arc<Headings>) -> bool {
        Arc::ptr_eq(&self.of, headings)
    }

    /// The place of the listing that a mark means; none where it isn't in the index.
    pub(super) fn place(&self, name: &str) -> Option<usize> {
        let file = self.of.which(name)?;
        let found = self
            .listings
            .binary_search_by(|one| one.heading.file.as_str().cmp(file));
        found.ok()
    }

    pub(super) fn index(&self) -> &Index {
        self.index.borrow_owner()
    }

    pub(super) fn finder(&self) -> &Finder<'_> {
        self.index.borrow_dependent()
    }
}

impl One {
    /// A listing that wasn't held as it is now.
    pub(super) fn new(heading: Heading, packed: Packed, overlay: Option<Arc<Overlay>>) -> Self {
        static NEXT: AtomicU64 = AtomicU64::new(0);
        Self {
            heading,
            packed: Arc::new(packed),
            overlay,
            number: NEXT.fetch_add(1, Ordering::Relaxed),
        }
    }
}

impl fmt::Debug for Prepared {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.borrow_owner().fmt(formatter)
    }
}
