use clap::Args;
use measure::Quantity;

use super::calc::quantity::quantity;
use crate::answer::{Answer, Outcome};
use crate::fault::{Fault, Faults};
use crate::inputs::Inputs;
use crate::show;
use crate::working::{AtHand, quantities};

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
    /// Width and length of a batt
    #[arg(long, value_parser = quantity, num_args = 2, default_values = ["24 in.", "48 in."], value_names = ["WIDTH", "LENGTH"])]
    batt: Vec<Quantity>,
    /// Loss of coating and sealant, as a percentage of what is used
    #[arg(long, value_parser = quantity, default_value = "10 %")]
    loss: Quantity,
    /// Volume of a package of sealant
    #[arg(long, value_parser = quantity, default_value = "10.1 fl oz")]
    package: Quantity,
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
        let [wide, long] = self.batt.as_slice() else {
            return Err(Fault::of_command("a batt has a width and a length").into());
        };
        let at_hand = AtHand {
            stock: self.stock.clone(),
            batt: (*wide, *long),
            loss: self.loss,
            package: self.package,
        };
        let made = quantities::quantities(&import, &listings, &at_hand)?;
        let answer = match (self.json, self.csv) {
            (true, _) => Answer::json(&made),
            (_, true) => Answer::of(show::quantities::csv(&made)),
            _ => Answer::of(show::quantities::quantities(&made)),
        };
        Ok(answer.ending(Outcome::unsettled_if(!made.left_out.is_empty())))
    }
}
