use clap::Args;

use crate::answer::{Answer, Outcome};
use crate::checking;
use crate::fault::Faults;
use crate::inputs::Inputs;
use crate::show;

/// Lists what to ask whom so that nothing stays open, by trade and stage
#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  everyclause questions --project demo-project
  everyclause questions --project demo-project --trade framing
  everyclause questions --project demo-project --csv > questions.csv")]
pub(crate) struct Questions {
    #[command(flatten)]
    inputs: Inputs,
    /// Only what one trade can answer
    #[arg(long, value_name = "TRADE")]
    trade: Option<vocabulary::Trade>,
    /// Print one row a joint and clause, for a spreadsheet
    #[arg(long, conflicts_with = "json")]
    csv: bool,
    /// Print the questions as JSON (see `everyclause schema questions`)
    #[arg(long)]
    json: bool,
}

impl Questions {
    /// The questions.
    pub(crate) fn run(self) -> Result<Answer, Faults> {
        let (import, listings) = self.inputs.open()?;
        let mut questions = checking::check(&import, &listings)?.questions;
        if let Some(trade) = self.trade {
            questions.retain(|question| question.trade == Some(trade));
        }
        let answer = match (self.json, self.csv) {
            (true, _) => Answer::json(&questions),
            (_, true) => Answer::of(show::questions::csv(&questions)),
            _ => Answer::of(show::questions::questions(&questions)),
        };
        Ok(answer.ending(Outcome::unsettled_if(!questions.is_empty())))
    }
}
