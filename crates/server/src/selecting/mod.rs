//! Which listings of the store fit a condition.
//!
//! | module | what lives there |
//! |---|---|
//! | `asked` | the condition of a joint or mark |
//! | `indexed` | the listings packed small, and the index of what they ask |
//! | `making` | the same brought up to date: only what changed is read |
//! | `kept` | the same as a file beside the store, for the next start |
//! | `opened` | the listings that a search looks at, opened for it |
//! | `remembered` | what is kept between one search and the next |

mod asked;
mod indexed;
mod kept;
mod making;
mod opened;
mod remembered;

use std::collections::BTreeSet;
use std::sync::{Arc, Mutex, PoisonError};

use tokio::sync::Semaphore;

use crate::desk::Desk;
use crate::trouble::Trouble;

pub(crate) use opened::Opened;

use indexed::Indexed;
use remembered::{Conditions, Shelf};

/// What the listings ask, as long as none is read otherwise.
#[derive(Debug)]
pub(crate) struct Library {
    kept: Mutex<Kept>,
    /// The listings that searches looked at last.
    shelf: Arc<Shelf>,
    /// What was asked of them last.
    conditions: Conditions,
    /// Held by whoever brings it up to date.
    making: tokio::sync::Mutex<()>,
    /// How many may look through the listings at once: each opens some of them, and more than there are processors wouldn't be done sooner.
    looking: Arc<Semaphore>,
}

impl Default for Library {
    fn default() -> Self {
        let processors = std::thread::available_parallelism().map_or(1, usize::from);
        Self {
            kept: Mutex::default(),
            shelf: Arc::default(),
            conditions: Conditions::default(),
            making: tokio::sync::Mutex::default(),
            looking: Arc::new(Semaphore::new(processors)),
        }
    }
}

#[derive(Debug, Default)]
struct Kept {
    indexed: Option<Arc<Indexed>>,
    /// Files of which something was confirmed or corrected since.
    stale: BTreeSet<String>,
}

impl Library {
    /// Takes note that something was confirmed or corrected of a listing.
    pub(crate) fn is_stale(&self, file: &str) {
        self.with(|kept| kept.stale.insert(file.to_owned()));
    }

    fn with<T>(&self, change: impl FnOnce(&mut Kept) -> T) -> T {
        change(&mut self.kept.lock().unwrap_or_else(PoisonError::into_inner))
    }
}

impl Desk {
    /// The listings, made ready for searching. To be let go before they are asked for again, as few may have them at once.
    ///
    /// # Errors
    /// When the store can't be read.
    pub(crate) async fn opened(&self) -> Result<Opened, Trouble> {
        let indexed = self.up_to_date().await?;
        let turn = self.library.looking.clone().acquire_owned().await;
        let turn = turn.map_err(|error| Trouble::Broken(error.to_string()))?;
        Ok(Opened::of(indexed, self.library.shelf.clone(), turn))
    }

    /// Opens what an earlier start has kept of the listings, so that whoever first asks which of them fit needn't wait for it. Where nothing was kept,
    /// the listings are read when somebody asks.
    ///
    /// # Errors
    /// When the store can't be read.
    pub(crate) async fn open_what_is_kept(&self) -> Result<(), Trouble> {
        if kept::is_there(&self.store) {
            self.up_to_date().await?;
        }
        Ok(())
    }

    /// What the listings ask, as they are now.
    async fn up_to_date(&self) -> Result<Arc<Indexed>, Trouble> {
        let seq = self.catch_up().await?;
        if let Some(indexed) = self.indexed() {
            return Ok(indexed);
        }
        let _alone = self.library.making.lock().await;
        // Whoever was first may have done it.
        if let Some(indexed) = self.indexed() {
            return Ok(indexed);
        }
        let (before, stale) = self
            .library
            .with(|kept| (kept.indexed.clone(), std::mem::take(&mut kept.stale)));
        // What is confirmed from here on is noted for the next time.
        let made = making::make(&self.store, self.listings.headings(), before, &stale, seq).await;
        self.library.with(|kept| match made {
            Ok(made) => {
                let made = Arc::new(made);
                kept.indexed = Some(made.clone());
                Ok(made)
            }
            Err(trouble) => {
                kept.stale.extend(stale);
                Err(trouble)
            }
        })
    }

    /// What is held, where nothing has changed since.
    fn indexed(&self) -> Option<Arc<Indexed>> {
        let headings = self.listings.headings();
        self.library.with(|kept| {
            let held = kept.indexed.as_ref().filter(|_| kept.stale.is_empty());
            held.filter(|held| held.is_of(&headings)).cloned()
        })
    }
}
