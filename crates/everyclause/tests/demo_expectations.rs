//! The demo against what its README says is expected, which was written before the program gave any verdict.

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    reason = "in a test a failed expectation is the point"
)]

mod common;

use std::collections::BTreeMap;

use common::run;
use serde_json::Value;

const README: &str = include_str!("../demo/README.md");

/// The joints as the program checks them, by name.
fn joints() -> BTreeMap<String, Value> {
    let folder = tempfile::tempdir().unwrap();
    let check: Value = serde_json::from_str(&run(folder.path(), ["demo", "--json"]).out).unwrap();
    let joints = check["joints"].as_array().unwrap().iter();
    joints
        .map(|joint| (text(&joint["joint"]), joint["result"].clone()))
        .collect()
}

fn text(value: &Value) -> String {
    value.as_str().unwrap_or_default().to_owned()
}

/// The rows of the table under a heading.
fn table(heading: &str) -> Vec<Vec<&'static str>> {
    let (_, section) = README.split_once(&format!("### {heading}\n")).unwrap();
    let lines = section.lines().skip_while(|line| !line.starts_with('|'));
    let rows = lines.take_while(|line| line.starts_with('|')).skip(2);
    rows.map(|row| row.trim_matches('|').split(" | ").map(str::trim).collect())
        .collect()
}

/// `J-001 to J-006, J-009` as joints.
fn named(cell: &str) -> Vec<String> {
    let mut names = Vec::new();
    for part in cell
        .split(',')
        .map(str::trim)
        .filter(|part| part.starts_with("J-"))
    {
        let (first, last) = part.split_once(" to ").unwrap_or((part, part));
        let number = |name: &str| name.trim_start_matches("J-").parse::<u32>().unwrap();
        names.extend((number(first)..=number(last)).map(|at| format!("J-{at:03}")));
    }
    names
}

fn evened(words: &str) -> String {
    words
        .split_whitespace()
        .collect::<Vec<_>>()
        .join(" ")
        .to_lowercase()
}

/// The clauses of a joint that aren't met: words and property.
fn not_met(joint: &Value) -> Vec<(String, String, String)> {
    let findings = joint["findings"].as_array().unwrap().iter();
    findings
        .filter(|finding| finding["verdict"] == "not_met")
        .map(|finding| &finding["explanation"])
        .map(|why| {
            (
                text(&why["clause"]),
                evened(&text(&why["words"])),
                text(&why["property"]),
            )
        })
        .collect()
}

#[test]
#[ignore = "run it when the demo, the reader or the check changes"]
fn every_joint_comes_to_what_is_expected() {
    let joints = joints();
    let mut wrong = Vec::new();
    for row in table("Marks") {
        for (column, expected) in [(3, "conforms"), (4, "does_not_conform"), (5, "open")] {
            for name in named(row[column].trim_end_matches('|')) {
                let found = &joints[&name]["overall"];
                if found != expected {
                    wrong.push(format!("{name}: expected {expected}, found {found}"));
                }
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
#[ignore = "run it when the demo, the reader or the check changes"]
fn what_fails_is_what_is_meant_to() {
    let joints = joints();
    let mut wrong = Vec::new();
    let mut claimed: BTreeMap<&str, Vec<String>> = BTreeMap::new();
    for row in table("Joints that fail") {
        let (name, item, words, fact) = (row[0], row[1], evened(row[2].trim_matches('`')), row[3]);
        let found = not_met(&joints[name]);
        let fits = |(clause, theirs, property): &&(String, String, String)| {
            (words.len() > 2 && theirs.contains(&words))
                || fact.contains(&format!("`{property}`"))
                || (item == "barrier" && clause == "header/rating")
        };
        let fitting: Vec<String> = found
            .iter()
            .filter(fits)
            .map(|(clause, ..)| clause.clone())
            .collect();
        // What can't be computed may stay open, as the README says.
        if fitting.is_empty() && !row[4].contains("else Open") {
            wrong.push(format!("{name}: item {item} is met or open: {words}"));
        }
        claimed.entry(name).or_default().extend(fitting);
    }
    for (name, claimed) in claimed {
        for (clause, words, property) in not_met(&joints[name]) {
            if !claimed.contains(&clause) {
                wrong.push(format!(
                    "{name}: {clause} ({property}) isn't met, and isn't meant not to: {words}"
                ));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}
