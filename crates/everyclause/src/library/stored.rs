//! What is kept of a library: its index, and each listing as the reader left it.

use std::path::Path;

use listing::confirm::{Overlay, confirm};
use listing::{Expr, Reading};
use selection::Index;
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};

use super::Hashes;
use crate::files;
use crate::shelf::{Held, State};

/// Which reader made it, and in which form it is kept.
const MADE_BY: &str = concat!("everyclause ", env!("EVERYCLAUSE_READER"));

/// A library as kept.
#[derive(Serialize, Deserialize)]
pub(super) struct Stored {
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
    /// The reading, packed.
    #[serde(with = "serde_bytes")]
    reading: Vec<u8>,
    /// SHA-256 of the packed reading: a bound that is damaged must not be used.
    #[serde(with = "serde_bytes")]
    digest: Vec<u8>,
}

/// A reading, and its conditions' expressions, which a reading shows as text only.
#[derive(Serialize, Deserialize)]
struct Kept {
    reading: Reading,
    conditions: Vec<(usize, Expr)>,
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
        (stored.made_by == MADE_BY && is_whole).then_some(stored)
    }

    /// What is to be kept, as bytes.
    pub(super) fn bytes(listings: &[StoredListing], index: &Index) -> Option<Vec<u8>> {
        let index = index.to_bytes().ok()?;
        let stored = Self {
            made_by: MADE_BY.to_owned(),
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
        let mut reading = held.as_read().clone();
        // Where each byte of the source belongs and by which rules it was read bears on no check.
        reading.places.clear();
        reading.warnings.clear();
        let clauses = reading.clauses.iter_mut().enumerate();
        let conditions = clauses
            .filter_map(|(at, clause)| {
                clause.read_by.clear();
                Some((at, clause.condition.as_ref()?.expr.clone()))
            })
            .collect();
        let kept = rmp_serde::to_vec_named(&Kept {
            reading,
            conditions,
        });
        let reading = lz4_flex::compress_prepend_size(&kept.ok()?);
        let confirmation = held.confirmation.as_ref();
        Some(Self {
            file: file.to_owned(),
            hashes: hashes.both(),
            confirmation: confirmation.map(|one| one.overlay.to_toml()),
            digest: digest(&reading),
            reading,
        })
    }

    pub(super) fn hashes(&self) -> Vec<u8> {
        self.hashes.clone()
    }

    /// The listing, its confirmation laid over it; nothing where it is damaged.
    pub(super) fn open(&self) -> Option<State> {
        if digest(&self.reading) != self.digest {
            return None;
        }
        let bytes = lz4_flex::decompress_size_prepended(&self.reading).ok()?;
        let Kept {
            mut reading,
            conditions,
        } = rmp_serde::from_slice(&bytes).ok()?;
        for (at, expr) in conditions {
            reading.clauses.get_mut(at)?.condition.as_mut()?.expr = expr;
        }
        let Some(confirmation) = &self.confirmation else {
            return Some(State::Draft(Box::new(reading)));
        };
        let overlay = Overlay::parse(confirmation).ok()?;
        Some(match confirm(reading, &overlay).confirmed() {
            Ok(listing) => State::Confirmed(Box::new(listing)),
            Err(draft) => State::Draft(Box::new(draft.reading)),
        })
    }
}

fn digest(bytes: &[u8]) -> Vec<u8> {
    Sha256::digest(bytes).to_vec()
}
