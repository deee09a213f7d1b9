//! Air through a barrier: L ratings times length or area, against the code's limits.
//!
//! A joint's L rating is air for each length of joint; a penetration's is air for each area of opening. The two are
//! other kinds of quantity, and one in the place of the other is refused.

pub mod joints;
pub mod openings;

pub use joints::{JointLeakage, JointsAsked, Leakage, barrier_leakage};
pub use openings::{Opening, Openings, OpeningsAsked, opening_leakage};
