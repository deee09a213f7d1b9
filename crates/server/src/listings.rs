//! Listings: what there are, what each name means among them, and the last ones used as read.

use std::collections::{BTreeMap, VecDeque};
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::{Arc, Mutex, PoisonError, RwLock};

use listing::confirm::{Entry, Overlay};
use listing::{Reading, Status};
use shelf::{Document, Laid, Named, State, Which, which};
use site::GoesBy;
use store::Store;

use crate::taking::looking::stem;
use crate::trouble::Trouble;

/// How many listings are kept as read.
const KEPT: usize = 48;

/// How many bytes of text they have together at most; a listing as read takes some sixty times its text.
const KEPT_TEXT: usize = 512 << 10;

/// A listing as read, with what people confirmed of it.
#[derive(Debug)]
pub(crate) struct Read {
    /// Its file.
    pub(crate) file: String,
    /// Its text, into which spans point.
    pub(crate) text: String,
    /// The reading as the reader left it.
    pub(crate) unconfirmed: Reading,
    /// The reading with what people confirmed.
    pub(crate) state: State,
    /// What people confirmed that stands for no clause any more.
    pub(crate) lost: Vec<Entry>,
}

/// What a listing in the store goes by.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Heading {
    /// Its file.
    pub(crate) file: String,
    /// Its file's name without the ending.
    pub(crate) stem: String,
    /// Its document.
    sha256: String,
    /// Its designation.
    pub(crate) designation: String,
}

impl Heading {
    /// What is known of a document before anything of it is read.
    pub(crate) fn of_document(file: String, sha256: String) -> Self {
        Self {
            stem: stem(&file).to_owned(),
            file,
            sha256,
            designation: String::new(),
        }
    }

    /// SHA-256 of its document.
    pub(crate) fn sha256(&self) -> &str {
        &self.sha256
    }

    /// What it goes by, where something is said of it.
    pub(crate) fn goes_by(&self) -> GoesBy<'_> {
        GoesBy {
            file: &self.file,
            designation: &self.designation,
            sha256: &self.sha256,
        }
    }
}

/// The listings there are at one moment.
#[derive(Debug, Default)]
pub(crate) struct Headings {
    /// By file.
    all: Vec<Heading>,
    /// The places of those that names were found to mean: finding one looks at every listing.
    meant: Mutex<BTreeMap<String, Option<usize>>>,
}

/// The listings of a store.
#[derive(Debug, Default)]
pub(crate) struct Listings {
    headings: RwLock<Arc<Headings>>,
    kept: Mutex<VecDeque<Arc<Read>>>,
    /// How often something was forgotten. What was begun to be read before the last time isn't kept.
    epoch: AtomicU64,
}

impl Headings {
    /// The listings, by file.
    pub(crate) fn iter(&self) -> core::slice::Iter<'_, Heading> {
        self.all.iter()
    }

    fn of_file(&self, file: &str) -> Option<&Heading> {
        let at = self.all.binary_search_by(|one| one.file.as_str().cmp(file));
        self.all.get(at.ok()?)
    }

    /// The file of the listing that a mark means.
    pub(crate) fn which(&self, name: &str) -> Option<&str> {
        let mut meant = self.meant.lock().unwrap_or_else(PoisonError::into_inner);
        let known = meant.get(name).copied();
        let at = known.unwrap_or_else(|| {
            let at = self.look_for(name);
            meant.insert(name.to_owned(), at);
            at
        });
        self.all.get(at?).map(|heading| heading.file.as_str())
    }

    fn look_for(&self, name: &str) -> Option<usize> {
        let named = |heading| {
            let Heading {
                stem, designation, ..
            }: &Heading = heading;
            Named { stem, designation }
        };
        let named: Vec<Named<'_>> = self.all.iter().map(named).collect();
        match which(name, &named) {
            Which::One(at) => Some(at),
            Which::Nothing | Which::Several(_) => None,
        }
    }
}

impl Listings {
    /// Looks which listings there are.
    ///
    /// # Errors
    /// When the store can't be read.
    pub(crate) async fn refresh(&self, store: &Store) -> Result<(), Trouble> {
        let before = self.headings();
        let mut all = Vec::new();
        for held in store.listings().await? {
            let file = held.key.name;
            let sha256 = held.value.sha256;
            let same = before.of_file(&file).filter(|one| one.sha256 == sha256);
            let designation = match (held.value.designation, same) {
                (Some(designation), _) => designation,
                (None, Some(same)) => same.designation.clone(),
                (None, None) => designation(store, &file, &sha256).await?,
            };
            all.push(Heading {
                designation,
                ..Heading::of_document(file, sha256)
            });
        }
        all.sort_by(|a, b| a.file.cmp(&b.file));
        let headings = Arc::new(Headings {
            all,
            meant: Mutex::default(),
        });
        *self
            .headings
            .write()
            .unwrap_or_else(PoisonError::into_inner) = headings;
        Ok(())
    }

    /// The listings there are.
    pub(crate) fn headings(&self) -> Arc<Headings> {
        self.headings
            .read()
            .unwrap_or_else(PoisonError::into_inner)
            .clone()
    }

    /// A listing as read; none when there is no such file.
    ///
    /// # Errors
    /// When the store can't be read, or the document is no listing.
    pub(crate) async fn read(
        &self,
        store: &Store,
        file: &str,
    ) -> Result<Option<Arc<Read>>, Trouble> {
        if let Some(read) = self.kept(file) {
            return Ok(Some(read));
        }
        let epoch = self.epoch.load(Ordering::SeqCst);
        let headings = self.headings();
        let Some(heading) = headings.of_file(file) else {
            return Ok(None);
        };
        let bytes = store.attachment(&heading.sha256).await?;
        let overlay = store.overlay(file).await?;
        let name = file.to_owned();
        let read = working(move || Read::of(&name, &bytes, overlay.as_ref())).await??;
        let read = Arc::new(read);
        let mut kept = self.kept.lock().unwrap_or_else(PoisonError::into_inner);
        if self.epoch.load(Ordering::SeqCst) == epoch {
            kept.retain(|held| held.file != file);
            kept.push_front(read.clone());
            while kept.len() > KEPT || (kept.len() > 1 && text(&kept) > KEPT_TEXT) {
                kept.pop_back();
            }
        }
        Ok(Some(read))
    }

    fn kept(&self, file: &str) -> Option<Arc<Read>> {
        let mut kept = self.kept.lock().unwrap_or_else(PoisonError::into_inner);
        let at = kept.iter().position(|read| read.file == file)?;
        let read = kept.remove(at)?;
        kept.push_front(read.clone());
        Some(read)
    }

    /// Forgets how every listing was read, as others may have changed anything.
    pub(crate) fn forget_all(&self) {
        let mut kept = self.kept.lock().unwrap_or_else(PoisonError::into_inner);
        self.epoch.fetch_add(1, Ordering::SeqCst);
        kept.clear();
    }

    /// Forgets how a listing was read, as something was confirmed of it.
    pub(crate) fn forget(&self, file: &str) {
        let mut kept = self.kept.lock().unwrap_or_else(PoisonError::into_inner);
        self.epoch.fetch_add(1, Ordering::SeqCst);
        kept.retain(|read| read.file != file);
    }
}

impl Read {
    /// Whether a person has corrected how a clause was read.
    pub(crate) fn is_corrected(&self, clause: &str) -> bool {
        let mut clauses = self.state.clauses.iter();
        clauses.any(|one| one.id == clause && one.status == Status::Corrected)
    }

    fn of(file: &str, bytes: &[u8], overlay: Option<&Overlay>) -> Result<Self, Trouble> {
        let document = Document::read(file, bytes).map_err(|error| Trouble::Refused {
            message: format!("{file} can't be read: {error}"),
            help: "give it as text, or as a PDF that holds text".to_owned(),
        })?;
        let unconfirmed = document.reading.clone();
        let (state, lost) = match overlay {
            Some(overlay) => {
                let laid = Laid::over(document.reading, overlay);
                (laid.state, laid.lost)
            }
            None => (State::Draft(Box::new(document.reading)), Vec::new()),
        };
        Ok(Self {
            file: file.to_owned(),
            text: document.text,
            unconfirmed,
            state,
            lost,
        })
    }
}

fn text(kept: &VecDeque<Arc<Read>>) -> usize {
    kept.iter().map(|read| read.text.len()).sum()
}

/// The designation of a document that an earlier version put into the store, which didn't say it.
async fn designation(store: &Store, file: &str, sha256: &str) -> Result<String, Trouble> {
    let name = file.to_owned();
    let bytes = store.attachment(sha256).await?;
    working(move || {
        let document = Document::read(&name, &bytes);
        document
            .map(|document| document.reading.header.designation)
            .unwrap_or_default()
    })
    .await
}

/// Does work that takes a processor for a while, beside the tasks that wait for the network.
///
/// # Errors
/// When the work was broken off.
pub(crate) async fn working<T: Send + 'static>(
    work: impl FnOnce() -> T + Send + 'static,
) -> Result<T, Trouble> {
    tokio::task::spawn_blocking(work)
        .await
        .map_err(|error| Trouble::Broken(format!("the work was broken off: {error}")))
}
