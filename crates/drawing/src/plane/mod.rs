//! Points, outlines and what two of them have in common. Lengths are millimetres; y runs downwards, as on a sheet.

mod band;
mod common;
mod outline;
mod point;

pub(crate) use band::{band, offset, part_of};
pub use common::common_area;
pub(crate) use common::crossing;
pub use outline::{Edge, Outline};
pub(crate) use point::pt;
pub use point::{Box2, Point};
