//! What is confirmed of a listing, and what isn't.

use listing::{Confidence, Status};
use serde::Serialize;

use super::page::wrapped;
use super::paint::{GOOD, UNKNOWN, paint};
use super::reading;
use super::words::{counted, listed};
use crate::shelf::Held;

/// What is confirmed of a listing, for programs.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub(crate) struct Confirmed {
    /// The confirmation's file.
    file: Option<String>,
    /// How many clauses the listing has.
    clauses: usize,
    /// The ids of the clauses written now.
    written: Vec<String>,
    /// The ids of the clauses that nobody has confirmed.
    unconfirmed: Vec<String>,
    /// How many entries no longer fit the listing's words.
    lost: usize,
}

impl Confirmed {
    /// What is confirmed of a listing.
    pub(crate) fn of(held: &Held, written: &[String]) -> Self {
        Self {
            file: held
                .confirmation
                .as_ref()
                .map(|confirmation| confirmation.file.clone()),
            clauses: held.reading().clauses.len(),
            written: written.to_vec(),
            unconfirmed: unconfirmed(held).into_iter().map(str::to_owned).collect(),
            lost: held
                .confirmation
                .as_ref()
                .map_or(0, |confirmation| confirmation.lost.len()),
        }
    }
}

/// The ids of the clauses that nobody has confirmed.
pub(crate) fn unconfirmed(held: &Held) -> Vec<&str> {
    let drafts = held
        .reading()
        .clauses
        .iter()
        .filter(|clause| clause.status == Status::Draft);
    drafts.map(|clause| clause.id.as_str()).collect()
}

/// How many clauses still to be confirmed are shown after others were: the next ones, and not all of them again.
const NEXT: usize = 3;

/// What was written, and what is still to be confirmed.
pub(crate) fn confirmed(held: &Held, written: &[String]) -> String {
    let mut text = String::new();
    let file = held
        .confirmation
        .as_ref()
        .map_or("", |confirmation| confirmation.file.as_str());
    if !written.is_empty() {
        let few = if written.len() <= 6 {
            format!(": {}", listed(written))
        } else {
            String::new()
        };
        text.push_str(&wrapped(
            &format!(
                "{} written to {file}{few}.",
                counted(written.len(), "clause", "clauses")
            ),
            0,
            0,
        ));
        text.push_str(&doubtful(held, written));
    }
    let open = unconfirmed(held);
    let all = held.reading().clauses.len();
    if open.is_empty() {
        let line = format!(
            "✓ Every one of the {} is confirmed; verdicts on this listing are final.",
            counted(all, "clause", "clauses")
        );
        text.push_str(&paint(GOOD, wrapped(&line, 0, 0).trim_end()));
        text.push('\n');
        return text;
    }
    let line = format!(
        "{} of {} nobody has confirmed yet:",
        open.len(),
        counted(all, "clause", "clauses")
    );
    text.push_str(&paint(UNKNOWN, &line));
    text.push_str("\n\n");
    text.push_str(&reading::legend());
    let drafts = held.reading().clauses.iter();
    let drafts = drafts.filter(|clause| clause.status == Status::Draft);
    let shown = if written.is_empty() { all } else { NEXT };
    text.push_str(&reading::clauses(drafts.take(shown)));
    text.push('\n');
    if open.len() > shown {
        let more = format!(
            "These are the next; `everyclause confirm {}` shows all {}.",
            held.file,
            open.len()
        );
        text.push_str(&wrapped(&more, 0, 0));
    }
    let how = format!(
        "Read each beside its words. Then: `everyclause confirm {} --by WHO --clause {}` for those that were read rightly, `--correct ID` \
         with what is right for those that weren't, `--all` when every one of them was.",
        held.file,
        open.first().copied().unwrap_or("ID"),
    );
    text.push_str(&wrapped(&how, 0, 0));
    text
}

/// The clauses among those written that the reader itself was in doubt of.
fn doubtful(held: &Held, written: &[String]) -> String {
    let doubtful: Vec<&str> = held
        .as_read()
        .clauses
        .iter()
        .filter(|clause| clause.confidence == Confidence::WithDoubt && written.contains(&clause.id))
        .map(|clause| clause.id.as_str())
        .collect();
    if doubtful.is_empty() {
        return String::new();
    }
    let line = format!(
        "! Read with a doubt, so look at their words once more: {}.",
        listed(&doubtful)
    );
    paint(UNKNOWN, wrapped(&line, 0, 2).trim_end()) + "\n"
}
