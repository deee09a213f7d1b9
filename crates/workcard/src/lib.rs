//! What is to be made and brought for a joint, as its listing asks and the check found.
//!
//! The card of one joint, that of a mark, and the take-off of a schedule bind the clauses that apply at a joint, and what is known of it, to the
//! computations of `engineering`. Nothing is computed here: the values go to that library, and its worked calculations come back.
//!
//! | module | what lives there |
//! |---|---|
//! | [`card`] | the card of a mark, and that of one joint |
//! | [`joint`] | all the work at one joint |
//! | [`mod@line`] | the card of one joint line by line, each with the clauses it rests on |
//! | [`words`] | all of it in words |
//! | [`order`] | what some joints take together |
//! | [`quantities`] | what all the joints of a project take, by mark and storey |
//! | [`at_hand`] | what the installer has at hand |
//! | `asks` | what the listing asks of a joint, as the check bound it |
//! | `facts` | what the schedule knows of it |
//! | `packing`, `fills` | its packing; its coating and sealant |
//! | `fireproofing` | what was measured of the fireproofing there |
//! | [`framing`] | how far the runner lets studs and board move, the board's screws |
//! | [`flutes`] | the flutes of a deck across the wall |
//! | [`rows`] | fasteners, clips and runners along a joint |
//! | `notes` | what a card takes to be so, and leaves out |
//!
//! What is absent: files, the clock, verdicts (they come from `conformance`), and layout.

mod asks;
pub mod at_hand;
pub mod card;
mod facts;
mod fills;
mod fireproofing;
pub mod flutes;
pub mod framing;
pub mod joint;
pub mod line;
mod notes;
pub mod order;
mod packing;
pub mod quantities;
pub mod rows;
pub mod words;

use conformance::JointResult;
use listing::Reading;
use site::{Facts, Joint};

pub use at_hand::AtHand;
pub use card::{Asked, Brought, Card, JointCard};
pub use joint::JointWork;
pub use line::Line;
pub use order::Ordered;

/// The cautions of every card.
pub const CAUTIONS: [&str; 5] = [
    "Dust and fibres: cutting mineral wool takes gloves, sleeves, glasses and a particulate mask; cutting concrete or block makes respirable silica (29 CFR 1926.1153).",
    "Heights: fall protection from 6 ft up in construction (29 CFR 1926.501).",
    "Spray: eye and lung protection while mixing and spraying, ventilation during and after.",
    "Old sprayed fireproofing may hold asbestos: don't disturb it before it is tested.",
    "A sample that is opened leaves a rated barrier open: repair it the same day with the same listed system, and record it.",
];

/// A joint, where it is, what is known of it, and the listing it is to be built to.
#[derive(Debug, Clone)]
pub struct Checked<'a> {
    /// The joint.
    pub joint: &'a Joint,
    /// Where it is, in a few words.
    pub place: String,
    /// What is known of it, its mark's and barrier's facts included.
    pub facts: Facts<'a>,
    /// Its listing; none where there is none to build it to.
    pub built_to: Option<BuiltTo<'a>>,
}

/// The listing that a joint is to be built to, and what the check found of it there.
#[derive(Debug, Clone, Copy)]
pub struct BuiltTo<'a> {
    /// The listing as read.
    pub reading: &'a Reading,
    /// What was found at the joint.
    pub result: &'a JointResult,
}
