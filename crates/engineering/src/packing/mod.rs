//! Packing: how thick before it is compressed, of which strips, cut how wide, and what it comes to in the joint.
//!
//! Percent compression is of the uncompressed thickness: `c = (T - W) / T`, so `T = W / (1 - c)`. "Compressed 50 %" is
//! therefore twice the width of the joint, and not half as much again, which is 33.3 %.
//!
//! | module | what lives there |
//! |---|---|
//! | [`compression`] | the rule a listing gives, and thickness, compression and density from each other |
//! | [`stack`] | which strips of the stock at hand make the thickness |
//! | [`choose`] | the stack for the widths of a joint, and what it comes to at each |
//! | [`mod@butts`] | pieces in a run, their butt joints and how they are staggered |

pub mod butts;
pub mod choose;
pub mod compression;
mod report;
pub mod stack;

pub use butts::{Butts, ButtsAsked, butts};
pub use choose::{Direction, Packing, PackingAsked, Reached, packing};
pub use compression::{Rule, thickness};
pub use stack::{Layer, Stack};

/// What the packing formulas rest on.
pub(crate) const COMPRESSION_SOURCE: &str = "certification guide information for perimeter joint packing: T = 100 W / (100 - I), W the installed width";
/// What the density formula rests on.
pub(crate) const DENSITY_SOURCE: &str =
    "the mass stays as it is while the thickness goes from T to W";
