//! What people see, on a small project. Wording is behaviour.

mod common;

use common::{run, run_at, small};
use insta::assert_snapshot;

#[test]
fn read() {
    let folder = small();
    assert_snapshot!(
        "read_80",
        run_at(folder.path(), "80", ["read", "listings/hw-d-0190-ed1.txt"]).out
    );
    assert_snapshot!(
        "read_130",
        run_at(folder.path(), "130", ["read", "listings/hw-d-0190-ed1.txt"]).out
    );
}

#[test]
fn check() {
    let folder = small();
    let confirm = [
        "confirm",
        "listings/hw-d-0190-ed1.txt",
        "--by",
        "A. Reader",
        "--when",
        "2026-03-14",
        "--all",
        "--with-doubts",
    ];
    assert_snapshot!(
        "check_draft",
        run(folder.path(), ["check", "--project", "."]).out
    );
    assert_snapshot!("confirm", run(folder.path(), confirm).out);
    assert_snapshot!(
        "check_80",
        run_at(folder.path(), "80", ["check", "--project", "."]).out
    );
    assert_snapshot!(
        "check_130",
        run_at(folder.path(), "130", ["check", "--project", "."]).out
    );
    assert_snapshot!(
        "explain",
        run(folder.path(), ["explain", "N-2", "--project", "."]).out
    );
    assert_snapshot!(
        "questions",
        run(folder.path(), ["questions", "--project", "."]).out
    );
}

#[test]
fn compare() {
    let folder = small();
    let args = [
        "compare",
        "listings/hw-d-0190-ed1.txt",
        "listings/hw-d-0190-ed2.txt",
    ];
    assert_snapshot!("compare", run(folder.path(), args).out);
}

#[test]
fn two_listings_are_not_two_editions() {
    let folder = small();
    run(folder.path(), ["demo", "demo-project"]);
    let args = [
        "compare",
        "demo-project/listings/hw-d-0412-ed3.txt",
        "demo-project/listings/ff-d-1102.txt",
    ];
    let words = "These are two listings, HW-D-0412 and FF-D-1102";
    assert!(run(folder.path(), args).out.contains(words));
    let of_one = [
        "compare",
        args[1],
        "demo-project/listings/hw-d-0412-ed4.txt",
    ];
    assert!(
        !run(folder.path(), of_one)
            .out
            .contains("These are two listings")
    );
}

#[test]
fn glossary() {
    let folder = small();
    assert_snapshot!("glossary", run(folder.path(), ["glossary", "class II"]).out);
}

#[test]
fn faults() {
    let folder = small();
    std::fs::write(
        folder.path().join("schedule.csv"),
        "joint,mark,joint.width\nN-1,W1,0.75\nN-2,W9,1 in.\n",
    )
    .unwrap();
    assert_snapshot!(
        "faults",
        run(folder.path(), ["check", "--project", "."]).err
    );
}

#[test]
fn help() {
    let folder = small();
    assert_snapshot!("help", run(folder.path(), ["--help"]).out);
    assert_snapshot!("help_check", run(folder.path(), ["check", "--help"]).out);
    for command in [
        "demo",
        "read",
        "confirm",
        "check",
        "explain",
        "questions",
        "compare",
        "calc",
        "work",
        "takeoff",
        "leakage",
        "glossary",
        "schema",
        "completions",
    ] {
        let help = run(folder.path(), [command, "--help"]).out;
        assert!(
            help.contains("Example"),
            "{command} --help shows no example"
        );
    }
}
