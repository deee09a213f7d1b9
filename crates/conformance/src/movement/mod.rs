//! How far the joint must move, as a percentage and as a length.
//!
//! A design says it in one of two ways, or in both: as a percentage of the joint's nominal width, or as the length by
//! which the structure will close, open or shear the joint after it is filled. What a listing was tested to is a
//! percentage of the installed nominal width (UL 2079, ASTM E1966), so a length becomes one by the width as found. Where
//! both are stated, both must be within what was tested, and the stricter decides.

pub(crate) mod direction;
pub(crate) mod item;
pub(crate) mod share;
pub(crate) mod stricter;

pub(crate) use direction::Direction;
pub(crate) use share::{Length, Share};
pub(crate) use stricter::{Statement, stricter};
