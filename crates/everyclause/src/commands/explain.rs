use clap::Args;
use conformance::Overall;

use crate::answer::{Answer, Outcome};
use crate::checking;
use crate::fault::Faults;
use crate::inputs::Inputs;
use crate::show;

/// Explains one joint: every clause, the words, the fact, the margin, what is missing
#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  everyclause explain J-004 --project demo-project
  everyclause explain J-004 --project demo-project --all")]
pub(crate) struct Explain {
    /// The joint, as the schedule names it
    joint: String,
    #[command(flatten)]
    inputs: Inputs,
    /// Show the clauses that don't apply in full, too
    #[arg(long)]
    all: bool,
    /// Print the joint's result as JSON (see `everyclause schema explain`)
    #[arg(long)]
    json: bool,
}

impl Explain {
    /// The joint, clause by clause.
    pub(crate) fn run(self) -> Result<Answer, Faults> {
        let (import, listings) = self.inputs.open()?;
        let (joint, held) = checking::check_one(&import, &listings, &self.joint)?;
        let answer = if self.json {
            Answer::json(&joint)
        } else {
            Answer::of(show::explain::joint(&joint, held, self.all))
        };
        Ok(answer.ending(Outcome::unsettled_if(joint.overall() != Overall::Conforms)))
    }
}
