//! The demo, as a newcomer runs it.

mod common;

use std::fs;

use common::run;
use serde_json::Value;

#[test]
fn the_demo_is_written_confirmed_and_checked() {
    let folder = tempfile::tempdir().unwrap();
    let shown = run(folder.path(), ["demo"]);
    assert_eq!(shown.code, Some(0), "{}", shown.err);
    assert!(
        shown.out.contains("60 joints against 12 listings"),
        "{}",
        shown.out
    );
    assert!(
        shown.out.contains("authority having jurisdiction")
            && shown.out.contains("What to try next")
    );
    assert!(folder.path().join("demo-project/schedule.csv").exists());

    let again = run(folder.path(), ["demo", "--json"]);
    let check: Value = serde_json::from_str(&again.out).unwrap();
    assert_eq!(check["totals"]["joints"], 60);
    assert_eq!(
        check["totals"]["provisional"], 0,
        "every listing of the demo is confirmed"
    );
    let check = run(folder.path(), ["check", "--project", "demo-project"]);
    assert_eq!(
        check.code,
        Some(1),
        "many of its joints are meant not to conform"
    );
}

#[test]
fn files_of_others_are_left_alone() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("schedule.csv"), "mine").unwrap();
    let demo = run(folder.path(), ["demo", "."]);
    assert_eq!(demo.code, Some(2));
    assert!(
        demo.err.contains("schedule.csv") && demo.err.contains("name another folder"),
        "{}",
        demo.err
    );
    assert_eq!(common::names(folder.path()).len(), 1, "nothing is written");
    assert_eq!(
        fs::read_to_string(folder.path().join("schedule.csv")).unwrap(),
        "mine"
    );
}

#[test]
fn what_somebody_else_confirmed_stays() {
    let folder = tempfile::tempdir().unwrap();
    assert_eq!(run(folder.path(), ["demo"]).code, Some(0));
    let listing = "demo-project/listings/bw-s-0121.txt";
    let path = folder.path().join(format!("{listing}.confirmed.toml"));
    fs::remove_file(&path).unwrap();
    assert_eq!(
        run(
            folder.path(),
            [
                "confirm",
                listing,
                "--by",
                "A. Reader",
                "--all",
                "--with-doubts"
            ]
        )
        .code,
        Some(0)
    );
    assert_eq!(run(folder.path(), ["demo"]).code, Some(0));
    assert!(fs::read_to_string(path).unwrap().contains("A. Reader"));
}

/// What the README shows may leave lines out, with `…` in their place, but shows none that doesn't come out.
#[test]
fn what_the_readme_shows_is_what_comes_out() {
    let readme =
        fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/../../README.md")).unwrap();
    let excerpt = readme
        .split("```text\n")
        .nth(1)
        .and_then(|rest| rest.split("```").next())
        .unwrap();
    let folder = tempfile::tempdir().unwrap();
    let shown = common::run_at(folder.path(), "120", ["demo"]).out;
    let mut lines = shown.lines();
    for line in excerpt
        .lines()
        .filter(|line| !line.is_empty() && *line != "…")
    {
        assert!(
            lines.any(|shown| shown == line),
            "this line of the README doesn't come out, or not in this order:\n{line}"
        );
    }
}
