use clap::{Args, ValueEnum};
use engineering::fireproofing::{self, FieldAsked, Member, Rule};
use engineering::{Error, Worked};
use measure::Quantity;

use super::quantity::{known, quantity, readings};

/// Thickness readings of sprayed material on a member, by the code's field test
#[derive(Debug, Args)]
#[command(after_long_help = "\
Example:
  everyclause calc sprayed --reading \"1 in.\" \"1-1/8 in.\" \"15/16 in.\" \\
      --resolution \"1/16 in.\" --design \"1 in.\" --member beam --rule ten-percent")]
pub(super) struct Sprayed {
    /// Readings
    #[arg(long, value_parser = quantity, num_args = 1.., required = true)]
    reading: Vec<Quantity>,
    /// Smallest division of the gauge
    #[arg(long, value_parser = quantity)]
    resolution: Option<Quantity>,
    /// Design thickness
    #[arg(long, value_parser = quantity)]
    design: Quantity,
    /// What is sprayed
    #[arg(long, value_enum)]
    member: On,
    /// Which edition's rule decides
    #[arg(long, value_enum)]
    rule: By,
}

/// What is sprayed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
enum On {
    /// Beam or girder
    Beam,
    /// Joist or truss
    Joist,
    /// Wide-flange column
    Column,
    /// Hollow section or pipe
    Hollow,
    /// Deck
    Deck,
}

/// Which rule decides.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
enum By {
    /// IBC before 2009: the average
    Average,
    /// IBC 2009 and later: at most one reading in ten below design
    TenPercent,
}

impl Sprayed {
    pub(super) fn worked(&self) -> Result<Worked, Error> {
        let asked = FieldAsked {
            readings: readings(&self.reading, self.resolution),
            design: known(self.design),
            rule: match self.rule {
                By::Average => Rule::Average,
                By::TenPercent => Rule::TenPercent,
            },
            member: match self.member {
                On::Beam => Member::Beam,
                On::Joist => Member::Joist,
                On::Column => Member::Column,
                On::Hollow => Member::Hollow,
                On::Deck => Member::Deck,
            },
        };
        Ok(fireproofing::field_test(&asked)?.worked)
    }
}

/// Sprayed material at the joint, against the listing's own thickness and overlap
#[derive(Debug, Args)]
#[command(after_long_help = "\
Example:
  everyclause calc at-joint --reading \"5/8 in.\" \"3/4 in.\" --least \"1/2 in.\" \\
      --overlap \"2-1/4 in.\" --least-overlap \"2 in.\" --resolution \"1/16 in.\"")]
pub(super) struct AtJoint {
    /// Thickness readings at the joint
    #[arg(long, value_parser = quantity, num_args = 1.., required = true)]
    reading: Vec<Quantity>,
    /// Least thickness of the listing
    #[arg(long, value_parser = quantity)]
    least: Quantity,
    /// Readings of the overlap onto it
    #[arg(long, value_parser = quantity, num_args = 1.., requires = "least_overlap")]
    overlap: Vec<Quantity>,
    /// Least overlap of the listing
    #[arg(long, value_parser = quantity, requires = "overlap")]
    least_overlap: Option<Quantity>,
    /// Smallest division of the gauge
    #[arg(long, value_parser = quantity)]
    resolution: Option<Quantity>,
}

impl AtJoint {
    pub(super) fn worked(&self) -> Result<Worked, Error> {
        let overlap = readings(&self.overlap, self.resolution);
        let least_overlap = self.least_overlap.map(known);
        let overlap = least_overlap.as_ref().map(|least| (&overlap, least));
        Ok(fireproofing::at_joint(
            &readings(&self.reading, self.resolution),
            &known(self.least),
            overlap,
        )?
        .worked)
    }
}
