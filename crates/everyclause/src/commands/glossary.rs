use clap::Args;
use vocabulary::{GlossaryAnswer, vocabulary};

use crate::answer::Answer;
use crate::fault::{Fault, Faults};
use crate::show;

/// Says what a word of the trade means, who owns it, when and with what it is seen
#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  everyclause glossary \"deflection track\"
  everyclause glossary packing.density
  everyclause glossary UL 2079")]
pub(crate) struct Glossary {
    /// The word, or several
    #[arg(required = true, value_name = "TERM")]
    term: Vec<String>,
    /// Print what goes by the word as JSON
    #[arg(long)]
    json: bool,
}

impl Glossary {
    /// What the word means.
    pub(crate) fn run(self) -> Result<Answer, Faults> {
        let term = self.term.join(" ");
        match vocabulary().glossary(&term) {
            GlossaryAnswer::Found(entries) if self.json => {
                let entries: Vec<_> = entries.iter().map(show::glossary::Entry::of).collect();
                Ok(Answer::json(&entries))
            }
            GlossaryAnswer::Found(entries) => Ok(Answer::of(show::glossary::glossary(&entries))),
            GlossaryAnswer::Unknown { suggestions } => Err(unknown(&term, &suggestions).into()),
        }
    }
}

fn unknown(term: &str, suggestions: &[&str]) -> Fault {
    let fault = Fault::of_command(format!("the glossary has nothing that goes by `{term}`"));
    let near: Vec<String> = suggestions.iter().map(|near| format!("`{near}`")).collect();
    match near.as_slice() {
        [] => fault.help(
            "try a component (`packing`), a property (`packing.density`), a standard (`UL 2079`)",
        ),
        [one] => fault.help(format!("is {one} meant?")),
        several => fault.help(format!("near it are {}", show::words::listed(several))),
    }
}
