//! Films and beads: wet and dry, how far a volume goes, and what the gauges say.
//!
//! | module | what lives there |
//! |---|---|
//! | [`solids`] | wet from dry and back; the solids that a listing's pair implies |
//! | [`mod@coverage`] | what a volume covers, and the gallons for a run |
//! | [`gauge`] | readings of a notch gauge or a dry-film gauge against a least thickness |
//! | [`mod@bead`] | sealant: volume of a bead, and how far a package goes |

pub mod bead;
pub mod coverage;
pub mod gauge;
pub mod solids;

pub use bead::{Bead, BeadAsked, Section, bead};
pub use coverage::{Coverage, RunAsked, RunCoating, coverage, run_coating};
pub use gauge::{FilmAsked, FilmRead, NotchReading, film_readings};
pub use solids::{Agreement, dry_from_wet, implied_solids, wet_from_dry};

/// What wet and dry films follow.
pub(crate) const SOLIDS_SOURCE: &str =
    "coating calculation sheets; ASTM D4414: dry film = wet film × volume solids";
/// What coverage follows.
pub(crate) const COVERAGE_SOURCE: &str = "definition of the US gallon, 231 cu in. (NIST SP 811, B.8): 231,000 sq in. = 1604.17 sq ft at one mil";
