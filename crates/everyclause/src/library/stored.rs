//! What is kept of a library: its index, and each listing as the reader left it.

use std::path::Path;

use listing::confirm::Overlay;
use selection::Index;
use serde::{Deserialize, Serialize};
use shelf::{Packed, READER, digest};

use super::Hashes;
use crate::files;
use crate::shelf::{Held, State};

/// A library as kept.
#[derive(Serialize, Deserialize)]
pub(super) struct Stored {
    /// Which reader made it.
    made_by: String,
    pub(super) listings: Vec<StoredListing>,
    #[serde(with = "serde_bytes")]
    pub(super) index: Vec<u8>,
    /// SHA-256 of the index.
    #[serde(with = "serde_bytes")]
    digest: Vec<u8>,
}

/// A listing as kept.
#[derive(Clone, Serialize, Deserialize)]
pub(super) struct StoredListing {
    /// Its file's name.
    pub(super) file: String,
    #[serde(with = "serde_bytes")]
    hashes: Vec<u8>,
    /// The confirmation, as it stands in its file.
    confirmation: Option<String>,
    reading: Packed,
}

impl Stored {
    /// What is kept in a file; nothing where there is none, or one of another reader.
    pub(super) fn read(path: &Path, most: u64) -> Option<Self> {
        if !path.is_file() {
            return None;
        }
        let bytes = files::read(path, "an index", most).ok()?;
        let stored: Self = rmp_serde::from_slice(&bytes).ok()?;
        let is_whole = stored.digest == digest(&stored.index);
        (stored.made_by == READER && is_whole).then_some(stored)
    }

    /// What is to be kept, as bytes.
    pub(super) fn bytes(listings: &[StoredListing], index: &Index) -> Option<Vec<u8>> {
        let index = index.to_bytes().ok()?;
        let stored = Self {
            made_by: READER.to_owned(),
            listings: listings.to_vec(),
            digest: digest(&index),
            index,
        };
        rmp_serde::to_vec(&stored).ok()
    }
}

impl StoredListing {
    /// A listing, packed; nothing where it can't be.
    pub(super) fn of(file: &str, hashes: &Hashes, held: &Held) -> Option<Self> {
        let confirmation = held.confirmation.as_ref();
        Some(Self {
            file: file.to_owned(),
            hashes: hashes.both(),
            confirmation: confirmation.map(|one| one.overlay.to_toml()),
            reading: Packed::of(held.as_read().clone())?,
        })
    }

    pub(super) fn hashes(&self) -> Vec<u8> {
        self.hashes.clone()
    }

    /// The listing, its confirmation laid over it; nothing where it is damaged.
    pub(super) fn open(&self) -> Option<State> {
        let overlay = self.confirmation.as_deref().map(Overlay::parse);
        let overlay = overlay.transpose().ok()?;
        self.reading.open(overlay.as_ref())
    }
}
