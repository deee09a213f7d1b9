//! The command line: reads files, asks the libraries, shows what they say.
//!
//! | module | what lives there |
//! |---|---|
//! | [`commands`] | one file a command: its arguments and what it does |
//! | [`show`] | the answers in words, tables and marked excerpts |
//! | [`files`] | reading and writing files, never half |
//! | [`shelf`] | the listings of a folder, and which one a mark means |
//! | [`source`] | a listing's file, text or PDF, read |
//! | [`inputs`] | which files make a project |
//! | [`stored`] | a store, in the place of a project's files |
//! | [`checking`] | every joint of a project against its listing |
//! | [`library`] | a folder of listings of any size, with the index kept beside it |
//! | [`finding`] | which listings fit a condition, another product, a request for a judgment |
//! | [`working`] | a project's joints, as work cards and take-offs take them |
//! | [`leakage`] | air through the joints of a project's smoke barriers |
//! | [`demo_files`] | the demo project, compiled in |
//! | [`picture`] | a drawing as a file |
//! | [`fault`], [`answer`] | what a command comes to: an answer and its outcome, or what is wrong with the input |
//!
//! What is absent: rules of the trade. Whatever decides anything about a joint or a listing lives in the libraries.

#![expect(
    clippy::format_push_string,
    reason = "answers are put together once; one more string is nothing beside a reader's convenience"
)]

mod answer;
mod checking;
mod commands;
mod demo_files;
mod fault;
mod files;
mod finding;
mod inputs;
mod leakage;
mod library;
mod picture;
mod shelf;
mod show;
mod source;
mod stored;
mod working;

use std::process::ExitCode;

use clap::Parser;

fn main() -> ExitCode {
    match commands::Cli::parse().run() {
        Ok(answer) => answer.give(),
        Err(faults) => faults.report(),
    }
}
