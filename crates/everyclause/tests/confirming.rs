//! What a person confirms is kept: over a second run, over a new reading, over a change of the listing.

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    reason = "in a test a failed expectation is the point"
)]

mod common;

use std::fs;
use std::path::Path;

use common::{Run, folder_with, run};

const LISTING: &str = "System No. HW-D-0191\n1. Packing - Min 4 in. deep, nominal density 4 pcf.\n2. Coating - Min 1/8 in. wet thickness.\n";

fn confirm(folder: &Path, args: &[&str]) -> Run {
    let base = [
        "confirm",
        "a.txt",
        "--by",
        "A. Reader",
        "--when",
        "2026-03-14",
    ];
    run(folder, base.iter().chain(args))
}

fn kept(folder: &Path) -> String {
    fs::read_to_string(folder.join("a.txt.confirmed.toml")).unwrap()
}

#[test]
fn without_a_clause_nothing_is_written() {
    let folder = folder_with("a.txt", LISTING.as_bytes());
    let run = run(folder.path(), ["confirm", "a.txt"]);
    assert_eq!(run.code, Some(1));
    assert!(
        run.out.contains("3 of 3 clauses nobody has confirmed yet"),
        "{}",
        run.out
    );
    assert!(!folder.path().join("a.txt.confirmed.toml").exists());
}

#[test]
fn clause_by_clause_and_then_all() {
    let folder = folder_with("a.txt", LISTING.as_bytes());
    let one = confirm(folder.path(), &["--clause", "1/1", "2/1"]);
    assert_eq!(one.code, Some(1));
    assert!(
        one.out
            .contains("2 clauses written to a.txt.confirmed.toml")
            && one.out.contains("1 of 3 clauses"),
        "{}",
        one.out
    );
    let rest = run(
        folder.path(),
        ["confirm", "a.txt", "--by", "B. Other", "--all"],
    );
    assert_eq!(rest.code, Some(0), "{rest:?}");
    let kept = kept(folder.path());
    assert_eq!(
        (
            kept.matches("A. Reader").count(),
            kept.matches("B. Other").count()
        ),
        (2, 1)
    );
    let read = run(folder.path(), ["read", "a.txt"]);
    assert!(
        read.out
            .contains("confirmed: every clause, by A. Reader and B. Other"),
        "{}",
        read.out
    );
}

#[test]
fn all_leaves_what_was_read_with_a_doubt() {
    let listing = "1. Packing - Nominal density 4 pcf. Nominal density 6 pcf. Min 4 in. deep.\n";
    let folder = folder_with("a.txt", listing.as_bytes());
    let none = run(folder.path(), ["confirm", "a.txt"]);
    assert!(
        none.out.contains("leaves 2 clauses read with"),
        "{}",
        none.out
    );
    let all = confirm(folder.path(), &["--all"]);
    assert_eq!(all.code, Some(1), "{}", all.out);
    assert!(
        all.out.contains("2 of 3 clauses nobody has confirmed yet") && !all.out.contains("`--all`"),
        "{}",
        all.out
    );
    let doubts = confirm(folder.path(), &["--all", "--with-doubts"]);
    assert_eq!(doubts.code, Some(0), "{}", doubts.out);
    assert!(
        doubts
            .out
            .contains("The reader was in doubt of 1/1 and 1/2"),
        "{}",
        doubts.out
    );
}

#[test]
fn a_correction_against_the_words_is_told() {
    let folder = folder_with("a.txt", LISTING.as_bytes());
    let turned = confirm(
        folder.path(),
        &["--correct", "1/1", "--relation", "at-most"],
    );
    assert!(
        turned
            .out
            .contains("1/1: was at least 4 in. (101.6 mm), is at most 4 in. (101.6 mm).")
            && turned.out.contains("! The limit of 1/1 is turned around"),
        "{}",
        turned.out
    );
    let other = confirm(folder.path(), &["--correct", "1/1", "--value", "5 in."]);
    assert!(
        other
            .out
            .contains("! The value of 1/1 doesn't stand in its words"),
        "{}",
        other.out
    );
    let same = confirm(folder.path(), &["--correct", "1/1", "--value", "4 in."]);
    assert!(!same.out.contains("! The"), "{}", same.out);
}

#[test]
fn options_and_conditions_are_put_right() {
    let listing =
        "1. Packing - Min 4 in. deep.\n1A. Packing - As an alternate to Item 1, min 3 in. deep.\n";
    let folder = folder_with("a.txt", listing.as_bytes());
    let put = |more: &[&str]| confirm(folder.path(), &[&["--correct", "1A/1"], more].concat());
    let read = || run(folder.path(), ["read", "a.txt"]).out;
    assert!(read().contains("only with 1A"), "{}", read());
    let none = put(&["--no-option"]);
    assert_eq!(none.err, "", "{}", none.out);
    let when = put(&["--option", "1A", "--applies", "joint.width more-than 2 in."]);
    assert_eq!(when.err, "", "{}", when.out);
    let told = read();
    assert!(
        told.contains("only with 1A") && told.contains("when joint width is more than"),
        "{told}"
    );
    for (wrong, help) in [
        ("joint.width", "is no condition"),
        ("joint.width bigger 2 in.", "the relations are"),
        ("joint.breadth more-than 2 in.", "no property"),
    ] {
        let refused = put(&["--applies", wrong]);
        assert_eq!(refused.code, Some(2), "{wrong}");
        assert!(refused.err.contains(help), "{}", refused.err);
    }
    assert_eq!(put(&["--option", "Z"]).code, Some(2));
}

#[test]
fn a_correction_is_kept_and_can_be_corrected_again() {
    let folder = folder_with("a.txt", LISTING.as_bytes());
    assert_eq!(confirm(folder.path(), &["--all"]).code, Some(0));
    for (value, shown) in [("5 in.", "at least 5 in."), ("6 in.", "at least 6 in.")] {
        let run = confirm(folder.path(), &["--correct", "1/1", "--value", value]);
        assert_eq!((run.code, run.err.as_str()), (Some(0), ""), "{}", run.out);
        let read = common::run(folder.path(), ["read", "a.txt"]);
        assert!(
            read.out.contains(shown) && read.out.contains("1/1 ✎"),
            "{}",
            read.out
        );
    }
    assert_eq!(kept(folder.path()).matches("[[clause]]").count(), 3);
    // Confirmed as read after all.
    assert_eq!(confirm(folder.path(), &["--clause", "1/1"]).code, Some(0));
    let read = run(folder.path(), ["read", "a.txt"]);
    assert!(read.out.contains("at least 4 in."), "{}", read.out);
}

#[test]
fn what_the_listing_no_longer_says_is_told_and_kept() {
    let folder = folder_with("a.txt", LISTING.as_bytes());
    assert_eq!(confirm(folder.path(), &["--all"]).code, Some(0));
    fs::write(
        folder.path().join("a.txt"),
        LISTING.replace("Min 4 in.", "Min 5 in."),
    )
    .unwrap();
    let read = run(folder.path(), ["read", "a.txt"]);
    assert!(
        read.err.contains("no longer fit") && read.out.contains("a draft"),
        "{}\n{}",
        read.err,
        read.out
    );
    let again = confirm(folder.path(), &["--all"]);
    assert_eq!(again.code, Some(1), "{again:?}");
    assert!(
        kept(folder.path()).contains("Min 4 in."),
        "the old entry is kept"
    );
    let dropped = confirm(folder.path(), &["--drop-lost"]);
    assert_eq!(
        (dropped.code, dropped.err.as_str()),
        (Some(0), ""),
        "{}",
        dropped.out
    );
    assert!(!kept(folder.path()).contains("Min 4 in."));
}

#[test]
fn corrections_teach_the_reader() {
    let folder = folder_with("a.txt", LISTING.as_bytes());
    let nothing = run(folder.path(), ["confirm", "a.txt", "--cases", "c.md"]);
    assert_eq!(nothing.code, Some(2));
    assert!(
        nothing.err.contains("nothing has been corrected"),
        "{}",
        nothing.err
    );
    // One that was read otherwise, and one that is read so already.
    confirm(
        folder.path(),
        &["--correct", "1/2", "--relation", "at-least"],
    );
    confirm(
        folder.path(),
        &["--correct", "1/1", "--relation", "at-least"],
    );
    let run = run(folder.path(), ["confirm", "a.txt", "--cases", "c.md"]);
    assert!(
        run.err.contains("2 corrections written to c.md"),
        "{}",
        run.err
    );
    assert!(run.err.contains("don't publish"), "{}", run.err);
    let page = fs::read_to_string(folder.path().join("c.md")).unwrap();
    assert!(
        page.contains("> 1. Packing - Min 4 in. deep, nominal density 4 pcf.\n"),
        "{page}"
    );
    assert!(page.contains("don't publish"), "{page}");
    let failures = listing::cases::failures(&page);
    assert_eq!(failures.len(), 1, "{failures:?}");
    assert!(
        failures[0].contains("expected `4 pcf` at least 4 pcf of packing.density"),
        "{failures:?}"
    );
}

#[test]
fn a_page_of_cases_is_not_written_over_the_listing() {
    let folder = folder_with("a.md", LISTING.as_bytes());
    for out in ["a.md", "a.txt"] {
        let refused = run(folder.path(), ["confirm", "a.md", "--cases", out]);
        assert_eq!(refused.code, Some(2));
        assert!(
            refused.err.contains("nothing was written"),
            "{}",
            refused.err
        );
    }
    assert_eq!(
        fs::read_to_string(folder.path().join("a.md")).unwrap(),
        LISTING
    );
}
