//! Words and abbreviations of the trade.

use serde::Deserialize;

/// A word of the trade that is no component, property or standard.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Term {
    /// The word.
    pub name: String,
    /// The plain title.
    pub title: String,
    /// Other words for it.
    #[serde(default)]
    pub synonyms: Vec<String>,
    /// One sentence that defines it.
    pub definition: String,
}
