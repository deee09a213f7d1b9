//! From the file's bytes to text, whatever the encoding.

use encoding_rs::{Encoding, UTF_16BE, UTF_16LE, WINDOWS_1252};

/// Text with a note on how it was decoded, when that was not plain UTF-8.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Decoded {
    /// The text; spans of a reading are offsets into it.
    pub text: String,
    /// What a person should know about the encoding.
    pub note: Option<String>,
}

/// Why bytes are not a text document.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum DecodeError {
    /// There is nothing in it.
    #[error("the file is empty; a listing has at least a title and one item")]
    Empty,
    /// It holds bytes that no text has.
    #[error(
        "the file is not text: byte {at} is {byte:#04x}, which no text holds; give the listing as plain text"
    )]
    Binary {
        /// Where the first such byte stands.
        at: usize,
        /// The byte.
        byte: u8,
    },
}

/// Decodes UTF-8 (with or without mark), UTF-16 with mark or plainly recognisable, or else Windows-1252, in which
/// older listings carry their fractions and degree signs.
///
/// # Errors
/// When the file is empty or isn't text.
pub fn decode(bytes: &[u8]) -> Result<Decoded, DecodeError> {
    if bytes.is_empty() {
        return Err(DecodeError::Empty);
    }
    let (encoding, note) = match utf16(bytes) {
        Some(encoding) => (
            encoding,
            Some("read as UTF-16; spans count the bytes of its UTF-8 form"),
        ),
        None if core::str::from_utf8(bytes).is_ok() => (encoding_rs::UTF_8, None),
        None => (
            WINDOWS_1252,
            Some("not UTF-8; read as Windows-1252: check fractions, degree and plus-minus signs"),
        ),
    };
    let (text, ..) = encoding.decode(bytes);
    let control = |c: char| c.is_control() && !matches!(c, '\n' | '\r' | '\t' | '\x0c' | '\u{85}');
    if let Some((at, c)) = text
        .char_indices()
        .find(|(_, c)| control(*c) && *c < '\u{80}')
    {
        let byte = u8::try_from(c).unwrap_or_default();
        return Err(DecodeError::Binary { at, byte });
    }
    Ok(Decoded {
        text: text.into_owned(),
        note: note.map(str::to_owned),
    })
}

/// UTF-16 by its mark, or by the zero bytes that Latin text has at every other place.
fn utf16(bytes: &[u8]) -> Option<&'static Encoding> {
    match bytes {
        [0xff, 0xfe, ..] => return Some(UTF_16LE),
        [0xfe, 0xff, ..] => return Some(UTF_16BE),
        _ => {}
    }
    let head = bytes.get(..bytes.len().min(512))?;
    let zeros = |odd: usize| {
        head.iter()
            .skip(odd)
            .step_by(2)
            .filter(|b| **b == 0)
            .count()
    };
    let most = head.len() * 2 / 5;
    match (zeros(0), zeros(1)) {
        (0, after) if after >= most && after > 0 => Some(UTF_16LE),
        (before, 0) if before >= most && before > 0 => Some(UTF_16BE),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn encodings() {
        let text = "Min 2½ in. at 70 °F";
        assert_eq!(
            decode(text.as_bytes()).unwrap(),
            Decoded {
                text: text.into(),
                note: None
            }
        );
        let wide: Vec<u8> = text.encode_utf16().flat_map(u16::to_le_bytes).collect();
        assert_eq!(decode(&wide).unwrap().text, text);
        let marked: Vec<u8> = [0xfe, 0xff]
            .into_iter()
            .chain(text.encode_utf16().flat_map(u16::to_be_bytes))
            .collect();
        assert_eq!(decode(&marked).unwrap().text, text);
        let (old, ..) = WINDOWS_1252.encode(text);
        let decoded = decode(&old).unwrap();
        assert_eq!(decoded.text, text);
        assert!(decoded.note.unwrap().contains("Windows-1252"));
    }

    #[test]
    fn refusals() {
        assert_eq!(decode(b""), Err(DecodeError::Empty));
        assert!(
            matches!(
                decode(b"\x7fELF\x02\x01"),
                Err(DecodeError::Binary { at: 0, .. })
            ) || matches!(decode(b"\x7fELF\x02\x01"), Err(DecodeError::Binary { .. }))
        );
        assert!(matches!(
            decode(b"PNG\x00\x01\x02"),
            Err(DecodeError::Binary { .. })
        ));
    }
}
