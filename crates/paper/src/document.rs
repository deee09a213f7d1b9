//! The file: its pages, one after the other.

use std::panic::{AssertUnwindSafe, catch_unwind};

use hayro_syntax::object::{Array, Dict, Stream};
use hayro_syntax::page::Page;
use hayro_syntax::{DecryptionError, LoadPdfError, Pdf};

use crate::content::{Contents, Interpreter, Shown};
use crate::error::PaperError;
use crate::layout;
use crate::limits;
use crate::model::{PageSize, Paper};

/// How far into a file its head may stand (ISO 32000-1, annex H.3, note 13: readers look through the first 1024 bytes).
const HEAD_WITHIN: usize = 1024;

/// Whether bytes begin as a PDF does.
pub fn is_pdf(bytes: &[u8]) -> bool {
    let head = bytes
        .get(..bytes.len().min(HEAD_WITHIN))
        .unwrap_or_default();
    head.windows(5).any(|window| window == b"%PDF-")
}

/// Reads a PDF: its text, the place of every byte of it, and what a person should know beside.
///
/// # Errors
/// When the bytes are no PDF, or one that is locked, damaged beyond finding its pages, or larger than a listing can be; and
/// when no page holds any text.
pub fn read(bytes: &[u8]) -> Result<Paper, PaperError> {
    if !is_pdf(bytes) {
        return Err(PaperError::NotPdf);
    }
    limits::check_packing(bytes)?;
    // The libraries below are made not to panic, whatever the bytes; should one of them all the same, the file is at fault for whoever
    // reads it, and the program goes on.
    let shown =
        catch_unwind(AssertUnwindSafe(|| shown(bytes))).unwrap_or(Err(PaperError::Damaged))?;
    layout::lay_out(&shown)
}

/// What every page shows.
fn shown(bytes: &[u8]) -> Result<Vec<Shown>, PaperError> {
    let pdf = Pdf::new(bytes.to_vec()).map_err(|error| match error {
        LoadPdfError::Decryption(
            DecryptionError::PasswordProtected
            | DecryptionError::UnsupportedAlgorithm
            | DecryptionError::InvalidEncryption
            | DecryptionError::MissingIDEntry,
        ) => PaperError::Locked,
        LoadPdfError::Invalid => PaperError::Damaged,
    })?;
    let pages = pdf.pages();
    if pages.is_empty() {
        return Err(PaperError::Damaged);
    }
    limits::check_pages(pages.len())?;
    let mut interpreter = Interpreter::new(pdf.xref());
    let mut shown = Vec::with_capacity(pages.len());
    for page in pages.iter() {
        shown.push(page_shown(page, &mut interpreter)?);
    }
    let catalog = pdf.xref().get::<Dict<'_>>(pdf.xref().root_id());
    let stated = catalog
        .and_then(|catalog| catalog.get::<Dict<'_>>("Pages"))
        .and_then(|tree| tree.get::<u32>("Count"))
        .and_then(|count| usize::try_from(count).ok());
    if let (Some(stated), Some(last)) = (stated, shown.last_mut())
        && stated > pages.len()
    {
        last.faults.push(format!(
            "the file says that it has {stated} pages; only {} could be found",
            pages.len()
        ));
    }
    Ok(shown)
}

/// What a page shows.
fn page_shown<'a>(page: &Page<'a>, interpreter: &mut Interpreter<'a>) -> Result<Shown, PaperError> {
    let (width, height) = page.render_dimensions();
    let size = PageSize {
        width: f64::from(width),
        height: f64::from(height),
    };
    let mut faults = Vec::new();
    let operations = contents(page.raw(), &mut faults);
    let mut shown = interpreter.page(&Contents {
        operations: &operations,
        resources: page.resources(),
        to_page: page.initial_transform(true).as_coeffs(),
        annotations: page.raw().get::<Array<'_>>("Annots"),
        size,
    })?;
    shown.faults.splice(0..0, faults);
    Ok(shown)
}

/// The drawing operations of a page, its parts put together (ISO 32000-1, 7.7.3.3).
fn contents(page: &Dict<'_>, faults: &mut Vec<String>) -> Vec<u8> {
    let mut whole = Vec::new();
    let mut add = |part: &Stream<'_>| match part.decoded_data() {
        Ok(data) => {
            whole.extend_from_slice(&data);
            whole.push(b'\n');
        }
        Err(_) => faults.push("a part of the page can't be unpacked".to_owned()),
    };
    if let Some(one) = page.get::<Stream<'_>>("Contents") {
        add(&one);
    } else if let Some(parts) = page.get::<Array<'_>>("Contents") {
        let named = parts.raw_iter().count();
        let mut found = 0;
        for part in parts.iter::<Stream<'_>>() {
            found += 1;
            add(&part);
        }
        if found < named {
            faults.push(format!(
                "{} of the {named} parts of the page can't be found",
                named - found
            ));
        }
    } else if page.contains_key("Contents") {
        faults.push("what the page shows can't be found".to_owned());
    }
    whole
}
