//! The document as its holder has it.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};

/// Which document was read.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Source {
    /// The file's name.
    pub name: String,
    /// SHA-256 of the file's bytes, in hexadecimal.
    pub sha256: String,
    /// How many bytes the UTF-8 text has.
    pub bytes: usize,
    /// How many pages.
    pub pages: usize,
}

/// SHA-256 in hexadecimal.
pub(crate) fn sha256(bytes: &[u8]) -> String {
    use core::fmt::Write;
    Sha256::digest(bytes)
        .iter()
        .fold(String::with_capacity(64), |mut hex, byte| {
            let _ = write!(hex, "{byte:02x}");
            hex
        })
}
