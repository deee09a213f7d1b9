use clap::Args;
use conformance::Overall;

use crate::answer::{Answer, Outcome};
use crate::checking;
use crate::fault::Faults;
use crate::inputs::Inputs;
use crate::show;

/// Checks every joint of a schedule against every clause of its listing
///
/// Shows the joints in a table, then why those that don't conform don't, then what to ask whom. A result on a listing
/// whose reading nobody has confirmed is provisional, and says so.
#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  everyclause check --project demo-project
  everyclause check --schedule schedule.xlsx --listings listings
  everyclause check --project demo-project --json > result.json")]
pub(crate) struct Check {
    #[command(flatten)]
    inputs: Inputs,
    /// Print everything found as JSON (see `everyclause schema check`)
    #[arg(long)]
    json: bool,
}

impl Check {
    /// The joints, checked.
    pub(crate) fn run(self) -> Result<Answer, Faults> {
        let (import, listings) = self.inputs.open()?;
        let check = checking::check(&import, &listings)?;
        let conforms = check
            .joints
            .iter()
            .all(|joint| joint.overall() == Overall::Conforms);
        let answer = if self.json {
            Answer::json(&check)
        } else {
            Answer::of(show::check::check(&check))
        };
        Ok(answer
            .ending(Outcome::unsettled_if(!conforms))
            .with_aside(show::check::aside(&check, &listings)))
    }
}
