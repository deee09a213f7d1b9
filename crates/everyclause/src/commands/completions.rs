use clap::{Args, CommandFactory};
use clap_complete::Shell;

use super::Cli;
use crate::answer::Answer;

/// Prints the completions for a shell
#[derive(Debug, Args)]
#[command(
    after_long_help = "Example: everyclause completions bash > ~/.local/share/bash-completion/completions/everyclause"
)]
pub(crate) struct Completions {
    /// The shell
    shell: Shell,
}

impl Completions {
    /// The completions.
    pub(crate) fn run(self) -> Answer {
        let mut script = Vec::new();
        clap_complete::generate(self.shell, &mut Cli::command(), "everyclause", &mut script);
        Answer::of(String::from_utf8_lossy(&script).into_owned())
    }
}
