//! What named people have decided.

mod support;

use conformance::{Reason, Verdict};
use listing::Reading;
use site::{Decision, Judgment, Scope};
use support::{check_with, finding, judgment, reading};

fn listing() -> Reading {
    reading(&[
        "packing.seams: prose ; item 3A ; words Seams tightly butted.",
        "packing.depth: at least 4 in. ; item 3A ; words Depth of packing min 4 in.",
        "packing.recess: prose ; item 3A ; words Depth of packing measured from the face.",
        "packing.seams: prose ; item 3B ; words Seams tightly butted.",
    ])
}

#[track_caller]
fn check_judged(
    facts: &[&str],
    judgments: &[Judgment],
    clause: &str,
    expected: (Verdict, Reason),
    notes: usize,
) {
    let result = check_with(&listing(), facts, judgments);
    let found = finding(&result, clause);
    assert_eq!(
        (found.verdict, found.explanation.reason),
        expected,
        "{}",
        found.explanation.sentence
    );
    assert_eq!(result.notes.len(), notes, "{:?}", result.notes);
}

const JUDGED: (Verdict, Reason) = (Verdict::Judged, Reason::Accepted);
const REJECTED: (Verdict, Reason) = (Verdict::NotMet, Reason::Rejected);
const OPEN: (Verdict, Reason) = (Verdict::Open, Reason::NeedsAPerson);

#[test]
fn an_open_clause_is_judged() {
    let accepted = judgment(
        "Item 3A",
        "Seams  tightly",
        Decision::Accepted,
        "seen at placing",
    );
    check_judged(&[], &[accepted], "3A/1", JUDGED, 0);
    let rejected = judgment(
        "3A",
        "Seams tightly butted.",
        Decision::Rejected,
        "gaps at both ends",
    );
    check_judged(&[], &[rejected], "3A/1", REJECTED, 0);
}

#[test]
fn a_judgment_on_another_item_or_listing_is_not_for_this_clause() {
    let accepted = judgment("3A", "Seams tightly", Decision::Accepted, "");
    check_judged(&[], std::slice::from_ref(&accepted), "3B/1", OPEN, 0);
    let elsewhere = Judgment {
        listing: Some("FF-S-1901".to_owned()),
        ..accepted.clone()
    };
    check_judged(&[], &[elsewhere], "3A/1", OPEN, 0);
    for name in ["HW-D-0901", "hw-d-0901", "case", "case.txt"] {
        let here = Judgment {
            listing: Some(name.to_owned()),
            ..accepted.clone()
        };
        check_judged(&[], &[here], "3A/1", JUDGED, 0);
    }
}

#[test]
fn words_that_fit_two_clauses_or_none_are_applied_to_neither() {
    let depth = "packing.depth = 4 in. <- measured 1/16 in.";
    let too_close = (Verdict::Open, Reason::TooClose);
    let two = judgment("3A", "Depth of packing", Decision::Accepted, "");
    check_judged(&[depth], &[two], "3A/2", too_close, 1);
    let none = judgment("3A", "Depth of the packing", Decision::Accepted, "");
    check_judged(&[depth], &[none], "3A/2", too_close, 1);
    // Not a whole word.
    let part = judgment("3A", "Depth of packing mi", Decision::Accepted, "");
    check_judged(&[depth], &[part], "3A/2", too_close, 1);
    let empty = judgment("3A", " ", Decision::Accepted, "");
    check_judged(&[depth], &[empty], "3A/2", too_close, 1);
    let one = judgment("3A", "Depth of packing min", Decision::Accepted, "");
    check_judged(&[depth], &[one], "3A/2", JUDGED, 0);
}

#[test]
fn what_fails_is_accepted_only_on_a_ground_and_stays_in_view() {
    let thin = "packing.depth = 3 in.";
    let groundless = judgment("3A/2", "", Decision::Accepted, " ");
    check_judged(&[thin], &[groundless], "3A/2", support::NOT_MET, 1);
    let grounded = judgment("3A/2", "", Decision::Accepted, "engineering judgment 14");
    check_judged(&[thin], std::slice::from_ref(&grounded), "3A/2", JUDGED, 0);
    let result = check_with(&listing(), &[thin], &[grounded]);
    let explanation = &finding(&result, "3A/2").explanation;
    assert!(explanation.sentence.starts_with(
        "Packing depth is 3 in. (76.2 mm); the listing asks for at least 4 in. (101.6 mm)."
    ));
    assert!(
        explanation
            .sentence
            .ends_with("accepted it on 2031-05-06: engineering judgment 14.")
    );
    assert_eq!(
        explanation.margin.as_ref().unwrap().words,
        "1 in. (25.4 mm) short"
    );
}

#[test]
fn what_is_met_stays_met_unless_it_is_rejected() {
    let deep = "packing.depth = 5 in.";
    check_judged(
        &[deep],
        &[judgment("3A/2", "", Decision::Accepted, "")],
        "3A/2",
        support::MET,
        0,
    );
    check_judged(
        &[deep],
        &[judgment("3A/2", "", Decision::Rejected, "")],
        "3A/2",
        REJECTED,
        0,
    );
}

#[test]
fn nobody_decides_nothing() {
    let nobody = Judgment {
        by: String::new(),
        ..judgment("3A", "Seams", Decision::Accepted, "seen")
    };
    check_judged(&[], &[nobody], "3A/1", OPEN, 1);
}

#[test]
fn which_of_several_judgments_counts() {
    let day = |day| jiff::civil::date(2031, 5, day);
    let accepted = Judgment {
        when: day(2),
        ..judgment("3A", "Seams", Decision::Accepted, "seen")
    };
    let rejected = Judgment {
        when: day(1),
        ..judgment("3A", "Seams", Decision::Rejected, "gaps")
    };
    check_judged(
        &[],
        &[accepted.clone(), rejected.clone()],
        "3A/1",
        JUDGED,
        0,
    );
    let same_day = Judgment {
        when: day(2),
        ..rejected.clone()
    };
    check_judged(&[], &[same_day, accepted.clone()], "3A/1", REJECTED, 0);
    // The joint's own goes before its mark's, whatever the day.
    let of_mark = Judgment {
        scope: Scope::Mark("M1".to_owned()),
        ..accepted
    };
    check_judged(&[], &[rejected, of_mark], "3A/1", REJECTED, 0);
}

#[test]
fn the_head_is_judged_by_its_id() {
    let accepted = judgment(
        "header/rating",
        "",
        Decision::Accepted,
        "listed in the code report",
    );
    check_judged(&[], &[accepted], "header/rating", JUDGED, 0);
}

#[test]
fn the_head_is_judged_by_its_topic() {
    let mut listing = listing();
    listing.header.designation = String::new();
    let judged = |words: &str, id: &str| {
        let accepted = judgment("header", words, Decision::Accepted, "title of the sheet");
        let result = check_with(&listing, &[], &[accepted]);
        (finding(&result, id).verdict, result.notes.len())
    };
    assert_eq!(judged("kind", "header/kind"), (Verdict::Judged, 0));
    assert_eq!(judged("Width", "header/width"), (Verdict::Judged, 0));
    // Three of them begin so.
    let (verdict, notes) = judged("movement", "header/movement-compression");
    assert_eq!((verdict, notes), (Verdict::Open, 1));
    assert_eq!(judged("kin", "header/kind"), (Verdict::Open, 1));
}

#[test]
fn what_was_made_on_a_document_is_for_that_document() {
    let on = |listing: &str, item: &str, words: &str| {
        let mut judgment = judgment(item, words, Decision::Accepted, "seen at placing");
        judgment.listing = Some(listing.to_owned());
        judgment
    };
    // The case listing's document has a SHA-256 of zeros.
    for name in ["case", "HW-D-0901", "renamed since"] {
        let ours = on(&format!("{name}#0000000000000000"), "3A/1", "");
        check_judged(&[], &[ours], "3A/1", JUDGED, 0);
    }
    for (item, words) in [("3A/1", ""), ("3A", "Seams tightly butted.")] {
        let other = on("case#00000000000000ff", item, words);
        let result = check_with(&listing(), &[], &[other]);
        assert_eq!(finding(&result, "3A/1").verdict, Verdict::Open);
        let [note] = result.notes.as_slice() else {
            panic!("{:?}", result.notes);
        };
        assert!(note.contains("another document of the same name"), "{note}");
    }
    // Of a listing that neither is this one nor goes by its name, nothing need be told.
    let elsewhere = on("another#00000000000000ff", "3A/1", "");
    check_judged(&[], &[elsewhere], "3A/1", OPEN, 0);
}
