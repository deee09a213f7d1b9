//! Scores the reader on folders of documents with the requirements that people expect of them (`NAME.txt` beside `NAME.gold.json`).
//!
//! ```text
//! cargo run --release -p everyclause-listing --example score -- FOLDER… [--misses | --products | --clauses]
//! ```
//!
//! `--misses` names the requirements that were not read as expected, `--products` the products and what of the head; `--clauses` shows every clause
//! instead, a line each, so that two readers can be compared.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    dead_code,
    reason = "a tool for developers may stop where it fails, and uses some of what the tests share"
)]

#[path = "../tests/common/mod.rs"]
mod common;

use std::path::Path;

use common::product_names::Compared;
use common::scoring::{self, Outcome, Score};
use listing::Reading;
use serde_json::Value;

fn main() {
    let (asked, folders): (Vec<String>, Vec<String>) = std::env::args()
        .skip(1)
        .partition(|argument| argument.starts_with("--"));
    let asked = |name: &str| asked.iter().any(|own| own == name);
    let mut total = Score::default();
    let documents = folders
        .iter()
        .flat_map(|folder| scoring::documents(Path::new(folder)));
    for path in documents {
        let (text, gold) = scoring::expected(&path);
        let reading = listing::read_text("document", &text);
        let name = path.file_stem().unwrap_or_default().to_string_lossy();
        if asked("--clauses") {
            show_clauses(&name, &reading);
            continue;
        }
        let own = scoring::score(&reading, &text, &gold);
        println!("{}", line(&name, &own));
        if asked("--misses") {
            show_misses(&reading, &text, &gold);
        }
        if asked("--products") {
            show_products(&reading, &gold);
            show_head(&reading, &gold);
        }
        total += own;
    }
    if !asked("--clauses") {
        println!("{}", line("all", &total));
        println!("{}", head_line(&total));
    }
}

/// A share in percent, for people.
fn share(part: usize, of: usize) -> String {
    let tenths = (part * 100_000 / of.max(1)).div_ceil(10);
    format!("{}.{:02} %", tenths / 100, tenths % 100)
}

fn line(name: &str, own: &Score) -> String {
    format!(
        "{name}: {} of {} right ({}; {} in doubt), {} wrong ({}; {} by rule), options {}, conditions {}, products {} of {}, {} of {} with a maker wrong",
        own.found,
        own.expected,
        share(own.found, own.expected),
        own.found_in_doubt,
        own.wrong,
        share(own.wrong, own.expected),
        own.wrong_by_rule,
        share(own.options, own.found),
        share(own.conditions, own.found),
        own.names.read,
        own.names.expected,
        own.names.wrong,
        own.names.with_maker,
    )
}

fn head_line(own: &Score) -> String {
    let head = own.head;
    format!(
        "heads: ratings {} of {} right, {} wrong; width {} of {} right, {} wrong",
        head.ratings, head.of, head.ratings_wrong, head.widths, head.widths_of, head.widths_wrong
    )
}

fn show_clauses(name: &str, reading: &Reading) {
    for clause in &reading.clauses {
        if let Some(shown) = common::shown(clause) {
            let words = clause
                .words
                .split_whitespace()
                .collect::<Vec<_>>()
                .join(" ");
            println!(
                "{name} {} {:?} {shown} « {words}",
                clause.item, clause.confidence
            );
        }
    }
}

fn show_misses(reading: &Reading, text: &str, gold: &Value) {
    for expected in scoring::requirements(gold) {
        if let Some(what) = amiss(&scoring::outcome(reading, text, expected), expected) {
            println!("  {what}: {}", wanted(expected));
        }
    }
}

/// The expected products that were not read, and those with a maker that nobody expected, each with the clauses that hold its words.
fn show_products(reading: &Reading, gold: &Value) {
    let compared = Compared::of(reading, gold);
    let holding = |name: &str| {
        let holding = reading.clauses.iter().filter_map(|own| {
            let words = own.words.split_whitespace().collect::<Vec<_>>().join(" ");
            let holds = words.to_lowercase().contains(name);
            holds.then(|| format!("{} « {words}", own.property))
        });
        holding.take(3).collect::<Vec<_>>().join("\n      ")
    };
    for name in compared.unread() {
        println!("  product not read: {name}\n      {}", holding(name));
    }
    for name in compared.wrong() {
        println!("  product WRONG: {name}\n      {}", holding(name));
    }
}

/// What of the head differs from what people expect.
fn show_head(reading: &Reading, gold: &Value) {
    let head = scoring::head(reading, gold);
    let expected = &gold["header"];
    if head.ratings < head.of {
        let read: Vec<String> = reading
            .header
            .ratings_hr
            .iter()
            .map(ToString::to_string)
            .collect();
        println!(
            "  ratings: {} read, {} expected",
            read.join(", "),
            expected["ratings_hr"]
        );
    }
    if head.widths < head.widths_of || head.widths_wrong > 0 {
        let read = reading.header.width.as_ref().map_or_else(
            || "none".to_owned(),
            |own| {
                let number = |end: Option<measure::Number>| {
                    end.map_or("-".to_owned(), |end| end.to_string())
                };
                format!(
                    "{} {} to {} {}",
                    own.relation.words(),
                    number(own.lo),
                    number(own.hi),
                    own.unit
                )
            },
        );
        println!("  width: {read} read, {} expected", expected["width"]);
    }
}

/// What became of a requirement, unless all of it is as expected.
fn amiss(outcome: &Outcome<'_>, expected: &Value) -> Option<String> {
    let clause = match outcome {
        Outcome::Missed => return Some("missed".to_owned()),
        Outcome::Wrong(clause) => {
            return Some(format!(
                "WRONG {:?} {:?}",
                clause.confidence,
                clause.bound()?.relation
            ));
        }
        Outcome::Right(clause) => clause,
    };
    let option = (!scoring::option_agrees(clause, expected))
        .then(|| format!("option {}", clause.option.as_deref().unwrap_or("none")));
    let condition = (!scoring::condition_agrees(clause, expected)).then(|| {
        let own = clause.condition.as_ref();
        format!(
            "condition {}",
            own.map_or_else(|| "none".to_owned(), |own| own.expr.to_string())
        )
    });
    let both: Vec<String> = option.into_iter().chain(condition).collect();
    (!both.is_empty()).then(|| both.join(", "))
}

fn wanted(expected: &Value) -> String {
    let word = |name: &str| match &expected[name] {
        Value::Null => "-".to_owned(),
        Value::String(words) => words.split_whitespace().collect::<Vec<_>>().join(" "),
        other => other.to_string(),
    };
    format!(
        "{} {}, {} {} to {} {} | in {} if {} | {}",
        word("item"),
        word("attribute"),
        word("relation"),
        word("value"),
        word("hi"),
        word("unit"),
        word("option"),
        word("when"),
        word("quote"),
    )
}
