//! The index and the packed listings as a file beside the store, so that a desk that starts again reads only what has changed. The file can be
//! made anew at any time; one of another reader, of another store, or that is damaged, isn't used.

use std::collections::{BTreeMap, BTreeSet};
use std::fs::{self, File};
use std::io::{Read as _, Write as _};
use std::path::{Path, PathBuf};
use std::sync::Arc;

use selection::Index;
use serde::{Deserialize, Serialize};
use shelf::{Packed, READER, digest};
use store::{Head, Key, Kind, Store};

use super::indexed::{Indexed, One};
use crate::listings::{Heading, Headings, working};
use crate::trouble::Trouble;

/// What the file's name ends with.
const ENDING: &str = ".index";

/// The most bytes it is read with.
const MOST: u64 = 1 << 30;

/// How many bytes of SHA-256 the file ends with, taken of all before.
const SUM: usize = 32;

/// What is kept.
#[derive(Serialize, Deserialize)]
struct Stored {
    /// Which reader read the listings.
    made_by: String,
    /// An entry of the journal up to which all that was confirmed is taken into account, with its hash: so it is known to be of this store.
    head: Head,
    listings: Vec<StoredListing>,
    #[serde(with = "serde_bytes")]
    index: Vec<u8>,
}

/// A listing as kept.
#[derive(Serialize, Deserialize)]
struct StoredListing {
    file: String,
    /// SHA-256 of its document.
    sha256: String,
    packed: Packed,
}

/// Whether something was kept for a store, of use or not.
pub(super) fn is_there(store: &Store) -> bool {
    store.next_to(ENDING).is_some_and(|path| path.is_file())
}

/// What was kept for a store, and the listings of which something was confirmed since.
///
/// # Errors
/// When the store can't be read. Where nothing that can be used was kept, there is nothing.
pub(super) async fn read(
    store: &Store,
    headings: &Arc<Headings>,
) -> Result<(Option<Arc<Indexed>>, BTreeSet<String>), Trouble> {
    let nothing = (None, BTreeSet::new());
    let Some(path) = store.next_to(ENDING) else {
        return Ok(nothing);
    };
    let Some((stored, index)) = working(move || opened(&path)).await? else {
        return Ok(nothing);
    };
    let noted = store.entries_after(stored.head.seq - 1, 1).await?;
    if noted.first().map(store::Entry::head).as_ref() != Some(&stored.head) {
        return Ok(nothing);
    }
    let confirmations = [Kind::Confirmation];
    let since = store.changed_of_kinds(&confirmations, stored.head.seq);
    let stale = since
        .await?
        .into_iter()
        .map(|(_, key): (i64, Key)| key.name);
    let overlays = store.overlays().await?;
    let mut overlays: BTreeMap<_, _> = overlays
        .into_iter()
        .map(|(file, overlay)| (file, Arc::new(overlay)))
        .collect();
    let listings = stored.listings.into_iter().map(|one| {
        let overlay = overlays.remove(&one.file);
        let heading = Heading::of_document(one.file, one.sha256);
        One::new(heading, one.packed, overlay)
    });
    let indexed = Indexed::new(headings.clone(), listings.collect(), index, Vec::new());
    Ok((Some(Arc::new(indexed)), stale.collect()))
}

fn opened(path: &Path) -> Option<(Stored, Index)> {
    let mut bytes = Vec::new();
    File::open(path)
        .ok()?
        .take(MOST)
        .read_to_end(&mut bytes)
        .ok()?;
    let (bytes, sum) = bytes.split_last_chunk::<SUM>()?;
    let is_whole = digest(bytes) == sum;
    let stored: Stored = rmp_serde::from_slice(bytes).ok().filter(|_| is_whole)?;
    let index = Index::from_bytes(&stored.index).ok()?;
    let is_ours = stored.made_by == READER && index.entries().len() == stored.listings.len();
    is_ours.then_some((stored, index))
}

/// Keeps an index. That it can't be kept harms nothing but the time that the next start takes.
pub(super) async fn write(store: &Store, indexed: &Indexed, seq: i64) {
    let Some(path) = store.next_to(ENDING) else {
        return;
    };
    let Ok(noted) = store.entries_after(seq - 1, 1).await else {
        return;
    };
    let (Some(head), Ok(index)) = (
        noted.first().map(store::Entry::head),
        indexed.index().to_bytes(),
    ) else {
        return;
    };
    let listings = indexed.listings.iter().map(|one| StoredListing {
        file: one.heading.file.clone(),
        sha256: one.heading.sha256().to_owned(),
        packed: Packed::clone(&one.packed),
    });
    let stored = Stored {
        made_by: READER.to_owned(),
        head,
        listings: listings.collect(),
        index,
    };
    let _ = working(move || put(&path, &stored)).await;
}

/// Writes the file beside its place, then puts it there.
fn put(path: &PathBuf, stored: &Stored) -> Option<()> {
    let folder = path
        .parent()
        .filter(|folder| !folder.as_os_str().is_empty());
    let mut bytes = rmp_serde::to_vec(stored).ok()?;
    bytes.extend(digest(&bytes));
    let folder = folder.unwrap_or(Path::new("."));
    fs::create_dir_all(folder).ok()?;
    let mut beside = tempfile::Builder::new()
        .prefix("unfinished-")
        .tempfile_in(folder)
        .ok()?;
    beside.write_all(&bytes).ok()?;
    beside.persist(path).ok().map(drop)
}
