//! The demo against the tables of its README, row by row.

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    reason = "in a test a failed expectation is the point"
)]

mod common;

use std::collections::{BTreeMap, BTreeSet};

use common::run;
use serde_json::Value;

const README: &str = include_str!("../demo/README.md");

/// The column of the table of marks that holds the joints of each outcome.
const OUTCOMES: [(usize, &str); 3] = [(3, "conforms"), (4, "does_not_conform"), (5, "open")];

/// The whole check, as the program prints it.
fn check() -> Value {
    let folder = tempfile::tempdir().unwrap();
    serde_json::from_str(&run(folder.path(), ["demo", "--json"]).out).unwrap()
}

/// The results of the joints, by name.
fn joints(check: &Value) -> BTreeMap<&str, &Value> {
    let joints = check["joints"].as_array().unwrap().iter();
    joints
        .map(|joint| (joint["joint"].as_str().unwrap(), &joint["result"]))
        .collect()
}

/// The rows of the table under a heading.
fn table(heading: &str) -> Vec<Vec<&'static str>> {
    let (_, section) = README.split_once(&format!("### {heading}\n")).unwrap();
    let lines = section.lines().skip_while(|line| !line.starts_with('|'));
    let rows = lines.take_while(|line| line.starts_with('|')).skip(2);
    rows.map(|row| row.trim_matches('|').split('|').map(str::trim).collect())
        .collect()
}

/// `J-001 to J-006, J-009` as joints.
fn named(cell: &str) -> Vec<String> {
    let mut names = Vec::new();
    for part in cell.split(", ").filter(|part| part.starts_with("J-")) {
        let (first, last) = part.split_once(" to ").unwrap_or((part, part));
        let number = |name: &str| name.trim_start_matches("J-").parse::<u32>().unwrap();
        names.extend((number(first)..=number(last)).map(|at| format!("J-{at:03}")));
    }
    names
}

/// The joints whose words have been judged, so that nothing is open but what a table says.
fn judged() -> BTreeSet<String> {
    let rows = table("Marks").into_iter().filter(|row| row[6] == "judged");
    rows.flat_map(|row| named(row[2])).collect()
}

/// Words without what a line break or a capital changes.
fn evened(words: &str) -> String {
    let words: Vec<&str> = words.split_whitespace().collect();
    words.join(" ").to_lowercase()
}

/// A clause of a joint, and what was found of it.
struct Found {
    clause: String,
    item: String,
    words: String,
    property: String,
    reason: String,
    verdict: String,
}

fn found(joint: &Value) -> Vec<Found> {
    let findings = joint["findings"].as_array().unwrap().iter();
    let text = |value: &Value| value.as_str().unwrap_or_default().to_owned();
    findings
        .map(|finding| {
            let why = &finding["explanation"];
            Found {
                clause: text(&why["clause"]),
                item: text(&why["item"]),
                words: evened(&text(&why["words"])),
                property: text(&why["property"]),
                reason: text(&why["reason"]),
                verdict: text(&finding["verdict"]),
            }
        })
        .collect()
}

/// A row of the tables of joints that fail and of joints that stay open.
struct Row {
    joint: &'static str,
    item: &'static str,
    words: String,
    fact: &'static str,
    verdicts: Vec<&'static str>,
}

fn rows() -> Vec<Row> {
    let tables = [table("Joints that fail"), table("Joints that stay open")];
    let row = |cells: Vec<&'static str>| Row {
        joint: cells[0],
        item: cells[1],
        words: evened(cells[2].trim_matches('`')),
        fact: cells[3],
        verdicts: verdicts(cells[4]),
    };
    tables.into_iter().flatten().map(row).collect()
}

/// `NotMet or Open: ...` as the verdicts that either allows.
fn verdicts(cell: &str) -> Vec<&'static str> {
    let (allowed, _) = cell.split_once(':').unwrap_or((cell, ""));
    let known = |word: &str| match word {
        "Met" => Some("met"),
        "NotMet" => Some("not_met"),
        "Open" => Some("open"),
        _ => None,
    };
    allowed.split_whitespace().filter_map(known).collect()
}

impl Row {
    /// Whether the row is about every clause that is open, none in particular.
    fn is_on_words_alone(&self) -> bool {
        self.item == "–"
    }

    /// Whether the row is about a clause, or about the listing's head where it bounds the same thing.
    fn is_about(&self, found: &Found) -> bool {
        let is_of_head = found.clause.starts_with("header/");
        let by_words = self.words.len() > 3 && found.words.contains(&self.words);
        let by_property = self.fact.contains(&format!("`{}`", found.property));
        (found.item == self.item || is_of_head) && (by_words || by_property)
    }

    fn allows(&self, found: &Found) -> bool {
        self.is_about(found) && self.verdicts.contains(&found.verdict.as_str())
    }
}

fn none(wrong: &[String]) {
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn every_joint_comes_to_what_is_expected() {
    let check = check();
    let joints = joints(&check);
    let mut wrong = Vec::new();
    let mut counts = BTreeMap::new();
    for row in table("Marks") {
        let mut expected = Vec::new();
        for (column, outcome) in OUTCOMES {
            let names = named(row[column]);
            *counts.entry(outcome).or_insert(0) += names.len();
            expected.extend(names.into_iter().map(|name| (name, outcome)));
        }
        expected.sort();
        let named: Vec<&String> = expected.iter().map(|(name, _)| name).collect();
        assert_eq!(
            named,
            self::named(row[2]).iter().collect::<Vec<_>>(),
            "{row:?}"
        );
        for (name, outcome) in &expected {
            let found = &joints[name.as_str()]["overall"];
            if found != outcome {
                wrong.push(format!("{name}: expected {outcome}, found {found}"));
            }
        }
    }
    none(&wrong);
    for (total, outcome) in [
        ("conform", "conforms"),
        ("do_not_conform", "does_not_conform"),
        ("open", "open"),
    ] {
        assert_eq!(check["totals"][total], counts[outcome], "{total}");
    }
    assert!(
        README.contains("Of the sixty, nineteen conform, twenty-nine fail and twelve are open.")
    );
    assert_eq!(counts.into_values().collect::<Vec<usize>>(), [19, 29, 12]);
}

#[test]
fn every_row_is_found() {
    let check = check();
    let joints = joints(&check);
    let mut wrong = Vec::new();
    for row in rows() {
        let found = found(joints[row.joint]);
        let holds = if row.is_on_words_alone() {
            let mut open = found.iter().filter(|found| found.verdict == "open");
            open.all(|found| {
                found.reason == "needs_a_person" || found.reason == "condition_undecided"
            })
        } else {
            found.iter().any(|found| row.allows(found))
        };
        if !holds {
            let Row {
                joint,
                item,
                words,
                verdicts,
                ..
            } = row;
            wrong.push(format!("{joint}: item {item} isn't {verdicts:?}: {words}"));
        }
    }
    none(&wrong);
}

#[test]
fn nothing_else_fails_or_stays_open() {
    let check = check();
    let judged = judged();
    let rows = rows();
    let mut wrong = Vec::new();
    for (name, joint) in joints(&check) {
        for found in found(joint) {
            let is_asked = match found.verdict.as_str() {
                "not_met" => true,
                "open" => judged.contains(name),
                _ => false,
            };
            let is_expected = |row: &Row| row.joint == name && row.allows(&found);
            if is_asked && !rows.iter().any(is_expected) {
                wrong.push(format!(
                    "{name}: {} ({}) is {}, and no row says so: {}",
                    found.clause, found.property, found.verdict, found.words
                ));
            }
        }
    }
    none(&wrong);
}

#[test]
fn every_judged_word_is_in_the_table_and_no_other() {
    let check = check();
    let mut listed: BTreeMap<(String, String), BTreeSet<String>> = BTreeMap::new();
    for row in table("Judged words") {
        let place = (row[0].trim_matches('`').to_owned(), row[1].to_owned());
        let quotes = row[2]
            .split("; `")
            .map(|quote| evened(quote.trim_matches('`')));
        listed.entry(place).or_default().extend(quotes);
    }
    let mut unused = listed.clone();
    let mut wrong = Vec::new();
    for (name, joint) in joints(&check) {
        if joint["overall"] != "conforms" {
            continue;
        }
        let listing = joint["source_name"]
            .as_str()
            .unwrap()
            .trim_end_matches(".txt");
        for found in found(joint)
            .into_iter()
            .filter(|found| found.verdict == "judged")
        {
            let place = (listing.to_owned(), found.item.clone());
            let quotes = listed.get(&place).into_iter().flatten();
            let fitting = quotes
                .into_iter()
                .find(|quote| found.words.starts_with(*quote));
            match fitting {
                Some(quote) => {
                    unused.entry(place).or_default().remove(quote);
                }
                None => wrong.push(format!(
                    "{name}: {} isn't in the table: {}",
                    found.clause, found.words
                )),
            }
        }
    }
    for ((listing, item), quotes) in unused {
        wrong.extend(
            quotes
                .iter()
                .map(|quote| format!("{listing}, item {item}: nobody judged {quote}")),
        );
    }
    none(&wrong);
}

#[test]
fn every_judgment_is_applied() {
    let check = check();
    for (name, joint) in joints(&check) {
        let notes = joint["notes"].as_array().unwrap().iter();
        let left: Vec<&Value> = notes
            .filter(|note| note.as_str().unwrap().contains("was not applied"))
            .collect();
        assert!(left.is_empty(), "{name}: {left:?}");
    }
}

/// Two joints fail by the length on the width as found, one that closes and one that opens; by their percentages alone
/// they conform.
#[test]
fn a_check_of_percentages_alone_would_pass_two_joints() {
    let folder = tempfile::tempdir().unwrap();
    run(folder.path(), ["demo"]);
    let check = || {
        let run = run(
            folder.path(),
            ["check", "--project", "demo-project", "--json"],
        );
        serde_json::from_str::<Value>(&run.out).unwrap()
    };
    let by_both = check();
    for (joint, head, percent) in [
        ("J-003", "header/movement-compression", "80/3"),
        ("J-054", "header/movement-extension", "500/23"),
    ] {
        let result = joints(&by_both)[joint];
        assert_eq!(result["overall"], "does_not_conform");
        let findings = result["findings"].as_array().unwrap();
        let of_head = findings
            .iter()
            .find(|finding| finding["explanation"]["clause"] == head)
            .unwrap();
        let why = &of_head["explanation"];
        assert_eq!(of_head["verdict"], "not_met", "{joint}");
        assert_eq!(why["share"]["percent"]["number"], percent, "{joint}");
        assert_eq!(why["share"]["is_as_found"], true, "{joint}");
        let note = why["notes"][0].as_str().unwrap();
        assert!(note.contains("alone would pass"), "{note}");
    }
    let schedule = folder.path().join("demo-project/schedule.csv");
    let text = std::fs::read_to_string(&schedule).unwrap();
    let without = text
        .replace("0.2 in. [drawing S-503]", "")
        .replace("5/8 in. [drawing S-520]", "");
    assert_ne!(text, without);
    std::fs::write(&schedule, without).unwrap();
    let by_percentage = check();
    for joint in ["J-003", "J-054"] {
        assert_eq!(joints(&by_percentage)[joint]["overall"], "conforms");
    }
}
