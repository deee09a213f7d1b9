//! Calculations and work cards as people see them, and what a bad value is answered with.

mod common;

use std::path::Path;

use common::{Run, run, run_at};
use insta::assert_snapshot;

fn calc(args: &[&str]) -> Run {
    run(Path::new("."), [&["calc"], args].concat())
}

#[test]
fn packing() {
    let args = [
        "packing",
        "--width",
        "7/8 in.",
        "1 in.",
        "1-1/8 in.",
        "--resolution",
        "1/16 in.",
        "--depth",
        "4 in.",
        "--least",
        "33 %",
        "--stock",
        "1 in.",
        "1-1/2 in.",
        "2 in.",
        "--density",
        "4 pcf",
        "--closing",
        "1/8 in.",
    ];
    let run = calc(&args);
    assert_eq!(run.code, Some(0));
    assert_snapshot!("calc_packing", run.out);
}

#[test]
fn runner_that_jams() {
    let args = [
        "runner",
        "--slot",
        "1-1/2 in.",
        "--screw",
        "1/8 in.",
        "--leg",
        "2-1/2 in.",
        "--stud-gap",
        "3/4 in.",
        "--board-gap",
        "3/4 in.",
        "--down",
        "3/4 in.",
        "--up",
        "1/4 in.",
    ];
    let run = calc(&args);
    assert_eq!(run.code, Some(1));
    assert_snapshot!("calc_runner", run.out);
}

#[test]
fn a_bad_value_is_named() {
    let whole = calc(&["thickness", "--width", "2 in.", "--compression", "100 %"]);
    assert_eq!(whole.code, Some(2));
    assert!(
        whole
            .err
            .contains("the compression is 100 %; it must be 0 % or more and below 100 %"),
        "{}",
        whole.err
    );
    let bare = calc(&["limit", "--span", "24", "--n", "360"]);
    assert_eq!(bare.code, Some(2));
    assert!(bare.err.contains("--span"), "{}", bare.err);
    let deck = calc(&[
        "flutes", "--deck", "Q", "--length", "20 ft", "--depth", "5 in.",
    ]);
    assert!(deck.err.contains("known are B, F, A, N"), "{}", deck.err);
    let no_deck = calc(&["flutes", "--length", "20 ft", "--depth", "5 in."]);
    assert_eq!(no_deck.code, Some(2));
    assert!(
        no_deck.err.contains("the deck is missing"),
        "{}",
        no_deck.err
    );
    // Nothing that is given is left aside in silence.
    let both = [
        "flutes", "--deck", "B", "--pitch", "8 in.", "--length", "20 ft", "--depth", "5 in.",
    ];
    assert_eq!(calc(&both).code, Some(2));
    // A beam without a load deflects nothing, and says nothing about the joint.
    let unloaded = calc(&[
        "beam",
        "--span",
        "24 ft",
        "--modulus",
        "29000 ksi",
        "--inertia",
        "1330 in4",
    ]);
    assert_eq!(unloaded.code, Some(2));
    assert!(
        unloaded.err.contains("the load is missing"),
        "{}",
        unloaded.err
    );
    // Moduli are as often given in GPa.
    let metric = [
        "beam",
        "--span",
        "7 m",
        "--uniform",
        "30 kN/m",
        "--modulus",
        "200 GPa",
        "--inertia",
        "55000 cm4",
    ];
    let metric = calc(&metric);
    // 5 w L^4 / 384 E I = 5 × 30 × 7000^4 / (384 × 200 000 × 55 000 × 10^4) mm.
    assert!(metric.out.contains("≈ 8.526 mm"), "{}", metric.out);
}

/// Every computation's help shows an example that fits the page, and the example runs as a shell would take it.
#[test]
fn every_example_runs() {
    let page = |args: &[&str]| run_at(Path::new("."), "100", args).out;
    let help = page(&["calc", "--help"]);
    let commands = help
        .split("Commands:")
        .nth(1)
        .unwrap()
        .split("Options:")
        .next()
        .unwrap();
    let names: Vec<&str> = commands
        .lines()
        .filter(|line| line.starts_with("  ") && !line.starts_with("   "))
        .filter_map(|line| line.split_whitespace().next())
        .collect();
    assert!(names.len() > 20, "{names:?}");
    for name in names {
        let help = page(&["calc", name, "--help"]);
        let examples = help
            .split("\nExample")
            .nth(1)
            .and_then(|rest| rest.split_once('\n'))
            .unwrap_or_else(|| panic!("{name} has no example"))
            .1;
        // A line goes on only where it ends in a backslash.
        let joined = examples.replace("\\\n", " ");
        let lines = joined.lines().take_while(|line| !line.trim().is_empty());
        let mut tried = 0;
        for line in lines {
            let command = line.trim().strip_prefix("everyclause calc ");
            let command = command.unwrap_or_else(|| panic!("{name}: `{line}` is no command"));
            let words = words(command);
            let run = calc(&words.iter().map(String::as_str).collect::<Vec<_>>());
            assert!(matches!(run.code, Some(0 | 1)), "{line}: {}", run.err);
            tried += 1;
        }
        assert!(tried > 0, "{name}");
    }
}

/// The words of a command line, those in quotation marks kept together.
fn words(line: &str) -> Vec<String> {
    let parts = line.split('"').enumerate();
    parts
        .flat_map(|(at, part)| {
            let quoted = at % 2 == 1;
            let words: Vec<String> = if quoted {
                vec![part.to_owned()]
            } else {
                part.split_whitespace().map(str::to_owned).collect()
            };
            words
        })
        .collect()
}

/// Marks of the demo: a head of wall with packing and coating, one across flutes, one with a slotted runner, one with a
/// preformed seal, an expansion joint in metric.
#[test]
fn work_cards() {
    let folder = tempfile::tempdir().unwrap();
    let demo = run(folder.path(), ["demo"]);
    assert_eq!(demo.code, Some(0), "{}", demo.err);
    for mark in ["HW1", "HW4", "HW8", "HW10", "FF1"] {
        let card = run_at(
            folder.path(),
            "130",
            ["work", mark, "--project", "demo-project"],
        );
        // Each of these marks has a joint that doesn't conform.
        assert_eq!(card.code, Some(1), "{}", card.err);
        assert_snapshot!(format!("work_{mark}"), card.out);
    }
    let unknown = run(folder.path(), ["work", "HW99", "--project", "demo-project"]);
    assert_eq!(unknown.code, Some(2));
    assert!(unknown.err.contains("no mark `HW99`"), "{}", unknown.err);
}
