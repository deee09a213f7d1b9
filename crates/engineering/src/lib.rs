//! Computes what a listing leaves to compute: exactly, with its source, and explained.
//!
//! Every computation takes values with their provenance and answers with a [`Computed`]: the result, and the
//! [`Worked`] calculation that gave it (inputs, formulas with their sources, steps, results in both unit systems,
//! findings). Whatever shows a result renders that one value.
//!
//! | module | what lives there |
//! |---|---|
//! | [`packing`] | compression, strips from stock, butt joints |
//! | [`flutes`] | the voids under a steel deck, and what fills them |
//! | [`films`] | wet and dry films, coverage, sealant beads |
//! | [`movement`] | how far a joint moves, and how far what is in it can follow |
//! | [`leakage`] | air through a barrier |
//! | [`takeoff`] | quantities of a schedule, and stock cut to lengths |
//! | [`fireproofing`] | thickness of sprayed material by readings |
//! | [`worked`] | the worked calculation |
//! | [`known`], [`between`] | values with provenance, readings, and what their uncertainty leaves open |
//!
//! What is absent: files, the clock, randomness, and binary floats. Numbers are exact ratios; where an angle or the
//! place of a greatest deflection forces an approximation, its bound is carried as a range. A finding that the
//! uncertainty of a reading can turn is open.

pub mod between;
mod error;
mod exact;
pub mod films;
pub mod fireproofing;
pub mod flutes;
pub mod known;
pub mod leakage;
pub mod movement;
pub mod packing;
pub mod takeoff;
mod units;
pub mod worked;

pub use between::Between;
pub use error::Error;
pub use known::{Known, Readings};
pub use worked::{Computed, Standing, Worked};
