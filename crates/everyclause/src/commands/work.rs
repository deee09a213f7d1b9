use clap::Args;
use measure::Quantity;
use workcard::AtHand;

use super::at_hand::Supplies;
use super::calc::quantity::quantity;
use crate::answer::{Answer, Outcome};
use crate::fault::Faults;
use crate::inputs::Inputs;
use crate::show;
use crate::working;

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
    #[arg(long, value_parser = quantity, num_args = 1.., default_values_t = AtHand::usual().stock)]
    stock: Vec<Quantity>,
    #[command(flatten)]
    supplies: Supplies,
    /// Print the card as JSON (see `everyclause schema work`)
    #[arg(long)]
    json: bool,
}

impl Work {
    /// The card.
    pub(crate) fn run(self) -> Result<Answer, Faults> {
        let (import, listings) = self.inputs.open()?;
        let at_hand = self.supplies.with(self.stock)?;
        let made = working::card(&import, &listings, &self.mark, &at_hand)?;
        let answer = if self.json {
            Answer::json(&made)
        } else {
            Answer::of(show::work::card(&made))
        };
        Ok(answer.ending(Outcome::unsettled_if(!made.is_settled())))
    }
}
