use std::path::PathBuf;

use clap::Args;
use conformance::{JointResult, Overall, Subject, Verdict};
use drawing::{Heading, Known};
use site::Project;
use site::import::Import;

use crate::answer::{Answer, Outcome};
use crate::checking::{self, Checked};
use crate::fault::{Fault, Faults};
use crate::files;
use crate::inputs::Inputs;
use crate::picture;
use crate::shelf::Held;
use crate::show::words::on_one_line;

/// Draws the section of a joint to scale: as found, closed and open on one sheet
///
/// Every part is called out with its item of the listing and what was found of its clauses. Of a part that nothing is known of, what
/// the listing asks for is drawn, dashed and named. Of a mark, its first joint is drawn.
#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  everyclause draw HW4 --project demo-project --out hw4.svg
  everyclause draw J-021 --project demo-project --out j-021.png

The letters of a .png are Liberation Sans (SIL Open Font License 1.1); a .svg uses it, or Arial or
Helvetica, where the viewer has them.")]
pub(crate) struct Draw {
    /// The joint or mark, as the schedule names it
    #[arg(value_name = "JOINT|MARK")]
    name: String,
    #[command(flatten)]
    inputs: Inputs,
    /// The file to write, ending in .svg or .png; without it, the SVG is printed
    #[arg(long, value_name = "FILE")]
    out: Option<PathBuf>,
}

impl Draw {
    /// The sheet, printed or written.
    pub(crate) fn run(self) -> Result<Answer, Faults> {
        let kind = self.out.as_deref().map(picture::Kind::of).transpose()?;
        let (import, listings) = self.inputs.open()?;
        let name = joint_named(&import, &self.name);
        let (joint, held) = checking::check_one(&import, &listings, &name)?;
        let svg = sheet(&import.project, &joint, held)?;
        let outcome = Outcome::unsettled_if(joint.overall() != Overall::Conforms);
        let (Some(out), Some(kind)) = (self.out, kind) else {
            return Ok(Answer::of(svg).ending(outcome));
        };
        files::write(&out, &kind.bytes(svg)?)?;
        let words = format!(
            "{} drawn in {}\n",
            on_one_line(&joint.joint),
            files::shown(&out)
        );
        Ok(Answer::of(words).ending(outcome))
    }
}

/// The joint of that name; of a mark's name, its first joint.
fn joint_named(import: &Import, name: &str) -> String {
    let project = &import.project;
    let is_joint = |name: &str| {
        project
            .joints
            .iter()
            .any(|joint| joint.name.eq_ignore_ascii_case(name))
    };
    let name = name.trim();
    if is_joint(name) {
        return name.to_owned();
    }
    let of_mark = project
        .joints
        .iter()
        .find(|joint| joint.mark.eq_ignore_ascii_case(name));
    of_mark.map_or_else(|| name.to_owned(), |joint| joint.name.clone())
}

fn sheet(project: &Project, joint: &Checked, held: Option<&Held>) -> Result<String, Faults> {
    let Some(of_project) = project.joint(&joint.joint) else {
        return Err(
            Fault::of_command(format!("the schedule has no joint `{}`", joint.joint)).into(),
        );
    };
    let subject = Subject::of(project, of_project);
    let known = Known {
        subject: &subject,
        listing: held.map(Held::reading).zip(joint.result.as_ref()),
    };
    let page = drawing::sheet(&known, &heading(project, joint)).map_err(|error| {
        Fault::of_command(format!("joint `{}` can't be drawn: {error}", joint.joint))
            .help("nothing was written")
    })?;
    Ok(drawing::svg(&page))
}

fn heading(project: &Project, joint: &Checked) -> Heading {
    let listing = joint.result.as_ref().map(|result| {
        let edition = if result.edition.is_empty() {
            String::new()
        } else {
            format!(", {}", result.edition)
        };
        on_one_line(&format!("{}{edition}", result.listing))
    });
    Heading {
        joint: on_one_line(&joint.joint),
        mark: on_one_line(&joint.mark),
        title: on_one_line(&joint.title),
        place: on_one_line(&joint.place()),
        building: on_one_line(&project.building.name),
        listing: listing.unwrap_or_default(),
        outcome: joint.result.as_ref().map(|result| result.overall),
        not_met: joint.result.as_ref().map(not_met).unwrap_or_default(),
        open: joint
            .result
            .as_ref()
            .map_or(0, |result| result.with(Verdict::Open).count()),
        provisional: joint
            .result
            .as_ref()
            .is_some_and(|result| result.standing == conformance::Standing::Provisional),
    }
}

/// The sentences of what isn't met, each property once, as on the work card.
fn not_met(result: &JointResult) -> Vec<String> {
    let mut seen: Vec<&str> = Vec::new();
    let mut sentences = Vec::new();
    for finding in result.with(Verdict::NotMet) {
        let explanation = &finding.explanation;
        if !seen.contains(&explanation.property.as_str()) {
            seen.push(&explanation.property);
            sentences.push(on_one_line(&explanation.sentence));
        }
    }
    sentences
}
