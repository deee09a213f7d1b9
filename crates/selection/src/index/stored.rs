//! The index as bytes.

use conformance::points::Point;
use serde::{Deserialize, Serialize};
use thiserror::Error;

use super::{About, Apart, Entry, Index, gates, likeness};

/// Why there is no index.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
pub enum IndexError {
    /// There are too many points, or one of them can't be encoded.
    #[error("the library is too large for one index")]
    TooLarge,
    /// The bytes are no index, or one of another form.
    #[error("the index can't be read: build it anew")]
    Damaged,
}

/// What is stored. Points name their fields, as requirements leave out what is usual; the rest is numbers in order.
#[derive(Serialize, Deserialize)]
struct Stored {
    #[serde(with = "serde_bytes")]
    points: Vec<u8>,
    about: Vec<About>,
    properties: Vec<String>,
    entries: Vec<Entry>,
}

impl Index {
    /// The index as bytes.
    ///
    /// # Errors
    /// When something in it can't be encoded.
    pub fn to_bytes(&self) -> Result<Vec<u8>, IndexError> {
        let points = rmp_serde::to_vec_named(&self.points).map_err(|_| IndexError::TooLarge)?;
        let stored = Stored {
            points,
            about: self.about.clone(),
            properties: self.properties.clone(),
            entries: self.entries.clone(),
        };
        rmp_serde::to_vec(&stored).map_err(|_| IndexError::TooLarge)
    }

    /// The index that was stored. One whose numbers point nowhere is damaged.
    ///
    /// # Errors
    /// When the bytes are no index.
    pub fn from_bytes(bytes: &[u8]) -> Result<Self, IndexError> {
        let stored: Stored = rmp_serde::from_slice(bytes).map_err(|_| IndexError::Damaged)?;
        let points: Vec<Point> =
            rmp_serde::from_slice(&stored.points).map_err(|_| IndexError::Damaged)?;
        let index = Self {
            apart: Apart::of(&points),
            gates: gates::of(&stored.entries, &stored.about),
            firsts: likeness::firsts(&stored.entries),
            points,
            about: stored.about,
            properties: stored.properties,
            entries: stored.entries,
        };
        if index.is_sound() {
            Ok(index)
        } else {
            Err(IndexError::Damaged)
        }
    }

    fn is_sound(&self) -> bool {
        let within = |number: u32, of: usize| usize::try_from(number).is_ok_and(|at| at < of);
        let asked = self.entries.iter().flat_map(|entry| {
            let others = entry.others.iter().map(|asked| asked.point);
            entry.always.iter().copied().chain(others)
        });
        self.points.len() == self.about.len()
            && self
                .about
                .iter()
                .all(|about| within(about.property, self.properties.len()))
            && asked
                .into_iter()
                .all(|point| within(point, self.points.len()))
    }
}
