//! Signs that a line of a list begins with, as typed and as text taken from a page has them.

/// The signs of a list.
pub(crate) const LIST_SIGNS: [char; 11] = ['•', '-', '–', '*', '▪', '●', '◦', '‣', '■', '○', '·'];
