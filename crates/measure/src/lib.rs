//! Exact quantities in the notations of the building trades.
//!
//! A listing says `2-1/2 in. (64 mm)`, `3 pcf`, `25 MSG (0.021 in.)`, `8 ft 3-1/2 in.`, `12,5 mm`.
//! This crate reads those spellings with their place in the text, keeps them as exact ratios, compares
//! them exactly whatever their units, and prints them again as the trade writes them.
//!
//! What is absent: floats, rounding in any comparison, and any knowledge of what is being measured.
//!
//! | module | what lives there |
//! |---|---|
//! | [`number`] | [`Number`], an exact ratio |
//! | [`dimension`], [`mod@unit`] | what kinds of quantity there are, and their units |
//! | [`quantity`] | [`Quantity`]: a number with a unit; conversion and comparison |
//! | [`notation`] | reading numbers, units and quantities from text |
//! | [`mod@print`] | writing them again, in both systems |
//! | [`dual`] | whether `2-1/2 in.` and `64 mm` say the same |

pub mod dimension;
pub mod dual;
pub mod notation;
pub mod number;
pub mod print;
pub mod quantity;
pub mod unit;

pub use dimension::Dimension;
pub use dual::Agreement;
pub use notation::{ParseQuantityError, Stated};
pub use number::Number;
pub use quantity::Quantity;
pub use unit::Unit;
