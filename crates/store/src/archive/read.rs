//! Reading an archive into an empty store.

use std::collections::BTreeSet;
use std::fs::File;
use std::io::{BufRead, BufReader, Read, Seek};
use std::path::Path;

use site::import::Members;
use zip::ZipArchive;

use super::limits::{
    MOST_IN_LINE, MOST_IN_MANIFEST, MOST_MEMBERS, MOST_SIGNATURES, MOST_TIMES, MOST_UNPACKED, SMALL,
};
use super::{ATTACHMENTS, FORM, JOURNAL, MANIFEST, Manifest, refused};
use crate::attachments::{Attachments, MOST_BYTES};
use crate::canonical::{is_sha256, sha256};
use crate::change::{check_value, lines};
use crate::database::Database;
use crate::error::StoreError;
use crate::journal::{Entry, Replay, follow};
use crate::place::{AttachmentsPlace, Place};
use crate::store::{Store, beside};

/// How many entries are kept at once, and about how many bytes of them.
const AT_ONCE: usize = 1000;
const BYTES_AT_ONCE: u64 = 8 << 20;

/// How many bytes are looked through at once.
const PIECE: usize = 256 << 10;

impl Store {
    /// Makes a store from an archive. All of the archive is looked at first; what is then kept is kept whole or not at all.
    ///
    /// # Errors
    /// When there is a store already; when the archive can't be read, isn't one of this program's, is damaged, or is larger than a project
    /// can be.
    pub async fn restore(
        archive: &Path,
        place: &Place,
        attachments: &AttachmentsPlace,
    ) -> Result<Self, StoreError> {
        let mut archive = Archive::open(archive)?;
        archive.check()?;
        let beside = beside(place, attachments);
        let attachments = Attachments::at(attachments)?;
        let database = Database::make_anew(place).await?;
        let store = Self {
            database,
            attachments,
            beside,
        };
        if store.take(&mut archive).await? {
            Ok(store)
        } else {
            store.close().await;
            Err(StoreError::StoreThere(place.to_string()))
        }
    }

    /// Whether it was taken: not where somebody else was first to put something into the store.
    async fn take(&self, archive: &mut Archive) -> Result<bool, StoreError> {
        for sha256 in archive.attachments.clone() {
            let bytes = archive.attachment(&sha256)?;
            self.attachments.put(bytes).await?;
        }
        let mut batch = self.database.begin().await?;
        if batch.head().seq != 0 {
            batch.abandon().await?;
            return Ok(false);
        }
        // The file may be another one by now than it was when it was looked at.
        let mut replay = Replay::default();
        let mut lines = archive.journal()?;
        loop {
            let entries = lines.next(AT_ONCE)?;
            if entries.is_empty() {
                break;
            }
            follow(&mut replay, &entries)?;
            batch.append(&entries).await?;
        }
        drop(lines);
        if *batch.head() != archive.manifest.head {
            batch.abandon().await?;
            return Err(refused("it changed while it was read"));
        }
        batch.finish().await?;
        Ok(true)
    }
}

/// An archive whose members have the names they should have.
pub(super) struct Archive {
    zip: ZipArchive<File>,
    manifest: Manifest,
    attachments: BTreeSet<String>,
}

impl Archive {
    pub(super) fn open(path: &Path) -> Result<Self, StoreError> {
        let file = File::open(path).map_err(|error| {
            StoreError::Archive(format!("{} can't be read: {error}", path.display()))
        })?;
        must_have_few_members(&file)?;
        let mut zip = ZipArchive::new(file).map_err(refused)?;
        if zip.len() > MOST_MEMBERS {
            return Err(refused(format_args!(
                "it has more than {MOST_MEMBERS} members"
            )));
        }
        let attachments = names(&mut zip)?;
        let manifest = manifest(&mut zip)?;
        if manifest.attachments != attachments.len() {
            return Err(refused(format_args!(
                "it should have {} attachments and has {}",
                manifest.attachments,
                attachments.len()
            )));
        }
        Ok(Self {
            zip,
            manifest,
            attachments,
        })
    }

    /// Looks at all of it: the chain from its beginning to its end, and the bytes of each attachment.
    pub(super) fn check(&mut self) -> Result<(), StoreError> {
        let mut replay = Replay::default();
        let mut lines = self.journal()?;
        loop {
            let entries = lines.next(AT_ONCE)?;
            if entries.is_empty() {
                break;
            }
            entries.iter().try_for_each(could_be_made)?;
            follow(&mut replay, &entries)?;
        }
        drop(lines);
        if replay.head != self.manifest.head {
            return Err(refused(format_args!(
                "its journal should end with entry {}, {}",
                self.manifest.head.seq, self.manifest.head.hash
            )));
        }
        for sha256 in replay.attachments.keys() {
            if !self.attachments.contains(sha256) {
                return Err(refused(format_args!("the attachment {sha256} isn't in it")));
            }
        }
        for sha256 in self.attachments.clone() {
            let Some(bytes) = replay.attachments.get(&sha256) else {
                return Err(refused(format_args!(
                    "the journal knows nothing of the attachment {sha256}"
                )));
            };
            if u64::try_from(self.attachment(&sha256)?.len()).ok() != Some(*bytes) {
                return Err(refused(format_args!(
                    "the attachment {sha256} hasn't {bytes} bytes, as its record says"
                )));
            }
        }
        Ok(())
    }

    /// The bytes of an attachment, when they have its hash.
    fn attachment(&mut self, hash: &str) -> Result<Vec<u8>, StoreError> {
        let name = format!("{ATTACHMENTS}{hash}");
        let bytes = whole(&mut self.zip, &name, MOST_BYTES)?;
        if sha256(&bytes) == hash {
            Ok(bytes)
        } else {
            Err(refused(format_args!("the attachment {hash} is damaged")))
        }
    }

    fn journal(&mut self) -> Result<Lines<impl BufRead + '_>, StoreError> {
        let member = self.zip.by_name(JOURNAL).map_err(refused)?;
        let packed = member.compressed_size();
        let most = packed
            .saturating_mul(MOST_TIMES)
            .clamp(SMALL, MOST_UNPACKED);
        Ok(Lines {
            // One byte more than may be, so that a journal that is too long isn't taken for whole.
            reader: BufReader::new(member.take(most.saturating_add(1))),
            most,
            read: 0,
        })
    }
}

/// Looks through the file before its directory is read, which takes memory for each member.
fn must_have_few_members(mut file: &File) -> Result<(), StoreError> {
    let mut members = Members::up_to(MOST_SIGNATURES);
    let mut piece = vec![0; PIECE];
    loop {
        let read = file.read(&mut piece).map_err(refused)?;
        let Some(read) = piece.get(..read).filter(|read| !read.is_empty()) else {
            break;
        };
        members.look(read);
        if members.are_too_many() {
            return Err(refused(format_args!(
                "it has more than {MOST_MEMBERS} members"
            )));
        }
    }
    file.rewind().map_err(refused)
}

/// Whether a change of this program could have made an entry.
fn could_be_made(entry: &Entry) -> Result<(), StoreError> {
    entry.key.check()?;
    for value in entry.before.iter().chain(&entry.after) {
        check_value(&entry.key, value)?;
    }
    lines(&entry.by, &entry.what)
}

/// The attachments' hashes, when each member has a name it may have, and has it alone.
fn names(zip: &mut ZipArchive<File>) -> Result<BTreeSet<String>, StoreError> {
    let mut seen = BTreeSet::new();
    let mut attachments = BTreeSet::new();
    let mut unpacked: u64 = 0;
    for index in 0..zip.len() {
        let member = zip.by_index_raw(index).map_err(refused)?;
        let name = member.name().to_owned();
        unpacked = unpacked.saturating_add(member.size());
        let hash = name.strip_prefix(ATTACHMENTS);
        let may_be = matches!(name.as_str(), MANIFEST | JOURNAL) || hash.is_some_and(is_sha256);
        if !may_be {
            let shown: String = name.escape_debug().take(80).collect();
            return Err(refused(format_args!("it has a member `{shown}`")));
        }
        attachments.extend(hash.map(str::to_owned));
        if !seen.insert(name) {
            return Err(refused("it has two members of one name"));
        }
    }
    // What a member says of its size may be a lie; the reading of it has its own bounds.
    if unpacked > MOST_UNPACKED {
        return Err(refused(format_args!(
            "it unpacks to more than {} GB",
            MOST_UNPACKED >> 30
        )));
    }
    Ok(attachments)
}

fn manifest(zip: &mut ZipArchive<File>) -> Result<Manifest, StoreError> {
    let bytes = whole(zip, MANIFEST, MOST_IN_MANIFEST)?;
    let manifest: Manifest = serde_json::from_slice(&bytes).map_err(refused)?;
    if manifest.form > FORM {
        return Err(refused("a later version of this program wrote it"));
    }
    Ok(manifest)
}

/// A member's bytes, when there are at most so many, and they aren't packed more tightly than anything real.
fn whole(zip: &mut ZipArchive<File>, name: &str, most: u64) -> Result<Vec<u8>, StoreError> {
    let member = zip
        .by_name(name)
        .map_err(|error| refused(format_args!("`{name}`: {error}")))?;
    let tight = member
        .compressed_size()
        .saturating_mul(MOST_TIMES)
        .max(SMALL);
    let most = most.min(tight);
    let mut bytes = Vec::new();
    member
        .take(most.saturating_add(1))
        .read_to_end(&mut bytes)
        .map_err(|error| refused(format_args!("`{name}`: {error}")))?;
    if u64::try_from(bytes.len()).is_ok_and(|length| length <= most) {
        Ok(bytes)
    } else {
        Err(refused(format_args!(
            "`{name}` unpacks to more than {most} bytes"
        )))
    }
}

/// The journal's lines.
struct Lines<R> {
    reader: R,
    most: u64,
    read: u64,
}

impl<R: BufRead> Lines<R> {
    /// So many entries more, or as many as there are, or fewer where they are large.
    fn next(&mut self, most: usize) -> Result<Vec<Entry>, StoreError> {
        let mut entries = Vec::new();
        let until = self.read.saturating_add(BYTES_AT_ONCE);
        while entries.len() < most && self.read < until {
            let mut line = Vec::new();
            (&mut self.reader)
                .take(MOST_IN_LINE)
                .read_until(b'\n', &mut line)
                .map_err(|error| refused(format_args!("the journal: {error}")))?;
            if line.is_empty() {
                break;
            }
            self.read = self
                .read
                .saturating_add(u64::try_from(line.len()).unwrap_or(u64::MAX));
            if self.read > self.most {
                return Err(refused("the journal unpacks to more than a journal can"));
            }
            if line.last() != Some(&b'\n') {
                return Err(refused("a line of the journal is broken off or too long"));
            }
            let entry = serde_json::from_slice(&line)
                .map_err(|error| refused(format_args!("the journal: {error}")))?;
            entries.push(entry);
        }
        Ok(entries)
    }
}
