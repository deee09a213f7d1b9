use std::path::{Path, PathBuf};

use clap::Args;
use jiff::Zoned;
use listing::confirm::confirm_all;

use crate::answer::Answer;
use crate::checking;
use crate::demo_files::FILES;
use crate::fault::{Fault, Faults, Place};
use crate::files;
use crate::inputs::Inputs;
use crate::shelf::{Held, overlay_path};
use crate::show;

/// Writes the demo project into a folder, confirms its listings and checks it
///
/// Sixty joints of an invented clinic against twelve invented listings. Ends with 0 though many of the joints don't
/// conform: they are meant not to.
#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  everyclause demo
  everyclause demo somewhere-else")]
pub(crate) struct Demo {
    /// The folder
    #[arg(default_value = "demo-project")]
    folder: PathBuf,
    /// Print everything found as JSON (see `everyclause schema check`)
    #[arg(long)]
    json: bool,
}

/// In whose name the demo's listings are confirmed.
const REVIEWER: &str = "the demo's reviewer";

impl Demo {
    /// The demo, written and checked.
    pub(crate) fn run(self) -> Result<Answer, Faults> {
        write(&self.folder)?;
        confirm_listings(&self.folder)?;
        let (import, listings) = Inputs::of_project(self.folder.clone()).open()?;
        let check = checking::check(&import, &listings)?;
        if self.json {
            return Ok(Answer::json(&check));
        }
        let folder = files::shown(&self.folder);
        let text = show::check::check(&check) + &what_next(&folder);
        Ok(Answer::of(text).with_aside(show::check::aside(&check, &listings)))
    }
}

/// Writes every file of the demo, unless one is there already that says something else.
fn write(folder: &Path) -> Result<(), Fault> {
    let paths: Vec<(PathBuf, &[u8])> = FILES
        .iter()
        .map(|(path, bytes)| (folder.join(path), *bytes))
        .collect();
    let differs = |(path, bytes): &&(PathBuf, &[u8])| {
        path.exists() && std::fs::read(path).map_or(true, |there| there != *bytes)
    };
    let foreign: Vec<String> = paths
        .iter()
        .filter(differs)
        .map(|(path, _)| files::shown(path))
        .collect();
    if !foreign.is_empty() {
        let count = show::words::counted(foreign.len(), "file is", "files are");
        let shown = files::shown(folder);
        return Err(Fault {
            problem: format!("{count} there already and not the demo's own; nothing was written"),
            place: Place::Files(foreign),
            help: vec![
                format!("to check what is there: `everyclause check --project {shown}`"),
                "to see the demo: name another folder, such as `everyclause demo another-folder`"
                    .to_owned(),
            ],
        });
    }
    files::make_folder(&folder.join("listings"))?;
    files::make_folder(&folder.join("pdf"))?;
    paths
        .iter()
        .filter(|(path, _)| !path.exists())
        .try_for_each(|(path, bytes)| files::write(path, bytes))
}

/// Confirms every listing of the demo in its reviewer's name; what somebody else has confirmed stays.
fn confirm_listings(folder: &Path) -> Result<(), Fault> {
    for (path, _) in FILES
        .iter()
        .filter(|(path, _)| path.starts_with("listings/"))
    {
        let path = folder.join(path);
        let held = Held::open(&path)?;
        let by_others = held.confirmation.as_ref().is_some_and(|confirmation| {
            confirmation
                .overlay
                .entries
                .iter()
                .any(|entry| entry.by != REVIEWER)
        });
        if !by_others {
            let overlay = confirm_all(held.as_read(), REVIEWER, Zoned::now().date());
            files::write(&overlay_path(&path), overlay.to_toml().as_bytes())?;
        }
    }
    Ok(())
}

fn what_next(folder: &str) -> String {
    // Started by `cargo run`, the program isn't on the path.
    let program = if std::env::var_os("CARGO").is_some() {
        "cargo run -q --"
    } else {
        "everyclause"
    };
    let mut text = show::page::heading("What to try next");
    for (command, what) in [
        (
            format!("{program} explain J-004 --project {folder}"),
            "one joint, every clause of it",
        ),
        (
            format!("{program} read {folder}/listings/hw-d-0412-ed4.txt"),
            "a listing as it was read",
        ),
        (
            format!("{program} read {folder}/pdf/ff-d-1102.pdf"),
            "the same from a PDF",
        ),
        (
            format!("{program} questions --project {folder}"),
            "what to ask whom",
        ),
        (
            format!("{program} find HW6 --project {folder}"),
            "which listings fit a mark, and what stands in the way of the rest",
        ),
        (
            format!("{program} work HW1 --project {folder}"),
            "what to make, bring and hold against it at a mark's joints",
        ),
        (
            format!(
                "{program} compare {folder}/listings/hw-d-0412-ed3.txt {folder}/listings/hw-d-0412-ed4.txt"
            ),
            "two editions of a listing",
        ),
        (
            format!("{program} glossary \"deflection track\""),
            "a word of the trade",
        ),
    ] {
        text.push_str(&format!("  {command}\n      {what}\n"));
    }
    text.push_str(&format!(
        "  {folder}/README.md says what the demo is meant to show.\n"
    ));
    text.push_str(&show::page::heading("All of it in a browser"));
    text.push_str(&format!(
        "  {program} serve --project {folder} --by \"R. Reviewer\"\n      the desk, at http://127.0.0.1:8452, on this machine alone\n"
    ));
    text
}
