use clap::Args;
use engineering::flutes::{self, CrossingAsked, PlugAsked, Profile, profile};
use engineering::{Error, Worked};
use measure::Quantity;

use super::quantity::{known, known_if, quantity};

/// The deck: a common profile by its name, or its own dimensions.
#[derive(Debug, Args)]
struct Section {
    /// Common profile: B, F, A, N, composite-2, composite-3
    #[arg(long, value_name = "NAME")]
    deck: Option<String>,
    /// Depth of a deck as measured
    #[arg(long, value_parser = quantity, requires_all = ["pitch", "rib_top", "rib_bottom"], conflicts_with = "deck")]
    deck_depth: Option<Quantity>,
    /// From rib to rib
    #[arg(long, value_parser = quantity, requires = "deck_depth")]
    pitch: Option<Quantity>,
    /// Opening of a rib at the top of the deck
    #[arg(long, value_parser = quantity, requires = "deck_depth")]
    rib_top: Option<Quantity>,
    /// Width of a rib at its bottom
    #[arg(long, value_parser = quantity, requires = "deck_depth")]
    rib_bottom: Option<Quantity>,
}

impl Section {
    fn profile(&self) -> Result<Profile, Error> {
        match (self.deck_depth, self.pitch, self.rib_top, self.rib_bottom) {
            (Some(depth), Some(pitch), Some(rib_top), Some(rib_bottom)) => Ok(Profile {
                name: "own".to_owned(),
                title: "own dimensions".to_owned(),
                depth,
                pitch,
                rib_top,
                rib_bottom,
                source: "as given".to_owned(),
            }),
            _ => match &self.deck {
                Some(name) => profile::named(name).cloned(),
                None => Err(Error::Missing {
                    input: "the deck".to_owned(),
                    help: "give --deck with the name of a common profile, or measure it and give --deck-depth, --pitch, --rib-top and --rib-bottom".to_owned(),
                }),
            },
        }
    }
}

/// Voids under a steel deck along a wall: how many, how large, how much fills them
#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  everyclause calc flutes --deck B --length \"20 ft\" --depth \"4-7/8 in.\"
  everyclause calc flutes --deck-depth \"38 mm\" --pitch \"150 mm\" --rib-top \"60 mm\" \\
      --rib-bottom \"40 mm\" --angle 45° --length \"6 m\" --depth \"124 mm\"")]
pub(super) struct Flutes {
    #[command(flatten)]
    section: Section,
    /// Angle between wall and ribs: 90° square across, 0° beside them
    #[arg(long, value_parser = quantity, default_value = "90°")]
    angle: Quantity,
    /// Length of the wall
    #[arg(long, value_parser = quantity)]
    length: Quantity,
    /// Depth of the filling through the wall
    #[arg(long, value_parser = quantity)]
    depth: Quantity,
}

impl Flutes {
    pub(super) fn worked(&self) -> Result<Worked, Error> {
        let asked = CrossingAsked {
            profile: self.section.profile()?,
            angle: known(self.angle),
            length: known(self.length),
            depth: known(self.depth),
        };
        Ok(flutes::crossing(&asked)?.worked)
    }
}

/// Plug for a void under a steel deck, and the board beside it
#[derive(Debug, Args)]
#[command(after_long_help = "\
Example:
  everyclause calc plug --deck B --depth \"4-7/8 in.\" --compression \"25 %\" --of-height \\
      --board-gap \"1/8 in.\"")]
pub(super) struct Plug {
    #[command(flatten)]
    section: Section,
    /// Depth of the plug through the wall
    #[arg(long, value_parser = quantity)]
    depth: Quantity,
    /// Least compression
    #[arg(long, value_parser = quantity)]
    compression: Quantity,
    /// The height is compressed, from the wall to the deck, and not the width
    #[arg(long)]
    of_height: bool,
    /// Gap between deck and board that is cut to the void
    #[arg(long, value_parser = quantity)]
    board_gap: Option<Quantity>,
}

impl Plug {
    pub(super) fn worked(&self) -> Result<Worked, Error> {
        let asked = PlugAsked {
            profile: self.section.profile()?,
            depth: known(self.depth),
            compression: known(self.compression),
            of_height: self.of_height,
            board_gap: known_if(self.board_gap),
        };
        Ok(flutes::plug(&asked)?.worked)
    }
}
