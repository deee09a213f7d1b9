//! One computation alone, from values on the command line.

mod beam;
mod films;
mod fireproofing;
mod flutes;
mod leakage;
mod movement;
mod packing;
pub(super) mod quantity;
mod takeoff;

use clap::{Args, Subcommand};
use engineering::{Error, Standing, Worked};

use crate::answer::{Answer, Outcome};
use crate::fault::{Fault, Faults};
use crate::show;

/// Computes one thing: packing, films, flutes, movement, leakage, quantities
///
/// Values are written as the trade writes them: "2-1/2 in.", "64 mm", "4 pcf", "33 %", "1 cfm/ft". Structure and flow
/// take a number and a unit: "2 kip/ft", "16 kip", "1330 in4", "29000 ksi", "0.0000065 1/degF".
#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  everyclause calc packing --width \"1 in.\" \"1-1/8 in.\" --depth \"4 in.\" --least \"33 %\" \\
      --stock \"1-1/2 in.\" \"2 in.\"
  everyclause calc beam --span \"24 ft\" --uniform \"2 kip/ft\" --modulus \"29000 ksi\" \\
      --inertia \"1330 in4\" --limit 360
  everyclause calc beam --help

Exit codes: 0 nothing is against it, 1 a limit isn't kept or can't be told, 2 the input is at fault.")]
pub(crate) struct Calc {
    #[command(subcommand)]
    what: What,
    /// Print the worked calculation as JSON (see `everyclause schema calc`)
    #[arg(long, global = true)]
    json: bool,
}

#[derive(Debug, Subcommand)]
enum What {
    Thickness(packing::Thickness),
    Packing(packing::Packing),
    Butts(packing::ButtJoints),
    Flutes(flutes::Flutes),
    Plug(flutes::Plug),
    Wet(films::Wet),
    Dry(films::Dry),
    Solids(films::Solids),
    Coverage(films::Coverage),
    Coating(films::Coating),
    Film(films::Film),
    Bead(films::Bead),
    Beam(beam::Beam),
    Section(beam::Section),
    Limit(movement::Limit),
    Thermal(movement::Thermal),
    Drift(movement::Drift),
    SealantJoint(movement::SealantJoint),
    Demand(movement::Demand),
    Share(movement::Share),
    Envelope(movement::Envelope),
    Runner(movement::Runner),
    Leakage(leakage::Leakage),
    Openings(leakage::Openings),
    Cutting(takeoff::Cutting),
    Fasteners(takeoff::Fasteners),
    Sprayed(fireproofing::Sprayed),
    AtJoint(fireproofing::AtJoint),
}

impl Calc {
    /// The calculation.
    pub(crate) fn run(self) -> Result<Answer, Faults> {
        let worked = self
            .what
            .worked()
            .map_err(|error| Fault::of_command(error.to_string()))?;
        let is_settled = worked.standing() <= Standing::Met;
        let answer = if self.json {
            Answer::json(&worked)
        } else {
            Answer::of(show::worked::worked(&worked))
        };
        Ok(answer.ending(Outcome::unsettled_if(!is_settled)))
    }
}

impl What {
    fn worked(&self) -> Result<Worked, Error> {
        match self {
            Self::Thickness(of) => of.worked(),
            Self::Packing(of) => of.worked(),
            Self::Butts(of) => of.worked(),
            Self::Flutes(of) => of.worked(),
            Self::Plug(of) => of.worked(),
            Self::Wet(of) => of.worked(),
            Self::Dry(of) => of.worked(),
            Self::Solids(of) => of.worked(),
            Self::Coverage(of) => of.worked(),
            Self::Coating(of) => of.worked(),
            Self::Film(of) => of.worked(),
            Self::Bead(of) => of.worked(),
            Self::Beam(of) => of.worked(),
            Self::Section(of) => of.worked(),
            Self::Limit(of) => of.worked(),
            Self::Thermal(of) => of.worked(),
            Self::Drift(of) => of.worked(),
            Self::SealantJoint(of) => of.worked(),
            Self::Demand(of) => of.worked(),
            Self::Share(of) => of.worked(),
            Self::Envelope(of) => of.worked(),
            Self::Runner(of) => of.worked(),
            Self::Leakage(of) => of.worked(),
            Self::Openings(of) => of.worked(),
            Self::Cutting(of) => of.worked(),
            Self::Fasteners(of) => of.worked(),
            Self::Sprayed(of) => of.worked(),
            Self::AtJoint(of) => of.worked(),
        }
    }
}
