use clap::Args;
use measure::Quantity;

use super::at_hand::Supplies;
use super::calc::quantity::quantity;
use crate::answer::{Answer, Outcome};
use crate::fault::Faults;
use crate::inputs::Inputs;
use crate::show;
use crate::working;

/// Takes off quantities: packing, coating, sealant, runners and fasteners, by mark and storey and in all
#[derive(Debug, Args)]
#[command(after_long_help = "\
What the schedule doesn't state, or the listing only has in words, is named as left out; the command then ends with 1.

Examples:
  everyclause takeoff --project demo-project
  everyclause takeoff --project demo-project --batt \"24 in.\" \"60 in.\" --loss \"15 %\"
  everyclause takeoff --project demo-project --csv > quantities.csv")]
pub(crate) struct TakeOff {
    #[command(flatten)]
    inputs: Inputs,
    /// Thicknesses of packing at hand, to choose strips from where the schedule states none
    #[arg(long, value_parser = quantity, num_args = 1..)]
    stock: Vec<Quantity>,
    #[command(flatten)]
    supplies: Supplies,
    /// Print one row a quantity, for a spreadsheet
    #[arg(long, conflicts_with = "json")]
    csv: bool,
    /// Print the quantities as JSON (see `everyclause schema takeoff`)
    #[arg(long)]
    json: bool,
}

impl TakeOff {
    /// The quantities.
    pub(crate) fn run(self) -> Result<Answer, Faults> {
        let (import, listings) = self.inputs.open()?;
        let at_hand = self.supplies.with(self.stock)?;
        let made = working::take_off(&import, &listings, &at_hand)?;
        let answer = match (self.json, self.csv) {
            (true, _) => Answer::json(&made),
            (_, true) => Answer::of(show::quantities::csv(&made)),
            _ => Answer::of(show::quantities::quantities(&made)),
        };
        Ok(answer.ending(Outcome::unsettled_if(!made.left_out.is_empty())))
    }
}
