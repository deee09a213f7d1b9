//! Attachments in a folder: `ab/ab12…`.

use std::fs::{self, File};
use std::io::{self, Read, Write};
use std::path::{Path, PathBuf};

use super::{MOST_BYTES, missing};
use crate::canonical::is_sha256;
use crate::error::StoreError;

#[derive(Debug, Clone)]
pub(crate) struct Folder {
    root: PathBuf,
}

impl Folder {
    pub(super) const fn at(root: PathBuf) -> Self {
        Self { root }
    }

    /// The path of a hash; none for what is no hash, and could lead elsewhere.
    fn path(&self, sha256: &str) -> Result<PathBuf, StoreError> {
        match sha256.get(..2) {
            Some(start) if is_sha256(sha256) => Ok(self.root.join(start).join(sha256)),
            _ => Err(StoreError::Attachment(format!(
                "`{sha256}` is no hash of an attachment"
            ))),
        }
    }

    /// Writes bytes beside their place, then puts them in it, each step on the disk before the next.
    pub(super) fn put(&self, sha256: &str, bytes: &[u8]) -> Result<(), StoreError> {
        let path = self.path(sha256)?;
        let written = || -> io::Result<()> {
            let folder = path.parent().unwrap_or(&self.root);
            // Where it is there already, whoever put it there may have been killed before its name was on the disk.
            if !(path.is_file() && fs::read(&path)? == bytes) {
                fs::create_dir_all(folder)?;
                let mut beside = tempfile::Builder::new()
                    .prefix("unfinished-")
                    .tempfile_in(folder)?;
                beside.write_all(bytes)?;
                beside.as_file().sync_all()?;
                beside.persist(&path).map_err(|error| error.error)?;
            }
            for folder in [Some(folder), folder.parent(), self.root.parent()] {
                sync(folder)?;
            }
            Ok(())
        };
        written().map_err(|error| {
            StoreError::Attachment(format!("{} can't be written: {error}", path.display()))
        })
    }

    pub(super) fn get(&self, sha256: &str) -> Result<Vec<u8>, StoreError> {
        let path = self.path(sha256)?;
        let read = || -> io::Result<Vec<u8>> {
            let mut bytes = Vec::new();
            // One byte more than may be there, so that a file that grew isn't taken for whole.
            File::open(&path)?
                .take(MOST_BYTES.saturating_add(1))
                .read_to_end(&mut bytes)?;
            Ok(bytes)
        };
        read().map_err(|error| match error.kind() {
            io::ErrorKind::NotFound => missing(sha256),
            _ => StoreError::Attachment(format!("{} can't be read: {error}", path.display())),
        })
    }
}

/// Puts a folder's list of names on the disk.
pub(crate) fn sync(folder: Option<&Path>) -> io::Result<()> {
    match folder {
        // Elsewhere a folder can't be opened; there, renaming is on the disk when it is done.
        Some(folder) if cfg!(unix) && !folder.as_os_str().is_empty() => {
            File::open(folder)?.sync_all()
        }
        _ => Ok(()),
    }
}
