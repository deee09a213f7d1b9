//! Which listings of the store fit a condition. What they ask is kept as an index; the readings themselves are opened when they are
//! looked at, and let go again.

use std::sync::{Arc, Mutex, OnceLock, PoisonError};

use conformance::Checklist;
use selection::index::Builder;
use selection::search::NotThere;
use selection::{Asked, Index, Named as _, Search};
use shelf::{Document, Laid, Named, State, Which, which};
use site::Project;
use store::project::fill;
use store::{Owner, Store};
use tokio::runtime::Handle;

use crate::desk::Desk;
use crate::listings::{Heading, working};
use crate::trouble::Trouble;

/// What the listings ask, as long as none is read otherwise.
#[derive(Debug, Default)]
pub(crate) struct Library {
    kept: Mutex<Option<(u64, Arc<Indexed>)>>,
}

/// The listings of the index, and the index.
#[derive(Debug)]
struct Indexed {
    headings: Vec<Heading>,
    index: Index,
    /// Listings that can't be read, and aren't in it.
    unread: Vec<String>,
}

/// The index with its listings, each opened when it is looked at.
pub(crate) struct Opened {
    indexed: Arc<Indexed>,
    store: Store,
    handle: Handle,
    states: Vec<OnceLock<Option<State>>>,
}

/// The listings made ready for checking.
struct Ready<'o> {
    opened: &'o Opened,
    made: Vec<OnceLock<Option<Checklist<'o>>>>,
}

impl Opened {
    /// How many listings there are.
    pub(crate) fn len(&self) -> usize {
        self.indexed.headings.len()
    }

    /// The listings that can't be read, and aren't in the answer.
    pub(crate) fn unread(&self) -> &[String] {
        &self.indexed.unread
    }

    /// The file of the listing of that stem.
    pub(crate) fn file(&self, stem: &str) -> Option<&str> {
        let mut headings = self.indexed.headings.iter();
        headings
            .find(|heading| heading.stem == stem)
            .map(|heading| heading.file.as_str())
    }

    /// Looks through the listings.
    ///
    /// # Errors
    /// When one of them can't be had any more.
    pub(crate) fn search<T>(
        &self,
        look: impl FnOnce(&Search<'_>) -> Result<T, NotThere>,
    ) -> Result<T, Trouble> {
        let ready = Ready {
            opened: self,
            made: self.states.iter().map(|_| OnceLock::new()).collect(),
        };
        let threads = std::thread::available_parallelism().map_or(1, usize::from);
        let search = Search::of(&ready, &self.indexed.index, threads);
        look(&search).map_err(|error| {
            let name = ready.stem(error.0).to_owned();
            Trouble::Broken(format!("{name} can't be read any more"))
        })
    }

    fn state(&self, at: usize) -> Option<&State> {
        let open = || {
            let heading = self.indexed.headings.get(at)?;
            self.handle.block_on(state(&self.store, heading)).ok()
        };
        self.states.get(at)?.get_or_init(open).as_ref()
    }
}

impl selection::Library for Ready<'_> {
    fn checklist(&self, at: usize) -> Option<&Checklist<'_>> {
        let make = || self.opened.state(at).map(checklist);
        self.made.get(at)?.get_or_init(make).as_ref()
    }
}

impl selection::Named for Ready<'_> {
    fn stem(&self, at: usize) -> &str {
        let heading = self.opened.indexed.headings.get(at);
        heading.map_or("", |heading| &heading.stem)
    }

    fn which(&self, name: &str) -> Option<usize> {
        let headings = &self.opened.indexed.headings;
        let named: Vec<Named<'_>> = headings
            .iter()
            .map(|heading| Named {
                stem: &heading.stem,
                designation: &heading.designation,
            })
            .collect();
        match which(name, &named) {
            Which::One(at) => Some(at),
            Which::Nothing | Which::Several(_) => None,
        }
    }
}

fn checklist(state: &State) -> Checklist<'_> {
    match state {
        State::Draft(reading) => Checklist::of_draft(reading),
        State::Confirmed(listing) => Checklist::of_confirmed(listing),
    }
}

/// A listing as read, with what people confirmed of it.
async fn state(store: &Store, heading: &Heading) -> Result<State, Trouble> {
    let bytes = store.attachment(heading.sha256()).await?;
    let overlay = store.overlay(&heading.file).await?;
    let document = Document::read(&heading.file, &bytes)
        .map_err(|error| Trouble::Broken(format!("{} can't be read: {error}", heading.file)))?;
    Ok(match overlay {
        Some(overlay) => Laid::over(document.reading, &overlay).state,
        None => State::Draft(Box::new(document.reading)),
    })
}

impl Desk {
    /// The listings, made ready for searching.
    ///
    /// # Errors
    /// When the store can't be read.
    pub(crate) async fn opened(&self) -> Result<Opened, Trouble> {
        self.catch_up().await?;
        let edition = self.listings.edition();
        let kept = || {
            self.library
                .kept
                .lock()
                .unwrap_or_else(PoisonError::into_inner)
        };
        let held = kept()
            .as_ref()
            .filter(|(of, _)| *of == edition)
            .map(|(_, indexed)| indexed.clone());
        let indexed = if let Some(indexed) = held {
            indexed
        } else {
            let headings = self.listings.headings();
            let store = self.store.clone();
            let handle = Handle::current();
            let made =
                working(move || index(&store, &handle, headings.iter().as_slice())).await??;
            let made = Arc::new(made);
            *kept() = Some((edition, made.clone()));
            made
        };
        Ok(Opened {
            states: indexed.headings.iter().map(|_| OnceLock::new()).collect(),
            indexed,
            store: self.store.clone(),
            handle: Handle::current(),
        })
    }

    /// The condition of the joint or mark of that name.
    ///
    /// # Errors
    /// When the schedule has neither, or the store can't be read.
    pub(crate) async fn asked(&self, name: &str) -> Result<Asked, Trouble> {
        let outline = self.project();
        let name = name.trim();
        let is_meant = |joint: &site::Joint| {
            joint.name.eq_ignore_ascii_case(name) || joint.mark.eq_ignore_ascii_case(name)
        };
        // Of the joints only those that are meant, with what is known of them.
        let mut project = Project {
            building: outline.building.clone(),
            barriers: outline.barriers.clone(),
            marks: outline.marks.clone(),
            judgments: outline.judgments.clone(),
            joints: Vec::new(),
        };
        for joint in outline.joints.iter().filter(|joint| is_meant(joint)) {
            let mut joint = joint.clone();
            let owner = Owner::Joint(joint.name.clone());
            fill(&mut joint, self.store.known(&owner).await?);
            project.joints.push(joint);
        }
        selection::asking::of_name(&project, name).ok_or_else(|| Trouble::Refused {
            message: format!("the project has no joint and no mark `{name}`"),
            help: "name a joint or mark of the schedule".to_owned(),
        })
    }
}

/// What each listing asks. The readings aren't kept.
fn index(store: &Store, handle: &Handle, headings: &[Heading]) -> Result<Indexed, Trouble> {
    let (mut builder, mut held, mut unread) = (Builder::default(), Vec::new(), Vec::new());
    let threads = std::thread::available_parallelism().map_or(1, usize::from);
    for share in headings.chunks(threads) {
        let states: Vec<Result<State, Trouble>> = std::thread::scope(|scope| {
            let running: Vec<_> = share
                .iter()
                .map(|heading| scope.spawn(move || handle.block_on(state(store, heading))))
                .collect();
            let join = |thread: std::thread::ScopedJoinHandle<'_, _>| {
                thread.join().unwrap_or_else(|_| {
                    Err(Trouble::Broken("a listing couldn't be read".to_owned()))
                })
            };
            running.into_iter().map(join).collect()
        });
        for (heading, state) in share.iter().zip(states) {
            match state {
                Ok(state) => {
                    builder
                        .add(&checklist(&state))
                        .map_err(|error| Trouble::Broken(error.to_string()))?;
                    held.push(heading.clone());
                }
                Err(Trouble::Broken(_)) => unread.push(heading.file.clone()),
                Err(trouble) => return Err(trouble),
            }
        }
    }
    Ok(Indexed {
        headings: held,
        index: builder.finish(),
        unread,
    })
}
