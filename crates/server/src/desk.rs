//! What the pages are about: the store, the listings as read, what was found at each joint.

use std::sync::atomic::{AtomicI64, AtomicU64, Ordering};
use std::sync::{Arc, Mutex, PoisonError, RwLock};
use std::time::Duration;

use conformance::{JointResult, Question, Subject, check_confirmed, check_draft, questions};
use jiff::Timestamp;
use shelf::State;
use site::{Joint, Project};
use store::project::fill;
use store::records::Known;
use store::{Change, Done, Edit, Held, Owner, Store};
use tokio::sync::Notify;

use crate::board::{Board, Found};
use crate::listings::{Listings, Read, working};
use crate::person::Person;
use crate::selecting::Library;
use crate::taking::waiting::Waiting;
use crate::trouble::Trouble;

/// The desk: one store, and what was found in it.
#[derive(Debug)]
pub struct Desk {
    pub(crate) store: Store,
    pub(crate) listings: Listings,
    /// What the listings ask, made ready for searching.
    pub(crate) library: Library,
    /// Files that were brought and not taken yet.
    pub(crate) waiting: Waiting,
    project: RwLock<Arc<Project>>,
    board: RwLock<Board>,
    /// How often something changed that findings rest on. A finding that was begun before the last time isn't put on the board.
    epoch: AtomicU64,
    /// How often the board was written to.
    revision: AtomicU64,
    /// The questions that the board came to, at a revision of it.
    questions: Mutex<(u64, Arc<Vec<Question>>)>,
    /// The last entry of the journal that is taken into account here.
    known: AtomicI64,
    /// Woken when joints are to be looked at.
    stale: Notify,
}

/// How often the desk asks whether others have changed the store.
const PATIENCE: Duration = Duration::from_secs(2);

/// A joint with everything known of it.
#[derive(Debug)]
pub(crate) struct Seen {
    /// The last entry of the journal when it was looked at.
    pub(crate) seq: i64,
    /// The joint, its own facts filled in.
    pub(crate) joint: Joint,
    /// What is known of it alone, with the versions that were seen.
    pub(crate) known: Vec<Held<Known>>,
    /// The project that it is part of, without what is known of other joints.
    pub(crate) project: Arc<Project>,
    /// The listing it is to be built to, as read.
    pub(crate) listing: Option<Arc<Read>>,
    /// What was found; none without a listing.
    pub(crate) result: Option<JointResult>,
}

impl Desk {
    /// A desk over a store.
    ///
    /// # Errors
    /// When the store can't be read.
    pub async fn over(store: Store) -> Result<Self, Trouble> {
        let desk = Self {
            known: AtomicI64::new(store.head().await?.seq),
            epoch: AtomicU64::new(0),
            revision: AtomicU64::new(1),
            questions: Mutex::default(),
            stale: Notify::new(),
            project: RwLock::new(Arc::new(store.outline().await?)),
            board: RwLock::default(),
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
        self.project
            .read()
            .unwrap_or_else(PoisonError::into_inner)
            .clone()
    }

    /// Something of what was found at all joints.
    pub(crate) fn board<T>(&self, look: impl FnOnce(&Board) -> T) -> T {
        look(&self.board.read().unwrap_or_else(PoisonError::into_inner))
    }

    /// Every question that is open; gathered anew only when something was found since.
    pub(crate) fn questions(&self) -> Arc<Vec<Question>> {
        let revision = self.revision.load(Ordering::SeqCst);
        let mut kept = self
            .questions
            .lock()
            .unwrap_or_else(PoisonError::into_inner);
        if kept.0 != revision {
            let gathered = self
                .board(|board| questions(board.values().filter_map(|found| found.open.as_ref())));
            *kept = (revision, Arc::new(gathered));
        }
        kept.1.clone()
    }

    /// Looks at every joint that wasn't looked at yet.
    ///
    /// # Errors
    /// When the store can't be read.
    pub async fn look_at_all(&self) -> Result<(), Trouble> {
        let project = self.project();
        for joint in &project.joints {
            if self.board(|board| !board.contains_key(&joint.name)) {
                match self.look(&joint.name).await {
                    // Somebody has removed it meanwhile.
                    Ok(_) | Err(Trouble::Unknown(_)) => {}
                    Err(trouble) => return Err(trouble),
                }
            }
        }
        Ok(())
    }

    /// Keeps the board up to date, whoever changes the store: at this desk or elsewhere. Never ends but for trouble.
    ///
    /// # Errors
    /// When the store can't be read.
    pub async fn keep_up(&self) -> Result<(), Trouble> {
        loop {
            self.look_at_all().await?;
            // Whichever comes first.
            let _ = tokio::time::timeout(PATIENCE, self.stale.notified()).await;
            let head = self.store.head().await?;
            if head.seq != self.known.load(Ordering::SeqCst) {
                self.known.store(head.seq, Ordering::SeqCst);
                self.listings.refresh(&self.store).await?;
                self.listings.forget_all();
                self.refresh(|_| true).await?;
            }
        }
    }

    /// Looks at a joint: what is known of it now, and what that comes to.
    ///
    /// # Errors
    /// When there is no such joint, or the store can't be read.
    pub(crate) async fn look(&self, name: &str) -> Result<Seen, Trouble> {
        let epoch = self.epoch.load(Ordering::SeqCst);
        let seq = self.store.head().await?.seq;
        let project = self.project();
        let mut joint = project.joint(name).cloned().ok_or_else(|| {
            Trouble::Unknown(format!("There is no joint {name} in the schedule."))
        })?;
        let known = self.store.known(&Owner::Joint(name.to_owned())).await?;
        fill(&mut joint, known.clone());
        let listing = match project
            .listing(&joint)
            .and_then(|name| self.listings.which(name))
        {
            Some(file) => self.listings.read(&self.store, &file).await?,
            None => None,
        };
        let seen = working(move || {
            let result = listing.as_ref().map(|read| result(&project, &joint, read));
            Seen {
                seq,
                joint,
                known,
                project,
                listing,
                result,
            }
        })
        .await?;
        let found = Found::of(seen.result.clone());
        let mut board = self.board.write().unwrap_or_else(PoisonError::into_inner);
        if self.epoch.load(Ordering::SeqCst) == epoch {
            board.insert(name.to_owned(), found);
            self.revision.fetch_add(1, Ordering::SeqCst);
        }
        Ok(seen)
    }

    /// Makes a change in somebody's name.
    ///
    /// # Errors
    /// When somebody else was first, or the store can't be written.
    pub(crate) async fn change(
        &self,
        person: &Person,
        what: String,
        edits: Vec<Edit>,
    ) -> Result<Done, Trouble> {
        let change = Change {
            by: person.name.clone(),
            at: Timestamp::now(),
            what,
            edits,
        };
        let changed = i64::try_from(change.edits.len()).unwrap_or_default();
        let done = self.store.change(&change).await?;
        // Where others were at it too, the next look at the journal's end takes theirs into account.
        let before = done.head.seq - changed;
        let _ =
            self.known
                .compare_exchange(before, done.head.seq, Ordering::SeqCst, Ordering::SeqCst);
        Ok(done)
    }

    /// Takes note that what was found of a joint is out of date, and looks at it anew.
    ///
    /// # Errors
    /// When the store can't be read.
    pub(crate) async fn look_again(&self, joint: &str) -> Result<(), Trouble> {
        self.wipe(&[joint.to_owned()]);
        self.look(joint).await.map(|_| ())
    }

    fn wipe(&self, joints: &[String]) {
        let mut board = self.board.write().unwrap_or_else(PoisonError::into_inner);
        self.epoch.fetch_add(1, Ordering::SeqCst);
        self.revision.fetch_add(1, Ordering::SeqCst);
        for name in joints {
            board.remove(name);
        }
    }

    /// Takes note that what was found of some joints is out of date. They are looked at anew one after the other; until then the tables say
    /// that they weren't checked yet.
    ///
    /// # Errors
    /// When the store can't be read.
    pub(crate) async fn refresh(&self, is_stale: impl Fn(&Joint) -> bool) -> Result<(), Trouble> {
        let project = Arc::new(self.store.outline().await?);
        let stale: Vec<String> = project
            .joints
            .iter()
            .filter(|joint| is_stale(joint))
            .map(|joint| joint.name.clone())
            .collect();
        *self.project.write().unwrap_or_else(PoisonError::into_inner) = project;
        self.wipe(&stale);
        self.stale.notify_one();
        Ok(())
    }
}

/// A confirmed listing gives a final result, a draft a provisional one.
fn result(project: &Project, joint: &Joint, read: &Read) -> JointResult {
    let subject = Subject::of(project, joint);
    match &read.state {
        State::Draft(reading) => check_draft(reading, &subject).into(),
        State::Confirmed(listing) => check_confirmed(listing, &subject).into(),
    }
}
