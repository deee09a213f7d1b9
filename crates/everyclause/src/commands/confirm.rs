use std::path::{Path, PathBuf};

use clap::Args;
use jiff::Zoned;
use jiff::civil::Date;
use listing::confirm::{Correction, Entry, Overlay, confirm};
use listing::{Clause, Relation, Status};
use measure::Quantity;
use vocabulary::vocabulary;

use crate::answer::{Answer, Outcome};
use crate::fault::{Fault, Faults};
use crate::files;
use crate::shelf::{Held, State, overlay_path};
use crate::show;

/// Records that a person has confirmed how a listing was read, or corrected it
///
/// Writes FILE.confirmed.toml beside the listing: who, when, which clause, and the correction if there is one. It is kept
/// over a new reading, as each entry holds the words it was made on. Without --clause, --all or --correct, lists what
/// nobody has confirmed yet and writes nothing.
#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  everyclause confirm listings/hw-d-0412-ed4.txt
  everyclause confirm listings/hw-d-0412-ed4.txt --by \"R. Reviewer\" --clause 3/1 --clause 3A/2
  everyclause confirm listings/hw-d-0412-ed4.txt --by \"R. Reviewer\" --all
  everyclause confirm listings/hw-d-0412-ed4.txt --by \"R. Reviewer\" --correct 3A/2 --relation at-least --value \"4 pcf\"")]
pub(crate) struct Confirm {
    /// The listing
    file: PathBuf,
    /// Who confirms: the name that stands behind it
    #[arg(long, value_name = "WHO", required_unless_present = "listing_only")]
    by: Option<String>,
    /// The day, as 2026-03-14 [default: today]
    #[arg(long, value_name = "DATE")]
    when: Option<Date>,
    /// A clause that was read rightly; may be given several times
    #[arg(long = "clause", value_name = "ID")]
    clauses: Vec<String>,
    /// Every clause that nobody has confirmed was read rightly
    #[arg(long, conflicts_with = "clauses")]
    all: bool,
    /// A clause that was read wrongly; say what is right with the options below
    #[arg(long, value_name = "ID", help_heading = "Correcting a clause")]
    correct: Option<String>,
    /// How the number is bounded
    #[arg(long, value_enum, requires = "correct", help_heading = "Correcting a clause")]
    relation: Option<Bounded>,
    /// The value, as \"4 in.\" or \"1/2 to 3/4 in.\"
    #[arg(long, requires = "correct", help_heading = "Correcting a clause")]
    value: Option<String>,
    /// What it is about, as packing.density
    #[arg(long, requires = "correct", help_heading = "Correcting a clause")]
    property: Option<String>,
    /// It is no bound: its words are for a person to answer
    #[arg(long, requires = "correct", conflicts_with_all = ["relation", "value"], help_heading = "Correcting a clause")]
    prose: bool,
    /// It always applies, whatever condition was read
    #[arg(long, requires = "correct", help_heading = "Correcting a clause")]
    unconditional: bool,
    /// Drop the entries whose words the listing doesn't have any more
    #[arg(long)]
    drop_lost: bool,
    #[arg(long, hide = true)]
    listing_only: bool,
}
