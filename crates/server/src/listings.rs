//! Listings as read, the last ones used kept.

use std::collections::{BTreeMap, VecDeque};
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::{Arc, Mutex, PoisonError};

use listing::confirm::Overlay;
use listing::{Reading, Status};
use shelf::{Document, Laid, Named, State, Which, which};
use store::Store;

use crate::trouble::Trouble;

/// How many listings are kept as read.
const KEPT: usize = 48;

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
    /// SHA-256 of its document.
    pub(crate) fn sha256(&self) -> &str {
        &self.sha256
    }
}

/// The listings of a store.
#[derive(Debug, Default)]
pub(crate) struct Listings {
    headings: Mutex<Vec<Heading>>,
    kept: Mutex<VecDeque<Arc<Read>>>,
    /// How often something was forgotten. What was begun to be read before the last time isn't kept.
    epoch: AtomicU64,
}

impl Listings {
    /// Looks which listings there are.
    ///
    /// # Errors
    /// When the store can't be read.
    pub(crate) async fn refresh(&self, store: &Store) -> Result<(), Trouble> {
        let before: BTreeMap<String, Heading> = self
            .headings()
            .into_iter()
            .map(|heading| (heading.file.clone(), heading))
            .collect();
        let mut headings = Vec::new();
        for held in store.listings().await? {
            let file = held.key.name;
            let sha256 = held.value.sha256;
            if let Some(same) = before.get(&file).filter(|heading| heading.sha256 == sha256) {
                headings.push(same.clone());
                continue;
            }
            let bytes = store.attachment(&sha256).await?;
            let name = file.clone();
            let designation = working(move || {
                let document = Document::read(&name, &bytes);
                document
                    .map(|document| document.reading.header.designation)
                    .unwrap_or_default()
            })
            .await?;
            let stem = file
                .rsplit_once('.')
                .map_or(file.as_str(), |(stem, _)| stem)
                .to_owned();
            headings.push(Heading {
                file,
                stem,
                sha256,
                designation,
            });
        }
        headings.sort_by(|a, b| a.file.cmp(&b.file));
        *self.headings.lock().unwrap_or_else(PoisonError::into_inner) = headings;
        Ok(())
    }

    /// Another number whenever something was forgotten: what was made of the readings before is out of date.
    pub(crate) fn edition(&self) -> u64 {
        self.epoch.load(Ordering::SeqCst)
    }

    /// The listings there are, by file.
    pub(crate) fn headings(&self) -> Vec<Heading> {
        self.headings
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .clone()
    }

    /// The file of the listing that a mark means.
    pub(crate) fn which(&self, name: &str) -> Option<String> {
        let headings = self.headings();
        let named: Vec<Named<'_>> = headings
            .iter()
            .map(|heading| Named {
                stem: &heading.stem,
                designation: &heading.designation,
            })
            .collect();
        match which(name, &named) {
            Which::One(at) => headings.get(at).map(|heading| heading.file.clone()),
            Which::Nothing | Which::Several(_) => None,
        }
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
        let Some(heading) = self
            .headings()
            .into_iter()
            .find(|heading| heading.file == file)
        else {
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
            kept.truncate(KEPT);
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
        let state = match overlay {
            Some(overlay) => Laid::over(document.reading, overlay).state,
            None => State::Draft(Box::new(document.reading)),
        };
        Ok(Self {
            file: file.to_owned(),
            text: document.text,
            unconfirmed,
            state,
        })
    }
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
