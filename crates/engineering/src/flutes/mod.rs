//! Flutes: the voids that a ribbed steel deck leaves above a wall, and what fills them.
//!
//! Seen from below, a deck bears on the wall with the bottoms of its ribs; between two ribs a void is left that is as
//! deep as the deck. The nominal width of a head-of-wall joint leaves these voids out.
//!
//! | module | what lives there |
//! |---|---|
//! | [`profile`] | profiles of steel deck as data, and profiles that a person gives |
//! | [`angle`] | the sine of an angle, with a bound of its error |
//! | [`mod@crossing`] | voids along a wall that crosses the ribs or runs beside them: count, area, volume |
//! | [`mod@plug`] | the plug for a void, and the board cut to it or straight |

pub mod angle;
pub mod crossing;
pub mod plug;
pub mod profile;

pub use crossing::{Crossing, CrossingAsked, crossing, voids_across};
pub use plug::{Plug, PlugAsked, plug};
pub use profile::{Profile, profiles};
