//! `read --marked`: a page of the words beside the clauses.

#![allow(clippy::unwrap_used, reason = "a test may stop where it fails")]

mod common;

use std::fs;

use common::{folder_with, run};

const LISTING: &str = "System No. HW-D-0191\n1. Packing - Min 4 in. deep, nominal density 4 pcf.\n";

#[test]
fn a_page_is_written_and_written_anew() {
    let folder = folder_with("a.txt", LISTING.as_bytes());
    let page = folder.path().join("a.html");
    fs::write(&page, "an older page").unwrap();
    let first = run(folder.path(), ["read", "a.txt", "--marked", "a.html"]);
    assert_eq!(first.code, Some(0), "{}", first.err);
    assert!(first.out.starts_with("2 clauses marked"), "{}", first.out);
    let written = fs::read_to_string(&page).unwrap();
    assert!(written.starts_with("<!DOCTYPE html>") && written.contains("nobody has confirmed it"));
    let confirm = [
        "confirm",
        "a.txt",
        "--by",
        "A. <Reader>",
        "--when",
        "2026-03-14",
        "--all",
    ];
    run(folder.path(), confirm);
    run(folder.path(), ["read", "a.txt", "--marked", "a.html"]);
    let written = fs::read_to_string(&page).unwrap();
    assert!(
        written.contains("✓ confirmed by A. &lt;Reader&gt; on 2026-03-14"),
        "{written}"
    );
}

#[test]
fn neither_the_listing_nor_what_is_no_page_is_written_over() {
    let folder = folder_with("a.html", LISTING.as_bytes());
    for out in ["a.html", "a.txt", "a"] {
        let refused = run(folder.path(), ["read", "a.html", "--marked", out]);
        assert_eq!(refused.code, Some(2), "{out}");
        assert!(
            refused.err.contains("nothing was written"),
            "{}",
            refused.err
        );
    }
    assert_eq!(
        fs::read_to_string(folder.path().join("a.html")).unwrap(),
        LISTING
    );
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1);
}

#[test]
fn the_pages_of_a_pdf_are_shown_in_outline() {
    let folder = tempfile::tempdir().unwrap();
    let demo = concat!(env!("CARGO_MANIFEST_DIR"), "/demo/pdf/ff-d-1102.pdf");
    run(folder.path(), ["read", demo, "--marked", "p.html"]);
    let page = fs::read_to_string(folder.path().join("p.html")).unwrap();
    assert_eq!(page.matches("class=\"leaf\"").count(), 3);
    assert!(page.contains("class=\"spot\"") && page.contains("mm from the top"));
    assert_eq!(
        page.matches("class=\"break\"").count(),
        2,
        "the pages are parted in the words"
    );
}
