//! What was said of one listing's own requirement decides nothing of another's that has the same item and words.

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    reason = "a case that isn't written right must fail"
)]

mod support;

use conformance::{How, JointResult, Subject, Verdict, check_draft, goes_by};
use listing::Reading;
use site::{Decision, Fact, Judgment};
use support::{alternates, check_with, fact, finding, judgment, reading, subject};

/// Listing A, whose item 2A2 bounds a flute, and listings that have the same item and words.
fn listing(file: &str, limit: &str) -> Reading {
    let line = format!("2A2:flute_width: at most {limit} ; item 2A2");
    let mut listing = reading(&[&line]);
    listing.source.name = format!("{file}.txt");
    // `a`, `b` and `c` are hexadecimal digits, too.
    listing.source.sha256 = file.repeat(64);
    listing.header.designation = file.to_uppercase();
    listing
}

fn verdict(listing: &Reading, facts: &[Fact]) -> (Verdict, JointResult) {
    let subject: Subject<'_> = subject(facts, &[]);
    let result: JointResult = check_draft(listing, &subject).into();
    (finding(&result, "2A2/1").verdict, result)
}

fn said(name: &str, value: &str) -> Fact {
    fact(&format!("{name} = {value}"))
}

#[test]
fn an_answer_counts_for_the_listing_that_it_was_said_of() {
    let (a, b, c) = (
        listing("a", "5 in."),
        listing("b", "3 in."),
        listing("c", "5 in."),
    );
    let by_document = goes_by(&a).saying("2A2:flute_width");
    for name in [
        by_document.as_str(),
        "2A2:flute_width@a",
        "2A2:flute_width@A.txt",
    ] {
        let facts = [said(name, "2 in.")];
        let (met, result) = verdict(&a, &facts);
        assert_eq!(met, Verdict::Met, "{name}");
        assert!(result.notes.is_empty(), "{:?}", result.notes);
        for other in [&b, &c] {
            let (open, result) = verdict(other, &facts);
            assert_eq!(open, Verdict::Open, "{name}");
            assert_eq!(result.notes.len(), 1);
            assert!(
                result.notes[0].contains("it doesn't count here"),
                "{:?}",
                result.notes
            );
        }
        assert_eq!(verdict(&a, &facts).0, Verdict::Met, "and again");
    }
}

#[test]
fn an_answer_that_names_no_listing_counts_for_none_and_is_told() {
    let a = listing("a", "5 in.");
    let (open, result) = verdict(&a, &[said("2A2:flute_width", "2 in.")]);
    assert_eq!(open, Verdict::Open);
    assert!(
        result.notes[0].contains("doesn't say of which listing"),
        "{:?}",
        result.notes
    );
    assert!(
        result.notes[0].contains("`2A2:flute_width@a`"),
        "{:?}",
        result.notes
    );
    // Nor does what another property's name says.
    let (_, result) = verdict(&a, &[said("9:something_else", "2 in.")]);
    assert!(result.notes.is_empty(), "{:?}", result.notes);
}

#[test]
fn another_document_of_the_same_name_is_another_listing() {
    let a = listing("a", "5 in.");
    let facts = [said(&goes_by(&a).saying("2A2:flute_width"), "2 in.")];
    let mut next = a.clone();
    next.source.sha256 = "f".repeat(64);
    let (open, result) = verdict(&next, &facts);
    assert_eq!(open, Verdict::Open);
    assert!(
        result.notes[0].contains("another document"),
        "{:?}",
        result.notes
    );
}

#[test]
fn of_two_names_for_one_listing_the_document_goes_before_and_else_neither() {
    let a = listing("a", "5 in.");
    let document = goes_by(&a).saying("2A2:flute_width");
    let facts = [said("2A2:flute_width@a", "2 in."), said(&document, "6 in.")];
    assert_eq!(verdict(&a, &facts).0, Verdict::NotMet);
    let facts = [
        said("2A2:flute_width@a", "2 in."),
        said("2A2:flute_width@A.txt", "6 in."),
    ];
    assert_eq!(verdict(&a, &facts).0, Verdict::Open);
}

#[test]
fn which_option_is_built_is_said_of_one_listing() {
    let with = |file: &str| {
        let mut listing = reading(&[
            "coating.wet_thickness: at least 1/8 in. ; item 3B",
            "sealant.depth: at least 5/8 in. ; item 3B1",
        ]);
        listing.source.name = format!("{file}.txt");
        listing.header.designation = file.to_uppercase();
        listing.options = vec![alternates("3B", &["3B", "3B1"])];
        listing
    };
    let (a, b) = (with("a"), with("b"));
    let facts = [said("option.3B@a", "3B1"), said("sealant.depth", "3/4 in.")];
    let how = |listing: &Reading| {
        let result: JointResult = check_draft(listing, &subject(&facts, &[])).into();
        (result.chosen[0].how, result.notes.len())
    };
    assert_eq!(how(&a), (How::Stated, 0));
    let (how_b, notes) = how(&b);
    assert_ne!(how_b, How::Stated);
    assert_eq!(notes, 1);
}

#[test]
fn a_part_s_value_is_said_of_one_listing() {
    let with = |file: &str| {
        let mut listing = reading(&[
            "runner.gauge: at least 25 MSG ; item 2A",
            "runner.gauge: at least 20 MSG ; item 2B",
        ]);
        for item in &mut listing.items {
            item.title = "Runner".to_owned();
        }
        listing.source.name = format!("{file}.txt");
        listing.header.designation = file.to_uppercase();
        listing
    };
    let facts = [
        said("2A:runner.gauge@a", "16 MSG"),
        said("2B:runner.gauge@a", "16 MSG"),
    ];
    let met = |listing: &Reading| {
        let result: JointResult = check_draft(listing, &subject(&facts, &[])).into();
        result.counts.met
    };
    assert_eq!(met(&with("a")), 2);
    assert_eq!(met(&with("b")), 0);
}

#[test]
fn a_judgment_that_names_no_listing_is_for_a_clause_with_all_its_words() {
    let unnamed = |item: &str, words: &str| Judgment {
        listing: None,
        ..judgment(item, words, Decision::Accepted, "seen")
    };
    let mut listing = listing("a", "5 in.");
    listing.clauses[0].words = "Max flute width 5 in.".to_owned();
    let judged = |item: &str, words: &str| {
        let result = check_with(&listing, &[], &[unnamed(item, words)]);
        (finding(&result, "2A2/1").verdict, result.notes.len())
    };
    assert_eq!(judged("2A2", "Max flute width 5 in."), (Verdict::Judged, 0));
    // The same beginning, and what it goes on with nobody has judged; nor what is numbered alike.
    assert_eq!(judged("2A2", "Max flute width"), (Verdict::Open, 1));
    assert_eq!(judged("2A2/1", ""), (Verdict::Open, 1));
    let head = check_with(&listing, &[], &[unnamed("header/rating", "")]);
    assert_ne!(finding(&head, "header/rating").verdict, Verdict::Judged);
}
