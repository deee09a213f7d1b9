//! Writing an archive.

use std::collections::BTreeSet;
use std::fs::File;
use std::io::{self, Write};
use std::path::Path;

use tempfile::NamedTempFile;
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, ZipWriter};

use super::read::Archive;
use super::{ATTACHMENTS, FORM, JOURNAL, MANIFEST, Manifest};
use crate::attachments::sync;
use crate::error::StoreError;
use crate::journal::{Replay, follow};
use crate::store::Store;

/// How many entries are read at once.
const AT_ONCE: i64 = 1000;

impl Store {
    /// Writes the whole project into one file, as it is when this begins. Others may go on writing meanwhile. The file is written whole or
    /// not at all, and never over another.
    ///
    /// # Errors
    /// When there is a file already; when it can't be written; or when the journal's chain doesn't hold or an attachment isn't what was put
    /// there, as a copy of it would be worth nothing.
    pub async fn export(&self, path: &Path) -> Result<Manifest, StoreError> {
        let failing = |error: io::Error| {
            StoreError::Archive(format!("{} can't be written: {error}", path.display()))
        };
        if path.exists() {
            return Err(StoreError::Archive(format!(
                "there is a file {} already, and nothing was written over it",
                path.display()
            )));
        }
        let folder = path
            .parent()
            .filter(|folder| !folder.as_os_str().is_empty())
            .unwrap_or(Path::new("."));
        let (beside, manifest) = match self.beside(folder, CompressionMethod::Deflated).await {
            // A journal that says the same over and over packs so well that it would be taken for a bomb: it goes in as it is.
            Err(StoreError::Archive(_)) => self.beside(folder, CompressionMethod::Stored).await?,
            written => written?,
        };
        beside
            .persist_noclobber(path)
            .map_err(|error| failing(error.error))?;
        sync(Some(folder)).map_err(failing)?;
        Ok(manifest)
    }

    /// Writes an archive into a folder, under a name that it doesn't keep, and looks whether it could be restored: what is wrong with it is
    /// found out now, while the store is still there.
    async fn beside(
        &self,
        folder: &Path,
        journal: CompressionMethod,
    ) -> Result<(NamedTempFile, Manifest), StoreError> {
        let beside = tempfile::Builder::new()
            .prefix("unfinished-")
            .tempfile_in(folder)
            .map_err(unwritten)?;
        let mut zip = ZipWriter::new(beside.as_file().try_clone().map_err(unwritten)?);
        let manifest = self.write_members(&mut zip, journal).await?;
        let file = zip.finish().map_err(unwritten)?;
        file.sync_all().map_err(unwritten)?;
        Archive::open(beside.path())?.check()?;
        Ok((beside, manifest))
    }

    async fn write_members(
        &self,
        zip: &mut ZipWriter<File>,
        journal: CompressionMethod,
    ) -> Result<Manifest, StoreError> {
        let head = self.head().await?;
        let mut replay = Replay::default();
        begin(zip, JOURNAL, journal)?;
        while replay.head.seq < head.seq {
            let most = AT_ONCE.min(head.seq - replay.head.seq);
            let entries = self.entries_after(replay.head.seq, most).await?;
            if entries.is_empty() {
                break;
            }
            follow(&mut replay, &entries)?;
            for entry in &entries {
                let line = serde_json::to_string(entry).map_err(StoreError::unkeepable)?;
                writeln!(zip, "{line}").map_err(unwritten)?;
            }
        }
        if replay.head != head {
            return Err(StoreError::Archive(format!(
                "the journal doesn't end with entry {} as it should; no archive was written",
                head.seq
            )));
        }
        let attachments: BTreeSet<&String> = replay.attachments.keys().collect();
        for sha256 in &attachments {
            let bytes = self.attachment(sha256).await?;
            // As it is: documents and photographs hardly pack, and one that packs too well would be taken for a bomb.
            let name = format!("{ATTACHMENTS}{sha256}");
            begin(zip, &name, CompressionMethod::Stored)?;
            zip.write_all(&bytes).map_err(unwritten)?;
        }
        let manifest = Manifest {
            form: FORM,
            head,
            attachments: attachments.len(),
        };
        begin(zip, MANIFEST, CompressionMethod::Deflated)?;
        let text = serde_json::to_string_pretty(&manifest).map_err(StoreError::unkeepable)?;
        zip.write_all(text.as_bytes()).map_err(unwritten)?;
        Ok(manifest)
    }
}

/// Begins a member. The same project makes the same bytes: members have no date.
fn begin(
    zip: &mut ZipWriter<File>,
    name: &str,
    method: CompressionMethod,
) -> Result<(), StoreError> {
    let options = SimpleFileOptions::default()
        .compression_method(method)
        .large_file(name == JOURNAL);
    zip.start_file(name, options).map_err(unwritten)
}

fn unwritten(error: impl core::fmt::Display) -> StoreError {
    StoreError::Archive(format!("the archive can't be written: {error}"))
}
