//! A reading with what people confirmed of it.

use core::ops::Deref;

use listing::Reading;
use listing::confirm::{ConfirmedListing, Entry, Overlay, confirm};

/// How firm a reading is.
#[derive(Debug, Clone)]
pub enum State {
    /// Not every clause of it is confirmed.
    Draft(Box<Reading>),
    /// Every clause of it is confirmed.
    Confirmed(Box<ConfirmedListing>),
}

impl Deref for State {
    type Target = Reading;

    fn deref(&self) -> &Reading {
        match self {
            Self::Draft(reading) => reading,
            Self::Confirmed(listing) => listing,
        }
    }
}

/// A confirmation laid over a reading.
#[derive(Debug, Clone)]
pub struct Laid {
    /// What comes of it.
    pub state: State,
    /// Entries whose words the listing doesn't have any more.
    pub lost: Vec<Entry>,
    /// Whether it was made on another edition of the source.
    pub other_source: bool,
}

impl Laid {
    /// Lays a confirmation over a reading.
    pub fn over(reading: Reading, overlay: &Overlay) -> Self {
        let overlaid = confirm(reading, overlay);
        let lost = overlaid.lost.clone();
        let other_source = overlaid.other_source;
        let state = match overlaid.confirmed() {
            Ok(listing) => State::Confirmed(Box::new(listing)),
            Err(draft) => State::Draft(Box::new(draft.reading)),
        };
        Self {
            state,
            lost,
            other_source,
        }
    }
}
