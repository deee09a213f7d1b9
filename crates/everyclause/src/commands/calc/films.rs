use clap::Args;
use engineering::films::{self, BeadAsked, FilmAsked, NotchReading, RunAsked, Section};
use engineering::{Error, Worked};
use measure::Quantity;

use super::quantity::{known, known_if, pair, quantity};

/// Wet film that dries to a dry one
#[derive(Debug, Args)]
#[command(after_long_help = "\
Example:
  everyclause calc wet --dry \"2.8 mil\" --solids \"35 %\" --thinner \"10 %\"")]
pub(super) struct Wet {
    /// Dry film
    #[arg(long, value_parser = quantity)]
    dry: Quantity,
    /// Volume solids
    #[arg(long, value_parser = quantity)]
    solids: Quantity,
    /// Thinner, as a percentage of the product's volume
    #[arg(long, value_parser = quantity)]
    thinner: Option<Quantity>,
}

impl Wet {
    pub(super) fn worked(&self) -> Result<Worked, Error> {
        let thinner = known_if(self.thinner);
        Ok(films::wet_from_dry(&known(self.dry), &known(self.solids), thinner.as_ref())?.worked)
    }
}

/// Dry film that a wet one leaves
#[derive(Debug, Args)]
#[command(after_long_help = "\
Example:
  everyclause calc dry --wet \"8 mil\" --solids \"35 %\"")]
pub(super) struct Dry {
    /// Wet film
    #[arg(long, value_parser = quantity)]
    wet: Quantity,
    /// Volume solids
    #[arg(long, value_parser = quantity)]
    solids: Quantity,
    /// Thinner, as a percentage of the product's volume
    #[arg(long, value_parser = quantity)]
    thinner: Option<Quantity>,
}

impl Dry {
    pub(super) fn worked(&self) -> Result<Worked, Error> {
        let thinner = known_if(self.thinner);
        Ok(films::dry_from_wet(&known(self.wet), &known(self.solids), thinner.as_ref())?.worked)
    }
}

/// Volume solids that a listing's wet and dry thickness imply, and whether the data sheet agrees
#[derive(Debug, Args)]
#[command(after_long_help = "\
Example:
  everyclause calc solids --wet \"1/8 in.\" --dry \"0.079 in.\" --data-sheet \"62 %\"")]
pub(super) struct Solids {
    /// Wet film of the listing
    #[arg(long, value_parser = quantity)]
    wet: Quantity,
    /// Dry film of the listing
    #[arg(long, value_parser = quantity)]
    dry: Quantity,
    /// What the two figures are rounded to
    #[arg(long, value_parser = quantity, default_value = "1/64 in.")]
    rounded_to: Quantity,
    /// Volume solids of the product's data sheet
    #[arg(long, value_parser = quantity)]
    data_sheet: Option<Quantity>,
}

impl Solids {
    pub(super) fn worked(&self) -> Result<Worked, Error> {
        let sheet = known_if(self.data_sheet);
        Ok(films::implied_solids(
            &known(self.wet),
            &known(self.dry),
            self.rounded_to,
            sheet.as_ref(),
        )?
        .worked)
    }
}

/// What a gallon or a litre covers
#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  everyclause calc coverage --film \"125 mil\" --loss \"10 %\"
  everyclause calc coverage --film \"5 mil\" --solids \"65 %\"")]
pub(super) struct Coverage {
    /// Wet film; dry film where solids are given
    #[arg(long, value_parser = quantity)]
    film: Quantity,
    /// Volume solids, for a dry film
    #[arg(long, value_parser = quantity)]
    solids: Option<Quantity>,
    /// Loss, as a percentage of what is used
    #[arg(long, value_parser = quantity)]
    loss: Option<Quantity>,
}

impl Coverage {
    pub(super) fn worked(&self) -> Result<Worked, Error> {
        let (solids, loss) = (known_if(self.solids), known_if(self.loss));
        Ok(films::coverage(&known(self.film), solids.as_ref(), loss.as_ref())?.worked)
    }
}

/// Band, area and gallons of the coating on a run
#[derive(Debug, Args)]
#[command(after_long_help = "\
Example:
  everyclause calc coating --length \"120 ft\" --width \"1 in.\" --overlap \"1/2 in.\" \"1/2 in.\" \\
      --wet \"1/8 in.\" --faces 2 --loss \"10 %\"")]
pub(super) struct Coating {
    /// Length of the run
    #[arg(long, value_parser = quantity)]
    length: Quantity,
    /// Width of the joint
    #[arg(long, value_parser = quantity)]
    width: Quantity,
    /// Overlaps onto either side
    #[arg(long, value_parser = quantity, num_args = 1..)]
    overlap: Vec<Quantity>,
    /// Wet film
    #[arg(long, value_parser = quantity)]
    wet: Quantity,
    /// Faces
    #[arg(long, default_value_t = 1)]
    faces: u64,
    /// Loss, as a percentage of what is used
    #[arg(long, value_parser = quantity)]
    loss: Option<Quantity>,
}

impl Coating {
    pub(super) fn worked(&self) -> Result<Worked, Error> {
        let asked = RunAsked {
            length: known(self.length),
            width: known(self.width),
            overlaps: self.overlap.iter().map(|overlap| known(*overlap)).collect(),
            wet: known(self.wet),
            faces: self.faces,
            loss: known_if(self.loss),
        };
        Ok(films::run_coating(&asked)?.worked)
    }
}

/// Film readings against a least thickness, with what the gauge can tell
#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  everyclause calc film --notch \"120 mil to 125 mil\" \"125 mil to 130 mil\" \\
      --least \"125 mil\" --count 3
  everyclause calc film --reading \"5/32 in.\" \"3/16 in.\" --resolution \"1/64 in.\" \\
      --least \"1/8 in.\"")]
pub(super) struct Film {
    /// Notch gauge: longest wetted tab and the next, as "24 mil to 26 mil"
    #[arg(long, value_parser = notch, num_args = 1.., required_unless_present = "reading")]
    notch: Vec<NotchReading>,
    /// Readings of a scale
    #[arg(long, value_parser = quantity, num_args = 1.., requires = "resolution")]
    reading: Vec<Quantity>,
    /// Smallest division of the scale
    #[arg(long, value_parser = quantity)]
    resolution: Option<Quantity>,
    /// Least thickness
    #[arg(long, value_parser = quantity)]
    least: Quantity,
    /// How many readings are asked for
    #[arg(long)]
    count: Option<u64>,
}

fn notch(text: &str) -> Result<NotchReading, String> {
    let (wetted, next) = pair(text, "to", "24 mil to 26 mil")?;
    Ok(NotchReading::Notch {
        wetted: quantity(wetted)?,
        next: quantity(next)?,
    })
}

impl Film {
    pub(super) fn worked(&self) -> Result<Worked, Error> {
        let mut readings = self.notch.clone();
        if let Some(resolution) = self.resolution {
            readings.extend(self.reading.iter().map(|reading| NotchReading::Scale {
                reading: *reading,
                resolution,
            }));
        }
        let asked = FilmAsked {
            readings,
            provenance: "as given".to_owned(),
            least: known(self.least),
            count: self.count,
        };
        Ok(films::film_readings(&asked)?.worked)
    }
}

/// Volume and yield of a sealant bead
#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  everyclause calc bead --width \"1/2 in.\" --depth \"5/8 in.\" --length \"200 ft\" \\
      --package \"10.1 fl oz\" --loss \"5 %\"
  everyclause calc bead --diameter \"3/8 in.\" --length \"200 ft\"")]
pub(super) struct Bead {
    /// Width of the bead
    #[arg(long, value_parser = quantity, requires = "depth")]
    width: Option<Quantity>,
    /// Depth of the bead
    #[arg(long, value_parser = quantity, requires = "width")]
    depth: Option<Quantity>,
    /// Leg of a bead in a corner
    #[arg(long, value_parser = quantity, conflicts_with_all = ["width", "diameter"])]
    leg: Option<Quantity>,
    /// Diameter of a round bead
    #[arg(long, value_parser = quantity, conflicts_with = "width")]
    diameter: Option<Quantity>,
    /// Length to be laid
    #[arg(long, value_parser = quantity)]
    length: Option<Quantity>,
    /// Volume of a package
    #[arg(long, value_parser = quantity)]
    package: Option<Quantity>,
    /// Loss, as a percentage of what is used
    #[arg(long, value_parser = quantity)]
    loss: Option<Quantity>,
}

impl Bead {
    pub(super) fn worked(&self) -> Result<Worked, Error> {
        let section = match (self.width, self.depth, self.leg, self.diameter) {
            (Some(width), Some(depth), ..) => Section::Rectangle {
                width: known(width),
                depth: known(depth),
            },
            (_, _, Some(leg), _) => Section::Fillet { leg: known(leg) },
            (_, _, _, Some(diameter)) => Section::Round {
                diameter: known(diameter),
            },
            _ => {
                return Err(Error::Missing {
                    input: "the bead's size".to_owned(),
                    help: "give --width and --depth, --leg, or --diameter".to_owned(),
                });
            }
        };
        let asked = BeadAsked {
            section,
            length: known_if(self.length),
            package: known_if(self.package),
            loss: known_if(self.loss),
        };
        Ok(films::bead(&asked)?.worked)
    }
}
