//! The vocabulary of fire-resistive joints, as data.
//!
//! A listing speaks of runners, packing, overlaps and densities; this crate says which words name which component
//! and property, who owns each property, when it can be seen and with what it is measured; and it knows the movement
//! classes, rating letters, standards and designations that listings cite. The data stand in TOML files beside the
//! source and are compiled in.
//!
//! What is absent: code that decides. Nothing here reads a listing or gives a verdict.
//!
//! | module | what lives there |
//! |---|---|
//! | [`component`], [`property`], [`instrument`] | components, their properties, what measures them |
//! | [`trade`], [`stage`], [`nature`] | who owns a property, when it can be seen, how it comes by its value |
//! | [`attribute`] | attributes that components share, for what the vocabulary doesn't name |
//! | [`movement`], [`rating`], [`standard`], [`term`] | classes, letters, standards, words |
//! | [`designation`] | the North American designation of a joint system, `HW-D-0123` |
//! | [`linear_joint_class`] | the European class of a linear joint seal, `EI 120 – V – M30 – B – W 20 to 100` |
//! | [`glossary`] | what a word means |
//!
//! ```
//! use vocabulary::{Stage, Trade, vocabulary};
//! let wet = vocabulary().property("coating.wet_thickness").unwrap();
//! assert_eq!((wet.trade, wet.last_stage()), (Trade::Firestop, Some(Stage::Wet)));
//! ```

pub mod attribute;
pub mod component;
mod data;
pub mod designation;
pub mod glossary;
pub mod instrument;
pub mod linear_joint_class;
pub mod movement;
mod named;
pub mod nature;
mod nearest;
pub mod property;
pub mod rating;
pub mod stage;
pub mod standard;
pub mod term;
mod terms_in;
pub mod trade;
mod vocabulary;

use std::sync::LazyLock;

pub use attribute::Attribute;
pub use component::{Component, Noun};
pub use designation::{Designation, JointKind, Motion, WidthBand};
pub use glossary::{Entry, GlossaryAnswer};
pub use instrument::{Instrument, Step};
pub use linear_joint_class::LinearJointClass;
pub use movement::{MovementClass, Phase};
pub use named::UnknownName;
pub use nature::Nature;
pub use property::{Cues, Property, TextValue, ValueKind};
pub use rating::{Rating, TemperatureLimit};
pub use stage::Stage;
pub use standard::{Standard, StandardKind};
pub use term::Term;
pub use trade::Trade;
pub use vocabulary::Vocabulary;

/// The vocabulary, read once from the data compiled in.
///
/// ```
/// assert!(vocabulary::vocabulary().properties().count() > 200);
/// ```
#[expect(
    clippy::expect_used,
    reason = "the data are compiled in, and a test reads them"
)]
pub fn vocabulary() -> &'static Vocabulary {
    static VOCABULARY: LazyLock<Vocabulary> =
        LazyLock::new(|| data::load().expect("the embedded vocabulary reads"));
    &VOCABULARY
}

#[cfg(test)]
mod tests {
    #[test]
    fn the_embedded_data_reads() {
        if let Err(error) = super::data::load() {
            panic!("{error}");
        }
    }
}
