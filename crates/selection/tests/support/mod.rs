//! Invented libraries of any size, and the conditions to ask them for: the same for the same seed.
//!
//! A listing is drawn as numbers and names first ([`spec`]), then written out in one of six house styles ([`text`]), to be read by the reader
//! like any other; a condition is what is known of a joint built to some listing, with some of it left out and
//! some of it otherwise ([`facts`]). Every name is invented.

#![allow(
    dead_code,
    unreachable_pub,
    missing_docs,
    reason = "each test and benchmark uses what it needs"
)]
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::must_use_candidate,
    clippy::should_implement_trait,
    clippy::format_collect,
    clippy::missing_panics_doc,
    reason = "what isn't written right must fail"
)]

pub mod facts;
pub mod judgments;
pub mod plain;
pub mod schedule;
pub mod seed;
pub mod spec;
pub mod text;
pub mod truth;

use conformance::Checklist;
use listing::Reading;
use listing::confirm::{ConfirmedListing, confirm, confirm_all};
use selection::Index;
use selection::index::Builder;

/// A listing as read, every third of them confirmed.
#[derive(Debug)]
pub enum Held {
    Draft(Box<Reading>),
    Confirmed(Box<ConfirmedListing>),
}

impl Held {
    pub fn read(spec: &spec::Spec) -> Self {
        let reading = listing::read(&spec.file(), spec.text().as_bytes()).unwrap();
        if !spec.number.is_multiple_of(3) {
            return Self::Draft(Box::new(reading));
        }
        let overlay = confirm_all(&reading, "the reviewer", jiff::civil::date(2031, 5, 6));
        Self::Confirmed(Box::new(confirm(reading, &overlay).confirmed().unwrap()))
    }

    pub fn checklist(&self) -> Checklist<'_> {
        match self {
            Self::Draft(reading) => Checklist::of_draft(reading),
            Self::Confirmed(listing) => Checklist::of_confirmed(listing),
        }
    }
}

/// A library, read.
pub fn read(library: &[spec::Spec]) -> Vec<Held> {
    library.iter().map(Held::read).collect()
}

/// Made ready for checking.
pub fn checklists(held: &[Held]) -> Vec<Checklist<'_>> {
    held.iter().map(Held::checklist).collect()
}

pub fn index(checklists: &[Checklist<'_>]) -> Index {
    let mut builder = Builder::default();
    for checklist in checklists {
        builder.add(checklist).unwrap();
    }
    builder.finish()
}
