//! The commands: one file each.

mod at_hand;
mod calc;
mod check;
mod compare;
mod completions;
mod confirm;
mod correct;
mod demo;
mod draw;
mod explain;
mod export;
mod find;
mod glossary;
mod journal;
mod keep;
mod leakage;
mod people;
mod questions;
mod read;
mod restore;
pub(crate) mod schema;
mod serve;
mod substitute;
mod takeoff;
mod verify;
mod work;

use clap::{Parser, Subcommand};

use crate::answer::Answer;
use crate::fault::Faults;

/// What ends every long help.
const ENDINGS: &str =
    "Exit codes: 0 all conforms, 1 something does not conform or is open, 2 the input is at fault.";

/// Checks fire-resistive joints clause by clause against the listings they were built to.
///
/// A listing is read into clauses, a person confirms the reading, and every joint of a schedule is checked against every
/// clause: met, not met, open (and who can show it), or judged by a named person.
///
/// A joint that conforms matches every clause as read and recorded; no more is said of it. Approval belongs to the
/// authority having jurisdiction; local codes and licensed practice decide.
#[derive(Debug, Parser)]
#[command(name = "everyclause", version, disable_help_subcommand = true, after_long_help = ENDINGS, max_term_width = 110)]
pub(crate) struct Cli {
    #[command(subcommand)]
    command: Command,
}

#[derive(Debug, Subcommand)]
enum Command {
    Demo(demo::Demo),
    Read(read::Read),
    Confirm(confirm::Confirm),
    Check(check::Check),
    Explain(explain::Explain),
    Draw(draw::Draw),
    Questions(questions::Questions),
    Compare(compare::Compare),
    Find(find::Find),
    Substitute(substitute::Substitute),
    Work(work::Work),
    Takeoff(takeoff::TakeOff),
    Leakage(leakage::Leakage),
    Calc(calc::Calc),
    Keep(keep::Keep),
    Journal(journal::Journal),
    Verify(verify::Verify),
    Serve(serve::Serve),
    People(people::People),
    Export(export::Export),
    Restore(restore::Restore),
    Glossary(glossary::Glossary),
    Schema(schema::SchemaOf),
    Completions(completions::Completions),
}

impl Cli {
    /// Does what the command line asks for.
    ///
    /// # Errors
    /// When the input is at fault.
    pub(crate) fn run(self) -> Result<Answer, Faults> {
        match self.command {
            Command::Demo(command) => command.run(),
            Command::Read(command) => command.run(),
            Command::Confirm(command) => command.run(),
            Command::Check(command) => command.run(),
            Command::Explain(command) => command.run(),
            Command::Draw(command) => command.run(),
            Command::Questions(command) => command.run(),
            Command::Compare(command) => command.run(),
            Command::Find(command) => command.run(),
            Command::Substitute(command) => command.run(),
            Command::Work(command) => command.run(),
            Command::Takeoff(command) => command.run(),
            Command::Leakage(command) => command.run(),
            Command::Calc(command) => command.run(),
            Command::Keep(command) => command.run(),
            Command::Journal(command) => command.run(),
            Command::Verify(command) => command.run(),
            Command::Serve(command) => command.run(),
            Command::People(command) => command.run(),
            Command::Export(command) => command.run(),
            Command::Restore(command) => command.run(),
            Command::Glossary(command) => command.run(),
            Command::Schema(command) => Ok(command.run()),
            Command::Completions(command) => Ok(command.run()),
        }
    }
}
