use clap::Args;
use conformance::Overall;

use crate::answer::{Answer, Outcome};
use crate::checking;
use crate::fault::{Fault, Faults};
use crate::files;
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
        let check = checking::check(&import, &listings)?;
        let joint = check.joints.iter().find(|one| one.joint == self.joint);
        let joint = joint.or_else(|| {
            check
                .joints
                .iter()
                .find(|one| one.joint.eq_ignore_ascii_case(self.joint.trim()))
        });
        let Some(joint) = joint else {
            return Err(unknown(&self.joint, &check).into());
        };
        let held = joint
            .listing
            .as_ref()
            .and_then(|stem| listings.held.iter().find(|held| held.stem == *stem));
        let answer = if self.json {
            Answer::json(joint)
        } else {
            Answer::of(show::explain::joint(joint, held, self.all))
        };
        Ok(answer.ending(Outcome::unsettled_if(joint.overall() != Overall::Conforms)))
    }
}

fn unknown(name: &str, check: &checking::Check) -> Fault {
    let names = check.joints.iter().map(|joint| joint.joint.clone());
    let fault = Fault::of_command(format!("the schedule has no joint `{name}`"));
    match files::nearest(name, names) {
        Some(near) => fault.help(format!("is `{near}` meant?")),
        None => fault.help("give the joint's name as it stands in the column `joint`"),
    }
}
