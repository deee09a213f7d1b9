//! A document as read.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::clause::Clause;
use super::header::Header;
use super::item::Item;
use super::options::OptionGroup;
use super::source::Source;
use super::span::Span;
use super::warning::Warning;

/// A document as read: a draft until a person confirms it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Reading {
    /// Which document.
    pub source: Source,
    /// What its head states.
    pub header: Header,
    /// Its numbered items, in order.
    pub items: Vec<Item>,
    /// Its options, in order.
    pub options: Vec<OptionGroup>,
    /// Its clauses, in order.
    pub clauses: Vec<Clause>,
    /// What every byte of it is: consecutive places that cover the text from end to end.
    pub places: Vec<Place>,
    /// How many bytes are accounted for.
    pub accounted: Accounted,
    /// What a person should look at.
    pub warnings: Vec<Warning>,
}

/// A stretch of the source and what it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Place {
    /// What it is.
    pub kind: PlaceKind,
    /// Where.
    pub span: Span,
}

/// What a stretch of the source is.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
#[serde(rename_all = "snake_case")]
pub enum PlaceKind {
    /// The head of the document.
    Header,
    /// An item's marker and title.
    Heading,
    /// The words of one or more clauses.
    Clause,
    /// A page head or foot, a rule or other furniture.
    Furniture,
    /// White space.
    Space,
}

/// How many bytes of how many are accounted for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Accounted {
    /// Bytes that a place covers.
    pub bytes: usize,
    /// Bytes of the source.
    pub of: usize,
}
