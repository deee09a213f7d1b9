//! Attributes that components share.

use measure::Dimension;

use crate::property::Cues;

/// An attribute as a concept, whatever it is an attribute of: a depth, an overlap, a spacing.
///
/// The reader falls back on it where the component is not in the vocabulary: "min 4 in. deep" is a depth.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Attribute {
    /// The name.
    pub name: String,
    /// The plain title.
    pub title: String,
    /// One sentence that defines it.
    pub definition: String,
    /// The dimensions its quantities may have.
    pub dimensions: Vec<Dimension>,
    /// Words by which listings name it near a number.
    pub cues: Cues,
}
