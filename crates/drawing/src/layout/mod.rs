//! Putting words where they can be read: how wide a text is, call-outs whose leaders don't cross, dimensions that don't collide.

mod dimensions;
mod leaders;
mod text;

pub(crate) use dimensions::{LANE, Occupied, SIZE, place};
pub(crate) use leaders::{Label, assign};
pub(crate) use text::{width, wrapped};
