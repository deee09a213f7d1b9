//! Taking into account what was changed, whoever changed it.

use std::sync::PoisonError;
use std::sync::atomic::Ordering;
use std::time::Duration;

use site::Project;

use super::touched::Touched;
use super::{Desk, Outline};
use crate::trouble::Trouble;

/// How often the desk asks whether others have changed the store.
const PATIENCE: Duration = Duration::from_secs(2);

/// How many entries are read at once.
const AT_ONCE: i64 = 2000;

impl Desk {
    /// Takes into account whatever was changed so far, here or elsewhere: what was read before and may be otherwise now is forgotten. Gives
    /// the number of the last entry of the journal.
    ///
    /// # Errors
    /// When the store can't be read.
    pub(crate) async fn catch_up(&self) -> Result<i64, Trouble> {
        let head = self.store.head().await?.seq;
        if head <= self.known() {
            return Ok(head);
        }
        let _alone = self.catching_up.lock().await;
        while self.known() < head {
            let mut touched = Touched::default();
            let mut to = self.known();
            for (seq, key) in self.store.changed_after(to, AT_ONCE).await? {
                to = seq;
                touched.add(key);
            }
            if to == self.known() {
                return Err(Trouble::Broken(format!(
                    "the journal should go on to entry {head}, and ends with {to}; `everyclause verify` looks at all of it"
                )));
            }
            self.take_into_account(&touched).await?;
            self.known.store(to, Ordering::SeqCst);
        }
        self.stale.notify_one();
        Ok(head)
    }

    async fn take_into_account(&self, touched: &Touched) -> Result<(), Trouble> {
        if touched.outline {
            self.set_project(self.store.outline().await?);
        } else if touched.judgments {
            let project = Project {
                judgments: self.store.judgments().await?,
                ..Project::clone(&self.project())
            };
            self.set_project(project);
        }
        if touched.listings {
            self.listings.refresh(&self.store).await?;
            self.listings.forget_all();
        }
        for file in &touched.confirmed {
            self.listings.forget(file);
            self.library.is_stale(file);
        }
        // A look that began before this may have seen any of it as it was: what it finds isn't put on the board.
        let project = self.project();
        let file = |name: &str| self.file(name);
        self.on_board(|board| {
            if touched.outline {
                board.follow(&project);
            }
            let stale: Vec<_> = board
                .rows()
                .map(|row| row.card.clone())
                .filter(|card| touched.bears_upon(card, &file))
                .collect();
            board.wipe(stale.iter().map(|card| &*card.name));
        });
        Ok(())
    }

    fn set_project(&self, project: Project) {
        *self.outline.write().unwrap_or_else(PoisonError::into_inner) = Outline::of(project);
    }

    /// Keeps the board up to date, whoever changes the store: at this desk or elsewhere. Never ends but for trouble.
    ///
    /// # Errors
    /// When the store can't be read.
    pub async fn keep_up(&self) -> Result<(), Trouble> {
        self.look_at_all().await?;
        // What is wrong with it is told to whoever asks; the joints are kept up to date all the same.
        let _ = self.open_what_is_kept().await;
        loop {
            self.look_at_all().await?;
            // Whichever comes first.
            let _ = tokio::time::timeout(PATIENCE, self.stale.notified()).await;
            self.catch_up().await?;
        }
    }
}
