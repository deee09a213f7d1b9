//! How much may be kept of the tables while they are read: paid before it is kept, so that a small file can't become a large table.

use super::limits::{MOST_KEPT, OF_A_CELL};
use super::problem::Wrong;

/// What is left of the room for an import's tables.
#[derive(Debug)]
pub(crate) struct Room(usize);

impl Default for Room {
    fn default() -> Self {
        Self(MOST_KEPT)
    }
}

impl Room {
    /// Pays for a text that is kept.
    ///
    /// # Errors
    /// When the tables have had all the room there is.
    pub(crate) fn keep(&mut self, text: &str) -> Result<(), Wrong> {
        let cost = OF_A_CELL.saturating_add(text.len());
        self.0 = self.0.checked_sub(cost).ok_or_else(|| {
            Wrong::new(
                format!(
                    "the tables hold more than {} MB of cells together",
                    MOST_KEPT >> 20
                ),
                "leave out columns that aren't needed, or bring the tables in several parts",
            )
        })?;
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::{MOST_KEPT, OF_A_CELL, Room};

    #[test]
    fn what_is_kept_is_paid_for() {
        let mut room = Room::default();
        let text = "x".repeat(1000 - OF_A_CELL);
        let kept = (0..MOST_KEPT)
            .take_while(|_| room.keep(&text).is_ok())
            .count();
        assert_eq!(kept, MOST_KEPT / 1000);
    }
}
