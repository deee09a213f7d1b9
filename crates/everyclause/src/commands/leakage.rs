use clap::Args;
use engineering::Standing;

use crate::answer::{Answer, Outcome};
use crate::fault::Faults;
use crate::inputs::Inputs;
use crate::leakage;
use crate::show;

/// Sums the air that the joints of each smoke barrier leak, and holds each joint to the limit for its length
#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  everyclause leakage --project demo-project
  everyclause leakage --project demo-project --json")]
pub(crate) struct Leakage {
    #[command(flatten)]
    inputs: Inputs,
    /// Print the sums as JSON (see `everyclause schema leakage`)
    #[arg(long)]
    json: bool,
}

impl Leakage {
    /// The sums.
    pub(crate) fn run(self) -> Result<Answer, Faults> {
        let (import, listings) = self.inputs.open()?;
        let made = leakage::leakages(&import, &listings)?;
        let settled = made.not_known.is_empty()
            && made.without_barrier.is_empty()
            && made
                .barriers
                .iter()
                .all(|barrier| barrier.standing == Standing::Met);
        let answer = if self.json {
            Answer::json(&made)
        } else {
            Answer::of(show::leakage::leakages(&made))
        };
        Ok(answer.ending(Outcome::unsettled_if(!settled)))
    }
}
