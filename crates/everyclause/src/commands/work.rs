use clap::Args;
use measure::Quantity;

use super::calc::quantity::quantity;
use crate::answer::{Answer, Outcome};
use crate::fault::{Fault, Faults};
use crate::inputs::Inputs;
use crate::show;
use crate::working::{self, AtHand};

/// Prints a mark's work card: what to cut, how thick, how far to lap, what to hold against it
#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  everyclause work HW1 --project demo-project
  everyclause work HW1 --project demo-project --stock \"1 in.\" \"2 in.\" --loss \"15 %\"
  everyclause work HW1 --project demo-project --json")]
pub(crate) struct Work {
    /// The mark, as the schedule names it
    mark: String,
    #[command(flatten)]
    inputs: Inputs,
    /// Thicknesses of packing at hand, where the schedule states none
    #[arg(long, value_parser = quantity, num_args = 1.., default_values = ["1 in.", "1-1/2 in.", "2 in.", "3 in.", "4 in."])]
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
    /// Print the card as JSON (see `everyclause schema work`)
    #[arg(long)]
    json: bool,
}

impl Work {
    /// The card.
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
        let made = working::card(&import, &listings, &self.mark, &at_hand)?;
        let answer = if self.json {
            Answer::json(&made)
        } else {
            Answer::of(show::work::card(&made))
        };
        Ok(answer.ending(Outcome::unsettled_if(!made.is_settled())))
    }
}
