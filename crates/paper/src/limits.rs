//! What is too much for a document of a few pages, so that no file can keep the program busy for long or fill its memory.

use miniz_oxide::inflate::TINFLStatus;
use miniz_oxide::inflate::decompress_to_vec_zlib_with_limit;

use crate::error::PaperError;

/// Pages: a listing has up to six, a directory of them a few hundred.
const MOST_PAGES: usize = 500;
/// Bytes of one packed stream once unpacked: a page in colour at 300 points an inch is 26 MB.
const MOST_OF_ONE: usize = 64 << 20;
/// Bytes of all packed streams once unpacked.
const MOST_OF_ALL: usize = 256 << 20;
/// How often a stream may be packed in itself.
const MOST_WRAPS: usize = 3;
/// Drawing operations of the whole document.
const MOST_OPERATIONS: usize = 8_000_000;
/// Glyphs of the whole document; a page has some 4000. A glyph takes some 200 bytes until its page is text.
const MOST_GLYPHS: usize = 600_000;
/// Bytes of drawing operations of the whole document, what is drawn again counted again.
const MOST_DRAWN: usize = 128 << 20;
/// How deep drawings may lie in one another.
pub(crate) const MOST_NESTED: usize = 24;
/// How many states of drawing may be put aside at once.
pub(crate) const MOST_STATES: usize = 512;

/// Refuses a file whose packed streams hold more than a document of a few pages can.
///
/// # Errors
/// When one stream, or all together, would unpack to too much.
pub(crate) fn check_packing(bytes: &[u8]) -> Result<(), PaperError> {
    const KEYWORD: &[u8] = b"stream";
    let mut total = 0_usize;
    let mut at = 0;
    while let Some(found) = bytes.get(at..).and_then(|rest| find(rest, KEYWORD)) {
        at += found + KEYWORD.len();
        let rest = bytes.get(at..).unwrap_or_default();
        let data = rest
            .strip_prefix(b"\r\n")
            .or_else(|| rest.strip_prefix(b"\n"))
            .or_else(|| rest.strip_prefix(b"\r"))
            .unwrap_or(rest);
        total = total.saturating_add(unpacked(data)?);
        if total > MOST_OF_ALL {
            return Err(too_much(
                format!("its parts unpack to more than {} MB", MOST_OF_ALL >> 20).as_str(),
            ));
        }
    }
    Ok(())
}

/// How many bytes a stream unpacks to, when it is packed.
fn unpacked(data: &[u8]) -> Result<usize, PaperError> {
    let mut most = 0;
    let mut inner;
    let mut data = data;
    for _ in 0..=MOST_WRAPS {
        // The head of a packed stream: method 8 in the low half of its first byte, both bytes divisible by 31 (RFC 1950, 2.2).
        let [first, second, ..] = *data else {
            return Ok(most);
        };
        let head = u16::from(first) << 8 | u16::from(second);
        if first & 0x0f != 8 || head % 31 != 0 {
            return Ok(most);
        }
        match decompress_to_vec_zlib_with_limit(data, MOST_OF_ONE) {
            Ok(bytes) => inner = bytes,
            Err(error) if error.status == TINFLStatus::HasMoreOutput => {
                let what = format!(
                    "one of its parts unpacks to more than {} MB",
                    MOST_OF_ONE >> 20
                );
                return Err(too_much(&what));
            }
            Err(error) => inner = error.output,
        }
        most = most.max(inner.len());
        data = &inner;
    }
    Err(too_much("one of its parts is packed over and over"))
}

fn find(bytes: &[u8], word: &[u8]) -> Option<usize> {
    let first = *word.first()?;
    let mut at = 0;
    loop {
        let rest = bytes.get(at..)?;
        at += rest.iter().position(|byte| *byte == first)?;
        if bytes.get(at..)?.starts_with(word) {
            return Some(at);
        }
        at += 1;
    }
}

/// Refuses a document of more pages than can be meant.
///
/// # Errors
/// When it has.
pub(crate) fn check_pages(pages: usize) -> Result<(), PaperError> {
    if pages > MOST_PAGES {
        return Err(too_much(&format!(
            "it has {pages} pages, over {MOST_PAGES}"
        )));
    }
    Ok(())
}

fn too_much(what: &str) -> PaperError {
    PaperError::TooMuch {
        what: what.to_owned(),
    }
}

/// What is left of the work that one document may ask for.
#[derive(Debug)]
pub(crate) struct Budget {
    operations: usize,
    glyphs: usize,
    drawn: usize,
}

impl Default for Budget {
    fn default() -> Self {
        Self {
            operations: MOST_OPERATIONS,
            glyphs: MOST_GLYPHS,
            drawn: MOST_DRAWN,
        }
    }
}

impl Budget {
    /// Pays for one drawing operation.
    ///
    /// # Errors
    /// When the document has had all it may.
    pub(crate) fn operation(&mut self) -> Result<(), PaperError> {
        spend(&mut self.operations, 1, "too many drawing operations")
    }

    /// Pays for one glyph.
    ///
    /// # Errors
    /// When the document has had all it may.
    pub(crate) fn glyph(&mut self) -> Result<(), PaperError> {
        spend(&mut self.glyphs, 1, "too many characters")
    }

    /// Pays for so many bytes of drawing operations.
    ///
    /// # Errors
    /// When the document has had all it may.
    pub(crate) fn drawing(&mut self, bytes: usize) -> Result<(), PaperError> {
        spend(&mut self.drawn, bytes, "its drawings repeat too much")
    }
}

fn spend(left: &mut usize, cost: usize, what: &str) -> Result<(), PaperError> {
    *left = left.checked_sub(cost).ok_or_else(|| too_much(what))?;
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_stream_that_unpacks_without_end_is_refused() {
        let bomb = miniz_oxide::deflate::compress_to_vec_zlib(&vec![0; MOST_OF_ONE + 1], 9);
        let mut file = b"%PDF-1.7\n1 0 obj <<>> stream\n".to_vec();
        file.extend(&bomb);
        assert!(matches!(
            check_packing(&file),
            Err(PaperError::TooMuch { .. })
        ));
        let twice = miniz_oxide::deflate::compress_to_vec_zlib(&bomb, 9);
        let mut file = b"%PDF-1.7\n1 0 obj <<>> stream\r\n".to_vec();
        file.extend(&twice);
        assert!(matches!(
            check_packing(&file),
            Err(PaperError::TooMuch { .. })
        ));
        let small = miniz_oxide::deflate::compress_to_vec_zlib(b"BT (a) Tj ET", 9);
        let mut file = b"%PDF-1.7\n1 0 obj <<>> stream\n".to_vec();
        file.extend(&small);
        assert_eq!(check_packing(&file), Ok(()));
    }
}
