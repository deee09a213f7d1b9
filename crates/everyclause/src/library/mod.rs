//! A folder of listings of any size, with an index that is kept beside it.
//!
//! Each listing is read once and kept as read, with the hash of its file and of its confirmation; as long as both are the same, it isn't
//! read again. What a person has confirmed is laid over the reading whenever it is looked at.

mod stored;

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::OnceLock;

use conformance::Checklist;
use selection::index::Builder;
use selection::{Index, Named};
use sha2::{Digest, Sha256};

use crate::fault::{Fault, Faults};
use crate::files;
use crate::shelf::{Held, State, overlay_path};
use crate::source::{self, MOST_BYTES};
use stored::{Stored, StoredListing};

/// What the index's name ends with.
const INDEX: &str = ".index";

/// The most bytes an index is read with.
const MOST_INDEXED: u64 = 4 << 30;

/// How many listings are open at once while an index is made: opened, one takes a hundred kilobytes.
const AT_ONCE: usize = 500;

/// A folder of listings with their index.
pub(crate) struct Library {
    /// Where they lie, as shown.
    pub(crate) folder: String,
    /// What the listings ask.
    pub(crate) index: Index,
    /// Files that couldn't be read as a listing.
    pub(crate) unread: Vec<Fault>,
    /// What is worth knowing of the index.
    pub(crate) notices: Vec<String>,
    listings: Vec<StoredListing>,
    opened: Vec<OnceLock<Option<State>>>,
}

impl Library {
    /// The listings of a folder, by the index beside it where that holds.
    ///
    /// # Errors
    /// When the folder can't be read, or holds no listing.
    pub(crate) fn open(folder: &Path) -> Result<Self, Faults> {
        let path = files::with_ending(folder, INDEX);
        let files = files::in_folder(folder, "listings")?;
        let paths: Vec<&PathBuf> = files
            .iter()
            .filter(|path| source::is_listing(path))
            .collect();
        let before = Stored::read(&path, MOST_INDEXED);
        let hashes = in_parallel(&paths, |path| hashes(path));
        let is_the_same = before.as_ref().is_some_and(|stored| {
            let known = stored
                .listings
                .iter()
                .map(|one| (one.file.as_str(), one.hashes()));
            let now = paths.iter().zip(&hashes);
            stored.listings.len() == paths.len()
                && known.eq(now.map(|(path, hashes)| {
                    (
                        name_of(path),
                        hashes.as_ref().map(Hashes::both).unwrap_or_default(),
                    )
                }))
        });
        if let Some(stored) = before.as_ref().filter(|_| is_the_same)
            && let Ok(index) = Index::from_bytes(&stored.index)
        {
            let listings = before.map(|stored| stored.listings).unwrap_or_default();
            return Ok(Self::of(folder, listings, index, Vec::new(), Vec::new()));
        }
        Self::build(folder, &path, &paths, &hashes, before)
    }

    fn build(
        folder: &Path,
        index_path: &Path,
        paths: &[&PathBuf],
        hashes: &[Result<Hashes, Fault>],
        before: Option<Stored>,
    ) -> Result<Self, Faults> {
        let known: BTreeMap<String, StoredListing> = before
            .into_iter()
            .flat_map(|stored| stored.listings)
            .map(|one| (one.file.clone(), one))
            .collect();
        let work: Vec<(&PathBuf, &Result<Hashes, Fault>)> =
            paths.iter().copied().zip(hashes).collect();
        let open = |(path, hashes): &(&PathBuf, &Result<Hashes, Fault>)| {
            let hashes = hashes.as_ref().map_err(Clone::clone)?;
            let same = known
                .get(name_of(path))
                .filter(|one| one.hashes() == hashes.both());
            if let Some((one, state)) = same.and_then(|one| Some((one.clone(), one.open()?))) {
                return Ok((one, state));
            }
            let held = Held::open(path)?;
            let one = StoredListing::of(name_of(path), hashes, &held)
                .ok_or_else(|| Fault::of_file("the listing can't be kept", files::shown(path)))?;
            Ok((one, held.state))
        };
        let (mut listings, mut unread, mut builder) = (Vec::new(), Vec::new(), Builder::default());
        for portion in work.chunks(AT_ONCE) {
            for one in in_parallel(portion, open) {
                match one {
                    Ok((one, state)) => {
                        builder
                            .add(&checklist(&state))
                            .map_err(|error| Fault::of_command(error.to_string()))?;
                        listings.push(one);
                    }
                    Err(fault) => unread.push(fault),
                }
            }
        }
        if listings.is_empty() {
            return Err(no_listing(folder, unread));
        }
        let index = builder.finish();
        // Files that couldn't be read are tried again next time, and so told of again.
        let notices = if unread.is_empty() {
            keep(index_path, &listings, &index)
        } else {
            Vec::new()
        };
        Ok(Self::of(folder, listings, index, unread, notices))
    }

    fn of(
        folder: &Path,
        listings: Vec<StoredListing>,
        index: Index,
        unread: Vec<Fault>,
        notices: Vec<String>,
    ) -> Self {
        Self {
            folder: files::shown(folder),
            index,
            unread,
            notices,
            opened: listings.iter().map(|_| OnceLock::new()).collect(),
            listings,
        }
    }

    /// How many listings there are.
    pub(crate) fn len(&self) -> usize {
        self.listings.len()
    }

    /// The listing's file name without its ending.
    pub(crate) fn stem(&self, at: usize) -> &str {
        let file = self.listings.get(at).map_or("", |one| one.file.as_str());
        file.rsplit_once('.').map_or(file, |(stem, _)| stem)
    }

    /// The listing at a place; nothing where what is kept of it is damaged.
    pub(crate) fn state(&self, at: usize) -> Option<&State> {
        let place = self.opened.get(at)?;
        place.get_or_init(|| self.listings.get(at)?.open()).as_ref()
    }

    /// The listing that goes by a name: its file's without the ending, else its designation.
    pub(crate) fn find(&self, name: &str) -> Option<usize> {
        let goes_by = |other: &str| other.eq_ignore_ascii_case(name.trim());
        let by_stem = (0..self.len()).find(|at| goes_by(self.stem(*at)));
        let mut entries = self.index.entries().iter();
        by_stem.or_else(|| entries.position(|entry| goes_by(&entry.designation)))
    }
}

/// The listings of a library, each made ready when it is looked at.
pub(crate) struct Checklists<'l> {
    library: &'l Library,
    made: Vec<OnceLock<Option<Checklist<'l>>>>,
}

impl<'l> Checklists<'l> {
    pub(crate) fn of(library: &'l Library) -> Self {
        Self {
            library,
            made: (0..library.len()).map(|_| OnceLock::new()).collect(),
        }
    }
}

impl selection::Library for Checklists<'_> {
    fn checklist(&self, at: usize) -> Option<&Checklist<'_>> {
        let made = self.made.get(at)?;
        made.get_or_init(|| self.library.state(at).map(checklist))
            .as_ref()
    }
}

impl Named for Checklists<'_> {
    fn stem(&self, at: usize) -> &str {
        self.library.stem(at)
    }

    fn which(&self, name: &str) -> Option<usize> {
        self.library.find(name)
    }
}

fn checklist(state: &State) -> Checklist<'_> {
    match state {
        State::Draft(reading) => Checklist::of_draft(reading),
        State::Confirmed(listing) => Checklist::of_confirmed(listing),
    }
}

fn no_listing(folder: &Path, unread: Vec<Fault>) -> Faults {
    if unread.is_empty() {
        let fault = Fault::of_file("there is no listing in the folder", files::shown(folder));
        return fault.help("put the listings into it as plain text or PDF, their names ending with `.txt` or `.pdf`").into();
    }
    Faults {
        faults: unread,
        closing: Some("No listing could be read.".to_owned()),
    }
}

/// Keeps the index beside the folder. That it can't be written harms nothing but the time it takes next time.
fn keep(path: &Path, listings: &[StoredListing], index: &Index) -> Vec<String> {
    let kept =
        Stored::bytes(listings, index).is_some_and(|bytes| files::write(path, &bytes).is_ok());
    if kept {
        Vec::new()
    } else {
        vec![format!(
            "the index couldn't be kept in {}: next time it is made anew",
            files::shown(path)
        )]
    }
}

/// The hashes of a listing's file and of its confirmation, where there is one.
pub(super) struct Hashes {
    listing: [u8; 32],
    confirmation: Option<[u8; 32]>,
}

impl Hashes {
    /// Both as one, for comparing.
    fn both(&self) -> Vec<u8> {
        let confirmation = self.confirmation.iter().flatten();
        self.listing.iter().chain(confirmation).copied().collect()
    }
}

fn hashes(path: &Path) -> Result<Hashes, Fault> {
    let hash = |path: &Path, what| -> Result<[u8; 32], Fault> {
        Ok(Sha256::digest(files::read(path, what, MOST_BYTES)?).into())
    };
    let overlay = overlay_path(path);
    let confirmation = if matches!(overlay.try_exists(), Ok(false)) {
        None
    } else {
        Some(hash(&overlay, "a confirmation")?)
    };
    Ok(Hashes {
        listing: hash(path, "a listing")?,
        confirmation,
    })
}

fn name_of(path: &Path) -> &str {
    path.file_name()
        .and_then(|name| name.to_str())
        .unwrap_or_default()
}

/// How many threads may work at once.
pub(crate) fn threads() -> usize {
    std::thread::available_parallelism().map_or(1, usize::from)
}

/// What comes of each, in their order, worked out on all threads.
fn in_parallel<T: Sync, R: Send>(of: &[T], work: impl Fn(&T) -> R + Sync) -> Vec<R> {
    let share = of.len().div_ceil(threads()).max(1);
    let one_share = |share: &[T]| -> Vec<R> { share.iter().map(&work).collect() };
    std::thread::scope(|scope| {
        let running: Vec<_> = of
            .chunks(share)
            .map(|share| scope.spawn(move || one_share(share)))
            .collect();
        running
            .into_iter()
            .flat_map(|thread| {
                thread
                    .join()
                    .unwrap_or_else(|panic| std::panic::resume_unwind(panic))
            })
            .collect()
    })
}
