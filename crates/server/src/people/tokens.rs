//! Random tokens, what is kept of them, and what a form must hold.

use sha2::{Digest, Sha256};
use subtle::ConstantTimeEq;

use crate::trouble::Trouble;

/// 256 random bits in 64 small hexadecimal digits.
///
/// # Errors
/// When the system has no randomness to give.
pub(crate) fn fresh() -> Result<String, Trouble> {
    let mut bytes = [0; 32];
    getrandom::fill(&mut bytes)
        .map_err(|error| Trouble::Broken(format!("the system gives no random numbers: {error}")))?;
    Ok(hexadecimal(&bytes))
}

/// What is kept of a token. Nobody finds 256 random bits from their hash, so a plain one does.
pub(crate) fn hashed(token: &str) -> String {
    hexadecimal(&Sha256::digest(token.as_bytes()))
}

/// What the forms of a session must hold. Another site can't tell it, as it can't read the cookie; and who reads a form can't tell the
/// cookie from it.
pub(crate) fn form_token(secret: &str) -> String {
    hexadecimal(&Sha256::digest(format!("a form of the session {secret}")))
}

/// Whether two texts are the same, in a time that says nothing of where they differ.
pub(crate) fn same(one: &str, other: &str) -> bool {
    one.as_bytes().ct_eq(other.as_bytes()).into()
}

/// Whether a text can be a token at all.
pub(super) fn may_be(text: &str) -> bool {
    text.len() == 64
        && text
            .bytes()
            .all(|byte| matches!(byte, b'0'..=b'9' | b'a'..=b'f'))
}

fn hexadecimal(bytes: &[u8]) -> String {
    bytes
        .iter()
        .flat_map(|byte| [byte >> 4, byte & 0xf])
        .filter_map(|digit| char::from_digit(u32::from(digit), 16))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::{form_token, fresh, hashed, may_be, same};

    #[test]
    fn tokens_are_all_different_and_are_kept_by_their_hash() {
        let tokens: std::collections::BTreeSet<String> =
            (0..100).map(|_| fresh().unwrap()).collect();
        assert_eq!(tokens.len(), 100);
        for token in &tokens {
            assert!(may_be(token) && same(token, token));
            assert!(!tokens.contains(&hashed(token)) && form_token(token) != hashed(token));
        }
        // FIPS 180-2, appendix B.1.
        assert_eq!(
            hashed("abc"),
            "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
        );
        assert!(!may_be("") && !may_be(&"g".repeat(64)) && !same("a", "ab"));
    }
}
