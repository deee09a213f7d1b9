//! What the pages are about: the store, the listings as read, what was found at each joint.
//!
//! Nothing here may be older than the store when somebody looks. So one thing alone brings it up to date, `Desk::catch_up`, whoever made a
//! change; every page begins with it; and the number of the last entry that is taken into account is written down after all else is done, so
//! that whoever breaks off halfway leaves it to the next.

mod catching_up;
mod looking;
mod names;
mod touched;

use std::sync::atomic::{AtomicI64, Ordering};
use std::sync::{Arc, PoisonError, RwLock};

use jiff::Timestamp;
use site::Project;
use store::{Change, Done, Edit, Key, Store};
use tokio::sync::{Mutex, Notify};

use crate::board::Board;
use crate::listings::Listings;
use crate::person::Person;
use crate::selecting::Library;
use crate::taking::waiting::Waiting;
use crate::trouble::Trouble;

pub(crate) use looking::Seen;
pub(crate) use names::Outline;

/// The desk: one store, and what was found in it.
#[derive(Debug)]
pub struct Desk {
    pub(crate) store: Store,
    pub(crate) listings: Listings,
    /// What the listings ask, made ready for searching.
    pub(crate) library: Library,
    /// Files that were brought and not taken yet.
    pub(crate) waiting: Waiting,
    outline: RwLock<Outline>,
    board: RwLock<Board>,
    /// The last entry of the journal that is taken into account here.
    known: AtomicI64,
    /// Held by whoever brings the desk up to date.
    catching_up: Mutex<()>,
    /// Woken when joints are to be looked at.
    stale: Notify,
}

impl Desk {
    /// A desk over a store.
    ///
    /// # Errors
    /// When the store can't be read.
    pub async fn over(store: Store) -> Result<Self, Trouble> {
        let known = AtomicI64::new(store.head().await?.seq);
        let project = store.outline().await?;
        let mut board = Board::default();
        board.follow(&project);
        let desk = Self {
            known,
            catching_up: Mutex::default(),
            stale: Notify::new(),
            outline: RwLock::new(Outline::of(project)),
            board: RwLock::new(board),
            listings: Listings::default(),
            library: Library::default(),
            waiting: Waiting::default(),
            store,
        };
        desk.listings.refresh(&desk.store).await?;
        Ok(desk)
    }

    /// The project without what is known of its joints.
    pub(crate) fn project(&self) -> Arc<Project> {
        self.outline().project
    }

    /// The same, and where in it the joints of a name or mark are.
    pub(crate) fn outline(&self) -> Outline {
        self.outline
            .read()
            .unwrap_or_else(PoisonError::into_inner)
            .clone()
    }

    /// Something of what was found at all joints.
    pub(crate) fn board<T>(&self, look: impl FnOnce(&Board) -> T) -> T {
        look(&self.board.read().unwrap_or_else(PoisonError::into_inner))
    }

    /// Changes something on the board. No task waits for anything while it does.
    fn on_board<T>(&self, change: impl FnOnce(&mut Board) -> T) -> T {
        change(&mut self.board.write().unwrap_or_else(PoisonError::into_inner))
    }

    /// The file of the listing that a name in the schedule means.
    pub(crate) fn file(&self, name: &str) -> Option<String> {
        self.listings.headings().which(name).map(str::to_owned)
    }

    /// Makes a change in somebody's name, and takes it into account.
    ///
    /// # Errors
    /// When somebody else was first, or the store can't be written.
    pub(crate) async fn change(
        &self,
        person: &Person,
        what: String,
        edits: Vec<Edit>,
    ) -> Result<Done, Trouble> {
        self.change_relying_on(person, what, edits, &[]).await
    }

    /// The same, where some records that it doesn't change are still as they were seen, each by its version.
    ///
    /// # Errors
    /// As [`change`](Self::change); of those records too.
    pub(crate) async fn change_relying_on(
        &self,
        person: &Person,
        what: String,
        edits: Vec<Edit>,
        relied_on: &[(Key, i64)],
    ) -> Result<Done, Trouble> {
        let change = Change {
            by: person.name.clone(),
            at: Timestamp::now(),
            what,
            edits,
        };
        let done = self.store.change_relying_on(&change, relied_on).await?;
        // It is made, whatever comes now: where this can't take it into account, whoever looks next does.
        let _ = self.catch_up().await;
        Ok(done)
    }

    /// The last entry of the journal that is taken into account.
    fn known(&self) -> i64 {
        self.known.load(Ordering::SeqCst)
    }
}

#[cfg(test)]
mod tests;
