//! Quantities for a schedule, and stock cut to lengths.
//!
//! Waste from cutting is not a percentage: what is cut from what is worked out, and the answer says whether it is the
//! least possible or how far from it it can be at most.
//!
//! | module | what lives there |
//! |---|---|
//! | [`mod@cutting`] | pieces from stock of one length: the fewest stocks, or few with a proven bound |
//! | [`schedule`] | quantities of a schedule by mark and storey, and what to order |
//! | [`spacing`] | how many fasteners a run takes at their spacing |

mod asked;
mod bound;
pub mod cutting;
mod fit;
mod order;
mod pricing;
pub mod schedule;
mod search;
pub mod spacing;

pub use asked::{
    Coating, Fasteners, Kind, Line, MarkAsked, Packing, Profile, Run, Schedule, Sealant, Stock,
};
pub use cutting::{Cut, Cutting, CuttingAsked, Piece, cutting};
pub use order::Order;
pub use schedule::take_off;
pub use spacing::{SpacingAsked, fasteners};
