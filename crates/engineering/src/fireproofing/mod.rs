//! Thickness of sprayed fire-resistive material by readings, as the field tests of the codes have it.
//!
//! The rule changed with the edition: before 2009 the average had to reach the design thickness, readings more than a
//! quarter inch above it counted as a quarter inch above; since then at most one reading in ten may be below it. In
//! both, no reading may be below the least allowed.
//!
//! A listing's own requirement at the joint is another question than the member's design, and is asked apart.

mod readings;

pub use readings::{
    AtJoint, Field, FieldAsked, Member, Rule, at_joint, field_test, minimum_reading,
};
