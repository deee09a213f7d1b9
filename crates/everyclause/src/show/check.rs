//! The joints of a project: a table, then the reasons, then what to ask.

use comfy_table::Cell;
use conformance::{JointResult, Overall, Reason, Standing, Verdict};
use vocabulary::{Stage, Trade};

use super::marked::{self, Note};
use super::page::{self, heading, wrapped};
use super::paint::{BAD, GOOD, QUIET, STRONG, UNKNOWN, as_verdict, cell, mark, paint};
use super::reasons::reasons;
use super::words::{counted, in_runs, listed, on_one_line, shortened};
use super::{brief, questions, table};
use crate::checking::{Check, Checked};
use crate::shelf::Shelf;

/// The whole check.
pub(crate) fn check(check: &Check) -> String {
    let mut text = title(check);
    text.push_str(&totals(check));
    text.push('\n');
    text.push_str(&joints(&check.joints));
    let fails = |joint: &Checked| joint.overall() == Overall::DoesNotConform;
    let open = |joint: &Checked| joint.overall() == Overall::Open;
    if check.joints.iter().any(fails) {
        text.push_str(&heading("Not met"));
        text.push_str(&reasons(&check.joints, Verdict::NotMet, fails));
    }
    if check.joints.iter().any(open) {
        text.push_str(&heading("Open"));
        text.push_str(&reasons(&check.joints, Verdict::Open, open));
    }
    text.push_str(&notes(check));
    text.push_str(&to_ask(check));
    text.push_str(&closing(check));
    text
}

/// What bears on a check as a whole, such as judgments that fit no clause.
fn notes(check: &Check) -> String {
    let mut notes: Vec<(&str, Vec<&str>)> = Vec::new();
    for joint in &check.joints {
        for note in joint.result.iter().flat_map(|result| &result.notes) {
            match notes.iter_mut().find(|(words, _)| words == note) {
                Some((_, joints)) => joints.push(&joint.joint),
                None => notes.push((note, vec![&joint.joint])),
            }
        }
    }
    if notes.is_empty() {
        return String::new();
    }
    let lines = notes.iter().map(|(words, joints)| {
        wrapped(
            &format!("! {}  ({})", on_one_line(words), in_runs(joints)),
            0,
            2,
        )
    });
    heading("To look at") + &lines.collect::<String>()
}

fn title(check: &Check) -> String {
    let name = if check.building.is_empty() {
        "The joints"
    } else {
        &check.building
    };
    let code = check
        .code_edition
        .as_ref()
        .map(|code| format!("  {}", on_one_line(code)))
        .unwrap_or_default();
    format!(
        "{}{}\n",
        paint(STRONG, &on_one_line(name)),
        paint(QUIET, &code)
    )
}

/// How many joints came to what, and how firm it is.
pub(crate) fn totals(check: &Check) -> String {
    let totals = check.totals;
    let mut text = format!(
        "{} against {}: {}, {}, {}\n",
        counted(totals.joints, "joint", "joints"),
        counted(check.listings.len(), "listing", "listings"),
        paint(GOOD, &format!("✓ {} conform", totals.conform)),
        paint(BAD, &format!("✗ {} do not", totals.do_not_conform)),
        paint(UNKNOWN, &format!("? {} open", totals.open)),
    );
    let drafts: Vec<&str> = check
        .listings
        .iter()
        .filter(|listing| listing.standing == Standing::Provisional)
        .map(|listing| listing.name.as_str())
        .collect();
    if totals.provisional > 0 {
        let line = format!(
            "~ {} provisional: nobody has confirmed all of the reading of {}. See `everyclause confirm`.",
            if totals.provisional == 1 {
                "1 result is".to_owned()
            } else {
                format!("{} results are", totals.provisional)
            },
            listed(&drafts)
        );
        text.push_str(&paint(UNKNOWN, wrapped(&line, 0, 2).trim_end()));
        text.push('\n');
    }
    text
}

fn joints(joints: &[Checked]) -> String {
    let is_wide = page::width() >= 116;
    let mut rows = if is_wide {
        table::table(&[
            "joint",
            "mark",
            "place",
            "listing",
            "outcome",
            "✓",
            "✗",
            "?",
            "◇",
            "first reason",
        ])
    } else {
        table::table(&[
            "joint",
            "mark",
            "outcome",
            "✓",
            "✗",
            "?",
            "◇",
            "first reason",
        ])
    };
    let counts_from = if is_wide { 5 } else { 3 };
    for joint in joints {
        let verdict = as_verdict(joint.overall());
        let mut cells = vec![
            Cell::new(on_one_line(&joint.joint)),
            Cell::new(on_one_line(&joint.mark)),
        ];
        if is_wide {
            cells.push(Cell::new(on_one_line(&joint.place())));
            cells.push(Cell::new(
                joint.listing.as_deref().map_or("–".to_owned(), on_one_line),
            ));
        }
        cells.push(cell(verdict, outcome(joint)));
        let counts = joint
            .result
            .as_ref()
            .map(|result| result.counts)
            .unwrap_or_default();
        for count in [counts.met, counts.not_met, counts.open, counts.judged] {
            cells.push(Cell::new(if count == 0 {
                "·".to_owned()
            } else {
                count.to_string()
            }));
        }
        cells.push(Cell::new(first_reason(
            joint,
            if is_wide { 150 } else { 90 },
        )));
        rows.add_row(cells);
    }
    table::unwrapped(&mut rows, 0);
    table::unwrapped(&mut rows, 1);
    for column in counts_from..counts_from + 4 {
        table::to_the_right(&mut rows, column);
        table::unwrapped(&mut rows, column);
    }
    if is_wide {
        table::at_most(&mut rows, 2, 20);
        table::unwrapped(&mut rows, 3);
    }
    table::unwrapped(&mut rows, counts_from - 1);
    let legend = "✓ met, ✗ not met, ? open, ◇ judged by a named person: clauses of each joint";
    table::set(&rows) + &paint(QUIET, legend) + "\n"
}

/// What a joint comes to, with its mark; provisional where the listing isn't confirmed.
pub(crate) fn outcome(joint: &Checked) -> String {
    let overall = joint.overall();
    let provisional = match &joint.result {
        Some(result) if result.standing == Standing::Provisional => " ~",
        _ => "",
    };
    format!(
        "{} {}{provisional}",
        mark(as_verdict(overall)),
        overall.words()
    )
}

fn first_reason(joint: &Checked, most: usize) -> String {
    let Some(result) = &joint.result else {
        return "no listing is named".to_owned();
    };
    match result.overall {
        Overall::Conforms => String::new(),
        Overall::DoesNotConform => {
            let first = result.with(Verdict::NotMet).next();
            first
                .map(|finding| shortened(&brief::reason(&finding.explanation), most))
                .unwrap_or_default()
        }
        Overall::Open => first_open(result, most),
    }
}

fn first_open(result: &JointResult, most: usize) -> String {
    let is_in_words = |reason: Reason| reason == Reason::NeedsAPerson;
    let first = result
        .with(Verdict::Open)
        .find(|finding| !is_in_words(finding.explanation.reason));
    match first {
        Some(finding) => shortened(&brief::reason(&finding.explanation), most),
        None if result.counts.open == 0 => "nothing was shown".to_owned(),
        None => format!(
            "{} in words that nobody has judged",
            counted(result.counts.open, "clause", "clauses")
        ),
    }
}

/// What to ask, counted by trade and stage.
fn to_ask(check: &Check) -> String {
    if check.questions.is_empty() {
        return String::new();
    }
    let mut text = heading("To ask, so that nothing stays open");
    let mut trades: Vec<Option<Trade>> = Vec::new();
    for question in &check.questions {
        if !trades.contains(&question.trade) {
            trades.push(question.trade);
        }
    }
    let mut rows = table::table(&["trade", "questions", "by when", "such as"]);
    table::unwrapped(&mut rows, 0);
    table::unwrapped(&mut rows, 1);
    table::to_the_right(&mut rows, 1);
    for trade in trades {
        let of_trade: Vec<_> = check
            .questions
            .iter()
            .filter(|question| question.trade == trade)
            .collect();
        let mut stages: Vec<Option<Stage>> = Vec::new();
        for question in &of_trade {
            if !stages.contains(&question.stage) {
                stages.push(question.stage);
            }
        }
        let by_stage: Vec<String> = stages
            .iter()
            .map(|stage| {
                let count = of_trade
                    .iter()
                    .filter(|question| question.stage == *stage)
                    .count();
                format!("{count} {}", questions::stage(*stage))
            })
            .collect();
        let example = of_trade
            .first()
            .map(|question| shortened(&on_one_line(&question.sentence), 90))
            .unwrap_or_default();
        rows.add_row([
            questions::trade(trade).to_owned(),
            of_trade.len().to_string(),
            by_stage.join("\n"),
            example,
        ]);
    }
    text.push_str(&table::set(&rows));
    text.push_str(&paint(
        QUIET,
        "`everyclause questions` lists them, with --csv for a spreadsheet",
    ));
    text.push('\n');
    text
}

/// The cautions that these results call for, then what must stand wherever results are shown.
fn closing(check: &Check) -> String {
    let mut text = String::new();
    let results = check
        .joints
        .iter()
        .filter_map(|joint| joint.result.as_ref());
    let cautions = conformance::cautions(results);
    if !cautions.is_empty() {
        text.push_str(&heading("Before anybody touches anything"));
        for caution in cautions {
            text.push_str(&wrapped(&format!("! {caution}"), 0, 2));
        }
    }
    text.push('\n');
    text.push_str(&standing(&check.standing_lines));
    text
}

/// The standing lines.
pub(crate) fn standing(lines: &[impl AsRef<str>]) -> String {
    lines
        .iter()
        .map(|line| wrapped(line.as_ref(), 0, 0))
        .collect()
}

/// What is worth knowing of the files, for standard error.
pub(crate) fn aside(check: &Check, shelf: &Shelf) -> String {
    let mut text = String::new();
    for notice in &check.notices {
        text.push_str(&marked::warning(
            &on_one_line(&notice.message),
            &on_one_line(&notice.cell.to_string()),
            None,
            &[],
        ));
        text.push('\n');
    }
    text.push_str(&unread(shelf));
    for held in &shelf.held {
        text.push_str(&super::reading::about_confirmation(held));
    }
    text
}

/// The files among the listings that couldn't be read, for standard error.
pub(crate) fn unread(shelf: &Shelf) -> String {
    let mut text = String::new();
    for fault in &shelf.unread {
        let notes: Vec<Note<'_>> = fault.help.iter().map(|help| Note::Help(help)).collect();
        let title = format!(
            "a file in the listings' folder was passed over: {}",
            fault.problem
        );
        let file = match &fault.place {
            crate::fault::Place::Files(files) => files.join(", "),
            _ => String::new(),
        };
        text.push_str(&marked::warning(&title, &file, None, &notes));
        text.push('\n');
    }
    text
}
