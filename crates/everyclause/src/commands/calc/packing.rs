use clap::Args;
use engineering::packing::{self, ButtsAsked, Direction, Layer, PackingAsked, Rule, Stack};
use engineering::{Error, Worked};
use measure::{Quantity, Unit};

use super::quantity::{known, known_if, pair, quantity, readings};

/// Uncompressed thickness of packing for a width and a compression
#[derive(Debug, Args)]
#[command(after_long_help = "\
Example:
  everyclause calc thickness --width \"2 in.\" --compression \"25 %\" --density \"4 pcf\"")]
pub(super) struct Thickness {
    /// Width of the joint; several readings where there are some
    #[arg(long, value_parser = quantity, num_args = 1.., required = true)]
    width: Vec<Quantity>,
    /// Compression, as a percentage of the uncompressed thickness
    #[arg(long, value_parser = quantity)]
    compression: Quantity,
    /// Density as delivered
    #[arg(long, value_parser = quantity)]
    density: Option<Quantity>,
}

impl Thickness {
    pub(super) fn worked(&self) -> Result<Worked, Error> {
        let width = readings(&self.width, None);
        let density = known_if(self.density);
        Ok(packing::thickness(&width, &known(self.compression), density.as_ref())?.worked)
    }
}

/// Strips of packing from the stock at hand, and what they come to at every width
#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  everyclause calc packing --width \"7/8 in.\" \"1 in.\" \"1-1/8 in.\" --resolution \"1/16 in.\" \\
      --depth \"4 in.\" --least \"33 %\" --stock \"1 in.\" \"1-1/2 in.\" \"2 in.\" --density \"4 pcf\" \\
      --closing \"1/8 in.\" --opening \"1/8 in.\"
  everyclause calc packing --width \"1 in.\" --depth \"4 in.\" --least \"33 %\" \\
      --stock \"1 in.\" \"2 in.\" --laid \"1 of 1 in.\"")]
pub(super) struct Packing {
    /// Width of the joint; several readings where there are some
    #[arg(long, value_parser = quantity, num_args = 1.., required = true)]
    width: Vec<Quantity>,
    /// Smallest division of the tape the width was read with
    #[arg(long, value_parser = quantity)]
    resolution: Option<Quantity>,
    /// Depth of the packing in the joint
    #[arg(long, value_parser = quantity)]
    depth: Quantity,
    /// Least compression
    #[arg(long, value_parser = quantity)]
    least: Option<Quantity>,
    /// Greatest compression
    #[arg(long, value_parser = quantity)]
    most: Option<Quantity>,
    /// Nominal compression
    #[arg(long, value_parser = quantity)]
    nominal: Option<Quantity>,
    /// Thicknesses at hand
    #[arg(long, value_parser = quantity, num_args = 1.., required = true)]
    stock: Vec<Quantity>,
    /// Strips that somebody means to lay, as "2 of 1 in."; without it they are chosen
    #[arg(long, value_parser = layer, num_args = 1..)]
    laid: Vec<Layer>,
    /// Density as delivered
    #[arg(long, value_parser = quantity)]
    density: Option<Quantity>,
    /// Strips lie flat, and their cut width is compressed instead of their thickness
    #[arg(long)]
    flat: bool,
    /// How far the joint closes after it is packed
    #[arg(long, value_parser = quantity)]
    closing: Option<Quantity>,
    /// How far it opens
    #[arg(long, value_parser = quantity)]
    opening: Option<Quantity>,
}

fn layer(text: &str) -> Result<Layer, String> {
    let (strips, thickness) = pair(text, "of", "2 of 1 in.")?;
    let strips = strips
        .trim()
        .parse()
        .map_err(|_| format!("`{strips}` is not a number of strips"))?;
    Ok(Layer {
        strips,
        thickness: quantity(thickness)?,
    })
}

impl Packing {
    pub(super) fn worked(&self) -> Result<Worked, Error> {
        let unit = match self.depth.unit.system() {
            measure::unit::System::Metric => Unit::Millimetre,
            _ => Unit::Inch,
        };
        let proposed = if self.laid.is_empty() {
            None
        } else {
            Some(Stack::of(self.laid.clone(), unit)?)
        };
        let asked = PackingAsked {
            width: readings(&self.width, self.resolution),
            depth: known(self.depth),
            compression: Rule {
                least: known_if(self.least),
                most: known_if(self.most),
                nominal: known_if(self.nominal),
            },
            stock: self.stock.clone(),
            density: known_if(self.density),
            direction: if self.flat {
                Direction::InFibrePlane
            } else {
                Direction::ThroughThickness
            },
            closing: known_if(self.closing),
            opening: known_if(self.opening),
            proposed,
            proposed_read_to: None,
        };
        Ok(packing::packing(&asked)?.worked)
    }
}

/// Pieces of a run of packing, and how far apart their butt joints are
#[derive(Debug, Args)]
#[command(after_long_help = "\
Example:
  everyclause calc butts --run \"13 ft\" --piece \"4 ft\" --spacing \"24 in.\" --strips 2")]
pub(super) struct ButtJoints {
    /// Length of the run
    #[arg(long, value_parser = quantity)]
    run: Quantity,
    /// Length of a strip as it comes
    #[arg(long, value_parser = quantity)]
    piece: Quantity,
    /// Least distance between butt joints
    #[arg(long, value_parser = quantity)]
    spacing: Option<Quantity>,
    /// Strips side by side
    #[arg(long, default_value_t = 1)]
    strips: u64,
}

impl ButtJoints {
    pub(super) fn worked(&self) -> Result<Worked, Error> {
        let asked = ButtsAsked {
            run: known(self.run),
            piece: known(self.piece),
            spacing: known_if(self.spacing),
            strips: self.strips,
        };
        Ok(packing::butts(&asked)?.worked)
    }
}
