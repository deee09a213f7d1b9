//! The index brought up to date: what hasn't changed is kept as it was, and only what has is read or laid over anew.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use listing::confirm::Overlay;
use selection::index::{Builder, Entry};
use shelf::{Document, Laid, Packed, State};
use store::{Store, StoreError};
use tokio::runtime::Handle;

use super::indexed::{Indexed, One};
use super::kept;
use super::opened::checklist;
use crate::listings::{Heading, Headings, working};
use crate::trouble::Trouble;

/// Of so many listings each one's confirmation is asked for by itself; of more, all are.
const BY_ONE: usize = 40;

/// From so many documents read anew it is worth keeping them for the next start.
const WORTH_KEEPING: usize = 32;

/// The index of some listings, by what was held before. `stale` names those of which something was confirmed since; `seq` is an entry of the
/// journal up to which all that was confirmed is taken into account.
///
/// # Errors
/// When the store can't be read.
pub(super) async fn make(
    store: &Store,
    headings: Arc<Headings>,
    before: Option<Arc<Indexed>>,
    stale: &BTreeSet<String>,
    seq: i64,
) -> Result<Indexed, Trouble> {
    let is_first = before.is_none();
    let (before, stale) = match before {
        Some(before) => (Some(before), stale.clone()),
        None => kept::read(store, &headings).await?,
    };
    let sources = Sources {
        store: store.clone(),
        handle: Handle::current(),
        overlays: overlays(store, &headings, before.as_deref(), &stale).await?,
    };
    let (made, read) =
        working(move || sources.index(headings, before.as_deref(), &stale)).await??;
    if read >= WORTH_KEEPING || (is_first && read > 0) {
        kept::write(store, &made, seq).await;
    }
    Ok(made)
}

/// What people confirmed of the listings that are new or stale.
async fn overlays(
    store: &Store,
    headings: &Headings,
    before: Option<&Indexed>,
    stale: &BTreeSet<String>,
) -> Result<BTreeMap<String, Overlay>, Trouble> {
    let listings = before.into_iter().flat_map(|before| &before.listings);
    let known: BTreeSet<&str> = listings.map(|one| one.heading.file.as_str()).collect();
    let asked: Vec<&str> = headings
        .iter()
        .map(|heading| heading.file.as_str())
        .filter(|file| stale.contains(*file) || !known.contains(file))
        .collect();
    if asked.len() > BY_ONE {
        return Ok(store.overlays().await?);
    }
    let mut overlays = BTreeMap::new();
    for file in asked {
        let overlay = store.overlay(file).await?;
        overlays.extend(overlay.map(|overlay| (file.to_owned(), overlay)));
    }
    Ok(overlays)
}

/// How one listing of the index comes about.
enum Task<'b> {
    /// It is as it was.
    Keep(Box<(One, Entry)>),
    /// Its document is as it was; what people confirmed of it may not be.
    LayOver(Heading, &'b Packed),
    /// It isn't known yet.
    Read(Heading),
}

/// What came of it.
enum Done {
    Kept(Box<(One, Entry)>),
    Anew {
        one: One,
        state: State,
        is_read: bool,
    },
    /// The file of a listing that can't be read.
    Unread(String),
}

/// The listings as they were, each to be kept or done anew.
fn tasks<'b>(
    headings: &Headings,
    before: &'b [One],
    entries: Vec<Entry>,
    stale: &BTreeSet<String>,
) -> Vec<Task<'b>> {
    let mut known: BTreeMap<&str, (&One, Entry)> = before
        .iter()
        .zip(entries)
        .map(|(one, entry)| (one.heading.file.as_str(), (one, entry)))
        .collect();
    let task = |heading: &Heading| {
        let heading = heading.clone();
        let same = known
            .remove(heading.file.as_str())
            .filter(|(one, _)| one.heading.sha256() == heading.sha256());
        match same {
            None => Task::Read(heading),
            Some((one, _)) if stale.contains(&heading.file) => Task::LayOver(heading, &one.packed),
            Some((one, entry)) => {
                let one = One {
                    heading,
                    ..one.clone()
                };
                Task::Keep(Box::new((one, entry)))
            }
        }
    };
    headings.iter().map(task).collect()
}

/// What listings are made of.
struct Sources {
    store: Store,
    handle: Handle,
    /// What people confirmed, by file.
    overlays: BTreeMap<String, Overlay>,
}

impl Sources {
    /// The index, and how many documents were read for it.
    fn index(
        &self,
        headings: Arc<Headings>,
        before: Option<&Indexed>,
        stale: &BTreeSet<String>,
    ) -> Result<(Indexed, usize), Trouble> {
        let broken = |error: selection::IndexError| Trouble::Broken(error.to_string());
        let (mut builder, entries) = match before {
            Some(before) => Builder::again(before.index().clone()).map_err(broken)?,
            None => (Builder::default(), Vec::new()),
        };
        let before = before.map_or(&[][..], |before| &before.listings);
        let (mut listings, mut unread, mut read) = (Vec::new(), Vec::new(), 0);
        let mut tasks = tasks(&headings, before, entries, stale).into_iter();
        loop {
            let some = self.some(&mut tasks);
            if some.is_empty() {
                break;
            }
            for done in some {
                match done? {
                    Done::Kept(kept) => {
                        let (one, entry) = *kept;
                        builder.keep(entry);
                        listings.push(one);
                    }
                    Done::Anew {
                        one,
                        state,
                        is_read,
                    } => {
                        builder.add(&checklist(&state)).map_err(broken)?;
                        listings.push(one);
                        read += usize::from(is_read);
                    }
                    Done::Unread(file) => unread.push(file),
                }
            }
        }
        let indexed = Indexed::new(headings, listings, builder.finish(), unread);
        Ok((indexed, read))
    }

    /// Does the next tasks: no more readings are there at once than there are threads.
    fn some<'b>(&self, tasks: &mut impl Iterator<Item = Task<'b>>) -> Vec<Result<Done, Trouble>> {
        let threads = std::thread::available_parallelism().map_or(1, usize::from);
        std::thread::scope(|scope| {
            let (mut running, mut busy) = (Vec::new(), 0);
            while busy < threads
                && let Some(task) = tasks.next()
            {
                running.push(match task {
                    Task::Keep(kept) => Ok(Done::Kept(kept)),
                    task => {
                        busy += 1;
                        Err(scope.spawn(move || self.done(task)))
                    }
                });
            }
            let wait = |one: Result<Done, std::thread::ScopedJoinHandle<'_, _>>| match one {
                Ok(done) => Ok(done),
                Err(thread) => thread.join().unwrap_or_else(|_| {
                    Err(Trouble::Broken("a listing couldn't be read".to_owned()))
                }),
            };
            running.into_iter().map(wait).collect()
        })
    }

    fn done(&self, task: Task<'_>) -> Result<Done, Trouble> {
        match task {
            Task::Keep(kept) => Ok(Done::Kept(kept)),
            Task::LayOver(heading, packed) => {
                let overlay = self.overlays.get(&heading.file);
                match packed.open(overlay) {
                    Some(state) => Ok(Done::Anew {
                        one: one(heading, packed.clone(), overlay),
                        state,
                        is_read: false,
                    }),
                    None => self.read(heading),
                }
            }
            Task::Read(heading) => self.read(heading),
        }
    }

    /// Reads a document.
    fn read(&self, heading: Heading) -> Result<Done, Trouble> {
        let attached = self.store.attachment(heading.sha256());
        let bytes = match self.handle.block_on(attached) {
            Err(StoreError::Attachment(_)) => return Ok(Done::Unread(heading.file)),
            other => other?,
        };
        let Ok(document) = Document::read(&heading.file, &bytes) else {
            return Ok(Done::Unread(heading.file));
        };
        let Some(packed) = Packed::of(document.reading.clone()) else {
            return Ok(Done::Unread(heading.file));
        };
        let overlay = self.overlays.get(&heading.file);
        let state = match overlay {
            Some(overlay) => Laid::over(document.reading, overlay).state,
            None => State::Draft(Box::new(document.reading)),
        };
        Ok(Done::Anew {
            one: one(heading, packed, overlay),
            state,
            is_read: true,
        })
    }
}

fn one(heading: Heading, packed: Packed, overlay: Option<&Overlay>) -> One {
    One::new(heading, packed, overlay.cloned().map(Arc::new))
}
