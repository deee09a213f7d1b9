//! A numbered part of a listing.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::span::Span;

/// A numbered part of a listing, nested by its path: `3`, `3A`, `3A1`.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Item {
    /// The path from the outermost item, as people cite it.
    pub path: String,
    /// The title, without marks; empty when the item has none.
    pub title: String,
    /// From its marker to the end of its last line, nested items included.
    pub span: Span,
    /// The option that the whole item belongs to.
    pub option: Option<String>,
    /// The path of the item it is nested in.
    pub parent: Option<String>,
}

/// A path or choice without what people put around it, to compare one with another: `Item 3A` and `3.A` as `3a`.
///
/// ```
/// assert_eq!(listing::bare_path("Item 3A"), listing::bare_path("3.A"));
/// ```
pub fn bare_path(written: &str) -> String {
    let lower = written.trim().to_lowercase();
    let bare = lower
        .strip_prefix("items")
        .or_else(|| lower.strip_prefix("item"))
        .unwrap_or(&lower);
    bare.chars()
        .filter(|letter| letter.is_alphanumeric())
        .collect()
}
