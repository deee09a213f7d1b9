//! `read`: what a person sees first, what can be asked for alone, and what is told of a file that is no listing.

#![allow(clippy::unwrap_used, reason = "a test may stop where it fails")]

mod common;

use common::{folder_with, run, run_at};

const LISTING: &str = "System No. HW-D-0191\n1. Packing - Nominal density 4 pcf. Nominal density 6 pcf. Laid by hand.\n2. Seal - Min 1/4 in. deep.\n\
                       2A. Seal - As an alternate to Item 2, min 1/2 in. deep.\n";

#[test]
fn the_sums_stand_before_the_clauses() {
    let folder = folder_with("a.txt", LISTING.as_bytes());
    let read = run(folder.path(), ["read", "a.txt"]);
    assert_eq!(read.code, Some(0), "{}", read.err);
    let sums = read
        .out
        .find("2 with a doubt (!), 1 left as words (¶)")
        .unwrap();
    let table = read.out.find("clause  ").unwrap();
    assert!(sums < table, "{}", read.out);
    assert!(
        read.out.contains("1/1 !") && read.out.contains("1/3 ¶"),
        "{}",
        read.out
    );
    assert!(read.out.contains("unless 2A is built"), "{}", read.out);
}

#[test]
fn what_needs_a_person_is_listed_alone() {
    let folder = folder_with("a.txt", LISTING.as_bytes());
    let of = |args: &[&str]| {
        let args = [&["read", "a.txt"], args].concat();
        run(folder.path(), args).out
    };
    let doubtful = of(&["--doubtful"]);
    assert!(
        doubtful.contains("1/2 !") && !doubtful.contains("2/1"),
        "{doubtful}"
    );
    assert!(!doubtful.contains("1/3"), "{doubtful}");
    let left = of(&["--left"]);
    assert!(left.contains("1/3 ¶") && !left.contains("1/1"), "{left}");
    let both = of(&["--left", "--doubtful"]);
    assert!(both.contains("1/1 !") && both.contains("1/3 ¶"), "{both}");
    assert!(!of(&[]).contains("read by") && of(&["--by-rule"]).contains("read by"));
}

#[test]
fn on_a_narrow_page_clauses_stand_one_under_another() {
    let folder = folder_with("a.txt", LISTING.as_bytes());
    let read = run_at(folder.path(), "50", ["read", "a.txt"]).out;
    let (clauses, _) = read.split_once("What is doubtful").unwrap();
    assert!(
        read.contains("\n2/1 Seal depth: at least 1/4 in. (≈ 6.4 mm)\n"),
        "{read}"
    );
    assert!(
        clauses.lines().all(|line| line.chars().count() <= 50),
        "{read}"
    );
}

#[test]
fn a_file_of_another_sort_is_called_by_its_name() {
    for (name, bytes, told) in [
        (
            "a.docx",
            &b"PK\x03\x04\x14\x00\x06"[..],
            "looks like a Word document",
        ),
        (
            "a.svg",
            b"<svg viewBox=\"0 0 4 4\"><text>Min 4 in. deep</text></svg>",
            "is a drawing (SVG)",
        ),
        (
            "a.html",
            b"<!DOCTYPE html><p>1. Packing - Min 4 in. deep.",
            "is a web page (HTML)",
        ),
    ] {
        let folder = folder_with(name, bytes);
        let refused = run(folder.path(), ["read", name]);
        assert_eq!(refused.code, Some(2), "{name}");
        assert!(
            refused.err.contains(told) && refused.err.contains("save it as PDF"),
            "{}",
            refused.err
        );
    }
}

#[test]
fn nothing_read_is_no_success() {
    let folder = folder_with("a.txt", b"\n\n---\n");
    let read = run(folder.path(), ["read", "a.txt"]);
    assert_eq!(read.code, Some(1), "{}", read.out);
    assert!(
        read.out.contains("Nothing was read: no clause was found."),
        "{}",
        read.out
    );
    assert!(
        !read.out.contains("No word of the document was left out"),
        "{}",
        read.out
    );
}

#[test]
fn one_listing_is_read_at_a_time() {
    let folder = folder_with("a.txt", LISTING.as_bytes());
    let refused = run(folder.path(), ["read", "a.txt", "b.txt"]);
    assert_eq!(refused.code, Some(2));
    assert!(
        refused.err.contains("one listing is read at a time"),
        "{}",
        refused.err
    );
}
