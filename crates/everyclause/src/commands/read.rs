use std::path::{Path, PathBuf};

use clap::Args;
use listing::{Clause, Confidence, Reading, WarningKind};

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
    Ok(Answer::of(format!(
        "{} marked beside the words in {shown}{}.\nIt holds the listing's whole text: keep it as you keep the listing.\n",
        show::words::counted(held.reading().clauses.len(), "clause", "clauses"),
        to_look_at(held.reading()),
    )))
}

/// What of a reading a person should look at: ": 8 read with a doubt, 16 left for a person, 3 numbers nobody read".
fn to_look_at(reading: &Reading) -> String {
    let clauses = |is: fn(&Clause) -> bool| reading.clauses.iter().filter(|one| is(one)).count();
    let doubtful = clauses(|one| one.confidence == Confidence::WithDoubt);
    let left = clauses(|one| one.confidence == Confidence::Prose);
    let unread = reading.warnings.iter();
    let unread = unread.filter(|one| one.kind == WarningKind::UnreadNumber);
    let numbers = show::words::counted(unread.count(), "number nobody read", "numbers nobody read");
    let parts = [
        (doubtful, format!("{doubtful} read with a doubt")),
        (left, format!("{left} left for a person to answer")),
        (usize::from(!numbers.starts_with("0 ")), numbers),
    ];
    let parts: Vec<String> = parts
        .into_iter()
        .filter_map(|(count, words)| (count > 0).then_some(words))
        .collect();
    if parts.is_empty() {
        String::new()
    } else {
        format!(": {}", show::words::listed(&parts))
    }
}

fn page_of(name: &str) -> Result<String, Fault> {
    let wanted = name.trim().to_lowercase().replace(['_', '-'], " ");
    // What bounds no number has a line rather than a page.
    let line = || {
        let reads = wording::rule::reads(&wanted)?;
        Some(format!(
            "# {wanted}\n\nReads {reads}. It says nothing of how a number is limited.\n"
        ))
    };
    listing::rules::rule_page(&wanted)
        .map(str::to_owned)
        .or_else(line)
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
