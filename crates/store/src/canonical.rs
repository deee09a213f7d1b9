//! One encoding for one value, so that equal values have equal hashes: JSON in the canonical form of RFC 8785.
//!
//! Numbers in that form are binary floats. Quantities are text, and whatever else is a number here is a count far below 2^53.

use serde::Serialize;
use sha2::{Digest, Sha256};

use crate::error::StoreError;

/// A value in the canonical form.
///
/// # Errors
/// When the value isn't plain data with text keys.
pub(crate) fn text(value: &impl Serialize) -> Result<String, StoreError> {
    serde_json_canonicalizer::to_string(value).map_err(StoreError::unkeepable)
}

/// SHA-256 of some bytes, in 64 small hexadecimal digits.
pub(crate) fn sha256(bytes: &[u8]) -> String {
    hexadecimal(&Sha256::digest(bytes))
}

/// Bytes in small hexadecimal digits.
pub(crate) fn hexadecimal(bytes: &[u8]) -> String {
    bytes
        .iter()
        .flat_map(|byte| [byte >> 4, byte & 0xf])
        .filter_map(|digit| char::from_digit(u32::from(digit), 16))
        .collect()
}

/// Whether a text is the SHA-256 of something: 64 small hexadecimal digits.
pub(crate) fn is_sha256(text: &str) -> bool {
    text.len() == 64
        && text
            .bytes()
            .all(|byte| matches!(byte, b'0'..=b'9' | b'a'..=b'f'))
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::{is_sha256, sha256, text};

    #[test]
    fn members_stand_in_order_and_nothing_is_spaced() {
        // RFC 8785, section 3.2.3: members sorted, no white space, only what must be escaped is.
        let value = json!({"b": 1, "a": "\u{20ac}\n\"", "c": [true, null]});
        assert_eq!(
            text(&value).unwrap(),
            "{\"a\":\"\u{20ac}\\n\\\"\",\"b\":1,\"c\":[true,null]}"
        );
    }

    #[test]
    fn the_hash_is_that_of_the_standard() {
        // FIPS 180-2, appendix B.1.
        let of_abc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
        assert_eq!(sha256(b"abc"), of_abc);
        assert!(is_sha256(of_abc));
        assert!(!is_sha256(&of_abc.to_uppercase()));
        assert!(!is_sha256("../ba7816"));
    }
}
