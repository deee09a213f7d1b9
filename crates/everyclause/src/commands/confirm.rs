use std::path::{Path, PathBuf};

use clap::Args;
use jiff::Zoned;
use jiff::civil::Date;
use listing::Clause;
use listing::confirm::{Entry, Overlay};

use super::correct::Correct;
use crate::answer::{Answer, Outcome};
use crate::fault::{Fault, Faults};
use crate::files;
use crate::shelf::{Held, overlay_path};
use crate::show;

/// Records that a person has confirmed how a listing was read, or corrected it
///
/// Writes FILE.confirmed.toml beside the listing: who, when, which clause, and the correction if there is one. It is kept
/// over a new reading, as each entry holds the words it was made on. Without --clause, --all or --correct, lists what
/// nobody has confirmed yet and writes nothing.
#[derive(Debug, Args)]
#[command(after_long_help = "\
Examples:
  everyclause confirm listings/hw-d-0412-ed4.txt
  everyclause confirm listings/hw-d-0412-ed4.txt --by \"R. Reviewer\" --clause 3/1 3A/2
  everyclause confirm listings/hw-d-0412-ed4.txt --by \"R. Reviewer\" --all
  everyclause confirm listings/hw-d-0412-ed4.txt --by \"R. Reviewer\" --correct 3A/2 \\
      --relation at-least --value \"4 pcf\"
  everyclause confirm listings/hw-d-0412-ed4.txt --by \"R. Reviewer\" --correct 3A/2 \\
      --option 3B1 --applies \"joint.width more-than 2 in.\"
  everyclause confirm listings/hw-d-0412-ed4.txt --cases corrected.md

The page of --cases quotes the listing, which belongs to its holder: keep it
as you keep the listing, and don't publish it. The reader's tests run such
pages (crates/listing/tests/corrected).")]
pub(crate) struct Confirm {
    /// The listing
    file: PathBuf,
    /// Who confirms: the name that stands behind it
    #[arg(long, value_name = "WHO")]
    by: Option<String>,
    /// The day, as 2026-03-14 [default: today]
    #[arg(long, value_name = "DATE")]
    when: Option<Date>,
    /// Clauses that were read rightly
    #[arg(long = "clause", value_name = "ID", num_args = 1..)]
    clauses: Vec<String>,
    #[command(flatten)]
    rest: Rest,
    /// Drop the entries whose words the listing doesn't have any more
    #[arg(long)]
    drop_lost: bool,
    /// Write what has been corrected as cases that teach the reader: each with the words it stands on; the file ends in .md
    #[arg(long, value_name = "FILE")]
    cases: Option<PathBuf>,
    #[command(flatten)]
    correct: Correct,
    /// Print what is confirmed and what isn't as JSON
    #[arg(long)]
    json: bool,
}

// All that nobody has confirmed yet, at once; no doc comment, which would stand in the place of the command's.
#[derive(Debug, Args)]
struct Rest {
    /// Every clause that nobody has confirmed yet was read rightly; those read with a doubt are left
    #[arg(long, conflicts_with = "clauses")]
    all: bool,
    /// With --all: those read with a doubt too
    #[arg(long, requires = "all")]
    with_doubts: bool,
}

impl Confirm {
    /// What is confirmed now, and what isn't.
    pub(crate) fn run(self) -> Result<Answer, Faults> {
        if let Some(page) = &self.cases {
            self.refuse_cases_over_the_listing(page)?;
        }
        let before = Held::open(&self.file)?;
        let mut written = Vec::new();
        if self.rest.all || self.drop_lost || !self.clauses.is_empty() || self.correct.is_asked() {
            let entries = self.entries(&before)?;
            written = entries.iter().map(|entry| entry.clause.clone()).collect();
            let overlay = merged(&before, entries, self.drop_lost);
            files::write(
                &overlay_path(&self.file),
                (String::from(HEAD) + &overlay.to_toml()).as_bytes(),
            )?;
        }
        let after = Held::open(&self.file)?;
        let open = show::confirm::unconfirmed(&after);
        let answer = if self.json {
            Answer::json(&show::confirm::Confirmed::of(&after, &written))
        } else {
            Answer::of(show::confirm::confirmed(&after, &written))
        };
        let lost = after
            .confirmation
            .as_ref()
            .is_some_and(|held| !held.lost.is_empty());
        let mut aside = show::reading::about_confirmation(&after);
        if let Some(page) = &self.cases {
            aside.push_str(&write_cases(&after, page)?);
        }
        Ok(answer
            .ending(Outcome::unsettled_if(!open.is_empty() || lost))
            .with_aside(aside))
    }

    /// That the page of cases is a page, and not the listing.
    fn refuse_cases_over_the_listing(&self, page: &Path) -> Result<(), Fault> {
        let shown = files::shown(page);
        if page
            .extension()
            .is_none_or(|ending| !ending.eq_ignore_ascii_case("md"))
        {
            return Err(
                Fault::of_command(format!("`{shown}` is no name of a page of cases"))
                    .help("give a name that ends in `.md`; nothing was written"),
            );
        }
        if files::are_one(&self.file, page) {
            return Err(
                Fault::of_command(format!("`{shown}` is the listing itself"))
                    .help("give the page a name of its own; nothing was written"),
            );
        }
        Ok(())
    }

    /// The entries that are asked for.
    fn entries(&self, held: &Held) -> Result<Vec<Entry>, Faults> {
        let by = self
            .by
            .as_deref()
            .map(str::trim)
            .filter(|by| !by.is_empty());
        let by = by.ok_or_else(|| {
            Fault::of_command("nobody is named who confirms")
                .help("add `--by WHO`: the name that stands behind it")
        })?;
        let when = self.when.unwrap_or_else(|| Zoned::now().date());
        let clauses = &held.as_read().clauses;
        let mut entries = Vec::new();
        if self.rest.all {
            entries = listing::confirm::confirm_all(held.reading(), by, when).entries;
            if !self.rest.with_doubts {
                let doubtful = show::confirm::doubtful(held);
                entries.retain(|entry| !doubtful.contains(&entry.clause.as_str()));
            }
        }
        for id in &self.clauses {
            entries.push(Entry::of(clause(held, id)?, by, when, None));
        }
        if let Some(id) = &self.correct.clause {
            let clause = clause(held, id)?;
            let correction = self.correct.correction(clause, held)?;
            entries.retain(|entry| entry.clause != clause.id);
            entries.push(Entry::of(clause, by, when, Some(correction)));
        }
        let place = |entry: &Entry| clauses.iter().position(|clause| clause.id == entry.clause);
        entries.sort_by_key(place);
        entries.dedup_by(|a, b| a.clause == b.clause);
        Ok(entries)
    }
}

/// Writes what has been corrected as cases for the reader's tests, and says so.
fn write_cases(held: &Held, page: &Path) -> Result<String, Fault> {
    let cases = listing::cases::of_corrections(&held.text, held.as_read(), held.reading());
    let shown = files::shown(page);
    if cases.held == 0 {
        return Err(Fault::of_file(
            "nothing has been corrected that a case could be made of",
            held.file.clone(),
        )
        .help(format!(
            "correct a clause with `--correct ID`; {shown} was not written"
        )));
    }
    files::write(page, cases.page.as_bytes())?;
    let mut words = format!(
        "{} written to {shown}. It quotes the listing, which belongs to its holder: don't publish it.\n",
        show::words::counted(cases.held, "correction", "corrections"),
    );
    if !cases.left.is_empty() {
        words.push_str(&format!(
            "No case can be made of {}.\n",
            show::words::listed(&cases.left)
        ));
    }
    Ok(words)
}

/// What stands at the head of a confirmation.
const HEAD: &str = "\
# What people have confirmed of the listing beside this file. Each entry holds the words it was made on, so that it
# survives a new reading. Kept by `everyclause confirm`; it may be read and put right by hand.

";

/// The clause of an id.
fn clause<'a>(held: &'a Held, id: &str) -> Result<&'a Clause, Fault> {
    let clauses = &held.as_read().clauses;
    clauses
        .iter()
        .find(|clause| clause.id == id.trim())
        .ok_or_else(|| {
            let item = id.split('/').next().unwrap_or_default();
            let of_item: Vec<String> = clauses
                .iter()
                .filter(|clause| clause.item.eq_ignore_ascii_case(item))
                .map(|clause| format!("`{}`", clause.id))
                .collect();
            let fault = Fault::of_file(
                format!("the listing has no clause `{id}`"),
                held.file.clone(),
            );
            if of_item.is_empty() {
                fault.help(format!(
                    "`everyclause read {}` shows every clause with its id",
                    held.file
                ))
            } else {
                fault.help(format!("item {item} has {}", show::words::listed(&of_item)))
            }
        })
}

/// What was held, with the new entries put in the place of those on the same clauses. Entries whose words are gone are
/// kept, unless they are to be dropped.
fn merged(held: &Held, entries: Vec<Entry>, drop_lost: bool) -> Overlay {
    let reading = held.reading();
    let source = (reading.source.sha256.clone(), reading.source.name.clone());
    let Some(before) = &held.confirmation else {
        return Overlay {
            source_sha256: source.0,
            source_name: source.1,
            entries,
        };
    };
    let mut overlay = before.overlay.clone();
    overlay.entries.retain(|entry| !before.lost.contains(entry));
    overlay.add(entries);
    let order = |entry: &Entry| {
        reading
            .clauses
            .iter()
            .position(|clause| clause.id == entry.clause)
    };
    overlay
        .entries
        .sort_by_key(|entry| order(entry).unwrap_or(usize::MAX));
    if !drop_lost {
        overlay.entries.extend(before.lost.iter().cloned());
    }
    (overlay.source_sha256, overlay.source_name) = source;
    overlay
}
