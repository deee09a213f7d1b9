//! Movement: how far a joint closes, opens and shears, and how far what is in it can follow.
//!
//! | module | what lives there |
//! |---|---|
//! | [`section`] | second moments of area of plain sections |
//! | [`beam`] | deflection of beams and slab strips: simple, fixed, cantilever, continuous |
//! | [`limits`] | L/n where only the limit is known, thermal movement, storey drift, width of a sealant joint |
//! | [`demand`] | contributions added up into closing, opening and shear |
//! | [`mod@share`] | a movement as a part of the width as found |
//! | [`mod@envelope`] | the widths a joint will see, from the width as found, and whether what was tested covers them |
//! | [`mod@runner`] | a slotted runner through its range: what jams, what unlaps |

pub mod beam;
pub mod beam_asked;
mod curve;
pub mod demand;
pub mod envelope;
pub mod limits;
pub mod runner;
pub mod section;
pub mod share;

pub use beam::{Deflection, deflection};
pub use beam_asked::{BeamAsked, PointLoad, SpanAsked, Supports};
pub use demand::{Cause, Contribution, Demand, Moves, Sense, When, combine};
pub use envelope::{Envelope, EnvelopeAsked, envelope};
pub use limits::{
    DriftAsked, JointWidthAsked, deflection_limit, design_drift, expansion, sealant_joint_width,
    thermal,
};
pub use runner::{End, Runner, RunnerAsked, runner};
pub use share::{Share, ShareAsked, part_of_width, percent_in_words, share};

/// What the percentages rest on.
const SHARE_SOURCE: &str =
    "the tested movement is a percentage of the installed nominal width (UL 2079, ASTM E1966)";
