use std::path::PathBuf;

use clap::Args;
use selection::substitution::supposing;
use selection::{Asked, Wanted};
use site::import::Import;

use crate::answer::{Answer, Outcome};
use crate::fault::{Fault, Faults};
use crate::files;
use crate::finding::request::{self, NEAREST};
use crate::finding::{self, Finds};
use crate::inputs::Inputs;
use crate::library::Library;
use crate::show;

/// Finds the listings that fit a joint or mark, and says what stands in the way of the rest
///
/// First every listing that fits; then those with open questions only, the fewest first, and who can answer them; then
/// those that would fit but for changes, the fewest and cheapest first: every one that needs one change, and the nearest of the others. A
/// change is the cheaper, the later its trade works on the joint. A mark is asked for by what is known alike of all its joints.
///
/// An index is kept beside the folder of listings, and made anew for listings that have changed.
#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  everyclause find HW4 --project demo-project
  everyclause find J-004 --project demo-project
  everyclause find HW1 --project demo-project --with \"packing.density=4 pcf\"
  everyclause find --where \"joint.kind=head-of-wall\" \"barrier.rating=2 hr\" --listings demo-project/listings
  everyclause find --all --project demo-project
  everyclause find J-016 --project demo-project --request j-016-request")]
pub(crate) struct Find {
    /// The joint or mark, as the schedule names it
    #[arg(value_name = "JOINT|MARK", required_unless_present_any = ["where", "all"])]
    name: Option<String>,
    /// Ask by facts instead: a property and its value each, as a schedule has them
    #[arg(long, value_name = "FACT", num_args = 1.., conflicts_with_all = ["name", "all"])]
    r#where: Vec<String>,
    /// Suppose that this were otherwise: which listings enter, which leave
    #[arg(long, value_name = "FACT", num_args = 1.., conflicts_with = "all")]
    with: Vec<String>,
    /// Ask for every joint of the schedule, those of one condition at once, and which few listings together serve them all
    #[arg(long, conflicts_with = "name")]
    all: bool,
    /// Write what goes with a request for an engineering judgment to this folder, where no listing fits
    #[arg(long, value_name = "DIR", conflicts_with = "all")]
    request: Option<PathBuf>,
    /// How many to tell of those with open questions, and of those that need more than one change
    #[arg(long, value_name = "COUNT", default_value_t = 5)]
    most: usize,
    #[command(flatten)]
    inputs: Inputs,
    /// Print what was found as JSON (see `everyclause schema find`)
    #[arg(long)]
    json: bool,
}

impl Find {
    /// What was found.
    pub(crate) fn run(self) -> Result<Answer, Faults> {
        let import = if self.inputs.has_project() {
            Some(self.inputs.import()?)
        } else {
            None
        };
        let library = Library::open(&self.inputs.listings()?)?;
        let aside = show::find::aside(&library);
        let finds = match (&import, self.all) {
            (Some(import), true) => finding::found_for_all(&import.project, &library, self.most)?,
            (None, true) => {
                return Err(self
                    .inputs
                    .import()
                    .err()
                    .unwrap_or_else(|| no_name().into()));
            }
            (import, false) => {
                let known = self.asked(import.as_ref())?;
                let asked = self.supposed(&known)?;
                if let Some(folder) = &self.request {
                    return written(import.as_ref(), &library, &asked, folder);
                }
                self.one(import.as_ref(), &library, &known, &asked)?
            }
        };
        let fits = finds.asked.iter().all(|answer| !answer.fits.is_empty());
        let answer = if self.json {
            Answer::json(&finds)
        } else {
            Answer::of(show::find::finds(&finds))
        };
        Ok(answer
            .ending(Outcome::unsettled_if(!fits))
            .with_aside(aside))
    }

    fn one(
        &self,
        import: Option<&Import>,
        library: &Library,
        known: &Asked,
        asked: &Asked,
    ) -> Result<Finds, Faults> {
        let project = import.map(|import| &import.project);
        let wanted = Wanted {
            open: self.most,
            near: self.most,
            every_single_change: true,
        };
        if self.with.is_empty() {
            finding::found(project, library, asked, &wanted)
        } else {
            finding::found_if(project, library, known, asked, &wanted)
        }
    }

    fn asked(&self, import: Option<&Import>) -> Result<Asked, Faults> {
        match (&self.name, import) {
            (Some(name), Some(import)) => finding::of_name(&import.project, name),
            (Some(_), None) => Err(self
                .inputs
                .import()
                .err()
                .unwrap_or_else(|| no_name().into())),
            (None, _) => Ok(Asked {
                facts: finding::facts(&self.r#where)?,
                ..Asked::default()
            }),
        }
    }

    fn supposed(&self, known: &Asked) -> Result<Asked, Faults> {
        if self.with.is_empty() {
            return Ok(known.clone());
        }
        Ok(supposing(known, &finding::facts(&self.with)?))
    }
}

fn no_name() -> Fault {
    Fault::of_command("nothing is asked for")
        .help("name a joint or mark of the schedule, or give facts with `--where`")
}

/// Writes the request, where no listing fits.
fn written(
    import: Option<&Import>,
    library: &Library,
    asked: &Asked,
    folder: &std::path::Path,
) -> Result<Answer, Faults> {
    let wanted = Wanted {
        open: NEAREST,
        near: NEAREST,
        every_single_change: false,
    };
    let one = std::slice::from_ref(asked);
    let answers = finding::searched(library, |search| search.answer(one, &wanted))?;
    let Some(answer) = answers.first() else {
        return Err(no_name().into());
    };
    if let Some(fits) = answer.fits.first() {
        return Err(Fault::of_command(format!(
            "`{}` fits: there is nothing for an engineer or laboratory to judge",
            fits.listing
        ))
        .help("see it with `everyclause find`; nothing was written")
        .into());
    }
    if answer.near.is_empty() {
        return Err(Fault::of_command("no listing here is for such a joint: there is nothing near that a judgment could rest on")
            .help("look for other listings; nothing was written")
            .into());
    }
    let project = import.map(|import| &import.project);
    let request = finding::searched(library, |search| {
        Ok(request::request(project, search, asked, answer))
    })?;
    request::write(folder, &request)?;
    Ok(
        Answer::of(show::find::written(&files::shown(folder), &request, answer))
            .ending(Outcome::Unsettled),
    )
}
