//! The zipped parts of a workbook.

use std::io::{Cursor, Read};

use zip::ZipArchive;
use zip::result::ZipError;

use crate::import::limits::MOST_UNPACKED;
use crate::import::problem::Wrong;

/// The parts, with how much may still be unpacked.
pub(super) struct Package<'b> {
    archive: ZipArchive<Cursor<&'b [u8]>>,
    left: u64,
}

impl<'b> Package<'b> {
    pub(super) fn open(bytes: &'b [u8]) -> Result<Self, Wrong> {
        let archive = ZipArchive::new(Cursor::new(bytes)).map_err(|error| damaged(&error))?;
        Ok(Self {
            archive,
            left: MOST_UNPACKED,
        })
    }

    /// The text of a part; none when there is no such part.
    pub(super) fn part(&mut self, path: &str) -> Result<Option<String>, Wrong> {
        let part = match self.archive.by_name(path) {
            Ok(part) => part,
            Err(ZipError::FileNotFound) => return Ok(None),
            Err(error) => return Err(damaged(&error)),
        };
        let mut bytes = Vec::new();
        let read = part.take(self.left + 1).read_to_end(&mut bytes);
        let read = read.map_err(|error| damaged(&error))?;
        let too_large = || {
            Wrong::new(
                format!(
                    "the workbook unpacks to more than {} MB",
                    MOST_UNPACKED >> 20
                ),
                "save the table alone, as CSV",
            )
        };
        self.left = self.left.checked_sub(read as u64).ok_or_else(too_large)?;
        let text = String::from_utf8(bytes);
        text.map(Some)
            .map_err(|_| damaged(&format_args!("{path} isn't in UTF-8")))
    }

    /// The text of a part that must be there.
    pub(super) fn required(&mut self, path: &str) -> Result<String, Wrong> {
        self.part(path)?
            .ok_or_else(|| damaged(&format_args!("it has no part {path}")))
    }
}

/// What is said of a workbook that can't be read.
pub(super) fn damaged(why: &dyn core::fmt::Display) -> Wrong {
    Wrong::new(
        format!("the workbook can't be read: {why}"),
        "open it in a spreadsheet and save it anew as .xlsx, or save the table as CSV",
    )
}
