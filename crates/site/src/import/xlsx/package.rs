//! The zipped parts of a workbook.

use std::io::{BufRead, BufReader, Cursor};

use zip::ZipArchive;
use zip::result::ZipError;

use super::xml::Pieces;
use crate::import::limits::{MOST_PARTS, MOST_UNPACKED};
use crate::import::members::Members;
use crate::import::problem::Wrong;

/// How many bytes are looked through at once.
const AT_ONCE: usize = 64 << 10;

/// The parts, with how much may still be unpacked.
pub(super) struct Package<'b> {
    archive: ZipArchive<Cursor<&'b [u8]>>,
    left: u64,
}

impl<'b> Package<'b> {
    pub(super) fn open(bytes: &'b [u8]) -> Result<Self, Wrong> {
        let mut parts = Members::up_to(MOST_PARTS);
        bytes.chunks(AT_ONCE).for_each(|piece| parts.look(piece));
        if parts.are_too_many() {
            return Err(damaged(&format_args!(
                "it has more than {MOST_PARTS} parts"
            )));
        }
        let archive = ZipArchive::new(Cursor::new(bytes)).map_err(|error| damaged(&error))?;
        Ok(Self {
            archive,
            left: MOST_UNPACKED,
        })
    }

    /// A part, read as it is unpacked.
    ///
    /// # Errors
    /// When there is no such part.
    pub(super) fn part(
        &mut self,
        path: &str,
    ) -> Result<Pieces<'_, impl BufRead + use<'_, 'b>>, Wrong> {
        match self.archive.by_name(path) {
            Ok(part) => Ok(Pieces::of(BufReader::new(part), &mut self.left)),
            Err(ZipError::FileNotFound) => Err(damaged(&format_args!("it has no part {path}"))),
            Err(error) => Err(damaged(&error)),
        }
    }
}

/// What is said of a workbook that can't be read.
pub(super) fn damaged(why: &dyn core::fmt::Display) -> Wrong {
    Wrong::new(
        format!("the workbook can't be read: {why}"),
        "open it in a spreadsheet and save it anew as .xlsx, or save the table as CSV",
    )
}
