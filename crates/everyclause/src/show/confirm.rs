//! What is confirmed of a listing, and what isn't.

use listing::{Clause, Confidence, Relation, Status};
use measure::{Quantity, print};
use serde::Serialize;
use wording::clause;

use super::page::wrapped;
use super::paint::{GOOD, UNKNOWN, paint};
use super::reading;
use super::words::{counted, listed, shortened};
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

/// The ids of the clauses that were read with a doubt and that nobody has confirmed.
pub(crate) fn doubtful(held: &Held) -> Vec<&str> {
    let clauses = held.reading().clauses.iter();
    let doubtful = clauses.filter(|clause| {
        clause.status == Status::Draft && clause.confidence == Confidence::WithDoubt
    });
    doubtful.map(|clause| clause.id.as_str()).collect()
}

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
        text.push_str(&corrected(held, written));
        text.push_str(&in_doubt(held, written));
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
    text.push_str(&reading::legend(held));
    let drafts = held.reading().clauses.iter();
    let drafts = drafts.filter(|clause| clause.status == Status::Draft);
    let shown = if written.is_empty() { all } else { NEXT };
    text.push_str(&reading::clauses(held, drafts.take(shown), false));
    text.push('\n');
    if open.len() > shown {
        let more = format!(
            "These are the next; `everyclause confirm {}` shows all {}.",
            held.file,
            open.len()
        );
        text.push_str(&wrapped(&more, 0, 0));
    }
    text.push_str(&wrapped(&how(held, &open), 0, 0));
    text
}

/// How the open clauses are confirmed: one by one while any of them was read with a doubt.
fn how(held: &Held, open: &[&str]) -> String {
    let rest = match doubtful(held).len() {
        all if all == open.len() => String::new(),
        0 => ", `--all` when every one of them was".to_owned(),
        doubtful => format!(
            ". `--all` confirms the others and leaves {} read with a doubt",
            counted(doubtful, "clause", "clauses")
        ),
    };
    format!(
        "Read each beside its words. Then: `everyclause confirm {} --by WHO --clause {}` for those that were read rightly, `--correct ID` \
         with what is right for those that weren't{rest}.",
        held.file,
        open.first().copied().unwrap_or("ID"),
    )
}

/// What was corrected: what it was read as and what it is now, and where the words seem to say otherwise.
fn corrected(held: &Held, written: &[String]) -> String {
    let mut text = String::new();
    for clause in &held.reading().clauses {
        if clause.status != Status::Corrected || !written.contains(&clause.id) {
            continue;
        }
        let mut read = held.as_read().clauses.iter();
        let Some(read) = read.find(|read| read.id == clause.id) else {
            continue;
        };
        let (was, is) = (clause::requirement(read), clause::requirement(clause));
        if was != is {
            text.push_str(&wrapped(
                &format!("{}: was {was}, is {is}.", clause.id),
                0,
                2,
            ));
        }
        if let Some(doubt) = against_its_words(read, clause) {
            let line = format!(
                "! {doubt}; look at its words once more: “{}”",
                shortened(&clause::words(read), MOST_OF_WORDS)
            );
            text.push_str(&(paint(UNKNOWN, wrapped(&line, 0, 2).trim_end()) + "\n"));
        }
    }
    text
}

/// The most of a clause's words that is shown beside a correction, in characters.
const MOST_OF_WORDS: usize = 200;

/// What of a correction the clause's words don't say.
fn against_its_words(read: &Clause, corrected: &Clause) -> Option<String> {
    let (was, is) = (read.bound()?, corrected.bound()?);
    let turns = |one: Relation, other: Relation| {
        matches!(one, Relation::AtLeast | Relation::MoreThan)
            && matches!(other, Relation::AtMost | Relation::LessThan)
    };
    if turns(was.relation, is.relation) || turns(is.relation, was.relation) {
        return Some(format!("The limit of {} is turned around", corrected.id));
    }
    let of_words = |number: Quantity| {
        let number = print::trade(number);
        let number = number.split(' ').next().unwrap_or_default();
        let mut words = read
            .words
            .split(|c: char| c.is_whitespace() || "(),;:".contains(c));
        words.any(|word| word.trim_end_matches('.').starts_with(number))
    };
    let is_of_words = [is.low(), is.high()].into_iter().flatten().all(of_words);
    let is_new = (was.low(), was.high()) != (is.low(), is.high());
    (is_new && !is_of_words)
        .then(|| format!("The value of {} doesn't stand in its words", corrected.id))
}

/// The clauses among those written that the reader itself was in doubt of.
fn in_doubt(held: &Held, written: &[String]) -> String {
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
        "! The reader was in doubt of {}; the confirmation stands for {}.",
        listed(&doubtful),
        if doubtful.len() == 1 { "it" } else { "them" }
    );
    paint(UNKNOWN, wrapped(&line, 0, 2).trim_end()) + "\n"
}
