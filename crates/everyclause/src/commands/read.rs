use std::path::{Path, PathBuf};

use clap::Args;

use crate::answer::Answer;
use crate::fault::{Fault, Faults};
use crate::files;
use crate::shelf::{Held, State};
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
  everyclause read listings/hw-d-0412-ed4.txt --marked hw-d-0412.html
  everyclause read --rules \"word before\"

The page of --marked needs nothing but a browser. It holds the listing's whole text, which belongs to
its holder: keep it as you keep the listing, and don't publish it.")]
pub(crate) struct Read {
    /// The listing, as plain text or PDF
    #[arg(required_unless_present = "rules")]
    file: Option<PathBuf>,
    /// Print the reading as JSON (see `everyclause schema read`)
    #[arg(long)]
    json: bool,
    /// Write a page on which the words stand beside the clauses, each lighting the other; the file ends in .html
    #[arg(long, value_name = "FILE", conflicts_with = "json")]
    marked: Option<PathBuf>,
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
        let answer = if let Some(out) = &self.marked {
            write_marked(&held, file, out)?
        } else if self.json {
            Answer::json(&ReadFrom::of(held.reading(), held.paper.as_ref()))
        } else {
            Answer::of(show::reading::reading(&held))
        };
        Ok(answer.with_aside(show::reading::about_confirmation(&held)))
    }
}

/// Writes the page on which the words stand beside the clauses.
fn write_marked(held: &Held, file: &Path, out: &Path) -> Result<Answer, Fault> {
    let shown = files::shown(out);
    let is_page = out.extension().is_some_and(|ending| {
        ["html", "htm"]
            .iter()
            .any(|one| ending.eq_ignore_ascii_case(one))
    });
    if !is_page {
        return Err(Fault::of_command(format!("`{shown}` is no name of a page"))
            .help("give a name that ends in `.html`; nothing was written"));
    }
    if files::are_one(file, out) {
        return Err(
            Fault::of_command(format!("`{shown}` is the listing itself"))
                .help("give the page a name of its own; nothing was written"),
        );
    }
    let page = webpage::page(&webpage::Marked {
        file: &held.file,
        text: &held.text,
        reading: held.reading(),
        is_confirmed: matches!(held.state, State::Confirmed(_)),
        decisions: held.decisions(),
        paper: held.paper.as_ref(),
    });
    files::write(out, page.as_bytes())?;
    let clauses = held.reading().clauses.len();
    Ok(Answer::of(format!(
        "{} marked beside the words in {shown}. It holds the listing's whole text: keep it as you keep the listing.\n",
        show::words::counted(clauses, "clause", "clauses"),
    )))
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
