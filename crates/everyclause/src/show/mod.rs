//! The answers as people read them: words, tables, marked excerpts. Nothing here decides anything.

mod brief;
pub(crate) mod check;
pub(crate) mod compare;
pub(crate) mod confirm;
mod excerpt;
pub(crate) mod explain;
pub(crate) mod find;
mod framing;
pub(crate) mod glossary;
pub(crate) mod leakage;
pub(crate) mod marked;
pub(crate) mod page;
mod paint;
pub(crate) mod people;
pub(crate) mod quantities;
pub(crate) mod questions;
pub(crate) mod reading;
mod reasons;
pub(crate) mod store;
pub(crate) mod substitution;
mod table;
pub(crate) mod words;
pub(crate) mod work;
pub(crate) mod worked;

pub(crate) use excerpt::Excerpt;
