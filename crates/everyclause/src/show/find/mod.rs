//! Which listings fit, and what stands in the way of the rest.

mod schedule;

use comfy_table::Cell;
use conformance::{Standing, Verdict};
use selection::{Answered, Change, Listed, Match, OpenAt, Turned};

use super::page::{heading, labelled, wrapped};
use super::paint::{BAD, GOOD, QUIET, STRONG, UNKNOWN, cell, paint};
use super::questions::trade;
use super::table;
use super::words::{counted, listed, on_one_line, shortened};
use crate::finding::Finds;
use crate::finding::request::Request;
use crate::library::Library;

pub(super) use schedule::{stands, takes};

/// The most questions that are shown of one listing.
const MOST_QUESTIONS: usize = 6;

/// The most listings that need a change which are shown.
const MOST_NEAR: usize = 25;

/// The whole answer.
pub(crate) fn finds(finds: &Finds) -> String {
    let mut text = match (&finds.together, finds.asked.as_slice()) {
        (Some(together), answers) => schedule::schedule(finds, answers, together),
        (None, answers) => answers.iter().map(|answer| one(finds, answer)).collect(),
    };
    text.push('\n');
    for line in &finds.standing_lines {
        text.push_str(&wrapped(line, 0, 0));
    }
    text
}

/// What is worth knowing of the library besides.
pub(crate) fn aside(library: &Library) -> String {
    let mut text = String::new();
    if !library.unread.is_empty() {
        text.push_str(&format!(
            "note: {} of the folder couldn't be read as a listing, and isn't in the answer:\n",
            counted(library.unread.len(), "file", "files")
        ));
        for fault in library.unread.iter().take(5) {
            text.push_str(&format!("  {}\n", on_one_line(&fault.problem)));
        }
    }
    for notice in &library.notices {
        text.push_str(&format!("note: {}\n", on_one_line(notice)));
    }
    text
}

fn one(finds: &Finds, answer: &Answered) -> String {
    let mut text = title(answer);
    text.push_str(&totals(finds, answer));
    for note in &answer.notes {
        text.push_str(&wrapped(&format!("note: {note}"), 0, 6));
    }
    if !answer.supposed.is_empty() {
        let supposed: Vec<String> = answer.supposed.iter().map(|one| on_one_line(one)).collect();
        text.push_str(&wrapped(
            &format!("supposing {}", supposed.join("; ")),
            0,
            2,
        ));
    }
    if let Some(turned) = &answer.turned {
        text.push_str(&self::turned(turned));
    }
    if !answer.fits.is_empty() {
        text.push_str(&heading("Fits"));
        text.push_str(&fits(answer));
    }
    if !answer.open.is_empty() {
        text.push_str(&heading("Nothing in the way, but questions open"));
        text.push_str(&open(answer));
    }
    if !answer.near.is_empty() {
        text.push_str(&heading("Would fit, but for"));
        for listed in answer.near.iter().take(MOST_NEAR) {
            text.push_str(&near(listed, answer));
        }
        let more = answer.near.len().saturating_sub(MOST_NEAR);
        if more > 0 {
            text.push_str(&format!(
                "and {} near; `--json` has every one\n",
                counted(more, "listing more is", "listings more are")
            ));
        }
    }
    text.push('\n');
    text.push_str(&others(answer));
    if answer.fits.is_empty() && !answer.near.is_empty() && !answer.name.is_empty() {
        text.push_str(&wrapped(
            "None fits: `--request DIR` writes what goes with a request for an engineering judgment.",
            0,
            2,
        ));
    }
    text
}

fn title(answer: &Answered) -> String {
    let name = if answer.name.is_empty() {
        "The facts given"
    } else {
        &answer.name
    };
    format!(
        "{}  {}\n",
        paint(STRONG, &on_one_line(name)),
        on_one_line(&answer.title)
    )
}

fn totals(finds: &Finds, answer: &Answered) -> String {
    let mut parts = vec![
        paint(GOOD, &format!("✓ {} fit", answer.fits.len())),
        paint(UNKNOWN, &format!("? {} open", answer.open.len())),
        paint(BAD, &format!("✗ {} but for a change", answer.near.len())),
    ];
    if answer.untold > 0 {
        parts.push(paint(QUIET, &format!("{} farther off", answer.untold)));
    }
    if answer.beyond > 0 {
        parts.push(paint(
            QUIET,
            &format!("{} not for such a joint", answer.beyond),
        ));
    }
    format!(
        "{}: {}\n",
        counted(finds.listings, "listing", "listings"),
        parts.join(", ")
    )
}

fn turned(turned: &Turned) -> String {
    let line = |label: &str, names: &[String]| {
        let names: Vec<&str> = names.iter().map(String::as_str).collect();
        let words = if names.is_empty() {
            "none".to_owned()
        } else {
            shortened(&names.join(", "), 400)
        };
        labelled(label, &on_one_line(&words), 2, 8)
    };
    line("enter", &turned.enter) + &line("leave", &turned.leave)
}

/// The listing's name, with what tells it apart.
fn name(listed: &Listed, answer: &Answered) -> String {
    let own = if answer.own.as_ref() == Some(&listed.listing) {
        " (its own)"
    } else {
        ""
    };
    on_one_line(&format!("{}{own}", listed.listing))
}

fn edition(listed: &Listed) -> String {
    let edition = [listed.designation.as_str(), listed.edition.as_str()];
    let words: Vec<&str> = edition
        .into_iter()
        .filter(|words| !words.is_empty())
        .collect();
    on_one_line(&words.join(", "))
}

const fn standing(matched: &Match) -> &'static str {
    match matched.standing {
        Standing::Final => "",
        Standing::Provisional => "provisional",
    }
}

fn fits(answer: &Answered) -> String {
    let mut made = table::table(&["listing", "edition", "✓", "◇", ""]);
    for listed in &answer.fits {
        let counts = &listed.matched.counts;
        made.add_row(vec![
            cell(Verdict::Met, format!("✓ {}", name(listed, answer))),
            Cell::new(edition(listed)),
            Cell::new(counts.met),
            Cell::new(dotted(counts.judged)),
            cell(Verdict::Open, standing(&listed.matched).to_owned()),
        ]);
    }
    table::unwrapped(&mut made, 0);
    table::set(&made)
}

fn dotted(count: usize) -> String {
    if count == 0 {
        "·".to_owned()
    } else {
        count.to_string()
    }
}

fn open(answer: &Answered) -> String {
    let mut made = table::table(&["listing", "edition", "?", "who can answer", ""]);
    for listed in &answer.open {
        made.add_row(vec![
            cell(Verdict::Open, format!("? {}", name(listed, answer))),
            Cell::new(edition(listed)),
            Cell::new(listed.matched.counts.open),
            Cell::new(trades(&listed.matched.open)),
            cell(Verdict::Open, standing(&listed.matched).to_owned()),
        ]);
    }
    table::unwrapped(&mut made, 0);
    let mut text = table::set(&made);
    if let Some(first) = answer.open.first() {
        text.push_str(&questions(first));
    }
    text
}

/// What is open at the first of them.
fn questions(listed: &Listed) -> String {
    if listed.questions.is_empty() {
        return String::new();
    }
    let mut text = format!(
        "\n  To settle {}:\n",
        paint(STRONG, &on_one_line(&listed.listing))
    );
    for question in listed.questions.iter().take(MOST_QUESTIONS) {
        text.push_str(&labelled(
            trade(question.trade),
            &shortened(&on_one_line(&question.sentence), 200),
            2,
            18,
        ));
    }
    let more = listed.questions.len().saturating_sub(MOST_QUESTIONS);
    if more > 0 {
        text.push_str(&format!(
            "  and {} more\n",
            counted(more, "question", "questions")
        ));
    }
    text
}

fn trades(open: &[OpenAt]) -> String {
    let each: Vec<String> = open
        .iter()
        .map(|one| format!("{} {}", trade(one.trade), one.open))
        .collect();
    each.join(", ")
}

fn near(listed: &Listed, answer: &Answered) -> String {
    let matched = &listed.matched;
    let mut about = vec![counted(matched.changes.len(), "change", "changes")];
    if matched.counts.open > 0 {
        about.push(format!("{} open", matched.counts.open));
    }
    if matched.standing == Standing::Provisional {
        about.push("provisional".to_owned());
    }
    let mut text = format!(
        "{}  {}\n",
        paint(BAD, &format!("✗ {}", name(listed, answer))),
        paint(QUIET, &about.join(", "))
    );
    for change in &matched.changes {
        text.push_str(&self::change(change));
    }
    text
}

fn change(change: &Change) -> String {
    let words = format!("{}: {}", change.words, on_one_line(&change.numbers));
    labelled(trade(change.trade), &words, 4, 18)
}

fn others(answer: &Answered) -> String {
    let mut text = String::new();
    if answer.untold > 0 {
        text.push_str(&wrapped(
            &format!(
                "{} farther off: more changes, or more open; `--most COUNT` tells more of them.",
                counted(answer.untold, "listing is", "listings are")
            ),
            0,
            2,
        ));
    }
    if answer.beyond > 0 {
        text.push_str(&wrapped(
            &format!(
                "{} for such a joint: of another kind, not rated so long, or without the leakage that a smoke barrier asks for.",
                counted(answer.beyond, "listing isn't", "listings aren't")
            ),
            0,
            2,
        ));
    }
    if answer.fits.is_empty() && answer.open.is_empty() && answer.near.is_empty() {
        text.push_str("Nothing here fits or is near.\n");
    }
    text
}

/// What was written for a request.
pub(crate) fn written(folder: &str, request: &Request, answer: &Answered) -> String {
    let names: Vec<&str> = request
        .files
        .iter()
        .map(|(name, _)| name.as_str())
        .collect();
    let mut text = format!("{folder}: {}\n", listed(&names));
    if !answer.open.is_empty() {
        text.push_str(&wrapped(
            &format!(
                "{} may still fit once open questions are answered: answer those first.",
                counted(answer.open.len(), "listing", "listings")
            ),
            0,
            2,
        ));
    }
    text.push_str(&wrapped(
        "The request answers nothing: whether the condition is acceptable is for a licensed engineer or the laboratory to say.",
        0,
        2,
    ));
    text
}
