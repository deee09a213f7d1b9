//! A reading packed small, so that thousands can be kept and one is opened when it is looked at.

use listing::confirm::Overlay;
use listing::{Expr, Reading};
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};

use crate::state::{Laid, State};

/// Which reader the program has, by a hash of everything that bears on how a listing is read and what of it is kept: what another has
/// packed isn't used.
pub const READER: &str = env!("EVERYCLAUSE_READER");

/// A reading as the reader left it, packed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Packed {
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

impl Packed {
    /// A reading, packed; nothing where it can't be.
    pub fn of(mut reading: Reading) -> Option<Self> {
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
        Some(Self {
            digest: digest(&reading),
            reading,
        })
    }

    /// How many bytes it has unpacked; nought where it is damaged.
    pub fn unpacked_bytes(&self) -> u64 {
        let size = lz4_flex::block::uncompressed_size(&self.reading);
        size.ok()
            .and_then(|(size, _)| size.try_into().ok())
            .unwrap_or(0)
    }

    /// The reading, what people confirmed of it laid over; nothing where it is damaged.
    pub fn open(&self, confirmation: Option<&Overlay>) -> Option<State> {
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
        Some(match confirmation {
            Some(overlay) => Laid::over(reading, overlay).state,
            None => State::Draft(Box::new(reading)),
        })
    }
}

/// SHA-256 of some bytes.
pub fn digest(bytes: &[u8]) -> Vec<u8> {
    Sha256::digest(bytes).to_vec()
}
