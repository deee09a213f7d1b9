use std::io::IsTerminal;
use std::path::{Path, PathBuf};
use std::sync::mpsc;
use std::time::Duration;

use clap::Args;
use listing::{Clause, Confidence, Status, WarningKind};

use crate::answer::{Answer, Outcome, to_stderr};
use crate::fault::{Fault, Faults};
use crate::files;
use crate::shelf::{Held, State};
use crate::show;
use crate::show::reading::Shown;
use crate::show::words::counted;
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
  everyclause read listings/hw-d-0412-ed4.txt --doubtful --left
  everyclause read listings/hw-d-0412-ed4.txt --json
  everyclause read pdf/hw-d-0412-ed4.pdf
  everyclause read listings/hw-d-0412-ed4.txt --marked hw-d-0412.html
  everyclause read --rules \"word before\"

The page of --marked needs nothing but a browser. It holds the whole text
of the listing, which belongs to its holder: keep the page as you keep the
listing, and don't publish it.

Exit codes: 0 read; 1 no clause was found; 2 it can't be read.")]
pub(crate) struct Read {
    /// The listing, as plain text or PDF
    #[arg(required_unless_present = "rules")]
    file: Option<PathBuf>,
    /// More than one is refused with a word of why
    #[arg(hide = true)]
    more: Vec<PathBuf>,
    #[command(flatten)]
    listed: Listed,
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

// Which clauses are listed, and how; no doc comment, which would stand in the place of the command's.
#[derive(Debug, Args)]
struct Listed {
    /// List only the clauses that were read with a doubt
    #[arg(long, conflicts_with_all = ["json", "marked"])]
    doubtful: bool,
    /// List only the words that were left for a person to answer
    #[arg(long, conflicts_with_all = ["json", "marked"])]
    left: bool,
    /// Show with each clause by which rule it was read
    #[arg(long, conflicts_with_all = ["json", "marked"])]
    by_rule: bool,
}

impl Listed {
    const fn shown(&self) -> Shown {
        Shown {
            doubtful: self.doubtful,
            left: self.left,
            rules: self.by_rule,
        }
    }
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
        if !self.more.is_empty() {
            return Err(Fault::of_command("one listing is read at a time")
                .help(format!(
                    "`everyclause read {}` first, then the next",
                    files::shown(file)
                ))
                .into());
        }
        let held = said_if_long(&format!("reading {} …", files::shown(file)), || {
            Held::open(file)
        })?;
        let answer = if let Some(out) = &self.marked {
            write_marked(&held, file, out)?
        } else if self.json {
            Answer::json(&ReadFrom::of(held.reading(), held.paper.as_ref()))
        } else {
            Answer::of(show::reading::reading(&held, self.listed.shown()))
        };
        Ok(answer
            .ending(Outcome::unsettled_if(held.reading().clauses.is_empty()))
            .with_aside(show::reading::about_confirmation(&held)))
    }
}

/// How long a person waits before being told what is done.
const PATIENCE: Duration = Duration::from_secs(2);

/// Does some work, and says on a terminal what it is if it takes its time.
fn said_if_long<T>(words: &str, work: impl FnOnce() -> T) -> T {
    if !std::io::stderr().is_terminal() {
        return work();
    }
    let (done, waiting) = mpsc::channel::<()>();
    std::thread::scope(|scope| {
        scope.spawn(move || {
            if waiting.recv_timeout(PATIENCE) == Err(mpsc::RecvTimeoutError::Timeout) {
                to_stderr(&format!("{words}\n"));
            }
        });
        let come_to = work();
        drop(done);
        come_to
    })
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
        return Err(
            Fault::of_command(format!("`{shown}` doesn't end in `.html`, as a page does"))
                .help("give a name that ends in `.html`; nothing was written"),
        );
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
        as_read: held.as_read(),
        is_confirmed: matches!(held.state, State::Confirmed(_)),
        decisions: held.decisions(),
        paper: held.paper.as_ref(),
    });
    files::write(out, page.as_bytes())?;
    Ok(Answer::of(format!(
        "{} marked beside the words in {shown}{}.\nIt holds the listing's whole text: keep it as you keep the listing.\n",
        counted(held.reading().clauses.len(), "clause", "clauses"),
        to_look_at(held),
    )))
}

/// What of a reading a person should look at: ": 8 read with a doubt, 16 left for a person to answer, 3 numbers nobody read and 1 other
/// warning".
fn to_look_at(held: &Held) -> String {
    let reading = held.reading();
    let clauses = |is: fn(&Clause) -> bool| reading.clauses.iter().filter(|one| is(one)).count();
    let doubtful = clauses(|one| one.confidence == Confidence::WithDoubt);
    let left = clauses(|one| one.confidence == Confidence::Prose && one.status == Status::Draft);
    let warnings = reading.warnings.iter();
    let unread = warnings
        .filter(|one| one.kind == WarningKind::UnreadNumber)
        .count();
    let notes = held.paper.as_ref().map_or(0, |paper| paper.notes.len());
    let others = reading.warnings.len() - unread + notes;
    let parts = [
        (doubtful, format!("{doubtful} read with a doubt")),
        (left, format!("{left} left for a person to answer")),
        (
            unread,
            counted(unread, "number nobody read", "numbers nobody read"),
        ),
        (others, counted(others, "other warning", "other warnings")),
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
