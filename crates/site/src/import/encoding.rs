//! From a file's bytes to its text.

use std::borrow::Cow;

use encoding_rs::{Encoding, WINDOWS_1252};

use super::problem::Wrong;

/// A file's text, and whether its encoding had to be assumed.
#[derive(Debug, PartialEq, Eq)]
pub(crate) struct Text<'b> {
    pub text: Cow<'b, str>,
    pub assumed: bool,
}

/// Reads bytes as UTF-8, as UTF-16 where a byte order mark says so, and else as Windows-1252, which
/// spreadsheets on Windows write.
///
/// # Errors
/// When the bytes aren't text.
pub(crate) fn text(bytes: &[u8]) -> Result<Text<'_>, Wrong> {
    let (text, assumed) = decoded(bytes)?;
    match text
        .chars()
        .find(|c| c.is_control() && !matches!(c, '\t' | '\n' | '\r' | '\u{80}'..='\u{9f}'))
    {
        Some(_) => Err(not_text()),
        None => Ok(Text { text, assumed }),
    }
}

fn decoded(bytes: &[u8]) -> Result<(Cow<'_, str>, bool), Wrong> {
    if let Some((encoding, mark)) = Encoding::for_bom(bytes) {
        let after = bytes.get(mark..).unwrap_or_default();
        let text = encoding.decode_without_bom_handling_and_without_replacement(after);
        return text.map(|text| (text, false)).ok_or_else(not_text);
    }
    match core::str::from_utf8(bytes) {
        Ok(text) => Ok((Cow::Borrowed(text), false)),
        Err(_) => Ok((WINDOWS_1252.decode_without_bom_handling(bytes).0, true)),
    }
}

fn not_text() -> Wrong {
    Wrong::new(
        "the file isn't text that can be read",
        "save it as CSV in UTF-8, or as an .xlsx workbook",
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(bytes: &[u8], expected: &str, assumed: bool) {
        assert_eq!(
            text(bytes),
            Ok(Text {
                text: Cow::Borrowed(expected),
                assumed
            })
        );
    }

    #[test]
    fn the_encodings_that_spreadsheets_write() {
        check("2½ in.".as_bytes(), "2½ in.", false);
        check(b"\xef\xbb\xbf2\xc2\xbd in.", "2½ in.", false);
        check(b"\xff\xfe2\x00\xbd\x00", "2½", false);
        check(b"\xfe\xff\x002\x00\xbd", "2½", false);
        check(b"\xbd \xbc \xbe \xb0 \xb5", "½ ¼ ¾ ° µ", true);
        check(b"", "", false);
    }

    #[test]
    fn bytes_that_are_no_text() {
        for bytes in [
            &b"\x00\x01\x02"[..],
            b"abc\x00",
            b"\xff\xfe\x00\xd8",
            b"\x7f",
            b"\xef\xbb\xbf\xff",
        ] {
            assert_eq!(text(bytes), Err(not_text()), "{bytes:?}");
        }
    }
}
