use clap::Args;
use engineering::takeoff::{self, CuttingAsked, Piece, SpacingAsked};
use engineering::{Error, Worked};
use measure::Quantity;

use super::quantity::{known, known_if, pair, quantity};

/// Pieces cut from stock of one length: the fewest stocks, or few with a bound
#[derive(Debug, Args)]
#[command(after_long_help = "\
Example:
  everyclause calc cutting --stock \"24 in.\" --kerf \"1/8 in.\" \\
      --piece \"12 of 4-7/8 in.\" \"9 of 6-1/8 in.\"")]
pub(super) struct Cutting {
    /// Length of a stock
    #[arg(long, value_parser = quantity)]
    stock: Quantity,
    /// What a cut takes away
    #[arg(long, value_parser = quantity)]
    kerf: Option<Quantity>,
    /// Pieces, as "12 of 4 in."
    #[arg(long, value_parser = piece, num_args = 1.., required = true)]
    piece: Vec<Piece>,
}

fn piece(text: &str) -> Result<Piece, String> {
    let (count, length) = pair(text, "of", "12 of 4 in.")?;
    let count = count
        .trim()
        .parse()
        .map_err(|_| format!("`{count}` is not a number of pieces"))?;
    Ok(Piece {
        length: quantity(length)?,
        count,
    })
}

impl Cutting {
    pub(super) fn worked(&self) -> Result<Worked, Error> {
        let asked = CuttingAsked {
            stock: known(self.stock),
            kerf: known_if(self.kerf),
            pieces: self.piece.clone(),
        };
        Ok(takeoff::cutting(&asked)?.worked)
    }
}

/// Fasteners, clips or staples of a run at their spacing
#[derive(Debug, Args)]
#[command(after_long_help = "\
Example:
  everyclause calc fasteners --run \"27 ft 6 in.\" --spacing \"16 in.\" --end \"2 in.\"")]
pub(super) struct Fasteners {
    /// Length of the run
    #[arg(long, value_parser = quantity)]
    run: Quantity,
    /// Greatest spacing
    #[arg(long, value_parser = quantity)]
    spacing: Quantity,
    /// Greatest distance of the first and the last from the ends
    #[arg(long, value_parser = quantity)]
    end: Option<Quantity>,
    /// How many at each place
    #[arg(long, default_value_t = 1)]
    at_each: u64,
}

impl Fasteners {
    pub(super) fn worked(&self) -> Result<Worked, Error> {
        let asked = SpacingAsked {
            run: known(self.run),
            spacing: known(self.spacing),
            end: known_if(self.end),
            at_each: self.at_each,
        };
        Ok(takeoff::fasteners(&asked)?.worked)
    }
}
