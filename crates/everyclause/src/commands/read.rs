use std::path::PathBuf;

use clap::Args;

use crate::answer::Answer;
use crate::fault::{Fault, Faults};
use crate::files;
use crate::shelf::Held;
use crate::show;
use crate::source::ReadFrom;

/// Reads a listing into clauses and shows each beside its words
///
/// Every word of the listing is accounted for: it is a clause, a heading, or furniture of the page. A number in ‹ › is
/// the one that a clause was read from. Where FILE.confirmed.toml lies beside the listing, what people have confirmed or
/// corrected is shown.
#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  everyclause read listings/hw-d-0412-ed4.txt
  everyclause read listings/hw-d-0412-ed4.txt --json
  everyclause read pdf/hw-d-0412-ed4.pdf
  everyclause read --rules \"word before\"")]
pub(crate) struct Read {
    /// The listing, as plain text or PDF
    #[arg(required_unless_present = "rules")]
    file: Option<PathBuf>,
    /// Print the reading as JSON (see `everyclause schema read`)
    #[arg(long)]
    json: bool,
    /// Show what a rule reads, what it declines to read, and why
    #[arg(long, value_name = "NAME")]
    rules: Option<String>,
}

impl Read {
    /// The reading, or a rule's page.
    pub(crate) fn run(self) -> Result<Answer, Faults> {
        if let Some(name) = &self.rules {
            return Ok(Answer::of(page_of(name)?));
        }
        let Some(file) = &self.file else {
            return Err(Fault::of_command("no listing is given").into());
        };
        let held = Held::open(file)?;
        let answer = if self.json {
            Answer::json(&ReadFrom::of(held.reading(), held.paper.as_ref()))
        } else {
            Answer::of(show::reading::reading(&held))
        };
        Ok(answer.with_aside(show::reading::about_confirmation(&held)))
    }
}

fn page_of(name: &str) -> Result<String, Fault> {
    let wanted = name.trim().to_lowercase().replace(['_', '-'], " ");
    listing::rules::rule_page(&wanted)
        .map(str::to_owned)
        .ok_or_else(|| {
            let names = listing::rules::RULES
                .iter()
                .map(|rule| rule.name.to_owned());
            let known: Vec<String> = names.clone().map(|name| format!("`{name}`")).collect();
            let fault = Fault::of_command(format!("there is no page of a rule `{name}`"));
            let fault = match files::nearest(&wanted, names) {
                Some(near) => fault.help(format!("is `{near}` meant?")),
                None => fault,
            };
            fault.help(format!("the rules are {}", show::words::listed(&known)))
        })
}
