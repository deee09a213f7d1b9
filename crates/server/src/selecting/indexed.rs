//! The listings packed small, and the index of what they ask.

use std::sync::Arc;

use listing::confirm::Overlay;
use selection::Index;
use shelf::{Packed, State};

use crate::listings::{Heading, Headings};

/// The listings of the index, and the index.
#[derive(Debug)]
pub(super) struct Indexed {
    /// Those there were when it was made.
    pub(super) of: Arc<Headings>,
    /// In the order of the index.
    pub(super) listings: Vec<One>,
    pub(super) index: Index,
    /// Listings that can't be read, and aren't in it.
    pub(super) unread: Vec<String>,
}

/// A listing of the index.
#[derive(Debug, Clone)]
pub(super) struct One {
    pub(super) heading: Heading,
    pub(super) packed: Arc<Packed>,
    /// What people confirmed of it.
    pub(super) overlay: Option<Arc<Overlay>>,
}

impl Indexed {
    /// Whether it is of these listings, and no others.
    pub(super) fn is_of(&self, headings: &Arc<Headings>) -> bool {
        Arc::ptr_eq(&self.of, headings)
    }
}

impl One {
    /// The listing, what people confirmed of it laid over; nothing where what is held of it is damaged.
    pub(super) fn open(&self) -> Option<State> {
        self.packed.open(self.overlay.as_deref())
    }
}
